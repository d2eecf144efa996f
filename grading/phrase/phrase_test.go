package phrase_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"stonewrit/grading/phrase"
)

// german is enough of a language for the tests.
type german struct{}

func (german) Form(s string) string {
	return map[string]string{
		"%s %.3f lies %s outside %s": "%[1]s %[2]s liegt %[3]s außerhalb von %[4]s",
		"%s to %s":                   "%s bis %s",
		"%s and %s":                  "%s und %s",
		"nothing was seen":           "nichts war zu sehen",
		"%d %% of %s":                "von %[2]s %[1]d %%",
	}[s]
}
func (german) Term(s string) string {
	return map[string]string{"low index": "kleinerer Brechwert", "garnet": "Granat"}[s]
}
func (german) Figure(s string) string { return strings.ReplaceAll(s, ".", ",") }

func TestLine(t *testing.T) {
	span := phrase.Say("%s to %s", phrase.Figure("1.544"), phrase.Figure("1.553"))
	for _, c := range []struct {
		line            phrase.Line
		english, german string
	}{
		{"nothing was seen", "nothing was seen", "nichts war zu sehen"},
		{phrase.Say("%s %.3f lies %s outside %s", phrase.Word("low index"), 1.5606, phrase.Figure("0.0076"), span),
			"low index 1.561 lies 0.0076 outside 1.544 to 1.553", "kleinerer Brechwert 1,561 liegt 0,0076 außerhalb von 1,544 bis 1,553"},
		{phrase.And(phrase.Say("%s and %s", phrase.Word("garnet"), "Mr. 1.5 % Doe"), "nothing was seen"),
			"garnet and Mr. 1.5 % Doe and nothing was seen", "Granat und Mr. 1.5 % Doe und nichts war zu sehen"},
		{phrase.Say("%d %% of %s", 12, phrase.Word("garnet")), "12 % of garnet", "von Granat 12 %"},
	} {
		if got := c.line.String(); got != c.english {
			t.Errorf("in English %q, want %q", got, c.english)
		}
		if got := c.line.In(german{}); got != c.german {
			t.Errorf("in German %q, want %q", got, c.german)
		}
	}
}

// TestLikeFmt holds the English of a line against package fmt.
func TestLikeFmt(t *testing.T) {
	for _, c := range []struct {
		form  string
		parts []any
	}{
		{"%.2f ± %.3f", []any{1.7613, 0.00051}}, {"%d of %d", []any{3, 12}}, {"%[2]s before %[1]s", []any{"a", "b"}}, {"%+.0f nm, %s", []any{-3.2, "x"}},
		{"100 %% of %s", []any{"%s"}}, {"%5.1f|%-4d|", []any{2.25, 7}}, {"%s", []any{""}}, {"%q is %d", []any{"a \"b\"", 3}},
	} {
		if got, want := phrase.Say(phrase.Line(c.form), c.parts...).String(), fmt.Sprintf(c.form, c.parts...); got != want {
			t.Errorf("%q gives %q, fmt %q", c.form, got, want)
		}
	}
}

func TestJSON(t *testing.T) {
	got, err := json.Marshal(map[string]any{"because": []phrase.Line{phrase.Say("%.1f < 2", 1.25)}})
	if want := `{"because":["1.2 \u003c 2"]}`; err != nil || string(got) != want {
		t.Errorf("%s %v, want %s", got, err, want)
	}
}

func TestFits(t *testing.T) {
	for _, c := range []struct {
		english, other string
		fits           bool
	}{
		{"%s of %.2f", "%[2]s von %[1]s", true}, {"%s of %.2f", "%s", false}, {"%s", "%s %s", false}, {"none", "kein", true}, {"%d %% of %s", "%[2]s: %[1]s %%", true}, {"60 % of it", "60 % davon", true}, {"%s", "%[1]s, %[1]s", true},
	} {
		if err := phrase.Fits(c.english, c.other); (err == nil) != c.fits {
			t.Errorf("%q for %q: %v", c.other, c.english, err)
		}
	}
}
