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
	next := 0
	for {
		literal, rest, found := strings.Cut(form, "%")
		text = append(text, literal)
		if !found {
			return text, verbs
		}
		v := verb{place: next}
		if strings.HasPrefix(rest, "[") {
			index, after, _ := strings.Cut(rest[1:], "]")
			if n, err := strconv.Atoi(index); err == nil {
				v.place, rest = n-1, after
			}
		}
		size := strings.IndexFunc(rest, func(r rune) bool { return !strings.ContainsRune("+-# 0123456789.", r) })
		if size < 0 {
			size = max(len(rest)-1, 0)
		}
		if size < len(rest) {
			size++
		}
		v.text, form = "%"+rest[:size], rest[size:]
		if v.text == "%%" {
			v.place = -1
		} else {
			next = v.place + 1
		}
		verbs = append(verbs, v)
	}
}

// verbsOf are the verbs of a form by the part that they write.
func verbsOf(form string) []string {
	if !strings.Contains(form, "%") {
		return nil
	}
	_, verbs := parse(form)
	var list []string
	for _, v := range verbs {
		for v.place >= len(list) {
			list = append(list, "%v")
		}
		if v.place >= 0 {
			list[v.place] = v.text
		}
	}
	return list
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
