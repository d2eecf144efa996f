package desk

import (
	"maps"
	"slices"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/stone"
)

// fieldView is a field with all that its place in the page needs.
type fieldView struct {
	*form.Field
	Name     string // under which the value is sent
	HTMLID   string // marks the field in the page
	Label    string
	Options  []option // to choose from
	List     string   // of suggestions
	Problems stone.Problems
	Below    []*fieldView // fields of a group, entries of a list
	Seldom   []*fieldView // of a test: keys that are seldom needed
	Open     bool         // something seldom is filled in
	Index    int          // of an entry, from 0
	Test     *testView
}

type option struct{ Value, Text string }

// testView is what a test shows beside its fields.
type testView struct {
	Kind     string
	Help     *testHelp
	Cautions []string
	Verdict  *verdictView // nil where nothing can be said yet
}

// htmlID is the mark of a field, without the blanks that keys may have.
func htmlID(name string) string { return "f-" + strings.ReplaceAll(name, " ", "_") }

// Is reports whether the field has a shape.
func (v *fieldView) Is(shapes ...string) bool { return slices.Contains(shapes, string(v.Shape)) }

// Has reports whether one of the words is chosen.
func (v *fieldView) Has(word string) bool { return slices.Contains(v.Chosen, word) }

// Listed reports whether a word of the field is among those to choose from; one
// that is not is shown as it stands, for the reader to object to.
func (v *fieldView) Listed() bool {
	return v.Text == "" || slices.ContainsFunc(v.Options, func(o option) bool { return o.Value == v.Text })
}

// Closed reports whether a group is folded up: one that nobody needs to fill in
// and that holds nothing.
func (v *fieldView) Closed() bool {
	return !v.Set && !v.Foreign && !v.Troubled() && !slices.Contains([]string{"client", "appearance", "size", "weight", "opinion", "quality", "practice", "numbers"}, v.Key)
}

// Troubled reports whether something is to be said of the field or of one below
// it.
func (v *fieldView) Troubled() bool {
	return len(v.Problems) > 0 || slices.ContainsFunc(v.Below, (*fieldView).Troubled) || slices.ContainsFunc(v.Seldom, (*fieldView).Troubled)
}

// Place is the number of an entry as people count.
func (v *fieldView) Place() int { return v.Index + 1 }

// Lines is how many lines of text a field shows at first.
func (v *fieldView) Lines() int { return 1 + strings.Count(v.Text, "\n") }

// Unit is what stands behind the field.
func (v *fieldView) Unit() string {
	if len(v.Units) > 1 && v.Units[1] == "ct" {
		return "g, ct"
	}
	if len(v.Units) > 0 {
		return v.Units[0]
	}
	return ""
}

// viewer makes the views of one page.
type viewer struct {
	d        *Desk
	bench    *benchRecord
	problems map[string]stone.Problems // by name of the field
	known    map[string]string         // names of all fields to their marks in the page
	verdicts map[int]*verdictView      // by place of the test
}

func (d *Desk) viewer(bench *benchRecord) *viewer {
	return &viewer{d: d, bench: bench, problems: map[string]stone.Problems{}, known: map[string]string{}, verdicts: map[int]*verdictView{}}
}

// know learns which fields a page has, so that problems find theirs.
func (v *viewer) know(list []*form.Field) {
	for _, f := range list {
		name := f.Name()
		v.known[name] = htmlID(name)
		v.know(f.Kids)
	}
}

func (v *viewer) fields(list []*form.Field) []*fieldView {
	var out []*fieldView
	for _, f := range list {
		if f.Key != formatKey {
			out = append(out, v.field(f))
		}
	}
	return out
}

func (v *viewer) field(f *form.Field) *fieldView {
	name := f.Name()
	view := &fieldView{Field: f, Name: name, HTMLID: htmlID(name), Label: v.d.words.label(f.Key), Problems: v.problems[name]}
	view.Options, view.List = v.options(f)
	for i, k := range f.Kids {
		below := v.field(k)
		below.Index = i
		view.Below = append(view.Below, below)
	}
	if f.Kind != "" || f.Shape == form.Group && len(f.Path) == 2 && f.Path[0] == "tests" {
		v.asTest(view)
	}
	return view
}

