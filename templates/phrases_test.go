package templates

import (
	"strings"
	"testing"

	"stonewrit/grading/phrase"
)

func TestPhrases(t *testing.T) {
	set, err := load(t, map[string]string{
		"en/forms.csv": "english,said\n\"%s lies outside %s\",\"%[2]s does not hold %[1]s\"\nnothing was seen,we saw nothing\n",
		"en/terms.csv": "english,said\nspecific gravity,density\nlight:clear,bright\n",
	})
	if err != nil {
		t.Fatal(err)
	}
	w := english(t, set)
	span := phrase.Say("%s to %s", phrase.Figure("3.97"), phrase.Figure("4.05"))
	if got, want := phrase.Say("%s lies outside %s", phrase.Word("specific gravity"), span).In(w), "3.97 to 4.05 does not hold density"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := phrase.Line("nothing was seen").In(w), "we saw nothing"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	for list, want := range map[string]string{"light": "bright", "spectrum": "clear"} {
		if got, err := w.Word(list, "clear"); got != want || err != nil {
			t.Errorf("clear in the list %s is %q, %v, want %q", list, got, err, want)
		}
	}
	if got := w.Lacks([]string{"nothing was seen", "garnet", "specific gravity"}); len(got) != 1 || got[0] != "garnet" {
		t.Errorf("lacks %q, want garnet", got)
	}
}

// TestFaultyPhrases: each mistake is told with file and line.
func TestFaultyPhrases(t *testing.T) {
	for _, c := range []struct{ name, file, text, want string }{
		{"a part without a place", "en/forms.csv", "english,said\n%s lies outside %s,%s lies outside\n", "en/forms.csv:2: part 2 of"},
		{"a part too many", "en/forms.csv", "english,said\n\n%s was seen,%s %s was seen\n", "en/forms.csv:3: there is no part 2"},
		{"a column too many", "en/terms.csv", "english,said\nred,green,blue\n", "en/terms.csv:2: wrong number of fields"},
		{"no translation", "en/terms.csv", "english,said\nred,\n", `en/terms.csv:2: "red" has no translation`},
		{"said twice", "en/terms.csv", "english,said\nred,green\nred,blue\n", `en/terms.csv:3: "red" is also in en/terms.csv:2`},
		{"an open quote", "en/terms.csv", "english,said\n\"red,green\n", "en/terms.csv:2:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := load(t, map[string]string{c.file: c.text})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want %s", err, c.want)
			}
		})
	}
}
