package yamledit

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// Order lists the keys that a mapping may have, in the order in which they are
// told; a new key is put behind those that come before it. It may be nil.
type Order func(parent Path) []string

// Set gives the value at a path. Keys on the way that the file does not have
// are made; a list grows by setting the place after its last one.
func (f *File) Set(path Path, value *yaml.Node, order Order) error {
	want := clone(f.root)
	if err := setNode(want, path, value); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return f.prove(path, want, func() error { return f.set(path, value, order) })
}

// Delete takes a key or an entry of a list out, and what is then empty with it.
// Remarks behind it on its line are kept.
func (f *File) Delete(path Path) error {
	want := clone(f.root)
	if !deleteNode(want, path) {
		return fmt.Errorf("%s: %w", path, ErrShape)
	}
	return f.prove(path, want, func() error { return f.remove(path) })
}

// prove makes a change and holds the outcome against the tree that it was to
// give; the file is as before if they differ, or if it can no longer be parsed.
func (f *File) prove(path Path, want *yaml.Node, change func() error) error {
	before := *f
	if err := change(); err != nil || !Same(f.root, want) {
		*f = before
		return fmt.Errorf("%s: %w", path, ErrShape)
	}
	return nil
}

// splice puts text in place of the bytes from one to another.
func (f *File) splice(from, to int, text string) error {
	if from < 0 || to < from || to > len(f.src) {
		return ErrShape
	}
	return f.take(slices.Concat(f.src[:from], []byte(text), f.src[to:]))
}

func (f *File) set(path Path, value *yaml.Node, order Order) error {
	n := f.root
	for i, step := range path {
		next := child(n, step)
		if next != nil {
			n = next
			continue
		}
		rest := wrap(path[i+1:], value)
		switch s := step.(type) {
		case string:
			if n.Kind == yaml.MappingNode {
				return f.insert(n, path[:i], s, rest, order)
			}
		case int:
			if n.Kind == yaml.SequenceNode && s == len(n.Content) {
				return f.push(n, rest)
			}
		}
		return f.replace(n, wrap(path[i:], value))
	}
	if n.Kind == yaml.SequenceNode && value.Kind == yaml.SequenceNode && len(n.Content) > 0 && len(value.Content) > 0 {
		return f.setItems(path, value, order)
	}
	return f.replace(n, value)
}

// setItems changes a list entry by entry, so that what stands beside the others
// is kept.
func (f *File) setItems(path Path, value *yaml.Node, order Order) error {
	have := len(f.Get(path).Content)
	for i := have - 1; i >= len(value.Content); i-- {
		if err := f.remove(path.With(i)); err != nil {
			return err
		}
	}
	for i, want := range value.Content {
		if at := f.Get(path.With(i)); at != nil && Same(at, want) {
			continue
		}
		if err := f.set(path.With(i), want, order); err != nil {
			return err
		}
	}
	return nil
}

// wrap puts a value below the rest of a path.
func wrap(rest Path, value *yaml.Node) *yaml.Node {
	for i := len(rest) - 1; i >= 0; i-- {
		switch s := rest[i].(type) {
		case string:
			value = Map(Text(s), value)
		case int:
			value = List(value)
		}
	}
	return value
}

// replace puts a value in place of a node.
func (f *File) replace(n, value *yaml.Node) error {
	text := flow(value)
	if n.Kind == yaml.ScalarNode && value.Kind == yaml.ScalarNode && n.Style&yaml.DoubleQuotedStyle != 0 {
		text = quote(value.Value)
	}
	from, to := f.start(n), f.end(n)
	if from > 0 && f.src[from-1] == ':' {
		text = " " + text
	}
	return f.splice(from, to, text)
}

// insert adds a key to a mapping.
func (f *File) insert(n *yaml.Node, at Path, key string, value *yaml.Node, order Order) error {
	if isFlow(n) {
		text := scalar(Text(key)) + ": " + flow(value)
		if len(n.Content) == 0 {
			return f.splice(f.start(n), f.end(n), "{"+text+"}")
		}
		after := f.end(n.Content[f.before(n, at, key, order)+1])
		return f.splice(after, after, ", "+text)
	}
	indent := n.Content[0].Column - 1
	after := f.extent(n.Content[f.before(n, at, key, order)+1], indent+1)
	return f.addLine(after, indent, entry(key, value, indent, f.newline()))
}

// push adds an entry behind the last one of a list.
func (f *File) push(n, value *yaml.Node) error {
	if isFlow(n) {
		if len(n.Content) == 0 {
			return f.splice(f.start(n), f.end(n), "["+flow(value)+"]")
		}
		after := f.end(n.Content[len(n.Content)-1])
		return f.splice(after, after, ", "+flow(value))
	}
	indent := n.Column - 1
	after := f.extent(n, max(indent, 1))
	return f.addLine(after, indent, item(value, indent, f.newline()))
}

// addLine puts a line of its own behind the line in which a byte lies.
func (f *File) addLine(at, indent int, text string) error {
	line := f.newline() + strings.Repeat(" ", indent) + text
	return f.splice(at, at, line)
}

// extent is the end of the last line that belongs to a node: remarks below it
// that are indented at least so far belong to it.
func (f *File) extent(n *yaml.Node, indent int) int {
	end := f.lineEnd(f.end(n))
	for next := f.afterLine(end); next < len(f.src); next = f.afterLine(next) {
		line := f.src[next:f.lineEnd(next)]
		trimmed := bytes.TrimLeft(line, " ")
		if !bytes.HasPrefix(trimmed, []byte("#")) || len(line)-len(trimmed) < indent {
			break
		}
		end = f.lineEnd(next)
	}
	return end
}

// before is where the key stands after which a new one is put.
func (f *File) before(n *yaml.Node, at Path, key string, order Order) int {
	last := len(n.Content) - 2
	if order == nil {
		return last
	}
	keys := order(at)
	place := slices.Index(keys, key)
	if place < 0 {
		return last
	}
	best := 0
	for i := 0; i+1 < len(n.Content); i += 2 {
		if other := slices.Index(keys, n.Content[i].Value); other >= 0 && other < place {
			best = i
		}
	}
	return best
}
