package stone

import (
	"errors"
	"fmt"
	"reflect"
	"stonewrit/grading/phrase"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Limits on what is read at all, so that a hostile file costs little.
const (
	maxFile  = 1 << 20 // bytes
	maxDepth = 20      // levels of nesting; the deepest field of a stone file lies at 7
	maxItems = 5000    // entries of one list
	maxTold  = 1000    // problems of one file
)

// A Position is a place in a file, both from 1.
type Position struct{ Line, Column int }

// decoder walks YAML nodes and Go values together and collects every problem.
// The Go types are the description of the file: yaml names the key, words the
// allowed words, range the allowed numbers, need marks what may not be left out.
type decoder struct {
	problems  Problems
	positions map[string]Position
	root      reflect.Type // of the whole file, to say where a misplaced key belongs
	layouts   *layouts
	lines     int  // lines of the file
	full      bool // maxTold problems were found, and reading stopped
}

// leaf is implemented by types that read themselves from one node, and say how
// they are written.
type leaf interface {
	decode(d *decoder, n *yaml.Node, path string, tags fieldTags, depth int)
	schema(m *schemaMaker, tags fieldTags) object
}

// quantityText is what quantity.Measure offers for reading.
type quantityText interface {
	Set(text string) error
	Float() float64
	Units() []string
}

// fieldTags are the tags of the field being read; they reach the elements of a
// list.
type fieldTags struct {
	words []string
	bound bounds
}

// document reads src into out, a pointer to a struct.
func (l *layouts) document(src []byte, out any) (map[string]Position, Problems) {
	d := &decoder{positions: map[string]Position{"": {1, 1}}, root: reflect.TypeOf(out).Elem(), layouts: l, lines: 1}
	if root := d.parse(src); root != nil {
		d.value(root, reflect.ValueOf(out).Elem(), "", fieldTags{}, 0)
	}
	d.problems.Sort()
	if d.full {
		last := d.problems[len(d.problems)-1]
		d.problems = append(d.problems, Problem{Severity: Error, Line: last.Line, Column: last.Column,
			Message: phrase.Say("reading stopped here, after %d mistakes", maxTold), Hint: "is this the right file?"})
	}
	return d.positions, d.problems
}

// position is the place of a node.
func (d *decoder) position(n *yaml.Node) Position { return d.inside(Position{n.Line, n.Column}) }

// inside keeps a place within the file: the parser puts what is missing at the
// end of a file into the line after it.
func (d *decoder) inside(at Position) Position {
	if at.Line > d.lines {
		return Position{d.lines, 1}
	}
	return Position{max(at.Line, 1), max(at.Column, 1)}
}

func (d *decoder) problem(path string, at Position, message, hint phrase.Line) {
	if len(d.problems) >= maxTold {
		d.full = true
		return
	}
	d.problems = append(d.problems, Problem{Severity: Error, Path: path, Line: at.Line, Column: at.Column, Message: message, Hint: hint}.brief())
}

// wrong records a problem at a node.
func (d *decoder) wrong(n *yaml.Node, path string, message, hint phrase.Line) {
	d.problem(path, d.position(n), message, hint)
}

func (d *decoder) value(n *yaml.Node, v reflect.Value, path string, tags fieldTags, depth int) {
	if _, known := d.positions[path]; !known {
		d.positions[path] = d.position(n)
	}
	if d.full {
		return
	}
	if depth > maxDepth {
		d.wrong(n, path, "nested too deeply", "")
		return
	}
	if !d.plain(n, path) {
		return
	}
	if l, ok := v.Addr().Interface().(leaf); ok {
		l.decode(d, n, path, tags, depth)
		return
	}
	if q, ok := v.Addr().Interface().(quantityText); ok {
		d.quantity(n, q, path, tags)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		d.mapping(n, v, path, depth)
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(n, v.Elem(), path, tags, depth)
	case reflect.Slice:
		d.sequence(n, v, path, tags, depth)
	case reflect.Map:
		d.dictionary(n, v, path, tags, depth)
	default:
		d.scalar(n, v, path, tags)
	}
}

// plain refuses what YAML can do and these files do not use.
func (d *decoder) plain(n *yaml.Node, path string) bool {
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		d.wrong(n, path, "anchors and aliases (& and *) are not used in these files", "write the value out, or put it into quotes")
	case n.Style&yaml.TaggedStyle != 0:
		d.wrong(n, path, phrase.Say("the tag %s is not used in these files", n.Tag), "leave it out, or put the value into quotes")
	default:
		return true
	}
	return false
}

// quantity reads a number with its unit and reports whether it could.
func (d *decoder) quantity(n *yaml.Node, q quantityText, path string, tags fieldTags) bool {
	text, ok := d.text(n, path)
	if !ok {
		return false
	}
	if err := q.Set(text); err != nil {
		var syntax *quantity.SyntaxError
		if errors.As(err, &syntax) {
			d.wrong(n, path, phrase.Line(syntax.Error()), phrase.Line(syntax.Hint))
		}
		return false
	}
	tags.bound.check(d, n, path, q.Float(), text)
	return true
}

