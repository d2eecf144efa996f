package form

import (
	"errors"
	"net/url"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/cmd/stonewrit/desk/yamledit"
)

// A Change is one edit that a form asks for.
type Change struct {
	Path  yamledit.Path
	Was   string     // in the notation of the field
	Value *yaml.Node // nil takes the key out
	Text  string     // what was entered
	Name  string     // of the field
}

// An Outcome is what a form comes to.
type Outcome struct {
	Source  []byte // the edited text
	Changes []Change
	Fields  []*Field         // of the text before
	Failed  map[string]error // by name of the field: what could not be written
	moved   map[string][]int // by list: the place in the form of each entry of the file
}

// ErrUnnamed says that a new entry has no name.
var ErrUnnamed = errors.New("give it a name")

// Apply writes what a form sent into the text of a file. Fields that were not
// sent, and those that say what the file says, change nothing.
func (m *Form) Apply(src []byte, sent url.Values) (*Outcome, error) {
	f, err := yamledit.Parse(src)
	if err != nil {
		return nil, err
	}
	o := &Outcome{Failed: map[string]error{}, moved: map[string][]int{}}
	a := &applier{form: m, file: f, sent: sent, out: o}
	o.Fields = m.Fields(f.Root())
	for _, field := range o.Fields {
		a.field(field)
	}
	a.make()
	o.Source = f.Bytes()
	return o, nil
}

type applier struct {
	form    *Form
	file    *yamledit.File
	sent    url.Values
	out     *Outcome
	changes []Change
	removed []yamledit.Path
}

// make carries the changes out; what is taken out goes last and from behind, so
// that places keep their meaning until then.
func (a *applier) make() {
	order := a.form.order(a.file)
	for _, c := range a.changes {
		var err error
		if c.Value == nil {
			err = a.file.Delete(c.Path)
		} else {
			err = a.file.Set(c.Path, c.Value, order)
		}
		if err != nil {
			a.out.Failed[c.Name] = yamledit.ErrShape
			continue
		}
		a.out.Changes = append(a.out.Changes, c)
	}
	slices.Reverse(a.removed)
	for _, p := range a.removed {
		if err := a.file.Delete(p); err != nil {
			a.out.Failed[removePrefix+p.Pointer()] = yamledit.ErrShape
			continue
		}
		a.out.Changes = append(a.out.Changes, Change{Path: p, Name: removePrefix + p.Pointer()})
	}
}

func (a *applier) field(f *Field) {
	switch {
	case f.Foreign:
	case f.Shape == Group:
		a.group(f)
	case f.Shape == Items || f.Shape == Tests:
		a.items(f)
	case f.Shape == Named:
		a.named(f)
	default:
		a.leaf(f)
	}
}

func (a *applier) leaf(f *Field) {
	text, sent := a.text(f.Spec, f.Path)
	if !sent || f.plain(text) == f.plain(tidy(f.Text)) {
		return
	}
	c := Change{Path: f.Path, Was: f.Text, Text: text, Name: f.Name()}
	switch {
	case text != "":
		c.Value = f.write(text)
	case !f.Set:
		return
	}
	a.changes = append(a.changes, c)
}

// text is what was sent for a field.
func (a *applier) text(s Spec, at yamledit.Path) (string, bool) {
	values, sent := a.sent[valuePrefix+at.Pointer()]
	if !sent {
		return "", false
	}
	if s.Shape == Choices {
		values = slices.DeleteFunc(slices.Clone(values), func(v string) bool { return v == "" })
		return strings.Join(values, "\n"), true
	}
	return tidy(values[len(values)-1]), true
}

// tidy takes out what a browser adds to a text.
func tidy(text string) string {
	return strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n"))
}

// group changes the fields below; a group that is a bare text is written anew
// when one of them changes.
func (a *applier) group(f *Field) {
	if a.sent.Get(f.RemoveName()) != "" && !f.New {
		a.removed = append(a.removed, f.Path)
		return
	}
	before := len(a.changes)
	for _, k := range f.Kids {
		a.field(k)
	}
	if f.Bare && len(a.changes) > before {
		name := a.changes[before].Name
		a.changes = append(a.changes[:before], Change{Path: f.Path, Value: a.bareOrMap(f), Name: name})
	}
}

func (a *applier) bareOrMap(f *Field) *yaml.Node {
	value := a.compose(f.Spec, f.Path)
	if value != nil && len(value.Content) == 2 && value.Content[0].Value == f.Plain {
		return value.Content[1]
	}
	return value
}

