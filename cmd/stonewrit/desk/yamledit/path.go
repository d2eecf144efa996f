package yamledit

import (
	"fmt"
	"strconv"
	"strings"
)

// A Path leads to a value: a string is a key, an int the place in a list.
type Path []any

// With is the path one step further.
func (p Path) With(step any) Path {
	return append(append(make(Path, 0, len(p)+1), p...), step)
}

// String writes the path as problems of a file do: tests[0].readings.
func (p Path) String() string {
	var b strings.Builder
	for _, step := range p {
		switch s := step.(type) {
		case int:
			fmt.Fprintf(&b, "[%d]", s)
		default:
			if b.Len() > 0 {
				b.WriteByte('.')
			}
			fmt.Fprint(&b, s)
		}
	}
	return b.String()
}

// Pointer writes the path so that ParsePointer reads it back, whatever letters
// its keys have: /tests/#0/readings.
func (p Path) Pointer() string {
	var b strings.Builder
	for _, step := range p {
		b.WriteByte('/')
		switch s := step.(type) {
		case int:
			b.WriteString("#" + strconv.Itoa(s))
		case string:
			if strings.ContainsAny(s, "~/#") {
				s = strings.NewReplacer("~", "~0", "/", "~1", "#", "~2").Replace(s)
			}
			b.WriteString(s)
		}
	}
	return b.String()
}

// ParsePointer reads what Pointer wrote.
func ParsePointer(text string) (Path, error) {
	rest, ok := strings.CutPrefix(text, "/")
	if !ok {
		return nil, fmt.Errorf("%q is no path into a file", text)
	}
	var p Path
	for _, part := range strings.Split(rest, "/") {
		if digits, ok := strings.CutPrefix(part, "#"); ok {
			i, err := strconv.Atoi(digits)
			if err != nil || i < 0 || i > 100000 {
				return nil, fmt.Errorf("%q is no path into a file", text)
			}
			p = append(p, i)
			continue
		}
		if strings.Contains(part, "~") {
			part = strings.NewReplacer("~1", "/", "~2", "#", "~0", "~").Replace(part)
		}
		p = append(p, part)
	}
	return p, nil
}
