package yamledit

import (
	"slices"

	"gopkg.in/yaml.v3"
)

// Same reports whether two nodes hold the same values in the same order,
// however they are written.
func Same(a, b *yaml.Node) bool {
	if a.Kind != b.Kind || len(a.Content) != len(b.Content) || a.Kind == yaml.ScalarNode && a.Value != b.Value {
		return false
	}
	if a.Kind == yaml.MappingNode {
		return sameKeys(a, b)
	}
	for i := range a.Content {
		if !Same(a.Content[i], b.Content[i]) {
			return false
		}
	}
	return true
}

// sameKeys compares mappings, in which the order means nothing.
func sameKeys(a, b *yaml.Node) bool {
	for i := 0; i+1 < len(a.Content); i += 2 {
		other := child(b, a.Content[i].Value)
		if other == nil || !Same(a.Content[i+1], other) {
			return false
		}
	}
	return true
}

func clone(n *yaml.Node) *yaml.Node {
	c := *n
	c.Content = make([]*yaml.Node, len(n.Content))
	for i := range n.Content {
		c.Content[i] = clone(n.Content[i])
	}
	return &c
}

// setNode makes a change in a tree alone.
func setNode(n *yaml.Node, path Path, value *yaml.Node) error {
	for i, step := range path {
		next := child(n, step)
		if next == nil {
			return addNode(n, step, wrap(path[i+1:], value))
		}
		n = next
	}
	*n = *clone(value)
	return nil
}

// addNode adds what is not there below a node.
func addNode(n *yaml.Node, step any, value *yaml.Node) error {
	switch s := step.(type) {
	case string:
		if n.Kind != yaml.MappingNode {
			*n = *Map(Text(s), value)
			return nil
		}
		n.Content = append(n.Content, Text(s), value)
		return nil
	case int:
		if n.Kind != yaml.SequenceNode && s == 0 {
			*n = *List(value)
			return nil
		}
		if n.Kind == yaml.SequenceNode && s == len(n.Content) {
			n.Content = append(n.Content, value)
			return nil
		}
	}
	return ErrShape
}

// deleteNode takes out of a tree what stands at a path, and what is then empty
// with it. It reports whether there was something.
func deleteNode(n *yaml.Node, path Path) bool {
	if len(path) == 0 {
		return false
	}
	if len(path) > 1 {
		next := child(n, path[0])
		if next == nil || !deleteNode(next, path[1:]) {
			return false
		}
		if len(next.Content) > 0 {
			return true
		}
	}
	switch s := path[0].(type) {
	case string:
		i := keyIndex(n, s)
		if i < 0 {
			return false
		}
		n.Content = slices.Delete(n.Content, i, i+2)
	case int:
		if n.Kind != yaml.SequenceNode || s >= len(n.Content) {
			return false
		}
		n.Content = slices.Delete(n.Content, s, s+1)
	}
	return true
}
