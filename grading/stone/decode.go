package stone

import (
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Limits on what is read at all, so that a hostile file costs little.
const (
	maxFile  = 1 << 20 // bytes
	maxDepth = 20      // levels of nesting; the deepest field of a stone file lies at 7
	maxItems = 5000    // entries of one list
)

// A Position is a place in a file, both from 1.
type Position struct{ Line, Column int }

// decoder walks YAML nodes and Go values together and collects every problem.
// The Go types are the description of the file: yaml names the key, words the
// allowed words, range the allowed numbers, need marks what may not be left out.
type decoder struct {
	problems  Problems
	positions map[string]Position
}

// leaf is implemented by types that read themselves from one node.
type leaf interface {
	decode(d *decoder, n *yaml.Node, path string, tags fieldTags, depth int)
}

// quantityText is what quantity.Measure offers for reading.
type quantityText interface {
	Set(text string) error
	Float() float64
}

// fieldTags are the tags of the field being read; they reach the elements of a
// list.
type fieldTags struct {
	words []string
	bound bounds
}

// decodeDocument reads src into out, a pointer to a struct.
func decodeDocument(src []byte, out any) (map[string]Position, Problems) {
	d := &decoder{positions: map[string]Position{"": {1, 1}}}
	root := d.parse(src)
	if root != nil {
		d.value(root, reflect.ValueOf(out).Elem(), "", fieldTags{}, 0)
	}
	d.problems.Sort()
	return d.positions, d.problems
}

var yamlLine = regexp.MustCompile(`^yaml: (?:unmarshal errors:\s*)?(?:line (\d+): )?(.*)`)

func (d *decoder) parse(src []byte) *yaml.Node {
	if len(src) > maxFile {
		d.problem("", Position{1, 1}, fmt.Sprintf("the file has %d bytes, more than the %d that are read", len(src), maxFile), "")
		return nil
	}
	dec := yaml.NewDecoder(strings.NewReader(string(src)))
	var doc yaml.Node
	if err := dec.Decode(&doc); err != nil {
		d.syntax(err)
		return nil
	}
	var second yaml.Node
	if err := dec.Decode(&second); err == nil {
		d.problem("", Position{second.Line, second.Column}, "a second document begins here, one file describes one thing", "put it into a file of its own")
		return nil
	}
	root := doc.Content[0]
	if root.Kind != yaml.MappingNode {
		d.problem("", position(root), "the file is "+describeNode(root)+", keys with values were expected", "start with \"stonewrit: 1\"")
		return nil
	}
	return root
}

func (d *decoder) syntax(err error) {
	g := yamlLine.FindStringSubmatch(err.Error())
	pos := Position{1, 1}
	message := err.Error()
	if g != nil {
		message = g[2]
		if line, err := strconv.Atoi(g[1]); err == nil {
			pos.Line = line
		}
	}
	if message == "EOF" {
		d.problem("", pos, "the file is empty", "start with \"stonewrit: 1\"")
		return
	}
	d.problem("", pos, "this is not YAML: "+message, "indent with spaces, and put text with a colon or a # into quotes")
}

func position(n *yaml.Node) Position { return Position{max(n.Line, 1), max(n.Column, 1)} }

func (d *decoder) problem(path string, at Position, message, hint string) {
	d.problems = append(d.problems, Problem{Severity: Error, Path: path, Line: at.Line, Column: at.Column, Message: message, Hint: hint})
}

// wrong records a problem at a node.
func (d *decoder) wrong(n *yaml.Node, path, message, hint string) {
	d.problem(path, position(n), message, hint)
}

func (d *decoder) value(n *yaml.Node, v reflect.Value, path string, tags fieldTags, depth int) {
	if _, known := d.positions[path]; !known {
		d.positions[path] = position(n)
	}
	switch {
	case depth > maxDepth:
		d.wrong(n, path, "nested too deeply", "")
		return
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		d.wrong(n, path, "anchors and aliases are not used in these files", "write the value out")
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

func (d *decoder) quantity(n *yaml.Node, q quantityText, path string, tags fieldTags) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	if err := q.Set(text); err != nil {
		var syntax *quantity.SyntaxError
		if errors.As(err, &syntax) {
			d.wrong(n, path, syntax.Error(), syntax.Hint)
		}
		return
	}
	tags.bound.check(d, n, path, q.Float(), text)
}

func (d *decoder) sequence(n *yaml.Node, v reflect.Value, path string, tags fieldTags, depth int) {
	if n.Kind != yaml.SequenceNode {
		d.wrong(n, path, "found "+describeNode(n)+", a list was expected", "write it as [ … ] or with a dash before each entry")
		return
	}
	if len(n.Content) > maxItems {
		d.wrong(n, path, fmt.Sprintf("has %d entries, more than %d", len(n.Content), maxItems), "")
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.Content), len(n.Content)))
	for i, c := range n.Content {
		d.value(c, v.Index(i), fmt.Sprintf("%s[%d]", path, i), tags, depth+1)
	}
}

