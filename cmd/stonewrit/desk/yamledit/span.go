package yamledit

import (
	"bytes"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// start is the byte at which a node begins.
func (f *File) start(n *yaml.Node) int { return f.at(n.Line, n.Column) }

// end is the byte after a node. It is exact for what these files use; where it
// is not, the proof of the change fails.
func (f *File) end(n *yaml.Node) int {
	at := f.start(n)
	switch n.Kind {
	case yaml.ScalarNode:
		return f.scalarEnd(n, at)
	case yaml.MappingNode, yaml.SequenceNode:
		last := at + 1
		if len(n.Content) > 0 {
			last = f.end(n.Content[len(n.Content)-1])
		}
		if isFlow(n) {
			return f.closing(last)
		}
		return last
	}
	return at
}

func isFlow(n *yaml.Node) bool { return n.Style&yaml.FlowStyle != 0 }

func (f *File) scalarEnd(n *yaml.Node, at int) int {
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		for i := at + 1; i < len(f.src); i++ {
			switch f.src[i] {
			case '\\':
				i++
			case '"':
				return i + 1
			}
		}
		return len(f.src)
	case n.Style&yaml.SingleQuotedStyle != 0:
		for i := at + 1; i < len(f.src); i++ {
			if f.src[i] != '\'' {
				continue
			}
			if i+1 < len(f.src) && f.src[i+1] == '\'' {
				i++
				continue
			}
			return i + 1
		}
		return len(f.src)
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return f.blockTextEnd(at)
	}
	return f.plainEnd(n.Value, at)
}

// plainEnd follows a plain scalar in the text, in which any white stands for
// the white of the value.
func (f *File) plainEnd(value string, at int) int {
	i := at
	for j := 0; j < len(value); {
		r, size := utf8.DecodeRuneInString(value[j:])
		if unicode.IsSpace(r) {
			for j < len(value) && isSpaceAt(value[j:]) {
				_, size := utf8.DecodeRuneInString(value[j:])
				j += size
			}
			for i < len(f.src) && isSpaceAt(string(f.src[i:min(i+4, len(f.src))])) {
				_, size := utf8.DecodeRune(f.src[i:])
				i += size
			}
			continue
		}
		j, i = j+size, i+size
	}
	return min(i, len(f.src))
}

func isSpaceAt(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsSpace(r)
}

// blockTextEnd is the end of a text that is begun by | or >.
func (f *File) blockTextEnd(at int) int {
	end := f.lineEnd(at)
	inner := -1
	for next := f.afterLine(at); next < len(f.src); next = f.afterLine(next) {
		line := f.src[next:f.lineEnd(next)]
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		indent := len(line) - len(bytes.TrimLeft(line, " "))
		if inner < 0 {
			if indent <= f.indentOf(at) {
				return end
			}
			inner = indent
		}
		if indent < inner {
			return end
		}
		end = f.lineEnd(next)
	}
	return end
}

// closing finds the bracket that ends a list or mapping in brackets, from
// behind its last entry.
func (f *File) closing(i int) int {
	for i < len(f.src) {
		switch c := f.src[i]; {
		case c == ']' || c == '}':
			return i + 1
		case c == '#':
			i = f.lineEnd(i)
		default:
			i++
		}
	}
	return i
}

// lineStart is the first byte of the line in which at lies.
func (f *File) lineStart(at int) int { return bytes.LastIndexByte(f.src[:at], '\n') + 1 }

// lineEnd is the byte after the last one of the line, its break excluded.
func (f *File) lineEnd(at int) int {
	end := len(f.src)
	if i := bytes.IndexByte(f.src[at:], '\n'); i >= 0 {
		end = at + i
	}
	if end > at && f.src[end-1] == '\r' {
		end--
	}
	return end
}

// afterLine is the first byte of the next line.
func (f *File) afterLine(at int) int {
	if i := bytes.IndexByte(f.src[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(f.src)
}

// indentOf counts the blanks that begin the line of a byte.
func (f *File) indentOf(at int) int {
	line := f.src[f.lineStart(at):]
	return len(line) - len(bytes.TrimLeft(line, " "))
}

// newline is the line break that the file uses.
func (f *File) newline() string {
	if i := bytes.IndexByte(f.src, '\n'); i > 0 && f.src[i-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}
