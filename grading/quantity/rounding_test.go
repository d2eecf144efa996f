package quantity

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

type checkValue struct{ topic, input, expected, unit, source string }

// checkValues are published figures; source and clause stand in each row.
func checkValues(t *testing.T, topic string) []checkValue {
	t.Helper()
	f, err := os.Open("testdata/check-values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var found []checkValue
	for _, r := range rows[1:] {
		if strings.HasPrefix(r[0], topic) {
			found = append(found, checkValue{r[0], r[1], r[2], r[3], r[5] + ", " + r[6]})
		}
	}
	if len(found) == 0 {
		t.Fatalf("no rows of %s", topic)
	}
	return found
}

func TestUnitsAgainstPublishedFigures(t *testing.T) {
	got := map[string]float64{
		"1 carat mg": float64(Carat(1).Grams()) * 1000,
		"1 carat g":  float64(Carat(1).Grams()),
		"metric carat as EU legal unit for pearls and precious stones kg": float64(Carat(1).Grams()) / 1000,
		"1 troy ounce g":            1 / Gram(1).TroyOunces(),
		"1 troy ounce in carats ct": float64(Gram(1 / Gram(1).TroyOunces()).Carats()),
	}
	// What a file may not write is converted exactly in the hint.
	hint := map[string]string{
		"1 point":                         mended[Carat]("1 point"),
		"25 points":                       mended[Carat]("25 points"),
		"1 pennyweight = troy ounce / 20": mended[Gram]("1 dwt"),
		"1 troy ounce":                    mended[Gram]("1 ozt"),
	}
	milligrams := map[string]string{
		"1 pearl grain (one carat is 4 grains)": mended[Carat]("1 pearl grain"),
		"1 troy grain = troy ounce / 480":       mended[Gram]("1 troy grain"),
	}
	for _, row := range checkValues(t, "unit") {
		want, err := strconv.ParseFloat(row.expected, 64)
		if err != nil {
			t.Fatal(err)
		}
		tried := false
		if g, ok := got[row.input+" "+row.unit]; ok {
			tried = true
			if math.Abs(g-want) > 4e-16*want { // two roundings of a binary fraction
				t.Errorf("%s: got %v, want %v (%s)", row.input, g, want, row.source)
			}
		}
		if h, ok := hint[row.input]; ok {
			tried = true
			if wanted := "did you mean " + row.expected + " " + row.unit + "?"; h != wanted {
				t.Errorf("%s: hint %q, want %q (%s)", row.input, h, wanted, row.source)
			}
		}
		if h, ok := milligrams[row.input]; ok {
			tried = true
			number, unit, _ := strings.Cut(strings.TrimSuffix(strings.TrimPrefix(h, "did you mean "), "?"), " ")
			v, _ := strconv.ParseFloat(number, 64)
			if unit == "ct" {
				v = float64(Carat(v).Grams())
			}
			if math.Abs(v*1000-want) > 1e-12 {
				t.Errorf("%s: got %v mg, want %v (%s)", row.input, v*1000, want, row.source)
			}
		}
		if !tried {
			t.Errorf("%s (%s): nothing checks this row", row.input, row.unit)
		}
	}
}

func mended[T Unit](text string) string {
	_, err := Parse[T](text)
	if syntax, ok := err.(*SyntaxError); ok {
		return syntax.Hint
	}
	return ""
}

func TestRoundAgainstPublishedFigures(t *testing.T) {
	for topic, rule := range map[string]Rounding{"mass-round-9-only": DownExceptNine, "mass-round-half-up": Nearest} {
		for _, row := range checkValues(t, topic) {
			got, err := rule.Round(row.input)
			if err != nil || got != row.expected {
				t.Errorf("%s of %s: got %q, %v, want %s (%s)", rule, row.input, got, err, row.expected, row.source)
			}
		}
	}
}

func TestRound(t *testing.T) {
	for _, tt := range []struct {
		rule         Rounding
		weight, want string
		why          string
	}{
		{Nearest, "1.520", "1.52", "nothing to round"},
		{"", "1.568", "1.57", "no rule is nearest"},
		{Nearest, "1.5", "1.5", "a decimal that nobody read is not added"},
		{Nearest, "12", "12", "the same"},
		{Nearest, "9.995", "10.00", "carries through"},
		{DownExceptNine, "99.999", "100.00", "carries through"},
		{DownExceptNine, "1.5699", "1.57", "the third decimal is 9"},
		{DownExceptNine, "1.5689", "1.56", "the third decimal is 8"},
		{Nearest, "0.004", "0.00", "too light to show"},
		{Nearest, "1.005", "1.01", "as a binary fraction 1.005 is below 1.005 and would fall to 1.00"},
	} {
		if got, err := tt.rule.Round(tt.weight); err != nil || got != tt.want {
			t.Errorf("%s of %s: got %q, %v, want %q: %s", tt.rule, tt.weight, got, err, tt.want, tt.why)
		}
	}
	for _, bad := range []string{"", "-1.5", "1,52", "1.52 ct", "1e3", ".5", "5."} {
		if got, err := Nearest.Round(bad); err == nil {
			t.Errorf("%q: got %q, want an error", bad, got)
		}
	}
	if _, err := Rounding("up").Round("1.234"); err == nil {
		t.Error("a rule that does not exist is followed")
	}
}

func TestClaimHolds(t *testing.T) {
	for _, row := range checkValues(t, "ftc-weight") { // 16 CFR 23.18(c)
		claim, measured, ok := strings.Cut(strings.TrimPrefix(row.input, "claim "), " ct; measured ")
		switch {
		case ok:
			if got := ClaimHolds(claim, measured); got != (row.expected == "accept") {
				t.Errorf("%s: got %v, want %s (%s)", row.input, got, row.expected, row.source)
			}
		case strings.Contains(row.input, ".5 carat"):
			if !ClaimHolds(".5", row.expected) {
				t.Errorf("%s: %s is refused (%s)", row.input, row.expected, row.source)
			}
		case row.input == "claim .47 ct":
			for measured, want := range map[string]bool{"0.464": false, "0.465": true, "0.474": true, "0.475": false} {
				if ClaimHolds(".47", measured) != want {
					t.Errorf("claim .47 ct, measured %s: want %v (accurate to %s, %s)", measured, want, row.expected, row.source)
				}
			}
		default:
			t.Errorf("%s: nothing checks this row", row.input)
		}
	}
	if ClaimHolds("half", "0.500") || ClaimHolds("0.50", "") {
		t.Error("holds for what is no number")
	}
	if !ClaimHolds("1.00", "0.999") || ClaimHolds("1.00", "0.994") {
		t.Error("carry: 0.999 is 1.00 to the second decimal, 0.994 is not")
	}
}

func TestState(t *testing.T) {
	for _, row := range checkValues(t, "uncertainty") {
		var got string
		switch row.input {
		case "u_c = 0.35 mg; k = 2":
			got = Value{0, 0.35}.State(2).U
		case "u_c = 0.35 mg; k = 2.26; 9 degrees of freedom":
			got = Value{0, 0.35}.State(2.26).U
		case "m = 100.02147 g; U = 0.00070 g; k = 2":
			got = Value{100.02147, 0.00035}.State(2).With("g")
			got = strings.NewReplacer("±", "+/-", "\u00a0", " ").Replace(got)
		case "digits kept in a stated uncertainty":
			got = strconv.Itoa(len(strings.Trim(Value{1, 0.123456}.State(2).U, "0.")))
		default:
			t.Errorf("%s: nothing checks this row", row.input)
		}
		if got != row.expected {
			t.Errorf("%s: got %q, want %q (%s)", row.input, got, row.expected, row.source)
		}
	}
	for _, tt := range []struct {
		v, u float64
		want string
		why  string
	}{
		{3.99318, 0.0161, "3.993 ± 0.032", "two digits of U, the value to the same place"},
		{1.7613, 0.00104, "1.7613 ± 0.0021", "four decimals of an index"},
		{4.005, 0.0498, "4.00 ± 0.10", "0.0996 rounds to 0.10, still two digits; 4.005 lies below the half as a binary fraction"},
		{12.5, 2.4, "12.5 ± 4.8", "above one"},
		{123.4, 61, "120 ± 120", "tens"},
		{12345, 617, "12300 ± 1200", "hundreds"},
		{-0.0004, 0.05, "0.00 ± 0.10", "no minus before nought"},
		{1.5, 0, "1.5", "no uncertainty known"},
		{1.5, math.NaN(), "1.5", "no uncertainty that can be used"},
		{1.5, math.Inf(1), "1.5", "the same"},
	} {
		if got := (Value{tt.v, tt.u}).State(2).String(); got != tt.want {
			t.Errorf("%v u %v: got %q, want %q: %s", tt.v, tt.u, got, tt.want, tt.why)
		}
	}
	if got := (Value{1.54421, 0.0001}).State(2).With(""); got != "1.544\u00a021 ± 0.000\u00a020" {
		t.Errorf("pure number: got %q", got)
	}
	if got := (Value{1.52, 0}).State(2).With("ct"); got != "1.52\u00a0ct" {
		t.Errorf("without uncertainty: got %q", got)
	}
}

func FuzzRound(f *testing.F) {
	f.Add("1.568")
	f.Add("0.999")
	f.Fuzz(func(t *testing.T, weight string) {
		up, err := Nearest.Round(weight)
		if err != nil {
			return
		}
		down, err := DownExceptNine.Round(weight)
		if err != nil {
			t.Fatal(err)
		}
		w, errW := strconv.ParseFloat(weight, 64)
		u, errU := strconv.ParseFloat(up, 64)
		d, errD := strconv.ParseFloat(down, 64)
		if errW != nil || errU != nil || errD != nil {
			return // too many digits for a float to compare
		}
		if w < 1e6 && (math.Abs(u-w) > 0.005+1e-9 || d > u || w-d > 0.009+1e-9) {
			t.Fatalf("%s: nearest %s, down except 9 %s", weight, up, down)
		}
	})
}

func ExampleRounding_Round() {
	println := func(s string, _ error) { os.Stdout.WriteString(s + "\n") }
	println(Nearest.Round("1.568"))
	println(DownExceptNine.Round("1.568"))
	// Output:
	// 1.57
	// 1.56
}
