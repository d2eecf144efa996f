package templates

import (
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

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
		{"words of a language without sentences", "xx/terms.csv", "english,said\nred,rouge\n", `xx/terms.csv: there are words of the language "xx"`},
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

// FuzzPhrases lays two-column files over the built-in ones: they load or are
// refused with their place, and what loads can be said.
func FuzzPhrases(f *testing.F) {
	f.Add("english,said\n%s and %s,%[2]s und %[1]s\n", "%s and %s", "a", "b")
	f.Add("english,said\n\"%d %% of %q\",%\n", "%d %% of %q", "", "\x0e")
	f.Add("x,y\n%[3]s,%[1]*s\n", "%[0]s %", "%s", "\x0f\x0e")
	place := regexp.MustCompile(`^[a-z/]+\.csv(:\d+)?: `)
	f.Fuzz(func(t *testing.T, file, form, one, two string) {
		l := newLoader() // without the built-in words, which take longer than all else
		l.readPhrases(fstest.MapFS{"en/own.csv": {Data: []byte(file)}})
		for _, e := range l.errs {
			if !place.MatchString(e.Error()) {
				t.Errorf("the mistake does not say where it is: %v", e)
			}
		}
		w := l.wording("en")
		line := phrase.Say("%s: %s", phrase.Say(phrase.Line(form), one, two), phrase.Word(one))
		_, _ = line.In(w), line.String()
	})
}
