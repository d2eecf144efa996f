package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/report/pdf"
)

// located says of the characters that cannot be printed in which line and key
// of the stone or bench file they stand. Other errors stay as they are.
func (m *manuscript) located(err error) error {
	if err == nil {
		return nil
	}
	var missing pdf.MissingCharacter
	if several, ok := err.(interface{ Unwrap() []error }); ok {
		var list []error
		told := map[rune]bool{}
		for _, one := range several.Unwrap() {
			if errors.As(one, &missing) {
				if told[missing.Char] {
					continue
				}
				told[missing.Char] = true
			}
			list = append(list, m.located(one))
		}
		return errors.Join(list...)
	}
	if !errors.As(err, &missing) {
		return err
	}
	for _, f := range m.sources() {
		if at, key, ok := whereIs(f.src, missing.Char); ok {
			return failing(hintFor(missing), "%s:%d:%d: %s: cannot print %q (U+%04X) in %q: %s", f.name, at.Line, at.Column, key, string(missing.Char), missing.Char, missing.Near, missing.Why)
		}
	}
	return failing(hintFor(missing), "%s: %v", m.rec.file, err)
}

// hintFor is what to do about a character that cannot be printed.
func hintFor(m pdf.MissingCharacter) string {
	if m.NoFont {
		return "name a font that has it in bench.yaml, font: fonts/NAME.ttf"
	}
	return "write it in a script whose letters stand one after another"
}

// aSource is a file that the words of a document come from.
type aSource struct {
	name string // as printed
	src  []byte
}

func (m *manuscript) sources() []aSource {
	list := []aSource{{m.rec.file, m.rec.src}}
	if b := m.rec.bench; b != nil {
		if src, err := os.ReadFile(filepath.Join(b.dir, benchName)); err == nil {
			list = append(list, aSource{b.file, src})
		}
	}
	return list
}

// whereIs finds the first value of a YAML file that holds a character, and the
// path of its key.
func whereIs(src []byte, char rune) (at *yaml.Node, key string, ok bool) {
	var root yaml.Node
	if err := yaml.Unmarshal(src, &root); err != nil || len(root.Content) == 0 {
		return nil, "", false
	}
	return holding(root.Content[0], "", char)
}

func holding(n *yaml.Node, path string, char rune) (*yaml.Node, string, bool) {
	switch n.Kind {
	case yaml.ScalarNode:
		return n, path, strings.ContainsRune(n.Value, char)
	case yaml.SequenceNode:
		for i, item := range n.Content {
			if at, key, ok := holding(item, fmt.Sprintf("%s[%d]", path, i), char); ok {
				return at, key, true
			}
		}
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			name := n.Content[i].Value
			if path != "" {
				name = path + "." + name
			}
			if at, key, ok := holding(n.Content[i+1], name, char); ok {
				return at, key, true
			}
		}
	}
	return nil, "", false
}
