package pdf

import (
	"strings"
	"testing"

	"stonewrit/report"
)

// TestEveryCodeComesBack: a document with more characters than a byte counts is
// read by another program as it was set, also where the code of a character has
// the bytes of brackets, backslash or the end of a line.
func TestEveryCodeComesBack(t *testing.T) {
	face := newPress(t).faces[FaceRegular]
	var want strings.Builder
	for r := rune('!'); r < 0x250; r++ {
		if face.has(r) && r != '\u00ad' { // a hyphen where a line ends
			want.WriteRune(r)
		}
	}
	if n := len([]rune(want.String())); n < 300 {
		t.Fatalf("the font has only %d characters to try", n)
	}
	doc := sampleNote()
	doc.Sections = []report.Section{{Blocks: []report.Block{report.Para(report.Plain(spaced(want.String())))}}}
	got := string(tool(t, "pdftotext", "-raw", "-enc", "UTF-8", printed(t, doc), "-"))
	if got := strings.Join(strings.Fields(got), ""); !strings.Contains(got, strings.ReplaceAll(want.String(), "\u00a0", "")) {
		t.Errorf("the text comes back as\n%s\nwant\n%s", got, want.String())
	}
}

// spaced parts text into words of twenty characters, so that it fits on lines.
func spaced(text string) string {
	var b strings.Builder
	for i, r := range []rune(text) {
		if i > 0 && i%20 == 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
	}
	return b.String()
}
