package register

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/uuid"
)

func TestIssue(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		var seen struct {
			n  Number
			id uuid.UUID
			at time.Time
		}
		var pdf []byte
		req := p.request("HL-0412", "ruby")
		done, err := p.book.Issue(t.Context(), req, func(n Number, id uuid.UUID, at time.Time) ([]byte, error) {
			seen.n, seen.id, seen.at = n, id, at
			var err error
			pdf, err = render(n, id, at)
			return pdf, err
		})
		if err != nil {
			t.Fatal(err)
		}
		e := done.Entry
		want := Entry{
			Number: Number{prefix: "HL", year: 2026, ordinal: 1}, UUID: seen.id, Stone: "HL-0412", Kind: Appraisal,
			Examined: req.Examined, Examiner: "okafor", Issued: p.now, Content: req.Content,
			PDF: Sum(pdf), Size: int64(len(pdf)), File: "HL-2026-000001-16.pdf", Program: "0.1.0", Data: "2026-10",
			State: Issued, Event: 1, Hash: e.Hash,
		}
		if diff := cmp.Diff(want, e, cmp.Comparer(func(a, b Number) bool { return a == b })); diff != "" {
			t.Errorf("entry (-want +got):\n%s", diff)
		}
		if seen.n != e.Number || !seen.at.Equal(e.Issued) || e.Hash.IsZero() {
			t.Errorf("rendered %v at %v, entered %v at %v with hash %v", seen.n, seen.at, e.Number, e.Issued, e.Hash)
		}
		if done.Outcome != New || done.Path != filepath.Join(p.folder, e.File) {
			t.Errorf("got %q at %s", done.Outcome, done.Path)
		}
		if v := e.UUID.Version(); v != 4 {
			t.Errorf("UUID version %d, want 4 (random)", v)
		}
		p.wantFile(e)
		if shown, err := p.book.Show(t.Context(), e.Number); err != nil || len(differences(e, shown)) > 0 || shown.State != Issued {
			t.Errorf("show: %v, %v %v", err, differences(e, shown), shown.State)
		}
		private := []string{done.Path}
		if !p.onServer() {
			private = append(private, p.path)
		}
		for _, name := range private {
			if info, err := os.Stat(name); err != nil || info.Mode().Perm() != 0o600 {
				t.Errorf("%s: %v, %v, want mode 0600: it names a client", name, info.Mode(), err)
			}
		}
		if got := p.names(); !slices.Equal(got, []string{e.File}) {
			t.Errorf("the folder holds %q", got)
		}
		p.wantClean()
	})
}

func TestIssueAgain(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first := p.issue("HL-0412", "ruby")
		never := func(Number, uuid.UUID, time.Time) ([]byte, error) {
			t.Error("rendered again")
			return nil, nil
		}
		p.now = p.now.AddDate(1, 0, 0)
		req := p.request("HL-0412", "ruby")
		req.Program, req.Data = "0.2.0", "2027-01" // a newer program makes no change of the stone
		want := func(outcome Outcome) {
			t.Helper()
			done, err := p.book.Issue(t.Context(), req, never)
			if err != nil || done.Outcome != outcome || done.Entry.Number != first.Entry.Number {
				t.Fatalf("got %v %v, %v; want %v %v", done.Entry.Number, done.Outcome, err, first.Entry.Number, outcome)
			}
			p.wantFile(first.Entry)
		}
		want(Unchanged)
		if err := os.Remove(first.Path); err != nil {
			t.Fatal(err)
		}
		want(Restored)
		req.Folder = filepath.Join(filepath.Dir(p.folder), "elsewhere")
		p.folder = req.Folder
		want(Restored)
		if n := len(p.entries()); n != 1 {
			t.Errorf("%d entries, want 1", n)
		}
		p.wantClean()
	})
}

func TestIssueOverAnAlteredFile(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first := p.issue("HL-0412", "ruby")
		altered := []byte("altered")
		if err := os.WriteFile(first.Path, altered, 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := p.book.Issue(t.Context(), p.request("HL-0412", "ruby"), render)
		var file *FileError
		if !errors.As(err, &file) || file.Path != first.Path || !errors.Is(err, ErrOtherFile) || Hint(err) == "" {
			t.Errorf("got %v, want a FileError for %s", err, first.Path)
		}
		if got, _ := os.ReadFile(first.Path); !bytes.Equal(got, altered) {
			t.Error("the altered file was overwritten")
		}
	})
}

