package report

import "fmt"

// Style is the voice of a run of text.
type Style uint8

// The four voices. All are of one typeface; Quiet is small and grey, for what
// a reader may skip.
const (
	StylePlain Style = iota
	StyleStrong
	StyleItalic
	StyleQuiet
)

// Run is a stretch of text in one voice. A newline breaks the line; a no-break
// space (U+00A0, U+202F) or thin space (U+2009) never does; a soft hyphen
// (U+00AD) and a zero-width space (U+200B) may.
type Run struct {
	Text  string
	Style Style
}

// Text is text in one or more voices. It is built by chaining:
//
//	report.Plain("The stone is ").Strong("corundum").Plain(".")
type Text []Run

// Plain begins a text in the plain voice.
func Plain(s string) Text { return Text{{s, StylePlain}} }

// Plainf begins a text in the plain voice, formatted as by fmt.Sprintf.
func Plainf(format string, args ...any) Text { return Plain(fmt.Sprintf(format, args...)) }

// Strong begins a text in bold.
func Strong(s string) Text { return Text{{s, StyleStrong}} }

// Italic begins a text in italics.
func Italic(s string) Text { return Text{{s, StyleItalic}} }

// Quiet begins a text in the small, grey voice.
func Quiet(s string) Text { return Text{{s, StyleQuiet}} }

// Plain returns t followed by s in the plain voice.
func (t Text) Plain(s string) Text { return t.with(s, StylePlain) }

// Strong returns t followed by s in bold.
func (t Text) Strong(s string) Text { return t.with(s, StyleStrong) }

// Italic returns t followed by s in italics.
func (t Text) Italic(s string) Text { return t.with(s, StyleItalic) }

// Quiet returns t followed by s in the small, grey voice.
func (t Text) Quiet(s string) Text { return t.with(s, StyleQuiet) }

// Then returns t followed by more.
func (t Text) Then(more Text) Text { return append(t[:len(t):len(t)], more...) }

func (t Text) with(s string, style Style) Text { return append(t[:len(t):len(t)], Run{s, style}) }

// String returns the text without its voices.
func (t Text) String() string {
	var s string
	for _, r := range t {
		s += r.Text
	}
	return s
}

// Empty reports whether the text has no character.
func (t Text) Empty() bool {
	for _, r := range t {
		if r.Text != "" {
			return false
		}
	}
	return true
}

// Texts returns one plain text for each string.
func Texts(lines ...string) []Text {
	out := make([]Text, len(lines))
	for i, s := range lines {
		out[i] = Plain(s)
	}
	return out
}
