package templates

import "strings"

// Voice is how a run of text is said.
type Voice uint8

// The voices.
const (
	Plain Voice = iota
	Strong
	Italic
	Quiet
)

// Run is a stretch of text in one voice.
type Run struct {
	Text  string
	Voice Voice
}

// Text is a sentence, or several, in runs.
type Text []Run

// String is the text without its voices.
func (t Text) String() string {
	var b strings.Builder
	for _, r := range t {
		b.WriteString(r.Text)
	}
	return b.String()
}

// Between a template and its runs, a voice begins with one of these control
// characters, which no text of a stone file can hold, and ends with voiceEnd.
const (
	voiceStrong = '\x01'
	voiceItalic = '\x02'
	voiceQuiet  = '\x03'
	voiceEnd    = '\x04'
)

func voiced(mark rune) func(string) string {
	return func(s string) string { return string(mark) + s + string(voiceEnd) }
}

// runs splits what a template wrote into runs, with white space set right:
// spaces, tabs and line ends become one space, none at either end.
func runs(s string) Text {
	var t Text
	voice := Plain
	space, begun := false, false
	var b strings.Builder
	flush := func() {
		if b.Len() > 0 {
			t = append(t, Run{b.String(), voice})
			b.Reset()
		}
	}
	for _, r := range s {
		switch r {
		case ' ', '\t', '\n', '\r':
			space = true
			continue
		case voiceStrong, voiceItalic, voiceQuiet, voiceEnd:
			flush() // a space that waits goes to the run that follows
			voice = map[rune]Voice{voiceStrong: Strong, voiceItalic: Italic, voiceQuiet: Quiet}[r]
			continue
		}
		if space && begun {
			b.WriteByte(' ')
		}
		space, begun = false, true
		b.WriteRune(r)
	}
	flush()
	return t
}