func (d *decoder) sequence(n *yaml.Node, v reflect.Value, path string, tags fieldTags, depth int) {
	if n.Kind == yaml.ScalarNode && strings.EqualFold(n.Value, "none") {
		v.Set(reflect.MakeSlice(v.Type(), 0, 0)) // looked, nothing: the same as []
		return
	}
	if n.Kind != yaml.SequenceNode {
		d.wrong(n, path, phrase.Say("found %s, a list was expected", describeNode(n)), "write it as [ … ] or with a dash before each entry")
		return
	}
	if len(n.Content) > maxItems {
		d.wrong(n, path, phrase.Say("has %d entries, more than %d", len(n.Content), maxItems), "")
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.Content), len(n.Content)))
	for i, c := range n.Content {
		d.value(c, v.Index(i), fmt.Sprintf("%s[%d]", path, i), tags, depth+1)
	}
}

func (d *decoder) dictionary(n *yaml.Node, v reflect.Value, path string, tags fieldTags, depth int) {
	if n.Kind != yaml.MappingNode {
		d.wrong(n, path, phrase.Say("found %s, names with values were expected", describeNode(n)), "write {name: value}, or the names in the lines below, indented")
		return
	}
	v.Set(reflect.MakeMap(v.Type()))
	for _, e := range d.entries(n, path) {
		item := reflect.New(v.Type().Elem()).Elem()
		d.value(e.value, item, e.path, tags, depth+1)
		v.SetMapIndex(reflect.ValueOf(e.key), item)
	}
}

type entry struct {
	key, path   string
	name, value *yaml.Node
}

// entries lists the pairs of a mapping and tells duplicate and odd keys.
func (d *decoder) entries(n *yaml.Node, path string) []entry {
	list := make([]entry, 0, len(n.Content)/2)
	first := make(map[string]*yaml.Node, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content) && !d.full; i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		at := join(path, name.Value)
		switch {
		case name.Kind != yaml.ScalarNode:
			d.wrong(name, path, phrase.Say("a key is %s, a word was expected", describeNode(name)), "")
			continue
		case !d.plain(name, at):
			continue
		case name.Tag == "!!merge":
			d.wrong(name, at, "merge keys are not used in these files", "write the values out")
			continue
		case first[name.Value] != nil:
			d.wrong(name, at, phrase.Say("the key %q stands twice, first in line %d", name.Value, first[name.Value].Line), "keep one of the two")
			continue
		}
		first[name.Value] = name
		d.positions[at] = d.position(value)
		list = append(list, entry{name.Value, at, name, value})
	}
	return list
}

// structure reads a mapping into the struct that out points to.
func (d *decoder) structure(n *yaml.Node, out any, path string, depth int) {
	d.mapping(n, reflect.ValueOf(out).Elem(), path, depth)
}

func (d *decoder) mapping(n *yaml.Node, v reflect.Value, path string, depth int) {
	if n.Kind != yaml.MappingNode {
		d.wrong(n, path, phrase.Say("found %s, keys with values were expected", describeNode(n)), "write {key: value}, or the keys in the lines below, indented")
		return
	}
	fields := d.layouts.of(v.Type())
	seen := make(map[string]bool, len(n.Content)/2)
	for _, e := range d.entries(n, path) {
		if d.full {
			return
		}
		f, ok := fields.find(e.key)
		if !ok {
			d.unknownKey(e, fields.names())
			continue
		}
		seen[f.key] = true
		d.value(e.value, v.FieldByIndex(f.index), e.path, f.tags, depth+1)
	}
	for _, f := range fields {
		if f.need && !seen[f.key] {
			d.problem(join(path, f.key), d.position(n), phrase.Say("the key %q is missing", f.key), f.example())
		}
	}
}

// unknownKey tells where a key belongs that is right elsewhere, or the nearest
// one that is right here.
func (d *decoder) unknownKey(e entry, allowed []string) {
	hint := didYouMean(e.key, allowed)
	if places := placesOf(d.root, e.key); len(places) > 0 && said(e.key, allowed) == "" {
		hint = phrase.Say("%s belongs under %s", e.key, phrase.Join("%s or %s", phrase.Texts(places)...))
	}
	d.wrong(e.name, e.path, phrase.Say("unknown key %q, allowed here: %s", e.key, strings.Join(allowed, ", ")), hint)
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func describeNode(n *yaml.Node) phrase.Line {
	switch n.Kind {
	case yaml.MappingNode:
		return "keys with values"
	case yaml.SequenceNode:
		return "a list"
	case yaml.AliasNode:
		return "an alias"
	}
	if n.Tag == "!!null" {
		return "nothing"
	}
	return phrase.Say("%q", n.Value)
}
