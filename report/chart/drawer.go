package chart

import (
	"strings"
	"unicode"

	"stonewrit/report"
)

// Drawer draws the figures of one document.
type Drawer struct {
	Words Words
	// Width measures a text set in the small size, in the face for running
	// text. Where it is nil a guess stands for it that is rather too wide.
	Width func(string) report.Point
}

// sizeSmall is the size that labels are set in, and capitals, ascent and
// descent what a line of it takes, with a little to spare for other faces.
const (
	sizeSmall report.Point = 8
	halfCaps  report.Point = 2.7 // from the middle of capitals to the baseline
	ascent    report.Point = 7.2
	descent   report.Point = 1.8
	lineHigh               = ascent + descent
)

func (d Drawer) width(s string) report.Point {
	if s == "" {
		return 0
	}
	if d.Width != nil {
		return d.Width(s)
	}
	return guess(s)
}

// guess is a width that no text in Latin, Greek or Cyrillic reaches in the
// typeface of documents: narrow letters taken as narrow, all others as wide as
// the widest of their kind.
func guess(s string) report.Point {
	var ems report.Point
	for _, r := range s {
		switch {
		case strings.ContainsRune(" \u00a0.,:;ijl", r):
			ems += 0.34
		case unicode.IsDigit(r) || strings.ContainsRune("()-±–", r):
			ems += 0.57
		case r < unicode.MaxLatin1 && unicode.IsLower(r) && !strings.ContainsRune("mwæ", r):
			ems += 0.64
		case r < unicode.MaxLatin1:
			ems += 1.05
		default:
			ems += 1.35
		}
	}
	return ems * sizeSmall
}

// wrapped breaks a text into lines no wider than most, between words where it
// can and within one where it must.
func (d Drawer) wrapped(s string, most report.Point) []string {
	var lines []string
	line := ""
	for _, word := range splitWords(s) {
		switch joined := line + " " + word; {
		case line == "":
			line = word
		case d.width(joined) <= most:
			line = joined
		default:
			lines = append(lines, line)
			line = word
		}
		for d.width(line) > most {
			head, rest := d.head(line, most)
			lines = append(lines, head)
			line = rest
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// head parts a word at the last character that fits, at least one.
func (d Drawer) head(word string, most report.Point) (head, rest string) {
	runes := []rune(word)
	n := len(runes)
	for n > 1 && d.width(string(runes[:n])) > most {
		n--
	}
	return string(runes[:n]), string(runes[n:])
}

// splitWords parts a text at spaces and line ends, but not at no-break spaces.
func splitWords(s string) []string {
	var words []string
	word := ""
	for _, r := range s {
		if r == ' ' || r == '\n' || r == '\t' || r == '\r' {
			if word != "" {
				words = append(words, word)
			}
			word = ""
			continue
		}
		word += string(r)
	}
	if word != "" {
		words = append(words, word)
	}
	return words
}
