package stone_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"stonewrit/grading/stone"
)

// What is no text file, or asks for more than reading is worth.
func TestHostileFiles(t *testing.T) {
	table := loadTable(t)
	for _, tt := range []struct {
		name, src string
		at        stone.Position
		message   string
	}{
		{"empty", "", stone.Position{Line: 1, Column: 1}, "the file is empty"},
		{"blank", "\n\n  \n", stone.Position{Line: 1, Column: 1}, "the file is empty"},
		{"byte order mark alone", "\ufeff", stone.Position{Line: 1, Column: 1}, "the file is empty"},
		{"picture", "\x89PNG\r\n\x1a\n\x00\x00", stone.Position{Line: 1, Column: 1}, "the byte 0x89 is no text in UTF-8"},
		{"nought bytes", "stonewrit: 1\nstone: a\x00b\n", stone.Position{Line: 2, Column: 9}, "the byte 0x00 does not belong in a text file"},
		{"older encoding", "stonewrit: 1\nlocation: K\xf6ln\n", stone.Position{Line: 2, Column: 12}, "the byte 0xf6 is no text in UTF-8"},
		{"escape sequence", "stonewrit: \x1b[31m1\n", stone.Position{Line: 1, Column: 12}, "the byte 0x1b does not belong in a text file"},
		{"2 MB", strings.Repeat("# 0123456789abc\n", 2<<20/16), stone.Position{Line: 1, Column: 1}, "the file has more than the 1048576 bytes that are read"},
		{"brackets", strings.Repeat("[", 20000), stone.Position{Line: 1, Column: 1}, "this is not YAML: brackets are nested too deeply (exceeded max depth of 10000)"},
	} {
		s, problems := stone.Read("a.yaml", []byte(tt.src), table)
		if len(problems) != 1 || s == nil {
			t.Errorf("%s: got %d problems: %v", tt.name, len(problems), problems)
			continue
		}
		p := problems[0]
		if p.Severity != stone.Error || p.Path != "" || p.Line != tt.at.Line || p.Column != tt.at.Column || p.Message.String() != tt.message {
			t.Errorf("%s:\n got %d:%d %s%s\nwant %d:%d %s", tt.name, p.Line, p.Column, p.Path, p.Message, tt.at.Line, tt.at.Column, tt.message)
		}
	}
}

// However a file of the largest size is made, it is read or refused in a
// moment. The bound is loose: it is there to catch what grows with the square.
func TestHostileFilesAreCheap(t *testing.T) {
	table := loadTable(t)
	const size = 1<<20 - 200
	fill := func(unit string) string { return strings.Repeat(unit, size/len(unit)) }
	bomb := "a0: &a0 [x, x, x, x, x, x, x, x, x]\n"
	for i := '1'; i <= '9'; i++ {
		prev := string(i - 1)
		bomb += "a" + string(i) + ": &a" + string(i) + " [*a" + prev + strings.Repeat(", *a"+prev, 8) + "]\n"
	}
	head := "stonewrit: 1\nstone: a\n"
	for name, src := range map[string]string{
		"aliases within aliases": head + bomb,
		"many keys":              head + numbered("k%: 1\n", size),
		"one key many times":     head + fill("location: a\n"),
		"many anchors":           head + numbered("k%: &a% 1\n", size),
		"long list":              head + "tests: [" + fill("1,") + "]\n",
		"many tests":             head + "tests:\n" + fill("- {test: magnet, shows: nothing}\n"),
		"many readings":          head + "tests:\n- {test: refractometer, readings: [" + fill("[1.7,1.6],") + "]}\n",
		"long text":              head + "location: \"" + fill("x") + "\"\n",
		"long word":              head + "report: " + fill("x") + "\n",
		"long species":           head + "opinion: {species: " + fill("x") + "}\n",
		"many treatments":        head + "opinion: {species: corundum, treatments: [" + fill("heeted,") + "]}\n",
		"many minerals":          head + "tests:\n" + fill("- {test: hardness, scratches: ["+strings.Repeat("quarz,", 3000)+"]}\n"),
		"many features":          head + "tests:\n" + fill("- {test: magnification, sees: ["+strings.Repeat("silkk,", 3000)+"]}\n"),
		"long number":            head + "size: {depth: " + fill("9") + " mm}\n",
		"long decimals":          head + "size: {depth: 1." + fill("9") + " mm}\n",
		"long key":               head + fill("x") + ": 1\n",
		"comments":               head + fill("#\n"),
		"comment lines in a map": head + fill("  # c\n  k: 1\n"),
		"blank lines":            head + fill("\n"),
		"dashes":                 head + "tests:\n" + fill("- "),
		"question marks":         head + fill("? "),
		"open brackets":          head + "tests: " + strings.Repeat("[", 9000),
		"open brackets, closed":  head + "tests: " + strings.Repeat("[", 9000) + strings.Repeat("]", 9000),
		"folded text":            head + "location: >\n" + fill("  x\n\n"),
		"quotes":                 head + "location: " + fill("'"),
		"exclamation marks":      head + "location: " + fill("!"),
		"documents":              fill("---\n"),
		"tabs":                   head + fill("\t"),
	} {
		start := time.Now()
		_, problems := stone.Read("a.yaml", []byte(src), table)
		stone.Sniff([]byte(src))
		if spent := time.Since(start); spent > 30*time.Second {
			t.Errorf("%s: took %v", name, spent)
		} else if testing.Verbose() {
			t.Logf("%-24s %8v %d problems", name, spent.Round(time.Millisecond), len(problems))
		}
		told := 0
		for _, p := range problems {
			told += len(p.Message) + len(p.Hint) + len(p.Path)
		}
		if told > 4<<20 {
			t.Errorf("%s: %d bytes are told", name, told)
		}
		if !problems.Has(stone.Error) {
			t.Errorf("%s: is accepted", name)
		}
	}
}

func numbered(pattern string, size int) string {
	var b bytes.Buffer
	for i := 0; b.Len() < size-40; i++ {
		b.WriteString(strings.ReplaceAll(pattern, "%", string(rune('a'+i%26))+strings.Repeat("z", i/26%40)+string(rune('a'+i/1040%26))))
	}
	return b.String()
}
