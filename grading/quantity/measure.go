package quantity

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Unit is one of the unit types of this package.
type Unit interface {
	~float64
	// Symbols are the spellings that a file may use, the usual one first. A
	// pure number has none.
	Symbols() []string
}

// Symbols of the units, as accepted and, first, as printed.
func (Millimetre) Symbols() []string { return []string{"mm"} }
func (Carat) Symbols() []string      { return []string{"ct"} }
func (Gram) Symbols() []string       { return []string{"g"} }
func (Degree) Symbols() []string     { return []string{"deg", "°"} }
func (Percent) Symbols() []string    { return []string{"%"} }
func (Nanometre) Symbols() []string  { return []string{"nm"} }
func (Micrometre) Symbols() []string { return []string{"um", "µm", "μm"} }
func (Celsius) Symbols() []string    { return []string{"C", "°C"} }
func (Second) Symbols() []string     { return []string{"s"} }
func (Day) Symbols() []string        { return []string{"days", "day"} }
func (Number) Symbols() []string     { return nil }

// A Measure is one number with its unit as somebody wrote it.
type Measure[T Unit] struct {
	V        T
	U        float64 // standard uncertainty, k = 1; 0 when the writer gave none
	Decimals int     // decimals written: 1.520 has three
	Text     string  // as written; empty for a measure that was not given
}

// Given reports whether somebody wrote the measure at all.
func (m Measure[T]) Given() bool { return m.Text != "" }

// Float is the number without its unit.
func (m Measure[T]) Float() float64 { return float64(m.V) }

// Digits is the number as written, without unit and uncertainty: "1.520". It
// is empty for a measure that was not given.
func (m Measure[T]) Digits() string {
	g := form.FindStringSubmatch(plainText(m.Text))
	if g == nil {
		return ""
	}
	return strings.TrimPrefix(g[1], "+")
}

// Units are the spellings of the unit that a file may use, the usual one first.
func (m Measure[T]) Units() []string { return m.V.Symbols() }

// Set parses text into m; see [Parse].
func (m *Measure[T]) Set(text string) error {
	parsed, err := Parse[T](text)
	if err == nil {
		*m = parsed
	}
	return err
}

// String is the measure as written.
func (m Measure[T]) String() string { return m.Text }

// Value is the measure with its uncertainty as a bare pair.
func (m Measure[T]) Value() Value { return Value{float64(m.V), m.U} }

// form is how a quantity is written: number, unit, and perhaps a sign of
// uncertainty with its number and the unit once more.
var form = regexp.MustCompile(`^([+-]?[0-9]+(?:\.([0-9]+))?) ?((?:[^0-9+±.-][^0-9+±-]*?)?)(?:(?: ?(\+-|±|\+/-) ?| (u) )([0-9]+(?:\.[0-9]+)?) ?((?:[^0-9+±.-][^0-9+±-]*)?))?$`)

// Pattern is an ECMA 262 regular expression for what Parse accepts with one of
// the symbols, for a schema.
func Pattern(symbols []string) string {
	number, unit := `[0-9]+(\.[0-9]+)?`, ""
	if len(symbols) > 0 {
		quoted := make([]string, len(symbols))
		for i, s := range symbols {
			quoted[i] = regexp.QuoteMeta(s)
		}
		unit = `(` + strings.Join(quoted, "|") + `)`
	}
	spread := `(\s*(\+-|±|\+/-)\s*|\s+u\s+)` + number
	if unit == "" {
		return `^\s*[+−-]?` + number + `(` + spread + `)?\s*$`
	}
	// The unit stands after the value, after the uncertainty, or after both.
	return `^\s*[+−-]?` + number + `(\s*` + unit + `(` + spread + `(\s*` + unit + `)?)?|` + spread + `\s*` + unit + `)\s*$`
}

// Parse reads a quantity such as "7.82 mm", "7.82 mm +-0.02" or "4.00 u 0.01".
// After +- (or ±) stands the half width that the writer believes to hold the
// truth 95 times in 100 (k = 2), after u a standard uncertainty. The error is a
// *SyntaxError.
func Parse[T Unit](text string) (Measure[T], error) {
	var unit T
	symbols := unit.Symbols()
	s := plainText(text)
	g := form.FindStringSubmatch(s)
	if g == nil || strings.Contains(s, ",") {
		return Measure[T]{}, malformed(text, s, symbols)
	}
	if err := checkUnits(text, g, symbols); err != nil {
		return Measure[T]{}, err
	}
	v, err := strconv.ParseFloat(g[1], 64)
	if err != nil {
		return Measure[T]{}, &SyntaxError{text, "is too large to be used", ""}
	}
	m := Measure[T]{V: T(v), Decimals: len(g[2]), Text: strings.TrimSpace(text)}
	if g[6] == "" {
		return m, nil
	}
	if m.U, err = strconv.ParseFloat(g[6], 64); err != nil || m.U == 0 {
		return Measure[T]{}, &SyntaxError{text, "has no usable uncertainty", "leave it out, or give one above 0"}
	}
	if g[5] == "" {
		m.U /= coverage95
	}
	return m, nil
}

// coverage95 is the coverage factor of a half width at 95 % (JCGM 100, 6.2.1
// and 6.3.3: k = 2 for a level of confidence of approximately 95 per cent).
const coverage95 = 2

// checkUnits checks the unit beside the number and beside the uncertainty.
func checkUnits(text string, g []string, symbols []string) error {
	number, first, second := g[1], strings.TrimSpace(g[3]), strings.TrimSpace(g[7])
	written := first
	if first == "" {
		written = second
	}
	if problem, hint := checkUnit(symbols, written, number); problem != "" {
		return &SyntaxError{text, problem, hint}
	}
	if first != "" && second != "" && !slices.Contains(symbols, second) {
		return &SyntaxError{text, "gives its uncertainty in " + second, "use " + symbols[0] + " for both"}
	}
	return nil
}

// plainText turns no-break and thin spaces to plain ones, runs of them to one,
// and the minus sign of typography to a hyphen.
func plainText(s string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(s), " "), "\u2212", "-")
}
