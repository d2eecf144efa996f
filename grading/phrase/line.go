// Package phrase keeps the sentences of an examination apart from what fills
// them, so that a document in another language can say them. English is what
// grading speaks: the form of a line is its English sentence, and a Language
// knows what stands for that form.
package phrase

import (
	"fmt"
	"strings"
)

// A Line is a sentence or a part of one: a form of words, with what fills it
// still apart. A constant is a form without parts. Two lines are equal if they
// say the same with the same parts, and "" says nothing.
//
// The parts stand behind the form, each between two control characters that no
// text of a stone file can hold.
type Line string

// Word is a word of the program's own lists: a material, a feature, a colour,
// a strength. As a part of a line it is said in the language of the line.
type Word string

// A Language says in another language what grading says in English. Each
// method gives back what it got where it knows nothing better.
type Language interface {
	Form(english string) string // of a sentence: the same verbs, in any order as %[2]s
	Term(english string) string // of a word or a short name
	Figure(english string) string
}

const (
	begin  = '\x0e'
	end    = '\x0f'
	asIs   = 't' // text as it stands
	word   = 'w'
	figure = 'f'
	inner  = 'l' // a line
)

// Say fills a form with its parts, by the verbs of package fmt: a Line or a
// Word is said in its turn, a number is written as the verb says and follows
// the language in its decimal sign; so does a Figure. Any other text stands as
// it is in every language.
func Say(form Line, parts ...any) Line {
	var b strings.Builder
	b.Grow(room(form, parts))
	b.WriteString(string(form))
	for i, part := range parts {
		kind, text := asIs, ""
		switch p := part.(type) {
		case Line:
			kind, text = inner, string(p)
		case Word:
			kind, text = word, string(p)
		case Figure:
			kind, text = figure, string(p)
		case string:
			text = marks.Replace(p)
		case error:
			text = marks.Replace(p.Error())
		case fmt.Stringer:
			text = marks.Replace(p.String())
		default:
			kind = figure
			text = fmt.Sprintf(verbOf(string(form), i), p)
		}
		b.WriteRune(begin)
		b.WriteRune(kind)
		b.WriteString(text)
		b.WriteRune(end)
	}
	return Line(b.String())
}

// marks takes the control characters out of a text that stands as it is.
var marks = strings.NewReplacer(string(begin), "\ufffd", string(end), "\ufffd")

// room is about how long a form with its parts becomes.
func room(form Line, parts []any) int {
	const digits, around = 8, 3
	n := len(form)
	for _, part := range parts {
		switch p := part.(type) {
		case Line:
			n += len(p)
		case Word:
			n += len(p)
		case Figure:
			n += len(p)
		case string:
			n += len(p)
		default:
			n += digits
		}
		n += around
	}
	return n
}

// Figure is a number or a quantity already written in digits: "1.762",
// "7.82 mm". It follows the language in its decimal sign.
type Figure string

// String is the line in English.
func (l Line) String() string { return l.In(English{}) }

// In is the line in a language.
func (l Line) In(language Language) string {
	form, parts := l.split()
	form = language.Form(form)
	if len(parts) == 0 {
		return form
	}
	said := make([]string, len(parts))
	for i, p := range parts {
		said[i] = p.in(language)
	}
	return fill(form, said)
}

// Form is the English sentence with its verbs, and how many parts fill it.
func (l Line) Form() (form string, parts int) {
	form, list := l.split()
	return form, len(list)
}

// First is the part that a line begins with, where that is a line itself: of
// "species is contradicted: ..." what stands before the reasons. A line without
// such a part is given back.
func (l Line) First() Line {
	if form, parts := l.split(); strings.HasPrefix(form, "%s") && parts[0].kind == inner {
		return Line(parts[0].text)
	}
	return l
}

// MarshalText writes the line in English.
func (l Line) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// English is the language of the forms themselves.
type English struct{}

// Form is the form itself.
func (English) Form(s string) string { return s }

// Term is the word itself.
func (English) Term(s string) string { return s }

// Figure is the figure itself.
func (English) Figure(s string) string { return s }

type part struct {
	kind byte
	text string
}

func (p part) in(language Language) string {
	switch p.kind {
	case inner:
		return Line(p.text).In(language)
	case word:
		return language.Term(p.text)
	case figure:
		return language.Figure(p.text)
	}
	return p.text
}

// split takes the form and its parts asunder. A part may be a line that has
// parts itself.
func (l Line) split() (form string, parts []part) {
	s := string(l)
	at := strings.IndexByte(s, begin)
	if at < 0 {
		return s, nil
	}
	form = s[:at]
	for depth, from := 0, 0; at < len(s); at++ {
		switch s[at] {
		case begin:
			if depth++; depth == 1 {
				from = at + 1
			}
		case end:
			if depth--; depth == 0 {
				parts = append(parts, part{s[from], s[from+1 : at]})
			}
		}
	}
	return form, parts
}