func TestChangedStone(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first := p.issue("HL-0412", "ruby")
		other := Sum([]byte("other"))
		for _, row := range []struct {
			name   string
			change func(*Content)
			parts  []string
		}{
			{"stone file", func(c *Content) { c.Stone = other }, []string{"stone file"}},
			{"a photo", func(c *Content) { c.Photos = SumList(other) }, []string{"photos"}},
			{"letterhead and stone", func(c *Content) { c.Stone, c.Letterhead = other, other }, []string{"stone file", "letterhead"}},
		} {
			req := p.request("HL-0412", "ruby")
			row.change(&req.Content)
			_, err := p.book.Issue(t.Context(), req, render)
			var changed *ChangedError
			if !errors.As(err, &changed) || !errors.Is(err, ErrChanged) {
				t.Fatalf("%s: got %v, want a ChangedError", row.name, err)
			}
			if changed.Number != first.Entry.Number || !slices.Equal(changed.Parts, row.parts) {
				t.Errorf("%s: got %v %q, want %v %q", row.name, changed.Number, changed.Parts, first.Entry.Number, row.parts)
			}
			if hint := Hint(err); !strings.Contains(hint, "amend HL-2026-000001-16") {
				t.Errorf("%s: hint %q does not name the number to amend", row.name, hint)
			}
		}
		if n := len(p.entries()); n != 1 {
			t.Errorf("%d entries, want 1", n)
		}
	})
}

// TestNoNumberTaken goes through what can stop an issue before its number is
// committed. The number must stay free and no file be left.
func TestNoNumberTaken(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		boom := errors.New("the font lacks a character")
		for _, row := range []struct {
			name    string
			attempt func(t *testing.T, p *practice) error
			want    error
		}{
			{"render fails", func(t *testing.T, p *practice) error {
				_, err := p.book.Issue(t.Context(), p.request("S-1", "x"),
					func(Number, uuid.UUID, time.Time) ([]byte, error) { return nil, boom })
				return err
			}, boom},
			{"render panics", func(t *testing.T, p *practice) (err error) {
				defer func() {
					if recover() != nil {
						err = boom
					}
				}()
				p.book.Issue(t.Context(), p.request("S-1", "x"),
					func(Number, uuid.UUID, time.Time) ([]byte, error) { panic(boom) })
				return nil
			}, boom},
			{"context ends", func(t *testing.T, p *practice) error {
				ctx, cancel := context.WithCancel(t.Context())
				_, err := p.book.Issue(ctx, p.request("S-1", "x"), func(n Number, id uuid.UUID, at time.Time) ([]byte, error) {
					cancel()
					return render(n, id, at)
				})
				return err
			}, context.Canceled},
			{"request incomplete", func(t *testing.T, p *practice) error {
				req := p.request("S-1", "x")
				req.Examiner = " "
				_, err := p.book.Issue(t.Context(), req, render)
				return err
			}, ErrRequest},
			{"no folder can be made", func(t *testing.T, p *practice) error {
				req := p.request("S-1", "x")
				req.Folder = filepath.Join("issue.go", "issued") // below a file
				_, err := p.book.Issue(t.Context(), req, render)
				return err
			}, nil},
			{"another file in the place", func(t *testing.T, p *practice) error {
				name := filepath.Join(p.folder, "HL-2026-000001-16.pdf")
				os.Mkdir(p.folder, 0o700)
				if err := os.WriteFile(name, []byte("mine"), 0o600); err != nil {
					t.Fatal(err)
				}
				defer func() {
					if got, _ := os.ReadFile(name); string(got) != "mine" {
						t.Error("the other file was overwritten")
					}
					os.Remove(name)
				}()
				_, err := p.book.Issue(t.Context(), p.request("S-1", "x"), render)
				return err
			}, ErrOtherFile},
			{"a link in the place", func(t *testing.T, p *practice) error {
				name := filepath.Join(p.folder, "HL-2026-000001-16.pdf")
				os.Mkdir(p.folder, 0o700)
				if err := os.Symlink(p.path, name); err != nil {
					t.Skip(err)
				}
				defer os.Remove(name)
				_, err := p.book.Issue(t.Context(), p.request("S-1", "x"), render)
				return err
			}, ErrOtherFile},
			{"a reader bars the commit", func(t *testing.T, p *practice) error {
				hasty := p.open(Options{Wait: 50 * time.Millisecond})
				var err error
				p.book.store.read(t.Context(), func(r *tx) error {
					if _, err := r.list("", "event"); err != nil {
						t.Error(err)
					}
					_, err = hasty.Issue(t.Context(), p.request("S-1", "x"), render)
					return nil
				})
				return err
			}, ErrBusy},
			{"another writer at work", func(t *testing.T, p *practice) error {
				hasty := p.open(Options{Wait: 50 * time.Millisecond})
				var err error
				p.book.store.write(t.Context(), func(*tx) error {
					_, err = hasty.Issue(t.Context(), p.request("S-1", "x"), render)
					return nil
				})
				return err
			}, ErrBusy},
		} {
			t.Run(row.name, func(t *testing.T) {
				p := newPractice(t)
				if row.name == "a reader bars the commit" && p.onServer() {
					t.Skip("a server's readers bar nobody")
				}
				err := row.attempt(t, p)
				if err == nil || row.want != nil && !errors.Is(err, row.want) {
					t.Fatalf("got %v, want %v", err, row.want)
				}
				if n := len(p.entries()); n != 0 {
					t.Errorf("%d entries after it, want none", n)
				}
				if names := p.names(); len(names) > 0 {
					t.Errorf("left in the folder: %q", names)
				}
				if next := p.issue("S-2", "y"); next.Entry.Number.Ordinal() != 1 {
					t.Errorf("the next number is %s, want the first", next.Entry.Number)
				}
				p.wantClean()
			})
		}
	})
}