func (d *decoder) dictionary(n *yaml.Node, v reflect.Value, path string, tags fieldTags, depth int) {
	if n.Kind != yaml.MappingNode {
		d.wrong(n, path, "found "+describeNode(n)+", names with values were expected", "")
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
	var list []entry
	first := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		at := join(path, name.Value)
		switch {
		case name.Kind != yaml.ScalarNode:
			d.wrong(name, path, "a key is "+describeNode(name)+", a word was expected", "")
			continue
		case name.Tag == "!!merge":
			d.wrong(name, at, "merge keys are not used in these files", "write the values out")
			continue
		case first[name.Value] != nil:
			d.wrong(name, at, fmt.Sprintf("the key %q stands twice, first in line %d", name.Value, first[name.Value].Line), "keep one of the two")
			continue
		}
		first[name.Value] = name
		d.positions[at] = position(value)
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
		d.wrong(n, path, "found "+describeNode(n)+", keys with values were expected", "")
		return
	}
	fields := fieldsOf(v.Type())
	seen := map[string]bool{}
	for _, e := range d.entries(n, path) {
		f, ok := fields.find(e.key)
		if !ok {
			allowed := fields.names()
			d.wrong(e.name, e.path, fmt.Sprintf("unknown key %q, allowed here: %s", e.key, strings.Join(allowed, ", ")), didYouMean(e.key, allowed))
			continue
		}
		seen[f.key] = true
		d.value(e.value, v.FieldByIndex(f.index), e.path, f.tags, depth+1)
	}
	for _, f := range fields {
		if f.need && !seen[f.key] {
			d.problem(join(path, f.key), position(n), fmt.Sprintf("the key %q is missing", f.key), f.example())
		}
	}
}

func (d *decoder) scalar(n *yaml.Node, v reflect.Value, path string, tags fieldTags) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	switch v.Kind() {
	case reflect.String:
		d.word(n, path, text, tags.words, v)
	case reflect.Bool:
		switch strings.ToLower(text) {
		case "true", "yes":
			v.SetBool(true)
		case "false", "no":
		default:
			d.wrong(n, path, fmt.Sprintf("found %q, true or false was expected", text), "")
		}
	case reflect.Int:
		i, err := strconv.Atoi(text)
		if err != nil {
			d.wrong(n, path, fmt.Sprintf("found %q, a whole number was expected", text), "")
			return
		}
		v.SetInt(int64(i))
		tags.bound.check(d, n, path, float64(i), text)
	default:
		panic("stone: no way to read a " + v.Type().String())
	}
}

// text returns the text of a scalar node, refusing an empty one.
func (d *decoder) text(n *yaml.Node, path string) (string, bool) {
	if n.Kind != yaml.ScalarNode {
		d.wrong(n, path, "found "+describeNode(n)+", a single value was expected", "")
		return "", false
	}
	quoted := n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0
	if n.Tag == "!!null" && !quoted {
		d.wrong(n, path, "nothing is written here", "leave the key out, or write a value (\"none\" if you looked and found nothing)")
		return "", false
	}
	return n.Value, true
}

func (d *decoder) word(n *yaml.Node, path, text string, words []string, v reflect.Value) {
	if len(words) == 0 {
		v.SetString(strings.TrimSpace(text))
		return
	}
	w := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, allowed := range words {
		if strings.ToLower(allowed) == w {
			v.SetString(allowed)
			return
		}
	}
	hint := didYouMean(text, words)
	quoted := n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0
	switch w {
	case "no", "off", "yes", "on", "false", "true":
		if !quoted {
			hint = fmt.Sprintf("YAML reads %s as yes or no: write one of the words, in quotes if need be (\"none\" if you looked and found nothing)", text)
		}
	}
	d.wrong(n, path, fmt.Sprintf("%q is not one of: %s", text, strings.Join(words, ", ")), hint)
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func describeNode(n *yaml.Node) string {
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
	return fmt.Sprintf("%q", n.Value)
}
