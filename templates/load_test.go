package templates

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

func load(t *testing.T, files map[string]string) (*Set, error) {
	t.Helper()
	folder := fstest.MapFS{}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return Load(folder)
}

func english(t *testing.T, set *Set) *Wording {
	t.Helper()
	w, err := set.Language("en")
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestBuiltinIsComplete(t *testing.T) {
	set, err := Load(Builtin())
	if err != nil {
		t.Fatal(err)
	}
	if got := set.Languages(); !slices.Equal(got, []string{"de", "en"}) {
		t.Errorf("languages are %v", got)
	}
	for _, language := range set.Languages() {
		w := must(set.Language(language))
		for _, s := range Catalogue() {
			if !s.Optional && !w.Has(s.Name) {
				t.Errorf("%s lacks the sentence %q", language, s.Name)
			}
		}
	}
	for _, kind := range Kinds() {
		if order, err := set.Order(kind); err != nil || len(order) == 0 {
			t.Errorf("order of %s: %v, %v", kind, order, err)
		}
	}
}

// Mistakes are told at load, where they stand.
func TestMistakesAreToldWithTheirPlace(t *testing.T) {
	for _, tc := range []struct{ name, file, text, want, why string }{
		{"unknown field", "en/own.tmpl", "\n{{define \"limits.validity\"}}\nValid {{.Valid}}.\n{{end}}", `en/own.tmpl:3: there is no field Valid, only .NotMade`, "the field is on the third line"},
		{"field in a branch never taken", "en/own.tmpl", "{{define \"date\"}}\n{{if false}}\n{{.Weekday}}{{end}}{{.Day}}{{end}}", `en/own.tmpl:3: there is no field Weekday`, "what a sample would not reach is checked too"},
		{"field of an element", "en/own.tmpl", "{{define \"read.index\"}}{{range .Turns}}{{.Mean}}{{end}}{{end}}", `en/own.tmpl:1: there is no field Mean, only .Low, .High, .Over`, "range sets the dot"},
		{"field of a variable", "en/own.tmpl", "{{define \"read.index\"}}{{range $i, $t := .Turns}}{{$t.Mean}}{{end}}{{end}}", `there is no field Mean`, "variables have types"},
		{"field of a text", "en/own.tmpl", "{{define \"limits.keep\"}}{{.Keep.Years}}{{end}}", `Years is not there: a text has no fields`, ""},
		{"list printed as text", "en/own.tmpl", "{{define \"limits.notmade\"}}{{.NotMade}}{{end}}", `.NotMade is a list, which is no text to print`, "it would print with brackets"},
		{"text where a list is due", "en/own.tmpl", "{{define \"limits.keep\"}}{{list .Keep}}{{end}}", `list takes a list, not a text`, ""},
		{"too few for a function", "en/own.tmpl", "{{define \"limits.keep\"}}{{word .Keep}}{{end}}", `word takes 2, not 1`, ""},
		{"sentence with other data", "en/own.tmpl", "{{define \"limits.keep\"}}{{template \"date\" .}}{{end}}", `the sentence "date" takes the struct Day, not the struct Limits`, ""},
		{"unknown sentence called", "en/own.tmpl", "{{define \"limits.keep\"}}{{template \"dat\" .}}{{end}}", `there is no sentence "dat"; did you mean "date"?`, ""},
		{"unknown sentence", "en/own.tmpl", "\n\n{{define \"limits.kept\"}}x{{end}}", `en/own.tmpl:3: there is no sentence "limits.kept"; did you mean "limits.keep"?`, ""},
		{"unknown function", "en/own.tmpl", "{{define \"limits.keep\"}}\n{{shout .Keep}}{{end}}", `en/own.tmpl:2: function "shout" not defined`, ""},
		{"unbalanced", "en/own.tmpl", "{{define \"limits.keep\"}}\n{{if .Keep}}kept", `en/own.tmpl:2: unexpected EOF`, ""},
		{"closed twice", "en/own.tmpl", "{{define \"limits.keep\"}}kept{{end}}\n{{end}}", `en/own.tmpl:2: unexpected {{end}}`, ""},
		{"text outside", "en/own.tmpl", "{{define \"limits.keep\"}}kept{{end}}\nstray", `en/own.tmpl:2: text stands outside of any sentence`, "it would never be printed"},
		{"twice in a file", "en/own.tmpl", "{{define \"limits.keep\"}}a{{end}}\n{{define \"limits.keep\"}}b{{end}}", `en/own.tmpl:2: `, ""},
		{"unknown section", "order.txt", "# own\nnote: finding, grounds", `order.txt:2: there is no section "grounds"`, ""},
		{"unknown kind", "order.txt", "letter: finding", `order.txt:1: there is no kind of document "letter"`, ""},
		{"section twice", "order.txt", "note: finding, limits, limits", `order.txt:1: the section "limits" stands twice`, ""},
		{"no colon", "order.txt", "note finding", `order.txt:1: expected a kind`, ""},
		{"language with a gap", "xx/own.tmpl", "{{define \"figure.sign\"}},{{end}}", `xx: the language lacks the sentences `, "half a language would print nothing where it has no sentence"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			_, err := load(t, map[string]string{tc.file: tc.text})
			if err == nil {
				t.Fatalf("loaded without a word; %s", tc.why)
			}
			if !strings.Contains(err.Error(), tc.want) {
				t.Errorf("got  %v\nwant %s\n%s", err, tc.want, tc.why)
			}
		})
	}
}