func TestSeriesOfTheYear(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.book = p.open(Options{Zone: time.FixedZone("", 13*3600)})
		for _, row := range []struct {
			stone, at, want string
			why             string
		}{
			{"S-1", "2026-12-31T10:59:59Z", "HL-2026-000001-16", "23:59:59 in the practice"},
			{"S-2", "2026-12-31T11:00:00Z", "HL-2027-000001-32", "midnight in the practice, still 2026 in UTC"},
			{"S-3", "2027-01-05T12:00:00Z", "HL-2027-000002-29", "the series goes on"},
		} {
			at, err := time.Parse(time.RFC3339, row.at)
			if err != nil {
				t.Fatal(err)
			}
			p.now = at
			e := p.issue(row.stone, row.stone).Entry
			if e.Number.String() != row.want {
				t.Errorf("%s at %s: got %s, want %s: %s", row.stone, row.at, e.Number, row.want, row.why)
			}
			if _, offset := e.Issued.Zone(); offset != 13*3600 || !e.Issued.Equal(at) {
				t.Errorf("%s: issued %s, want %s in the practice's zone", row.stone, e.Issued, row.at)
			}
		}
		p.wantClean()
	})
}

func TestClockSetBack(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.issue("S-1", "x")
		p.now = p.now.Add(-clockSlack)
		p.issue("S-2", "x") // as far as clocks of one office may differ
		p.now = p.now.AddDate(-1, 0, 0)
		_, err := p.book.Issue(t.Context(), p.request("S-3", "x"), render)
		if !errors.Is(err, ErrClock) || !strings.Contains(err.Error(), "2025-10-14T09:20:00Z") {
			t.Errorf("got %v, want ErrClock with both times", err)
		}
		p.book = p.open(Options{AllowEarlier: true})
		if e := p.issue("S-3", "x").Entry; e.Number.Year() != 2025 || e.Number.Ordinal() != 1 {
			t.Errorf("got %s, want the first number of 2025", e.Number)
		}
		p.wantClean()
	})
}

func TestSeriesFull(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.issue("S-1", "x")
		p.sql(`UPDATE entries SET ordinal = 999999`)
		if _, err := p.book.Issue(t.Context(), p.request("S-2", "x"), render); !errors.Is(err, ErrSeriesFull) {
			t.Errorf("got %v, want ErrSeriesFull", err)
		}
	})
}
