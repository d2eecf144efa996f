package yamledit

import (
	"bytes"
	"strings"

	"gopkg.in/yaml.v3"
)

// remove takes out what stands at a path, and what is then empty with it.
func (f *File) remove(path Path) error {
	if len(path) == 0 {
		return ErrShape
	}
	above := path[:len(path)-1]
	parent := f.Get(above)
	if parent == nil {
		return ErrShape
	}
	width, index := 1, 0
	switch step := path[len(path)-1].(type) {
	case string:
		width, index = 2, keyIndex(parent, step)
	case int:
		index = step
	}
	if index < 0 || index >= len(parent.Content) {
		return ErrShape
	}
	switch {
	case len(parent.Content) == width:
		return f.remove(above)
	case isFlow(parent):
		return f.removeFlow(parent, index, width)
	}
	return f.removeLines(parent, index, width)
}

// removeFlow takes an entry out of brackets, with one comma.
func (f *File) removeFlow(parent *yaml.Node, index, width int) error {
	from, to := f.start(parent.Content[index]), f.end(parent.Content[index+width-1])
	if next := index + width; next < len(parent.Content) {
		return f.splice(from, f.start(parent.Content[next]), "")
	}
	return f.splice(f.end(parent.Content[index-1]), to, "")
}

// removeLines takes an entry out that has lines of its own.
func (f *File) removeLines(parent *yaml.Node, index, width int) error {
	from, to := f.start(parent.Content[index]), f.end(parent.Content[index+width-1])
	line := f.lineStart(from)
	lead := f.src[line:from]
	switch {
	case width == 2 && len(bytes.TrimSpace(lead)) > 0: // the first key behind a dash
		next := f.start(parent.Content[index+width])
		return f.splice(from, next, "")
	case width == 1 && string(bytes.TrimSpace(lead)) != "-": // a list within a list
		return ErrShape
	}
	end := f.lineEnd(to)
	remark := strings.TrimSpace(string(f.src[to:end]))
	if strings.HasPrefix(remark, "#") {
		return f.splice(line, end, strings.Repeat(" ", f.indentOf(line))+remark)
	}
	return f.splice(line, f.afterLine(end), "")
}
