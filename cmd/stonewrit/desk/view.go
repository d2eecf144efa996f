package desk

import (
	"maps"
	"slices"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
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
	Index    int          // of an entry, from 0
	Test     *testView
	Part     string // where the fields below are fetched from, if they are not on the page yet
	Rest     string // the same for those that are empty, and the seldom ones of a test
	All      string // the page with all fields
}

type option struct{ Value, Text string }

// testView is what a test shows beside its fields.
type testView struct {
	Kind     string
	Help     *testHelp // nil where it is fetched when it is asked for
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
	return v.Part != "" || foldable(v.Field) && !v.Troubled()
}

// foldable tells the groups that stay folded up while they hold nothing.
func foldable(f *form.Field) bool {
	return f.Shape == form.Group && !f.Set && !f.Foreign && f.Kind == "" && !always(f.Key)
}

// always tells the groups that everybody fills in.
func always(key string) bool {
	return slices.Contains([]string{"client", "appearance", "size", "weight", "mass", "opinion", "quality", "practice", "numbers"}, key)
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
	voice    *voice
	bench    *benchRecord
	file     string                    // whose fields they are
	state    string                    // of the file: its digest
	all      bool                      // all fields are shown at once
	open     string                    // the one group that is shown now
	only     string                    // the one group whose empty fields are shown now
	problems map[string]stone.Problems // by name of the field
	known    map[string]string         // names of all fields to their marks in the page
	verdicts map[int]*verdictView      // by place of the test
}

func (d *Desk) viewer(voice *voice, bench *benchRecord) *viewer {
	return &viewer{d: d, voice: voice, bench: bench, problems: map[string]stone.Problems{}, known: map[string]string{}, verdicts: map[int]*verdictView{}}
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
	view := &fieldView{Field: f, Name: name, HTMLID: htmlID(name), Label: v.label(f), Problems: v.problems[name]}
	view.Options, view.List = v.options(f)
	if v.later(f, name) {
		view.Part, view.All = v.part(name, "below"), v.whole(view.HTMLID)
		return view
	}
	isTest := f.Kind != "" || f.Shape == form.Group && len(f.Path) == 2 && f.Path[0] == "tests"
	for i, k := range f.Kids {
		below := v.field(k)
		below.Index = i
		view.Below = append(view.Below, below)
	}
	switch {
	case isTest:
		v.asTest(view)
	case v.only == name:
		view.Below = slices.DeleteFunc(view.Below, func(k *fieldView) bool { return !v.empty(k) })
	case terse(f) && !v.all && v.open != name:
		before := len(view.Below)
		if view.Below = slices.DeleteFunc(view.Below, v.empty); len(view.Below) < before {
			view.Rest, view.All = v.part(name, "rest"), v.whole(view.HTMLID)
		}
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
		case !v.empty(k) || k.Key == "instrument" || isOwn(k.Key, view.Kind, common) && (view.New || v.all):
			view.Below = append(view.Below, k)
		default:
			view.Seldom = append(view.Seldom, k)
		}
	}
	slices.SortStableFunc(view.Below, func(a, b *fieldView) int { return rank(a.Key) - rank(b.Key) })
	if !v.all && v.open != view.Name {
		view.Seldom, view.Rest, view.All = nil, v.part(view.Name, "seldom"), v.whole(view.HTMLID)
	}
	t := &testView{Kind: view.Kind}
	if help, ok := v.voice.help[view.Kind]; ok && v.all {
		t.Help = &help
	}
	t.Cautions = v.cautions(view.Kind)
	if i, ok := view.Last().(int); ok {
		t.Verdict = v.verdicts[i]
		view.Index = i
	}
	view.Test = t
}

// isOwn tells the keys of a test that stand open: its own, and of those that all
// tests have the instrument, and the light where it decides the uncertainty.
func isOwn(key, kind string, common []string) bool {
	return key == "instrument" || key == "light" && opticalLight(kind) || !slices.Contains(common, key)
}

// cautions are what to beware of in a kind of test.
func (v *viewer) cautions(kind string) []string {
	var list []string
	for _, c := range v.d.o.Tables.Gems.CautionsFor(kind) {
		list = append(list, v.voice.line(c.Wording))
	}
	return list
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
		return []option{{"true", v.voice.t("yes")}, {"false", v.voice.t("no")}}, ""
	case f.Shape == form.Word || f.Shape == form.Choices:
		return v.words(f.Words), ""
	case f.Shape == form.Glow || f.Shape == form.Line && len(f.Words) > 0:
		return nil, "words-" + strings.ReplaceAll(strings.Join(f.Words, "_"), " ", "_")
	case f.Key == "instrument":
		return v.instruments(), ""
	case f.Key == "examiner" || f.Key == "by" && len(f.Path) > 1 && f.Path[0] == "tests" || f.Key == "authorised_by":
		return v.people(), ""
	}
	return nil, suggestions(f)
}

// label is the name of a field; a few at the top of a file are better known
// under another name than that of their key.
func (v *viewer) label(f *form.Field) string {
	if len(f.Path) == 1 {
		return v.voice.label("/" + f.Key)
	}
	return v.voice.label(f.Key)
}

// words are written as they are and shown in the language of the page.
func (v *viewer) words(words []string) []option {
	var list []option
	for _, w := range words {
		list = append(list, option{w, v.voice.term(w)})
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
			text += " (" + v.voice.term(kind) + ")"
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