func TestAllMistakesAtOnce(t *testing.T) {
	_, err := load(t, map[string]string{
		"en/a.tmpl": "{{define \"limits.keep\"}}{{.A}}{{.B}}{{end}}",
		"en/b.tmpl": "{{define \"limits.keep\"}}kept{{end}}",
		"order.txt": "note: nothing",
	})
	for _, want := range []string{"no field A", "no field B", `the sentence "limits.keep" is also in en/a.tmpl`, `no section "nothing"`} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not told in %v", want, err)
		}
	}
}

func TestAFolderReplacesWhatItDefines(t *testing.T) {
	set, err := load(t, map[string]string{
		"en/own.tmpl": "{{define \"limits.keep\"}}Kept: {{.Keep}}.{{end}}\n{{define \"shape.oval\"}}egg-shaped{{end}}",
		"order.txt":   "note: limits, finding",
	})
	if err != nil {
		t.Fatal(err)
	}
	w := english(t, set)
	if got := say(t, w, "limits.keep", Limits{Keep: "five years"}); got != "Kept: five years." {
		t.Errorf("replaced sentence says %q", got)
	}
	if got := say(t, w, "limits.carat", None{}); got != "1\u00a0ct is 0.2\u00a0g exactly." {
		t.Errorf("a sentence that was not replaced says %q", got)
	}
	if got, err := w.Word("shape", "oval"); got != "egg-shaped" || err != nil {
		t.Errorf("new word says %q, %v", got, err)
	}
	if got, err := w.Word("shape", "unheard-of"); got != "unheard-of" || err != nil {
		t.Errorf("a word that no list has says %q, %v", got, err)
	}
	if got, _ := set.Order("note"); !reflect.DeepEqual(got, []string{"limits", "finding"}) {
		t.Errorf("order is %v", got)
	}
	if got, _ := set.Order("record"); len(got) < 3 {
		t.Errorf("order that was not replaced is %v", got)
	}
}

func TestLanguageAndOrderThatAreNotThere(t *testing.T) {
	set, err := Load(nil)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := set.Language("xx"); err == nil || !strings.Contains(err.Error(), "there is: ") {
		t.Errorf("unknown language: %v", err)
	}
	if _, err := set.Order("letter"); err == nil || !strings.Contains(err.Error(), "appraisal") {
		t.Errorf("unknown kind: %v", err)
	}
}

