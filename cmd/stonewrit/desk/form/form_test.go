package form_test

import (
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// sent is what a browser sends of a form that nobody touched.
func sent(fields []*form.Field) url.Values {
	v := url.Values{}
	var walk func(f *form.Field)
	walk = func(f *form.Field) {
		switch f.Shape {
		case form.Group, form.Items, form.Named, form.Tests:
			for _, k := range f.Kids {
				walk(k)
			}
		case form.Choices:
			v[f.Name()] = append([]string{""}, f.Chosen...)
			if f.Text == "none" {
				v[f.Name()] = []string{"", "none"}
			}
		case form.Quantities, form.Days:
			v.Set(f.Name(), strings.ReplaceAll(f.Text, "\n", ", "))
		default:
			v.Set(f.Name(), strings.ReplaceAll(f.Text, "\n", "\r\n"))
		}
	}
	for _, f := range fields {
		walk(f)
	}
	return v
}

func demo(t *testing.T) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob("../../../../testdata/demo/*.yaml")
	if err != nil || len(names) < 10 {
		t.Fatalf("the demo has %d files: %v", len(names), err)
	}
	files := map[string][]byte{}
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = src
	}
	return files
}

func gems(t *testing.T) *gem.Table {
	t.Helper()
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func newStone(t *testing.T) *form.Form { return form.NewStone(gems(t)) }

func formFor(t *testing.T, name string) *form.Form {
	if filepath.Base(name) == "bench.yaml" {
		return form.NewBench()
	}
	return newStone(t)
}

func fields(t *testing.T, m *form.Form, src []byte) []*form.Field {
	t.Helper()
	f, err := yamledit.Parse(src)
	if err != nil {
		t.Fatal(err)
	}
	return m.Fields(f.Root())
}

func TestUntouchedFormChangesNothing(t *testing.T) {
	for name, src := range demo(t) {
		m := formFor(t, name)
		out, err := m.Apply(src, sent(fields(t, m, src)))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range out.Changes {
			t.Errorf("%s: %s: from %q to %q", name, c.Path, c.Was, c.Text)
		}
		if string(out.Source) != string(src) {
			t.Errorf("%s: the text changed", name)
		}
	}
}

// TestNothingOfTheDemoIsForeign looks that the form can change every value that
// the demo files have.
func TestNothingOfTheDemoIsForeign(t *testing.T) {
	for name, src := range demo(t) {
		var walk func(f *form.Field)
		walk = func(f *form.Field) {
			if f.Foreign {
				t.Errorf("%s: %s", name, f.Path)
			}
			for _, k := range f.Kids {
				walk(k)
			}
		}
		for _, f := range fields(t, formFor(t, name), src) {
			walk(f)
		}
	}
}

// TestEveryFieldIsRead fills in every field there is, each with a value in its
// notation, and has the reader read the outcome: it may find fault with values,
// never with a key or a type.
func TestEveryFieldIsRead(t *testing.T) {
	table := gems(t)
	tests := form.TestSpecs(table)
	src := []byte("stonewrit: 1\nstone: X-1\nreport: note\nexamined: 2026-10-14\nexaminer: me\nopinion: {species: corundum}\n")
	m := newStone(t)
	v := url.Values{}
	filled := 0
	var fill func(s form.Spec, at yamledit.Path)
	fill = func(s form.Spec, at yamledit.Path) {
		switch s.Shape {
		case form.Group:
			for _, k := range s.Fields {
				fill(k, at.With(k.Key))
			}
		case form.Items:
			for _, k := range s.Fields {
				fill(k, at.With(0).With(k.Key))
			}
		case form.Tests:
			for i, kind := range stone.TestKinds() {
				v.Set("v"+at.With(i).With("test").Pointer(), kind)
				for _, k := range tests[kind] {
					fill(k, at.With(i).With(k.Key))
				}
			}
		default:
			filled++
			v.Set("v"+at.Pointer(), value(t, s))
		}
	}
	for _, s := range form.StoneSpecs() {
		fill(s, yamledit.Path{s.Key})
	}
	out, err := m.Apply(src, v)
	if err != nil {
		t.Fatal(err)
	}
	for name, err := range out.Failed {
		t.Errorf("%s: %v", name, err)
	}
	if len(out.Changes) < 40 || filled < 400 {
		t.Errorf("%d changes of %d fields", len(out.Changes), filled)
	}
	_, problems := stone.Read("x.yaml", out.Source, table)
	for _, p := range problems {
		for _, wrong := range []string{"is not known", "no key", "unknown key", "expected", "is not one of", "missing", "not a date", "unit"} {
			if p.Severity == stone.Error && strings.Contains(p.Message.String(), wrong) {
				t.Errorf("%s: %s (%s)", p.Path, p.Message.String(), p.Hint)
			}
		}
	}
	again, err := m.Apply(out.Source, sent(fields(t, m, out.Source)))
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(out.Source), string(again.Source)); d != "" {
		t.Errorf("the form does not read what it wrote:\n%s", d)
	}
}

