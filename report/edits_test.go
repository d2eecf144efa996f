package report_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// make is a complete document with further edits: its file and the bench.
func (d complete) make(t testing.TB, more string) (demoFile, []byte) {
	t.Helper()
	f, bench := readDemo(t, d.file), readDemo(t, "bench.yaml").src
	root := parsed(t, f.src)
	if d.account != "" {
		borrow(root, parsed(t, readDemo(t, d.account).src))
	}
	benchRoot := parsed(t, bench)
	for _, e := range strings.Split(d.edits+" | "+more, " | ") {
		e = strings.TrimSpace(e)
		if e == "" {
			continue
		}
		at := root
		if rest, ok := strings.CutPrefix(e, "bench "); ok {
			at, e = benchRoot, rest
		}
		if err := edit(at, e); err != nil {
			t.Fatalf("%s: %v", d.file, err)
		}
	}
	return demoFile{f.name, printed(t, root)}, printed(t, benchRoot)
}

// account lists the keys that a document takes from another one's file.
func account() []string {
	return []string{"client", "worth", "owned", "history", "use", "scope", "interest", "assumptions", "hypothetical", "sold_by_issuer"}
}

func borrow(root, from *yaml.Node) {
	for _, key := range account() {
		if v := child(from, key); v != nil {
			set(root, key, v)
		}
	}
}

func parsed(t testing.TB, src []byte) *yaml.Node {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	return doc.Content[0]
}

func printed(t testing.TB, n *yaml.Node) []byte {
	t.Helper()
	src, err := yaml.Marshal(n)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// edit takes a key out ("-use.users", "-tests[2].instrument") or writes it
// ("report: record"). It is an error if there is nothing to take out.
func edit(root *yaml.Node, e string) error {
	if path, ok := strings.CutPrefix(e, "-"); ok {
		return remove(root, steps(path))
	}
	path, value, ok := strings.Cut(e, ": ")
	if !ok {
		return fmt.Errorf("%q is no edit", e)
	}
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(value), &doc); err != nil {
		return fmt.Errorf("%q: %w", e, err)
	}
	all := steps(path)
	at := root
	for _, s := range all[:len(all)-1] {
		next := child(at, s)
		if next == nil {
			next = &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"}
			set(at, s, next)
		}
		at = next
	}
	set(at, all[len(all)-1], doc.Content[0])
	return nil
}

// steps are the keys of a path; places in lists are numbers.
func steps(path string) []string {
	return strings.Split(strings.NewReplacer("[", ".", "]", "").Replace(path), ".")
}

func remove(at *yaml.Node, path []string) error {
	for _, s := range path[:len(path)-1] {
		if at = child(at, s); at == nil {
			return fmt.Errorf("there is no %s to take out of", strings.Join(path, "."))
		}
	}
	last := path[len(path)-1]
	if i, err := strconv.Atoi(last); err == nil && at.Kind == yaml.SequenceNode {
		at.Content = append(at.Content[:i], at.Content[i+1:]...)
		return nil
	}
	for i := 0; i < len(at.Content); i += 2 {
		if at.Content[i].Value == last {
			at.Content = append(at.Content[:i], at.Content[i+2:]...)
			return nil
		}
	}
	return fmt.Errorf("there is no %s to take out", strings.Join(path, "."))
}

func child(at *yaml.Node, key string) *yaml.Node {
	if i, err := strconv.Atoi(key); err == nil && at.Kind == yaml.SequenceNode {
		if i < len(at.Content) {
			return at.Content[i]
		}
		return nil
	}
	for i := 0; at.Kind == yaml.MappingNode && i < len(at.Content); i += 2 {
		if at.Content[i].Value == key {
			return at.Content[i+1]
		}
	}
	return nil
}

func set(at *yaml.Node, key string, value *yaml.Node) {
	if i, err := strconv.Atoi(key); err == nil && at.Kind == yaml.SequenceNode {
		if i < len(at.Content) {
			at.Content[i] = value
		} else {
			at.Content = append(at.Content, value)
		}
		return
	}
	for i := 0; i < len(at.Content); i += 2 {
		if at.Content[i].Value == key {
			at.Content[i+1] = value
			return
		}
	}
	at.Content = append(at.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: key}, value)
}
