package quantity

import (
	"fmt"
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

var measure = regexp.MustCompile(`^([+-]?[0-9]+(?:\.([0-9]+))?) ?([^0-9+±\-]*?)(?: ?(\+-|±|\+/-|u )\s*([0-9]+(?:\.[0-9]+)?) ?([^0-9]*))?$`)

// A SyntaxError says what is wrong with a quantity and, if that is clear, how
// it should be written.
type SyntaxError struct {
	Text, Problem, Hint string
}

func (e *SyntaxError) Error() string { return fmt.Sprintf("%q %s", e.Text, e.Problem) }

// Parse reads a quantity such as "7.82 mm", "7.82 mm +-0.02" or "4.00 u 0.01".
// After +- (or ±) stands the half width that the writer believes to hold the
// truth 95 times in 100 (k = 2), after u a standard uncertainty. The error is a
// *SyntaxError.
func Parse[T Unit](text string) (Measure[T], error) {
	var unit T
	fail := func(problem, hint string) (Measure[T], error) {
		return Measure[T]{}, &SyntaxError{text, problem, hint}
	}
	s := plainSpaces(text)
	if fixed, ok := decimalPoint(s); ok {
		return fail("has a decimal comma", "write a decimal point: "+fixed)
	}
	g := measure.FindStringSubmatch(s)
	if g == nil {
		return fail("is not "+describe(unit), "")
	}
	written := strings.TrimSpace(g[3])
	if written == "" {
		written = strings.TrimSpace(g[6])
	} else if after := strings.TrimSpace(g[6]); after != "" && after != written {
		return fail("gives its uncertainty in "+after, "use "+written+" for both")
	}
	if problem, hint := checkUnit(unit.Symbols(), written, g[1]); problem != "" {
		return fail(problem, hint)
	}
	v, err := strconv.ParseFloat(g[1], 64)
	if err != nil {
		return fail("is not a number that can be used", "")
	}
	m := Measure[T]{V: T(v), Decimals: len(g[2]), Text: strings.TrimSpace(text)}
	if g[5] == "" {
		return m, nil
	}
	if m.U, err = strconv.ParseFloat(g[5], 64); err != nil || m.U == 0 {
		return fail("has no usable uncertainty", "leave it out, or give one above 0")
	}
	if g[4] != "u " {
		m.U /= coverage95
	}
	return m, nil
}

// coverage95 is the coverage factor of a half width at 95 % (JCGM 100, 6.2.1
// and 6.3.3: k = 2 for a level of confidence of approximately 95 per cent).
const coverage95 = 2

func checkUnit(allowed []string, written, number string) (problem, hint string) {
	switch {
	case len(allowed) == 0 && written == "":
		return "", ""
	case len(allowed) == 0:
		return "has a unit, and a pure number was expected", "did you mean " + number + "?"
	case written == "":
		return "has no unit, " + allowed[0] + " was expected", "did you mean " + number + " " + allowed[0] + "?"
	case slices.Contains(allowed, written):
		return "", ""
	}
	hint = "did you mean " + number + " " + allowed[0] + "?"
	if !strings.EqualFold(written, allowed[0]) {
		hint = "convert it to " + allowed[0]
	}
	return "has the unit " + written + ", " + allowed[0] + " was expected", hint
}

func describe[T Unit](unit T) string {
	if s := unit.Symbols(); len(s) > 0 {
		return "a number with the unit " + s[0]
	}
	return "a plain number"
}

// plainSpaces turns no-break and thin spaces to plain ones and runs to one.
func plainSpaces(s string) string { return strings.Join(strings.Fields(s), " ") }

var decimalComma = regexp.MustCompile(`^([+-]?[0-9.]*[0-9]),([0-9]+)`)

func decimalPoint(s string) (string, bool) {
	if !strings.Contains(s, ",") {
		return "", false
	}
	s = strings.ReplaceAll(s, "±0,", "±0.")
	s = strings.ReplaceAll(s, "+-0,", "+-0.")
	return decimalComma.ReplaceAllString(s, "$1.$2"), true
}