// value is something to be entered in a field.
func value(t *testing.T, s form.Spec) string {
	t.Helper()
	unit := ""
	if len(s.Units) > 1 && s.Units[1] == "ct" {
		unit = " ct"
	}
	switch s.Shape {
	case form.Word, form.Choices, form.Glow:
		return s.Words[0]
	case form.Quantity:
		return "5.5" + unit
	case form.Quantities:
		return "5.5" + unit + ", 6.5" + unit
	case form.Whole:
		return "7"
	case form.YesNo:
		return "true"
	case form.Day:
		return "2026-10-14"
	case form.Days:
		return "2026-10-14\n2026-10-15"
	case form.Amount:
		if s.Key == "paid" || s.Key == "sum" || s.Key == "amount" && strings.HasPrefix(s.Doc, "how much") {
			return "12.50 EUR"
		}
		return "12.50"
	case form.Afterglow:
		return "red 12 s"
	case form.Edges:
		return "1.762 / 1.770\n1.765 1.770\n1.757, over\n1.54 +-0.01"
	case form.Spans:
		return "500 to 610\n620 nm - 630 nm"
	case form.Claims:
		return "heated\noil, fissures, few"
	case form.Pairs:
		if s.Key == "adjust" {
			return "colour: -5 %"
		}
		if s.Key == "approaches" {
			return "cost: used"
		}
		return "daylight: green"
	}
	if s.Key == "light" {
		return "sodium"
	}
	if len(s.Words) > 0 {
		return s.Words[0]
	}
	if s.Key == "currency" {
		return "EUR"
	}
	if s.Key == "reading" || s.Key == "readability" || s.Key == "known" {
		return "5.5 g"
	}
	return "words, with: marks # and no sense"
}

func TestApply(t *testing.T) {
	src := `stonewrit: 1
stone: X-1   # own number
opinion: {species: corundum, treatments: [heated]}
size: {length: 8.00 mm}
marks: ["750"]
tests:
  # the first one
  - test: refractometer
    readings: [[1.762, 1.770], [1.765, 1.770]]
  - test: magnet
    shows: none
`
	for _, c := range []struct {
		name     string
		sent     url.Values
		old, new string
	}{
		{"a bare number gets its unit", url.Values{"v/size/length": {"8.1"}}, "8.00 mm", "8.1 mm"},
		{"an uncertainty stays behind the unit", url.Values{"v/size/length": {"8.1 +-0.02"}}, "8.00 mm", "8.1 mm +-0.02"},
		{"a third turn", url.Values{"v/tests/#0/readings": {"1.762 / 1.770\r\n1.765 / 1.770\r\n1.768/1.770"}}, "1.770]]", "1.770], [1.768, 1.770]]"},
		{"none is an empty list", url.Values{"v/opinion/treatments": {"none"}}, "[heated]", "[]"},
		{"a treatment with its place", url.Values{"v/opinion/treatments": {"oil, fissures, few"}}, "[heated]", "[{name: oil, where: fissures, amount: few}]"},
		{"an empty field takes the key out", url.Values{"v/opinion/treatments": {""}}, ", treatments: [heated]", ""},
		{"a bare text with more to it", url.Values{"v/marks/#0/where": {"shank"}, "v/marks/#0/text": {"750"}}, `["750"]`, `[{text: 750, where: shank}]`},
		{"a new test", url.Values{"v/tests/#2/test": {"polariscope"}, "v/tests/#2/sees": {"blinks"}, "v/tests/#2/instrument": {"p-1"}}, "    shows: none\n", "    shows: none\n  - test: polariscope\n    instrument: p-1\n    sees: blinks\n"},
		{"a test of which only the kind is known is not written", url.Values{"v/tests/#2/test": {"polariscope"}, "v/tests/#2/instrument": {"p-1"}}, "", ""},
		{"a test taken out and one added", url.Values{"x/tests/#1": {"on"}, "v/tests/#5/test": {"colour filter"}, "v/tests/#5/shows": {"red"}}, "  - test: magnet\n    shows: none\n", "  - test: colour filter\n    shows: red\n"},
		{"a key the form does not know is not made", url.Values{"v/nonsense": {"1"}, "v/opinion/nonsense": {"1"}, "nonsense": {"1"}}, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, err := newStone(t).Apply([]byte(src), c.sent)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(strings.Replace(src, c.old, c.new, 1), string(out.Source)); d != "" {
				t.Errorf("-want +got\n%s", d)
			}
			if len(out.Failed) > 0 {
				t.Errorf("failed: %v", out.Failed)
			}
		})
	}
}

// A problem of the edited file is told at the field where it was entered.
func TestProblemsFindTheirField(t *testing.T) {
	src := []byte("stonewrit: 1\ntests:\n  - {test: magnet, shows: none}\n  - {test: magnet, shows: weak}\n")
	out, err := newStone(t).Apply(src, url.Values{"x/tests/#0": {"on"}, "v/tests/#4/test": {"magnet"}, "v/tests/#4/shows": {"strong"}})
	if err != nil {
		t.Fatal(err)
	}
	for problem, want := range map[string]string{"tests[0].shows": "v/tests/#1/shows", "tests[1].shows": "v/tests/#4/shows", "opinion.species": "v/opinion/species"} {
		if got := out.Name(problem); got != want {
			t.Errorf("%s: got %s, want %s", problem, got, want)
		}
	}
}

func TestNamedEntries(t *testing.T) {
	src := []byte("instruments:\n  loupe-1: {kind: loupe}\n")
	sent := url.Values{"v/instruments/+/kind": {"balance"}, "v/instruments/+/readability": {"0.001 g"}}
	out, err := form.NewBench().Apply(src, sent)
	if err != nil || out.Failed["id/instruments/+"] == nil {
		t.Errorf("an entry without a name was taken: %v %s", err, out.Source)
	}
	sent.Set("id/instruments/+", "balance-1")
	out, err = form.NewBench().Apply(src, sent)
	want := "instruments:\n  loupe-1: {kind: loupe}\n  balance-1:\n    kind: balance\n    readability: 0.001 g\n"
	if err != nil || string(out.Source) != want {
		t.Errorf("got %s (%v)", out.Source, err)
	}
}
