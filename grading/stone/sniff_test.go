package stone_test

import (
	"strings"
	"testing"
	"unicode/utf16"

	"stonewrit/grading/stone"
)

func TestSniff(t *testing.T) {
	const bom = "\ufeff"
	for _, tt := range []struct{ src, want, why string }{
		{"stonewrit: 1\nstone: A\n", stone.SortStone, "plain"},
		{"stonewrit: 1\npiece: A\n", stone.SortPiece, "plain"},
		{"practice: {name: A}\n", stone.SortBench, "a bench file needs no version"},
		{"stonewrit: 1\ninstruments: {}\n", stone.SortBench, "and may have one"},
		{"examiners:\n  okafor: {name: A}\n", stone.SortBench, ""},
		{"stonewrit: 1\n", stone.SortStone, "what is missing is told"},
		{"# stonewrit: 1\nname: A\n", stone.SortOther, "a comment is no key"},
		{"", stone.SortOther, "empty"},
		{"# nothing\n", stone.SortOther, "comment alone"},
		{"- stonewrit: 1\n", stone.SortOther, "a list"},
		{"name: |\n  stonewrit: 1\n", stone.SortOther, "inside a text"},
		{"other: {stonewrit: 1}\n", stone.SortOther, "not at the top"},
		{"stone: A\n", stone.SortOther, "without stonewrit: it is none of ours"},
		{"# a ruby\n\nstonewrit: 1 # version\nstone: A\n", stone.SortStone, "comments around"},
		{"---\nstonewrit: 1\nstone: A\n", stone.SortStone, "document mark"},
		{"%YAML 1.2\n---\nstonewrit: 1\nstone: A\n", stone.SortStone, "directive"},
		{"\"stonewrit\": 1\n'stone': A\n", stone.SortStone, "quoted keys"},
		{"{\"stonewrit\": 1, \"piece\": \"A\"}\n", stone.SortPiece, "written as JSON"},
		{"  stonewrit: 1\n  piece: A\n", stone.SortPiece, "indented as a whole"},
		{"stonewrit : 1\nstone : A\n", stone.SortStone, "space before the colon"},
		{"stonewrit: 1\r\npiece: A\r\n", stone.SortPiece, "lines of Windows"},
		{bom + "stonewrit: 1\nstone: A\n", stone.SortStone, "byte order mark"},
		{bom + "practice: {name: A}\r\n", stone.SortBench, "both"},
		{"stone: A\nstonewrit: 1\n", stone.SortStone, "any order"},
		{"stonewrit: 1\nstone: A\npiece: B\n", stone.SortStone, "both: reading tells that piece is no key of a stone file"},
		{"stonewrit: 1\nstone: A\ninstruments: {}\n", stone.SortStone, "a stone with a key too many"},
		{"stonewrit: 1\npiece: A\nsize: {ring: \"54 mm\n", stone.SortPiece, "not YAML, told by its margin"},
		{"\"stonewrit\": 1\n'piece': A\nsize: [\n", stone.SortPiece, "not YAML, quoted keys"},
		{bom + "stonewrit: 1\r\nstone: A\r\nlocation: @x\r\n", stone.SortStone, "not YAML, with mark and lines of Windows"},
		{"practice: {name: A\n", stone.SortBench, "not YAML, bench"},
		{"name: @x\n# stonewrit: 1\n", stone.SortOther, "not YAML, and only a comment speaks of us"},
		{"stonewrit: 1\nstone: A\n" + strings.Repeat("# filler\n", 10000), stone.SortStone, "larger than what is sniffed"},
		{"\x00\x01\x02", stone.SortOther, "binary"},
		{"\xff\xd8\xff\xe0 JFIF", stone.SortOther, "a picture"},
	} {
		if got := stone.Sniff([]byte(tt.src)); got != tt.want {
			t.Errorf("%.60q: got %q, want %q: %s", tt.src, got, tt.want, tt.why)
		}
	}
}

// However the top of a file is written, its reference is the one that reading
// finds: two files of one reference must not pass as two stones.
func TestHead(t *testing.T) {
	const rest = "report: note\nexamined: 2026-10-14\nexaminer: okafor\nopinion: {species: corundum}\n"
	for _, tt := range []struct{ src, want, why string }{
		{"stonewrit: 1\nstone: HL-0412\n" + rest, "HL-0412", "the usual head"},
		{"# a ruby\n\nstonewrit: 1 # version\n\n# own\nstone: HL/1.b_c  # reference\n\n" + rest, "HL/1.b_c", "comments"},
		{"\ufeffstonewrit: 1\r\nstone: A-1\r\nreport: note\r\n" + rest[13:], "A-1", "mark and lines of Windows"},
		{"stonewrit: 1\nstone: A\n  B\n" + rest, "A B", "a second line goes on with it"},
		{"stonewrit: 1\nstone: A\n\n  B\n" + rest, "A\nB", "also after an empty line"},
		{"stonewrit: 1\nstone: A B\n" + rest, "A B", "two words"},
		{"stonewrit: 1\nstone: A#1\n" + rest, "A#1", "no comment without a space before it"},
		{"stonewrit: 1\nstone: 'A-1'\n" + rest, "A-1", "quoted"},
		{"stonewrit: 1\nstone: 0412\n" + rest, "0412", "digits stay as they are written"},
		{rest + "stonewrit: 1\nstone: A\n", "A", "at the end"},
		{rest + "stone: A\nstonewrit: 1\n", "A", "in another order"},
		{"{stonewrit: 1, stone: A, report: note, examined: 2026-10-14, examiner: okafor, opinion: {species: corundum}}", "A", "written as JSON"},
	} {
		s, problems := stone.Read("a.yaml", []byte(tt.src), loadTable(t))
		report(t, tt.why, problems)
		if got := stone.Head([]byte(tt.src)); got.Sort != stone.SortStone || got.Reference != tt.want || s.Reference != tt.want {
			t.Errorf("%.60q: the head says %q, reading %q, want %q: %s", tt.src, got.Reference, s.Reference, tt.want, tt.why)
		}
	}
}

// Some editors of Windows save "Unicode", which is UTF-16 with a mark.
func TestUTF16(t *testing.T) {
	text := minimal("opinion: {species: corundum}\nlocation: \"Köln, 2 ct Tüte\"\n")
	for name, big := range map[string]bool{"little end first": false, "big end first": true} {
		src := []byte{0xff, 0xfe}
		if big {
			src = []byte{0xfe, 0xff}
		}
		for _, u := range utf16.Encode([]rune(text)) {
			if big {
				src = append(src, byte(u>>8), byte(u))
			} else {
				src = append(src, byte(u), byte(u>>8))
			}
		}
		if got := stone.Sniff(src); got != stone.SortStone {
			t.Errorf("%s: sniffed as %q", name, got)
		}
		s, problems := stone.Read("a.yaml", src, loadTable(t))
		report(t, name, problems)
		if s.Location != "Köln, 2 ct Tüte" {
			t.Errorf("%s: got %q", name, s.Location)
		}
	}
}
