package stone_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"stonewrit/grading/stone"
)

var update = flag.Bool("update", false, "rewrite the answers of testdata/mistakes*.txtar")

const (
	mistakes      = "testdata/mistakes.txtar"
	pieceMistakes = "testdata/mistakes-piece.txtar"
)

// Every mistake of testdata/mistakes.txtar is told with exactly these words at
// exactly this place.
func TestMistakes(t *testing.T) { tellMistakes(t, mistakes, 60) }

// Every mistake of testdata/mistakes-piece.txtar likewise.
func TestPieceMistakes(t *testing.T) { tellMistakes(t, pieceMistakes, 30) }

func tellMistakes(t *testing.T, name string, due int) {
	archive, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	table := loadTable(t)
	bench, _ := stone.ReadBench("bench.yaml", readFile(t, "testdata/bench.yaml"), table)
	if len(archive.Files) < 2*due {
		t.Fatalf("%d cases, at least %d are due", len(archive.Files)/2, due)
	}
	for i := 0; i+1 < len(archive.Files); i += 2 {
		given, told := archive.Files[i], &archive.Files[i+1]
		t.Run(given.Name, func(t *testing.T) {
			if told.Name != given.Name+": told" {
				t.Fatalf("followed by %q", told.Name)
			}
			src := headed(given, stoneHead)
			if name == pieceMistakes {
				src = headed(given, pieceHead)
			}
			var problems stone.Problems
			switch {
			case strings.HasSuffix(given.Name, ":bench"):
				_, problems = stone.ReadBench("bench.yaml", src, table)
			case name == pieceMistakes:
				var p *stone.Piece
				p, problems = stone.ReadPiece("a.yaml", src, table)
				problems = append(problems, stone.AgainstPiece(p, bench, today())...)
			default:
				var s *stone.Stone
				s, problems = stone.Read("a.yaml", src, table)
				problems = append(problems, stone.Against(s, bench, today())...)
			}
			problems.Sort()
			placesInside(t, src, problems)
			got := tell(problems)
			if *update {
				told.Data = []byte(got)
			} else if diff := cmp.Diff(string(told.Data), got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if got == "" {
				t.Error("nothing is told")
			}
		})
	}
	if *update {
		if err := os.WriteFile(name, txtar.Format(archive), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

const (
	stoneHead = "stonewrit: 1\nstone: T-1\nreport: note\nexamined: 2026-10-14\nexaminer: okafor\nopinion: {species: corundum}\n"
	pieceHead = "stonewrit: 1\npiece: P-1\nkind: ring\nreport: appraisal\nexamined: 2026-10-14\nexaminer: okafor\n"
)

// headed puts a head before a case, without the keys that the case has itself.
func headed(f txtar.File, head string) []byte {
	if strings.HasSuffix(f.Name, ":raw") || strings.HasSuffix(f.Name, ":bench") {
		return f.Data
	}
	for _, key := range []string{"examined", "examiner", "opinion", "kind"} {
		if regexp.MustCompile("(?m)^" + key + ":").Match(f.Data) {
			head = regexp.MustCompile("(?m)^"+key+":.*\n").ReplaceAllString(head, "")
		}
	}
	return append([]byte(head), f.Data...)
}

func tell(problems stone.Problems) string {
	var b strings.Builder
	for _, p := range problems {
		severity := ""
		if p.Severity != stone.Error {
			severity = string(p.Severity) + ": "
		}
		fmt.Fprintf(&b, "%d:%d: %s%s%s\n", p.Line, p.Column, severity, prefixed(p.Path), p.Message)
		if p.Hint != "" {
			fmt.Fprintf(&b, "  hint: %s\n", p.Hint)
		}
	}
	return b.String()
}

func prefixed(path string) string {
	if path == "" {
		return ""
	}
	return path + ": "
}

// placesInside checks that every place lies in the file: a line of it, and a
// column at most one behind its last character.
func placesInside(t *testing.T, src []byte, problems stone.Problems) {
	t.Helper()
	if bytes.HasPrefix(src, []byte{0xff, 0xfe}) || bytes.HasPrefix(src, []byte{0xfe, 0xff}) {
		return // UTF-16: its lines are those of the text, not of the bytes
	}
	// What breaks lines: YAML 1.1, 4.2; the reader keeps to that version.
	lines := regexp.MustCompile(`\r\n|[\r\n\x{85}\x{2028}\x{2029}]`).Split(strings.TrimPrefix(string(src), "\ufeff"), -1)
	for _, p := range problems {
		if p.Line < 1 || p.Line > len(lines) {
			t.Errorf("line %d of %d: %s", p.Line, len(lines), p.Message)
			continue
		}
		if runes := len([]rune(lines[p.Line-1])); p.Column < 1 || p.Column > runes+1 {
			t.Errorf("column %d of %d in line %d: %s", p.Column, runes, p.Line, p.Message)
		}
	}
}
