package form

import (
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/gem"
)

// A Field is one key of a file as it is shown: its description, its place and
// what the file has there.
type Field struct {
	Spec
	Path    yamledit.Path
	Text    string   // in the notation of the field
	Chosen  []string // of Choices
	Set     bool     // the key stands in the file
	Foreign bool     // written in a way that the form does not change
	Bare    bool     // a group that is written as a bare text
	Kind    string   // of a test
	New     bool     // a group that is not in the file yet
	Kids    []*Field // of groups, lists of groups and tests
}

// Name is the name under which the value is sent.
func (f *Field) Name() string { return valuePrefix + f.Path.Pointer() }

// ID marks the field in the page; labels and links lead to it.
func (f *Field) ID() string { return "f" + f.Path.Pointer() }

// RemoveName is the name of the mark that takes an entry out.
func (f *Field) RemoveName() string { return removePrefix + f.Path.Pointer() }

// IDName is the name under which the name of a new entry is sent.
func (f *Field) IDName() string { return idPrefix + f.Path.Pointer() }

// Key of the entry in the file, for groups that have a name.
func (f *Field) Last() any { return f.Path[len(f.Path)-1] }

// Prefixes of the names that a form sends.
const (
	valuePrefix  = "v"
	removePrefix = "x"
	idPrefix     = "id"
	newKey       = "+" // stands for the name of a new entry
)

// A Form knows the fields of one sort of file.
type Form struct {
	specs []Spec
	tests map[string][]Spec
}

// NewStone is the form of stone files.
func NewStone(table *gem.Table) *Form { return &Form{StoneSpecs(), TestSpecs(table)} }

// NewPiece is the form of piece files.
func NewPiece() *Form { return &Form{PieceSpecs(), nil} }

// NewBench is the form of bench files.
func NewBench() *Form { return &Form{BenchSpecs(), nil} }

// Fields shows a file. A nil root shows an empty one.
func (m *Form) Fields(root *yaml.Node) []*Field {
	var list []*Field
	for _, s := range m.specs {
		list = append(list, m.field(s, child(root, s.Key), yamledit.Path{s.Key}))
	}
	return list
}

// NewTest shows a test that is not in the file yet.
func (m *Form) NewTest(kind string, index int) *Field {
	f := m.group(m.testSpec(kind), nil, yamledit.Path{"tests", index})
	f.Kind, f.New = kind, true
	return f
}

func child(n *yaml.Node, key string) *yaml.Node {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}

func (m *Form) field(s Spec, n *yaml.Node, at yamledit.Path) *Field {
	switch s.Shape {
	case Group:
		return m.group(s, n, at)
	case Items, Tests:
		return m.items(s, n, at)
	case Named:
		return m.named(s, n, at)
	}
	f := &Field{Spec: s, Path: at, Set: n != nil}
	text, ok := s.read(n)
	f.Text, f.Foreign = text, !ok
	if s.Shape == Choices && text != none {
		f.Chosen = s.split(text)
	}
	return f
}

func (m *Form) group(s Spec, n *yaml.Node, at yamledit.Path) *Field {
	f := &Field{Spec: s, Path: at, Set: n != nil}
	f.Shape = Group
	f.Bare = n != nil && n.Kind == yaml.ScalarNode && n.Tag != "!!null"
	f.Foreign = n != nil && n.Kind == yaml.SequenceNode || f.Bare && s.Plain == ""
	for _, k := range s.Fields {
		kid := m.field(k, child(n, k.Key), at.With(k.Key))
		if f.Bare && k.Key == s.Plain {
			kid.Text, kid.Set = n.Value, true
		}
		f.Kids = append(f.Kids, kid)
	}
	return f
}

func (m *Form) items(s Spec, n *yaml.Node, at yamledit.Path) *Field {
	f := &Field{Spec: s, Path: at, Set: n != nil}
	f.Foreign = n != nil && n.Kind == yaml.MappingNode
	if n != nil && n.Kind == yaml.SequenceNode {
		for i, c := range n.Content {
			f.Kids = append(f.Kids, m.item(s, c, at.With(i)))
		}
	}
	if s.Shape == Items {
		blank := m.group(s, nil, at.With(len(f.Kids)))
		blank.New = true
		f.Kids = append(f.Kids, blank)
	}
	return f
}

func (m *Form) item(s Spec, n *yaml.Node, at yamledit.Path) *Field {
	if s.Shape != Tests {
		return m.group(s, n, at)
	}
	kind := ""
	if k := child(n, "test"); k != nil {
		kind = strings.ToLower(strings.Join(strings.Fields(k.Value), " "))
	}
	for known := range m.tests {
		if strings.EqualFold(known, kind) {
			kind = known
		}
	}
	f := m.group(m.testSpec(kind), n, at)
	f.Kind = kind
	return f
}

func (m *Form) testSpec(kind string) Spec {
	return Spec{Key: kind, Shape: Group, Fields: m.tests[kind]}
}

func (m *Form) named(s Spec, n *yaml.Node, at yamledit.Path) *Field {
	f := &Field{Spec: s, Path: at, Set: n != nil}
	if n != nil && n.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(n.Content); i += 2 {
			f.Kids = append(f.Kids, m.group(s, n.Content[i+1], at.With(n.Content[i].Value)))
		}
	}
	blank := m.group(s, nil, at.With(newKey))
	blank.New = true
	f.Kids = append(f.Kids, blank)
	return f
}

// order lists the keys that may stand at a place of a file, for new ones to be
// put among them.
func (m *Form) order(f *yamledit.File) yamledit.Order {
	return func(at yamledit.Path) []string {
		specs := m.specs
		for i, step := range at {
			if len(at) > i+1 && step == "tests" {
				continue
			}
			if _, isIndex := step.(int); isIndex && i == 1 && at[0] == "tests" {
				kind := child(f.Get(at[:2]), "test")
				if kind == nil {
					return nil
				}
				specs = m.tests[kind.Value]
				continue
			}
			if key, isKey := step.(string); isKey {
				if below := find(specs, key); below != nil {
					specs = below
				}
			}
		}
		return keysOf(specs)
	}
}

// find are the specs below a key; nil where the key is a name or unknown.
func find(specs []Spec, key string) []Spec {
	for _, s := range specs {
		if s.Key == key {
			return s.Fields
		}
	}
	return nil
}

// keysOf lists keys in the order that people write them: what a test is, and
// with what, comes first.
func keysOf(specs []Spec) []string {
	keys := []string{"test", "instrument"}
	for _, s := range specs {
		keys = append(keys, s.Key)
	}
	return keys
}