// asTest parts the fields of a test in its own and those all tests have.
func (v *viewer) asTest(view *fieldView) {
	common := form.CommonKeys()
	all := view.Below
	view.Below = nil
	for _, k := range all {
		switch {
		case k.Key == "instrument" || k.Key == "light" && opticalLight(view.Kind) || !slices.Contains(common, k.Key):
			view.Below = append(view.Below, k)
		default:
			view.Seldom = append(view.Seldom, k)
			view.Open = view.Open || k.Set || len(k.Problems) > 0
		}
	}
	slices.SortStableFunc(view.Below, func(a, b *fieldView) int { return rank(a.Key) - rank(b.Key) })
	t := &testView{Kind: view.Kind}
	if help, ok := v.d.words.tests[view.Kind]; ok {
		t.Help = &help
	}
	for _, c := range v.d.o.Tables.Gems.CautionsFor(view.Kind) {
		t.Cautions = append(t.Cautions, c.Wording)
	}
	if i, ok := view.Last().(int); ok {
		t.Verdict = v.verdicts[i]
		view.Index = i
	}
	view.Test = t
}

// opticalLight tells the tests whose light decides the uncertainty.
func opticalLight(kind string) bool { return kind == stone.KindRefractometer }

// rank puts the instrument and its light first.
func rank(key string) int {
	return map[string]int{"instrument": -2, "light": -1, "method": -1}[key]
}

// options are what a field offers: words of the records, people and instruments
// of the bench, names of the table.
func (v *viewer) options(f *form.Field) ([]option, string) {
	switch {
	case f.Shape == form.YesNo:
		return []option{{"true", v.d.words.text("yes")}, {"false", v.d.words.text("no")}}, ""
	case f.Shape == form.Word || f.Shape == form.Choices:
		return plainOptions(f.Words), ""
	case f.Shape == form.Glow || f.Shape == form.Line && len(f.Words) > 0:
		return nil, "words-" + strings.ReplaceAll(strings.Join(f.Words, "_"), " ", "_")
	case f.Key == "instrument":
		return v.instruments(), ""
	case f.Key == "examiner" || f.Key == "by" && len(f.Path) > 1 && f.Path[0] == "tests" || f.Key == "authorised_by":
		return v.people(), ""
	}
	return nil, suggestions(f)
}

func plainOptions(words []string) []option {
	var list []option
	for _, w := range words {
		list = append(list, option{w, w})
	}
	return list
}

func (v *viewer) instruments() []option {
	if v.bench == nil {
		return nil
	}
	var list []option
	for _, id := range slices.Sorted(maps.Keys(v.bench.Bench.Instruments)) {
		text := id
		if kind := v.bench.Bench.Instruments[id].Kind; !strings.HasPrefix(id, kind) {
			text += " (" + kind + ")"
		}
		list = append(list, option{id, text})
	}
	return list
}

func (v *viewer) people() []option {
	if v.bench == nil {
		return nil
	}
	var list []option
	for _, id := range slices.Sorted(maps.Keys(v.bench.Bench.Examiners)) {
		list = append(list, option{id, v.bench.Bench.Examiners[id].Name})
	}
	return list
}

// suggestions names the list of words that a free text chooses from at will.
func suggestions(f *form.Field) string {
	last := f.Key
	switch {
	case last == "species" || last == "variety" || last == "imitates" || last == "material":
		return "list-materials"
	case last == "sees" && f.Shape == form.Lines:
		return "list-features"
	case f.Shape == form.Claims:
		return "list-treatments"
	case last == "light" && len(f.Path) == 3 && f.Path[0] == "tests":
		return "list-lights"
	case last == "currency":
		return "list-currencies"
	case last == "kind" && len(f.Path) > 0 && f.Path[0] == "instruments":
		return "list-kinds"
	}
	return ""
}

// nearest is the mark of the field that a problem is about, or of the nearest
// one above it; empty if the page has none.
func (v *viewer) nearest(name string) string {
	prefix := name[:1]
	p, err := yamledit.ParsePointer(strings.TrimPrefix(name, prefix))
	for ; err == nil && len(p) > 0; p = p[:len(p)-1] {
		if id, ok := v.known[prefix+p.Pointer()]; ok {
			return id
		}
	}
	return ""
}

// nearestField is nearest as the name of the field.
func (v *viewer) nearestField(name string) string {
	prefix := name[:1]
	p, err := yamledit.ParsePointer(strings.TrimPrefix(name, prefix))
	for ; err == nil && len(p) > 0; p = p[:len(p)-1] {
		if _, ok := v.known[prefix+p.Pointer()]; ok {
			return prefix + p.Pointer()
		}
	}
	return ""
}
