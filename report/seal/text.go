package seal

import (
	"bytes"
	"strings"
)

// text returns the letters that a page's content shows, in the order in which
// it shows them, a line for each string and without spaces: enough to find a
// number or a digest. fonts are what the page's fonts mean, by name; in others
// a byte is a letter. Letters beyond ASCII are left out. Syntax: ISO 32000-1,
// 7.2 and 7.3; operator Tf: 9.3.
func text(content []byte, fonts map[string]*codes) string {
	r := shown{src: content, fonts: fonts}
	for len(r.src) > 0 {
		r.token()
	}
	return r.out.String()
}

// shown is the reading of a page's content.
type shown struct {
	src   []byte
	fonts map[string]*codes
	name  string // last one met
	font  *codes // the one in use
	out   strings.Builder
}

// token reads past one token.
func (r *shown) token() {
	switch c := r.src[0]; {
	case c == '(':
		var s []byte
		s, r.src = literal(r.src[1:])
		r.show(s)
	case c == '<' && len(r.src) > 1 && r.src[1] == '<':
		r.src = r.src[2:]
	case c == '<':
		s, rest, _ := bytes.Cut(r.src[1:], []byte(">"))
		r.src = rest
		r.show(hexBytes(s))
	case c == '%':
		r.src = r.src[until(r.src, "\r\n"):]
	case c == '/':
		r.name, r.src = r.word(r.src[1:])
	case strings.IndexByte(delimiters, c) >= 0:
		r.src = r.src[1:]
	default:
		var word string
		if word, r.src = r.word(r.src); word == "Tf" {
			r.font = r.fonts[r.name]
		}
	}
}

// delimiters end a word, with the white space.
const delimiters = "()<>[]{}/%\x00\t\n\f\r "

func (r *shown) word(src []byte) (word string, rest []byte) {
	end := until(src, delimiters)
	return string(src[:end]), src[end:]
}

// until is how far it is to the first of some bytes, or to the end.
func until(src []byte, any string) int {
	if at := bytes.IndexAny(src, any); at >= 0 {
		return at
	}
	return len(src)
}

// show keeps the printable ASCII of a string.
func (r *shown) show(s []byte) {
	for _, c := range r.font.decode(s) {
		if c > ' ' && c < 0x7f {
			r.out.WriteRune(c)
		}
	}
	r.out.WriteByte('\n')
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
