package quantity

import (
	"errors"
	"math"
	"regexp"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, tt := range []struct {
		text     string
		v, u     float64
		decimals int
		digits   string
		why      string
	}{
		{"7.82 mm", 7.82, 0, 2, "7.82", "plain"},
		{"7.82mm", 7.82, 0, 2, "7.82", "no space is accepted"},
		{"7.82 mm", 7.82, 0, 2, "7.82", "no-break space"},
		{"7.82\u2009mm", 7.82, 0, 2, "7.82", "thin space is accepted"},
		{"7.82\u202fmm", 7.82, 0, 2, "7.82", "narrow no-break space"},
		{"  7.82   mm ", 7.82, 0, 2, "7.82", "spaces around"},
		{"8 mm", 8, 0, 0, "8", "no decimals"},
		{"8.00 mm", 8, 0, 2, "8.00", "noughts are kept"},
		{"+8.0 mm", 8, 0, 1, "8.0", "plus sign"},
		{"-8.0 mm", -8, 0, 1, "-8.0", "a sign is read; whether it makes sense is judged by the field"},
		{"\u22128.0 mm", -8, 0, 1, "-8.0", "minus sign of typography"},
		{"7.82 mm +-0.02", 7.82, 0.01, 2, "7.82", "half width at 95 %, k = 2"},
		{"7.82 mm +- 0.02", 7.82, 0.01, 2, "7.82", "space after the sign"},
		{"7.82 mm+-0.02", 7.82, 0.01, 2, "7.82", "no space before the sign"},
		{"7.82 mm ±0.02", 7.82, 0.01, 2, "7.82", "± is read as +-"},
		{"7.82 mm +/-0.02", 7.82, 0.01, 2, "7.82", "typewriter form"},
		{"7.82 ±0.02 mm", 7.82, 0.01, 2, "7.82", "unit at the end"},
		{"7.82 mm ± 0.02 mm", 7.82, 0.01, 2, "7.82", "unit twice"},
		{"7.82 mm u 0.02", 7.82, 0.02, 2, "7.82", "standard uncertainty"},
	} {
		m, err := Parse[Millimetre](tt.text)
		if err != nil {
			t.Errorf("%q: %v (%s)", tt.text, err, tt.why)
			continue
		}
		if float64(m.V) != tt.v || m.U != tt.u || m.Decimals != tt.decimals || m.Digits() != tt.digits {
			t.Errorf("%q: got %v u %v, %d decimals, digits %q, want %v u %v, %d, %q: %s",
				tt.text, m.V, m.U, m.Decimals, m.Digits(), tt.v, tt.u, tt.decimals, tt.digits, tt.why)
		}
		if m.Text != strings.TrimSpace(tt.text) || !m.Given() {
			t.Errorf("%q: kept as %q", tt.text, m.Text)
		}
		// A thin space is white space to ECMA 262, which the schema is written for, but not to Go.
		inGo := strings.NewReplacer("\u2009", " ", "\u202f", " ", "\u00a0", " ").Replace(tt.text)
		if !regexp.MustCompile(Pattern(m.Units())).MatchString(inGo) {
			t.Errorf("%q: the schema's pattern refuses it", tt.text)
		}
	}
}