func TestSayRefusesOtherData(t *testing.T) {
	set, err := Load(nil)
	if err != nil {
		t.Fatal(err)
	}
	w := english(t, set)
	if _, err := w.Say("date", None{}); err == nil {
		t.Error("the wrong struct is taken")
	}
	if _, err := w.Say("nothing at all", None{}); err == nil {
		t.Error("an unknown sentence is said")
	}
}

// Every sentence can be said of nothing and of everything.
func TestEverySentenceCanBeSaid(t *testing.T) {
	set, err := Load(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range set.Languages() {
		w := must(set.Language(language))
		for _, s := range Catalogue() {
			if s.Optional {
				continue
			}
			full := reflect.New(reflect.TypeOf(s.Data())).Elem()
			fill(full)
			for _, data := range []any{s.Data(), full.Interface()} {
				said, err := w.Say(s.Name, data)
				if err != nil {
					t.Errorf("%s: %s: %v", language, s.Name, err)
				}
				if strings.Contains(said.String(), "<no value>") || strings.Contains(said.String(), "%!") {
					t.Errorf("%s: %s says %q", language, s.Name, said)
				}
			}
		}
	}
}

// fill sets every field to something that counts as true.
func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i))
		}
	case reflect.String:
		v.SetString("word")
	case reflect.Int:
		v.SetInt(3)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		fill(v.Index(0))
		fill(v.Index(1))
	}
}

func say(t *testing.T, w *Wording, name string, data any) string {
	t.Helper()
	text, err := w.Say(name, data)
	if err != nil {
		t.Fatal(err)
	}
	return text.String()
}

func TestSpacesAndVoices(t *testing.T) {
	set, err := load(t, map[string]string{"en/own.tmpl": "{{define \"limits.keep\"}}\n  A  {{strong .Keep}},\n  {{italic \"b\"}}   and 1~ct. \n{{end}}"})
	if err != nil {
		t.Fatal(err)
	}
	got, err := english(t, set).Say("limits.keep", Limits{Keep: " x~y "})
	if err != nil {
		t.Fatal(err)
	}
	want := Text{{"A", Plain}, {" x~y", Strong}, {" ,", Plain}, {" b", Italic}, {" and 1\u00a0ct.", Plain}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

func TestFunctions(t *testing.T) {
	w := english(t, must(Load(nil)))
	for _, tc := range []struct{ got, want string }{
		{sentence("because"), "Because."}, {sentence("Why?"), "Why?"}, {sentence("“quoted.”"), "“quoted.”"}, {sentence(" "), ""}, {sentence("é"), "É."},
		{sentences([]string{"a", "", "b."}), "A. B."}, {article("oval"), "an"}, {article("pear"), "a"}, {article(""), "a"},
		{joined(w, "list.and", nil), ""}, {joined(w, "list.and", []string{"a"}), "a"}, {joined(w, "list.and", []string{"a", "b"}), "a and b"}, {joined(w, "list.or", []string{"a", "b", "c"}), "a, b or c"},
		{say(t, w, "date", Day{2026, 3, 7}), "7\u00a0March 2026"},
	} {
		if tc.got != tc.want {
			t.Errorf("got %q, want %q", tc.got, tc.want)
		}
	}
}

// The decimal sign of a language takes the place of a point between digits, and
// of no other point.
func TestFigureSign(t *testing.T) {
	set, err := load(t, map[string]string{"en/own.tmpl": "{{define \"figure.sign\"}},{{end}}"})
	if err != nil {
		t.Fatal(err)
	}
	got := english(t, set).Figure("1.520 ct. No. 7")
	if want := "1,520 ct. No. 7"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func must[T any](s T, err error) T {
	if err != nil {
		panic(err)
	}
	return s
}

func joined(w *Wording, sentence string, items []string) string {
	s, err := w.join(sentence, items)
	if err != nil {
		return err.Error()
	}
	return s
}
