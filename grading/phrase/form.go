package phrase

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// verb is one place of a form to be filled.
type verb struct {
	text  string // "%.3f", without an index
	place int    // of the part that fills it, from 0; -1 for a per cent sign
}

// parse cuts a form into literal text and verbs: text[0] verbs[0] text[1] ...
func parse(form string) (text []string, verbs []verb) {
	most := strings.Count(form, "%")
	text, verbs = make([]string, 0, most+1), make([]verb, 0, most)
	for next := 0; ; {
		literal, v, rest, found := cut(form, next)
		text = append(text, literal)
		if !found {
			return text, verbs
		}
		verbs = append(verbs, v)
		form, next = rest, v.after(next)
	}
}

// cut takes the text before the first verb and the verb off a form; next is the
// place of a verb that names none.
func cut(form string, next int) (literal string, v verb, rest string, found bool) {
	at := strings.IndexByte(form, '%')
	if at < 0 {
		return form, verb{}, "", false
	}
	literal, rest = form[:at], form[at+1:]
	v.place = next
	indexed := false
	if strings.HasPrefix(rest, "[") {
		index, after, _ := strings.Cut(rest[1:], "]")
		if n, err := strconv.Atoi(index); err == nil {
			v.place, rest, indexed = n-1, after, true
		}
	}
	size := strings.IndexFunc(rest, func(r rune) bool { return !strings.ContainsRune("+-# 0123456789.", r) })
	if size < 0 {
		size = max(len(rest)-1, 0)
	}
	if size < len(rest) {
		size++
	}
	v.text = form[at:]
	if indexed {
		v.text = "%" + rest
	}
	v.text, rest = v.text[:1+size], rest[size:]
	if v.text == "%%" {
		v.place = -1
	}
	return literal, v, rest, true
}

// after is the place of the verb behind this one.
func (v verb) after(next int) int {
	if v.place < 0 {
		return next
	}
	return v.place + 1
}

// verbOf is the verb of a form that writes a part.
func verbOf(form string, part int) string {
	for next := 0; ; {
		_, v, rest, found := cut(form, next)
		switch {
		case !found:
			return "%v"
		case v.place == part:
			return v.text
		}
		form, next = rest, v.after(next)
	}
}

// fill writes a form with its parts, which are text already.
func fill(form string, parts []string) string {
	text, verbs := parse(form)
	var b strings.Builder
	for i, t := range text {
		b.WriteString(t)
		switch {
		case i == len(verbs):
		case verbs[i].place < 0:
			b.WriteByte('%')
		case verbs[i].place >= len(parts):
		case strings.HasSuffix(verbs[i].text, "q"):
			b.WriteString(strconv.Quote(parts[verbs[i].place]))
		default:
			b.WriteString(parts[verbs[i].place])
		}
	}
	return b.String()
}

// Fits reports whether a form of another language has a place for every part
// of the English one, and none beside.
func Fits(english, other string) error {
	want, got := places(english), places(other)
	if len(want) == 0 {
		return nil // nothing is filled in, so a per cent sign is one
	}
	for _, p := range want {
		if !slices.Contains(got, p) {
			return fmt.Errorf("part %d of %q has no place", p+1, english)
		}
	}
	for _, p := range got {
		if !slices.Contains(want, p) {
			return fmt.Errorf("there is no part %d in %q", p+1, english)
		}
	}
	return nil
}

func places(form string) []int {
	_, verbs := parse(form)
	var list []int
	for _, v := range verbs {
		if v.place >= 0 && !slices.Contains(list, v.place) {
			list = append(list, v.place)
		}
	}
	return list
}
