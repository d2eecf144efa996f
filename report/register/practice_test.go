package register

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"
)

// A practice is a register and a folder for a test, with a clock that the test
// sets.
type practice struct {
	t      testing.TB
	path   string
	folder string
	office string
	now    time.Time
	book   *Book
}

// open opens the register with what is missing in the options filled in.
func (p *practice) open(o Options) *Book {
	p.t.Helper()
	if o.Prefix == "" {
		o.Prefix = "HL"
	}
	if o.Zone == nil {
		o.Zone = time.UTC
	}
	if o.Now == nil {
		o.Now = func() time.Time { return p.now }
	}
	if o.Rand == nil {
		o.Rand = rand.NewChaCha8(Sum([]byte(p.t.Name() + fmt.Sprint(os.Getpid(), o))))
	}
	b, err := Open(p.t.Context(), p.path, o)
	if err != nil {
		p.t.Fatal(err)
	}
	p.t.Cleanup(func() { b.Close() })
	return b
}

func (p *practice) reader() *Reader {
	p.t.Helper()
	r, err := OpenReader(p.t.Context(), p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	p.t.Cleanup(func() { r.Close() })
	return r
}

// request asks for a number for a stone of which text is the content.
func (p *practice) request(stone, text string) Request {
	return Request{
		Stone: stone, Kind: Appraisal, Examined: Span{First: Day{2026, 10, 13}, Last: Day{2026, 10, 14}},
		Examiner: "okafor", Program: "0.1.0", Data: "2026-10", Folder: p.folder,
		Content: Content{Stone: Sum([]byte(text)), Photos: SumList(), Letterhead: Sum([]byte("letterhead"))},
	}
}

func (p *practice) issue(stone, text string) Issuance {
	p.t.Helper()
	done, err := p.book.Issue(p.t.Context(), p.request(stone, text), render)
	if err != nil {
		p.t.Fatal(err)
	}
	return done
}

// render makes bytes that depend on all that is handed in.
func render(n Number, id uuid.UUID, at time.Time) ([]byte, error) {
	head := fmt.Sprintf("%%PDF-1.7\n%s %s %s\n", n, id, at.Format(time.RFC3339))
	return []byte(head + strings.Repeat(id.String(), 500)), nil
}

func (p *practice) entries() []Entry {
	p.t.Helper()
	list, err := p.book.List(p.t.Context(), Filter{})
	if err != nil {
		p.t.Fatal(err)
	}
	return list
}

// audit returns the findings as lines.
func (p *practice) audit() []string {
	p.t.Helper()
	a, err := p.reader().Audit(context.Background(), Shelf{Folder: p.folder, Office: p.office})
	if err != nil {
		p.t.Fatal(err)
	}
	var lines []string
	for _, f := range a.Findings {
		lines = append(lines, f.String())
	}
	return lines
}

func (p *practice) wantClean() {
	p.t.Helper()
	if found := p.audit(); len(found) > 0 {
		p.t.Errorf("the audit found:\n%s", strings.Join(found, "\n"))
	}
}

// wantFindings checks that an audit found these things and no others, each with
// its words.
func wantFindings(t testing.TB, found []string, want [][]string) {
	t.Helper()
	if len(found) != len(want) {
		t.Errorf("the audit found %d things, want %d:\n%s", len(found), len(want), strings.Join(found, "\n"))
		return
	}
	for i, words := range want {
		for _, word := range words {
			if !strings.Contains(found[i], word) {
				t.Errorf("finding %d does not say %q: %s", i, word, found[i])
			}
		}
	}
}

// wantFile checks that a file holds what the register says was issued.
func (p *practice) wantFile(e Entry) {
	p.t.Helper()
	got, err := os.ReadFile(filepath.Join(p.folder, e.File))
	if err != nil {
		p.t.Error(err)
		return
	}
	want, err := p.book.Document(p.t.Context(), e.Number)
	if err != nil {
		p.t.Fatal(err)
	}
	if !bytes.Equal(got, want) || Sum(got) != e.PDF || int64(len(got)) != e.Size {
		p.t.Errorf("%s: the file is not what was issued", e.File)
	}
}

// names returns the files in the folder.
func (p *practice) names() []string {
	p.t.Helper()
	list, err := os.ReadDir(p.folder)
	if err != nil && !os.IsNotExist(err) {
		p.t.Fatal(err)
	}
	var names []string
	for _, d := range list {
		names = append(names, d.Name())
	}
	return names
}
