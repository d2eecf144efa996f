package seal

import (
	"bytes"
	"strings"
)

// text returns the letters that a page's content shows, in the order in which
// it shows them, a line for each string and without spaces: enough to find a
// number or a digest.
// Strings hold two bytes a letter, its place in Unicode, as our documents
// write them; letters beyond ASCII are left out. Syntax: ISO 32000-1, 7.3.4.
func text(content []byte) string {
	var out strings.Builder
	for len(content) > 0 {
		switch c := content[0]; {
		case c == '(':
			var s []byte
			s, content = literal(content[1:])
			letters(&out, s)
		case c == '<' && len(content) > 1 && content[1] == '<':
			content = content[2:]
		case c == '<':
			end := bytes.IndexByte(content, '>')
			if end < 0 {
				return out.String()
			}
			letters(&out, hexBytes(content[1:end]))
			content = content[end+1:]
		case c == '%':
			end := bytes.IndexAny(content, "\r\n")
			if end < 0 {
				return out.String()
			}
			content = content[end:]
		default:
			content = content[1:]
		}
	}
	return out.String()
}

// letters keeps the printable ASCII of a string.
func letters(out *strings.Builder, s []byte) {
	for _, c := range s {
		if c > ' ' && c < 0x7f {
			out.WriteByte(c)
		}
	}
	out.WriteByte('\n')
}

// literal reads a string in parentheses up to its end, and returns what is
// behind it.
func literal(src []byte) (s, rest []byte) {
	depth := 1
	for i := 0; i < len(src); i++ {
		c := src[i]
		switch c {
		case '\\':
			var n int
			if c, n = escaped(src[i+1:]); n > 0 {
				s = append(s, c)
			}
			i += max(n, 1)
			continue
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return s, src[i+1:]
			}
		}
		s = append(s, c)
	}
	return s, nil
}

// escaped reads what stands behind a backslash and how long it is; 0 if it
// stands for nothing.
func escaped(src []byte) (c byte, length int) {
	if len(src) == 0 || src[0] == '\n' || src[0] == '\r' {
		return 0, 0
	}
	if at := strings.IndexByte("nrtbf", src[0]); at >= 0 {
		return "\n\r\t\b\f"[at], 1
	}
	for length < len(src) && length < 3 && src[length] >= '0' && src[length] <= '7' {
		c, length = c<<3|(src[length]-'0'), length+1
	}
	if length == 0 {
		return src[0], 1
	}
	return c, length
}

// hexBytes reads hexadecimal digits and passes over everything else.
func hexBytes(src []byte) []byte {
	var out []byte
	half := -1
	for _, c := range src {
		digit := strings.IndexByte("0123456789abcdef", c|0x20)
		switch {
		case digit < 0 || c <= ' ':
		case half < 0:
			half = digit
		default:
			out, half = append(out, byte(half<<4|digit)), -1
		}
	}
	if half >= 0 {
		out = append(out, byte(half<<4))
	}
	return out
}
