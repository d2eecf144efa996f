package yamledit

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// Errors that callers may test for.
var (
	ErrSyntax = errors.New("this is not YAML with keys at its top")
	ErrShape  = errors.New("this place of the file cannot be changed by the form; change its text")
)

// A File is the text of a YAML file with its nodes.
type File struct {
	mark  string // byte order mark, kept
	src   []byte
	root  *yaml.Node
	lines []int // where each line begins
}

const byteOrderMark = "\ufeff"

// Parse reads a file that has keys at its top. It returns ErrSyntax for any
// other.
func Parse(src []byte) (*File, error) {
	f := &File{}
	if rest, ok := bytes.CutPrefix(src, []byte(byteOrderMark)); ok {
		f.mark, src = byteOrderMark, rest
	}
	if err := f.take(src); err != nil {
		return nil, err
	}
	return f, nil
}

// Bytes is the text of the file.
func (f *File) Bytes() []byte { return append([]byte(f.mark), f.src...) }

// Root is the mapping at the top. It is not to be changed.
func (f *File) Root() *yaml.Node { return f.root }

// take parses src and puts it in place of what was there.
func (f *File) take(src []byte) error {
	root, err := parse(src)
	if err != nil {
		return err
	}
	f.src, f.root, f.lines = src, root, lineStarts(src)
	return nil
}

// parse reads one document. The faults of the parser come back as errors.
func parse(src []byte) (root *yaml.Node, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			root, err = nil, fmt.Errorf("%w: %v", ErrSyntax, fault)
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader(src))
	var doc, second yaml.Node
	if err := dec.Decode(&doc); err != nil {
		return nil, fmt.Errorf("%w: %v", ErrSyntax, err)
	}
	if err := dec.Decode(&second); !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("%w: more than one document", ErrSyntax)
	}
	if len(doc.Content) != 1 || doc.Content[0].Kind != yaml.MappingNode {
		return nil, ErrSyntax
	}
	return doc.Content[0], nil
}

// lineStarts finds where lines begin, with the breaks that YAML 1.1 counts.
func lineStarts(src []byte) []int {
	starts := []int{0}
	for i := 0; i < len(src); {
		r, size := utf8.DecodeRune(src[i:])
		i += size
		if r == '\r' && i < len(src) && src[i] == '\n' {
			i++
		}
		if strings.ContainsRune("\n\r\u0085\u2028\u2029", r) {
			starts = append(starts, i)
		}
	}
	return starts
}

// at is the byte at which a line and a column, both from 1, lie.
func (f *File) at(line, column int) int {
	if line > len(f.lines) {
		return len(f.src)
	}
	i := f.lines[max(line, 1)-1]
	for c := 1; c < column && i < len(f.src); c++ {
		_, size := utf8.DecodeRune(f.src[i:])
		i += size
	}
	return i
}

// Get is the node at a path, or nil.
func (f *File) Get(path Path) *yaml.Node { return get(f.root, path) }

func get(n *yaml.Node, path Path) *yaml.Node {
	for _, step := range path {
		if n = child(n, step); n == nil {
			return nil
		}
	}
	return n
}

// child is the value at one step below a node, or nil.
func child(n *yaml.Node, step any) *yaml.Node {
	switch s := step.(type) {
	case string:
		if i := keyIndex(n, s); i >= 0 {
			return n.Content[i+1]
		}
	case int:
		if n.Kind == yaml.SequenceNode && s < len(n.Content) {
			return n.Content[s]
		}
	}
	return nil
}

// keyIndex is where in the content of a mapping a key stands; -1 if it does
// not.
func keyIndex(n *yaml.Node, key string) int {
	if n.Kind != yaml.MappingNode {
		return -1
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return i
		}
	}
	return -1
}