func (a *applier) items(f *Field) {
	have := 0
	var places []int
	for i, k := range f.Kids {
		if k.New {
			continue
		}
		have++
		a.field(k)
		if a.sent.Get(k.RemoveName()) == "" {
			places = append(places, i)
		}
	}
	next := have
	for _, i := range a.indexes(f.Path, have) {
		at := f.Path.With(i)
		value := a.composeItem(f.Spec, at)
		if value == nil {
			continue
		}
		a.changes = append(a.changes, Change{Path: f.Path.With(next), Value: value, Name: valuePrefix + at.Pointer()})
		places = append(places, i)
		next++
	}
	a.out.moved[f.Path.String()] = places
}

// indexes are the places from one on for which something was sent, in order.
func (a *applier) indexes(list yamledit.Path, from int) []int {
	var found []int
	prefix := valuePrefix + list.Pointer() + "/"
	for name := range a.sent {
		if !strings.HasPrefix(name, prefix) {
			continue
		}
		p, err := yamledit.ParsePointer(strings.TrimPrefix(name, valuePrefix))
		if err != nil || len(p) <= len(list) {
			continue
		}
		if i, ok := p[len(list)].(int); ok && i >= from && !slices.Contains(found, i) {
			found = append(found, i)
		}
	}
	slices.Sort(found)
	return found
}

// composeItem makes a new entry of what was sent, or nil where nothing was
// entered. A test counts as entered once it says more than its kind and its
// instrument.
func (a *applier) composeItem(s Spec, at yamledit.Path) *yaml.Node {
	if s.Shape != Tests {
		return a.compose(Spec{Shape: Group, Fields: s.Fields}, at)
	}
	kind := tidy(a.sent.Get(valuePrefix + at.With("test").Pointer()))
	if a.form.tests[kind] == nil {
		return nil
	}
	value := a.compose(a.form.testSpec(kind), at)
	if value == nil {
		return nil
	}
	instrument := child(value, "instrument")
	if instrument != nil && len(value.Content) == 2 {
		return nil
	}
	head := []*yaml.Node{yamledit.Text("test"), yamledit.Text(kind)}
	for i := 0; i < len(value.Content); i += 2 {
		if value.Content[i].Value == "instrument" {
			head = append(head, value.Content[i], value.Content[i+1])
			value.Content = slices.Delete(value.Content, i, i+2)
			break
		}
	}
	value.Content = append(head, value.Content...)
	return value
}

// compose makes a value of what was sent, or nil where nothing was entered.
func (a *applier) compose(s Spec, at yamledit.Path) *yaml.Node {
	switch s.Shape {
	case Group:
		group := yamledit.Map()
		for _, k := range s.Fields {
			if value := a.compose(k, at.With(k.Key)); value != nil {
				group.Content = append(group.Content, yamledit.Text(k.Key), value)
			}
		}
		if len(group.Content) == 0 {
			return nil
		}
		return group
	case Items:
		list := yamledit.List()
		for _, i := range a.indexes(at, 0) {
			if value := a.compose(Spec{Shape: Group, Fields: s.Fields}, at.With(i)); value != nil {
				list.Content = append(list.Content, value)
			}
		}
		if len(list.Content) == 0 {
			return nil
		}
		return list
	case Named, Tests:
		return nil
	}
	text, _ := a.text(s, at)
	if text == "" {
		return nil
	}
	return s.write(text)
}

func (a *applier) named(f *Field) {
	for _, k := range f.Kids {
		if !k.New {
			a.field(k)
			continue
		}
		value := a.compose(Spec{Shape: Group, Fields: f.Fields}, k.Path)
		id := tidy(a.sent.Get(k.IDName()))
		switch {
		case value == nil:
		case id == "":
			a.out.Failed[k.IDName()] = ErrUnnamed
		default:
			a.changes = append(a.changes, Change{Path: f.Path.With(id), Value: value, Name: k.IDName()})
		}
	}
}

// Name finds the field that a problem of the edited file is about: its path
// with the entries counted as the form counts them.
func (o *Outcome) Name(problem string) string {
	var p yamledit.Path
	list := ""
	for _, part := range steps(problem) {
		if i, isIndex := part.(int); isIndex {
			if places, ok := o.moved[list]; ok && i < len(places) {
				part = places[i]
			}
		}
		p = p.With(part)
		list = p.String()
	}
	return valuePrefix + p.Pointer()
}

// Place is where the form shows an entry of a list of the edited file.
func (o *Outcome) Place(list string, i int) int {
	if places, ok := o.moved[list]; ok && i < len(places) {
		return places[i]
	}
	return i
}