func TestParseUnits(t *testing.T) {
	ok := func(text string, err error) {
		if err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
	for _, text := range []string{"21.5 C", "21.5 °C", "21.5°C", "-3 C"} { // both are accepted
		_, err := Parse[Celsius](text)
		ok(text, err)
	}
	for _, text := range []string{"34.5 deg", "34.5°", "34.5 °"} {
		_, err := Parse[Degree](text)
		ok(text, err)
	}
	for _, text := range []string{"30 days", "1 day"} {
		_, err := Parse[Day](text)
		ok(text, err)
	}
	for _, text := range []string{"1.762", "4.00 +-0.02", "1.54 ±0.01", "1.54 u 0.005"} {
		m, err := Parse[Number](text)
		ok(text, err)
		if !regexp.MustCompile(Pattern(m.Units())).MatchString(text) {
			t.Errorf("%q: the schema's pattern refuses it", text)
		}
	}
	if m, err := Parse[Number]("4.00 +-0.02"); err != nil || m.Value() != (Value{4, 0.01}) {
		t.Errorf("4.00 +-0.02: got %v, %v", m.Value(), err)
	}
}

func TestParseRefuses(t *testing.T) {
	mm, ct, g := parser[Millimetre](), parser[Carat](), parser[Gram]()
	number, percent, celsius := parser[Number](), parser[Percent](), parser[Celsius]()
	nm, deg, days := parser[Nanometre](), parser[Degree](), parser[Day]()
	for _, tt := range []struct {
		parse         func(string) error
		text          string
		problem, hint string
	}{
		// Marks and letters of other habits.
		{mm, "7,82 mm", "has a decimal comma", "write a decimal point: 7.82 mm"},
		{mm, "7.82 mm ±0,02", "has a decimal comma", "write a decimal point: 7.82 mm ±0.02"},
		{mm, "7,82 mm +-0,02", "has a decimal comma", "write a decimal point: 7.82 mm +-0.02"},
		{mm, "1.234,5 mm", "has a decimal comma", "write a decimal point: 1234.5 mm"},
		{ct, "1,520 ct", "has a comma", "write a decimal point: 1.520 ct; if thousands were meant, 1520 ct"},
		{mm, "1,234.5 mm", "has a mark between thousands", "write the digits without it: 1234.5 mm"},
		{mm, "1 234.5 mm", "has a mark between thousands", "write the digits without it: 1234.5 mm"},
		{mm, "1'234.5 mm", "has a mark between thousands", "write the digits without it: 1234.5 mm"},
		{mm, "7.82 MM", "has the unit MM, mm was expected", "did you mean 7.82 mm?"},
		// Units.
		{mm, "7.82", "has no unit, mm was expected", "did you mean 7.82 mm?"},
		{mm, "7.82 cm", "has the unit cm, mm was expected", "did you mean 78.2 mm?"},
		{mm, "0.25 inch", "has the unit inch, mm was expected", "did you mean 6.35 mm?"},
		{mm, "7.82 millimetres", "has the unit millimetres, mm was expected", "did you mean 7.82 mm?"},
		{mm, "7.82 ct", "has the unit ct, mm was expected", "convert it to mm"},
		{ct, "1.52 carats", "has the unit carats, ct was expected", "did you mean 1.52 ct?"},
		{ct, "0.304 g", "has the unit g, ct was expected", "did you mean 1.52 ct?"},
		{ct, "304 mg", "has the unit mg, ct was expected", "did you mean 1.52 ct?"},
		{g, "1.52 ct", "has the unit ct, g was expected", "did you mean 0.304 g?"},
		{g, "304 mg", "has the unit mg, g was expected", "did you mean 0.304 g?"},
		{g, "0.3040", "has no unit, g was expected", "did you mean 0.3040 g?"},
		{celsius, "70 F", "has the unit F, C was expected", "convert it to C"},
		{celsius, "21.5 ℃", "has the unit ℃, C was expected", "did you mean 21.5 C?"},
		{deg, "34.5 degrees", "has the unit degrees, deg was expected", "did you mean 34.5 deg?"},
		{percent, "57", "has no unit, % was expected", "did you mean 57 %?"},
		{percent, "57 per cent", "has the unit per cent, % was expected", "did you mean 57 %?"},
		{nm, "6943 Å", "has the unit Å, nm was expected", "did you mean 694.3 nm?"},
		{days, "2 weeks", "has the unit weeks, days was expected", "did you mean 14 days?"},
		{number, "1.762 mm", "has a unit, and a pure number was expected", "did you mean 1.762?"},
		{mm, "7.82 mm +-0.02 cm", "gives its uncertainty in cm", "use mm for both"},
		// Form.
		{mm, ".82 mm", "lacks a digit beside its decimal point", "did you mean 0.82 mm?"},
		{mm, "8. mm", "lacks a digit beside its decimal point", "did you mean 8 mm?"},
		{mm, "6.48-6.52 mm", "holds two numbers", "write one; where a list is allowed, [6.48 mm, 6.52 mm]"},
		{mm, "6.48 mm - 6.52 mm", "holds two numbers", "write one; where a list is allowed, [6.48 mm, 6.52 mm]"},
		{mm, "6.48 x 6.52 mm", "holds two numbers", "write one; where a list is allowed, [6.48 mm, 6.52 mm]"},
		{number, "1.762-1.770", "holds two numbers", "write one; where a list is allowed, [1.762, 1.770]"},
		{mm, "about 7.8 mm", "is not a number with the unit mm", "did you mean 7.8 mm? doubt is written +-: 7.8 mm +-0.1"},
		{mm, "~7.8 mm", "is not a number with the unit mm", "did you mean 7.8 mm? doubt is written +-: 7.8 mm +-0.1"},
		{mm, "seven", "is not a number with the unit mm", "for example 7.82 mm"},
		{mm, "", "is not a number with the unit mm", "for example 7.82 mm"},
		{number, "1.7e0", "is not a plain number", "for example 1.54"},
		{number, "NaN", "is not a plain number", "for example 1.54"},
		{number, "0x1p3", "is not a plain number", "for example 1.54"},
		{mm, "7.82 mm +-0", "has no usable uncertainty", "leave it out, or give one above 0"},
		{mm, strings.Repeat("9", 400) + " mm", "is too large to be used", ""},
	} {
		err := tt.parse(tt.text)
		var syntax *SyntaxError
		if !errors.As(err, &syntax) {
			t.Errorf("%q: got %v, want a *SyntaxError", tt.text, err)
			continue
		}
		if syntax.Text != tt.text || syntax.Problem != tt.problem || syntax.Hint != tt.hint {
			t.Errorf("%q:\n got %q, %q\nwant %q, %q", tt.text, syntax.Problem, syntax.Hint, tt.problem, tt.hint)
		}
	}
}

func parser[T Unit]() func(string) error {
	return func(text string) error { _, err := Parse[T](text); return err }
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"7.82 mm", "7.82 mm +-0.02", "7.82 ±0,02 mm", "1.520 ct", "4.00 u 0.01", "1,234.5 mm", "21.5 °C",
		"57 %", "6.48-6.52 mm", ".5 ct", "", "+-", "−1 mm", "9 mm +-9 mm", "1 u 1",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		round[Millimetre](t, text)
		round[Carat](t, text)
		round[Percent](t, text)
		round[Celsius](t, text)
		round[Number](t, text)
	})
}

// round checks what holds for every text: an error that explains itself or a
// finite measure that reads the same again.
func round[T Unit](t *testing.T, text string) {
	m, err := Parse[T](text)
	if err != nil {
		var syntax *SyntaxError
		if !errors.As(err, &syntax) || syntax.Problem == "" {
			t.Fatalf("%q: error without an explanation: %v", text, err)
		}
		return
	}
	if math.IsInf(m.Float(), 0) || math.IsNaN(m.Float()) || !(m.U >= 0) || math.IsInf(m.U, 0) {
		t.Fatalf("%q: %v u %v", text, m.V, m.U)
	}
	again, err := Parse[T](m.String())
	if err != nil || again != m {
		t.Fatalf("%q: reads as %+v, again as %+v, %v", text, m, again, err)
	}
	if m.Digits() == "" {
		t.Fatalf("%q: no digits", text)
	}
}
