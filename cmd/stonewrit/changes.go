package main

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// A change is one field in which two stone files differ. Old or new is "" where
// the field is not there; both are for what is no field.
type change struct{ path, old, new string }

// String says the change in a line, without capital and full stop.
func (c change) String() string {
	switch {
	case c.new == c.old:
		return c.path
	case c.old == "":
		return fmt.Sprintf("%s: %s, not given before", c.path, c.new)
	case c.new == "":
		return fmt.Sprintf("%s: left out, was %s", c.path, c.old)
	}
	return fmt.Sprintf("%s: %s, was %s", c.path, c.new, c.old)
}

// changesOf compares two stone files field by field, in the order of the new
// one. Comments, order of keys and the way values are written make no change.
func changesOf(old, now []byte) ([]change, error) {
	var a, b yaml.Node
	if err := yaml.Unmarshal(old, &a); err != nil {
		return nil, err
	}
	if err := yaml.Unmarshal(now, &b); err != nil {
		return nil, err
	}
	return compare("", content(&a), content(&b)), nil
}

// content is what a document or an alias stands for.
func content(n *yaml.Node) *yaml.Node {
	for n != nil && (n.Kind == yaml.DocumentNode && len(n.Content) > 0 || n.Kind == yaml.AliasNode) {
		if n.Kind == yaml.AliasNode {
			n = n.Alias
			continue
		}
		n = n.Content[0]
	}
	return n
}

func compare(path string, old, now *yaml.Node) []change {
	switch {
	case written(old) == written(now):
		return nil
	case old != nil && now != nil && old.Kind == yaml.MappingNode && now.Kind == yaml.MappingNode:
		return compareKeys(path, old, now)
	case isListOfMaps(old) && isListOfMaps(now):
		return compareItems(path, old.Content, now.Content)
	}
	return []change{{path, written(old), written(now)}}
}

func compareKeys(path string, old, now *yaml.Node) []change {
	var list []change
	for i := 0; i+1 < len(now.Content); i += 2 {
		key := now.Content[i].Value
		list = append(list, compare(below(path, key), valueOf(old, key), content(now.Content[i+1]))...)
	}
	for i := 0; i+1 < len(old.Content); i += 2 {
		if key := old.Content[i].Value; valueOf(now, key) == nil {
			list = append(list, compare(below(path, key), content(old.Content[i+1]), nil)...)
		}
	}
	return list
}

// compareItems compares lists, such as the tests. Items that both have are
// passed over; of the others, those are compared that begin alike.
func compareItems(path string, old, now []*yaml.Node) []change {
	old, now = without(old, now), without(now, old)
	var list []change
	for _, item := range now {
		name := below(path, label(item))
		at := slices.IndexFunc(old, func(o *yaml.Node) bool { return label(o) == label(item) })
		if at < 0 {
			list = append(list, change{name, "", written(item)})
			continue
		}
		list = append(list, compare(name, content(old[at]), content(item))...)
		old = slices.Delete(slices.Clone(old), at, at+1)
	}
	for _, item := range old {
		list = append(list, change{below(path, label(item)), written(item), ""})
	}
	if len(list) == 0 { // the same in another order
		return []change{{path: path + ", in another order"}}
	}
	return list
}

// without is the items of a list that another does not have as well.
func without(list, other []*yaml.Node) []*yaml.Node {
	have := map[string]int{}
	for _, o := range other {
		have[written(content(o))]++
	}
	var rest []*yaml.Node
	for _, n := range list {
		if w := written(content(n)); have[w] > 0 {
			have[w]--
		} else {
			rest = append(rest, n)
		}
	}
	return rest
}

// label is what an item of a list is known by: the value of its first key.
func label(item *yaml.Node) string {
	if m := content(item); m.Kind == yaml.MappingNode && len(m.Content) > 1 {
		return written(content(m.Content[1]))
	}
	return "?"
}

func isListOfMaps(n *yaml.Node) bool {
	return n != nil && n.Kind == yaml.SequenceNode && len(n.Content) > 0 && content(n.Content[0]).Kind == yaml.MappingNode
}

func valueOf(m *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(m.Content); i += 2 {
		if m.Content[i].Value == key {
			return content(m.Content[i+1])
		}
	}
	return nil
}

func below(path, key string) string { return strings.TrimPrefix(path+", "+key, ", ") }

// written is a value on one line, the same however it stands in the file.
func written(n *yaml.Node) string {
	if n == nil {
		return ""
	}
	switch n = content(n); n.Kind {
	case yaml.SequenceNode:
		var items []string
		for _, c := range n.Content {
			items = append(items, written(c))
		}
		return "[" + strings.Join(items, ", ") + "]"
	case yaml.MappingNode:
		var items []string
		for i := 0; i+1 < len(n.Content); i += 2 {
			items = append(items, n.Content[i].Value+" "+written(n.Content[i+1]))
		}
		slices.Sort(items)
		return strings.Join(items, ", ")
	}
	if text := strings.TrimSpace(n.Value); text != "" {
		return strings.Join(strings.Fields(text), " ")
	}
	return "nothing"
}
