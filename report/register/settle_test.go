package register

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// interrupt leaves an entry as a kill after the commit does: pending, and its
// PDF staged, or not even that.
func (p *practice) interrupt(done Issuance, staged bool) {
	p.t.Helper()
	part := filepath.Join(p.folder, partName(done.Entry.File))
	if err := os.Rename(done.Path, part); err != nil {
		p.t.Fatal(err)
	}
	if !staged {
		os.Remove(part)
	}
	err := p.book.store.write(p.t.Context(), func(w *tx) error { return w.insertPending(done.Entry.Event, place{folder: p.folder}) })
	if err != nil {
		p.t.Fatal(err)
	}
}

func TestSettle(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		for _, staged := range []bool{true, false} {
			p := newPractice(t)
			p.issue("S-1", "x")
			cut := p.issue("S-2", "y")
			p.interrupt(cut, staged)
			if found := p.audit(); !slices.ContainsFunc(found, func(s string) bool {
				return strings.HasPrefix(s, cut.Entry.Number.String()+", event 2") && strings.Contains(s, "unfinished issue")
			}) {
				t.Errorf("staged %v: the audit does not say what is unfinished: %q", staged, found)
			}
			if e, err := p.book.Show(t.Context(), cut.Entry.Number); err != nil || e.State != Reserved {
				t.Errorf("staged %v: state %q, %v, want reserved", staged, e.State, err)
			}
			settled, err := p.book.Settle(t.Context(), p.folder)
			if err != nil || len(settled) != 1 || settled[0].Entry.Number != cut.Entry.Number || settled[0].Err != nil {
				t.Fatalf("staged %v: settled %v, %v", staged, settled, err)
			}
			p.wantFile(cut.Entry)
			if names := p.names(); len(names) != 2 {
				t.Errorf("staged %v: the folder holds %q", staged, names)
			}
			p.wantClean()
			before := snapshot(t, filepath.Dir(p.folder))
			if settled, err := p.book.Settle(t.Context(), p.folder); err != nil || len(settled) != 0 {
				t.Errorf("staged %v: settled again: %v, %v", staged, settled, err)
			}
			if after := snapshot(t, filepath.Dir(p.folder)); after != before {
				t.Errorf("settling nothing changed the files: was\n%sis\n%s", before, after)
			}
		}
	})
}

func TestIssuingAgainSettles(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		cut := p.issue("S-1", "x")
		p.interrupt(cut, true)
		again := p.issue("S-1", "x")
		if again.Outcome != Restored || again.Entry.Number != cut.Entry.Number || again.Entry.State != Issued {
			t.Errorf("got %v %v %v", again.Outcome, again.Entry.Number, again.Entry.State)
		}
		p.wantFile(cut.Entry)
		p.wantClean()
	})
}

func TestSettleCannot(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		cut := p.issue("S-1", "x")
		p.interrupt(cut, true)
		if err := os.WriteFile(cut.Path, []byte("mine"), 0o600); err != nil {
			t.Fatal(err)
		}
		settled, err := p.book.Settle(t.Context(), p.folder)
		if err != nil || len(settled) != 1 || !errors.Is(settled[0].Err, ErrOtherFile) {
			t.Errorf("another file in the place: %v, %v", settled, err)
		}
		if err := os.RemoveAll(p.folder); err != nil {
			t.Fatal(err)
		}
		settled, err = p.book.Settle(t.Context(), p.folder)
		if err != nil || len(settled) != 1 || !errors.Is(settled[0].Err, os.ErrNotExist) {
			t.Errorf("the folder is gone: %v, %v", settled, err)
		}
		if _, err := os.Stat(p.folder); err == nil {
			t.Error("a folder that somebody removed was made again")
		}
	})
}

func TestSweepLeftover(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.issue("S-1", "x")
		next, err := NewNumber("HL", 2026, 2)
		if err != nil {
			t.Fatal(err)
		}
		part := filepath.Join(p.folder, partName(next.String()+pdfSuffix))
		if err := os.WriteFile(part, []byte("cut sho"), 0o600); err != nil {
			t.Fatal(err)
		}
		if found := p.audit(); len(found) != 1 || !strings.Contains(found[0], "leftover") {
			t.Errorf("the audit found %q, want the leftover", found)
		}
		if _, err := p.book.Settle(t.Context(), p.folder); err != nil {
			t.Fatal(err)
		}
		p.wantClean()
		os.WriteFile(part, []byte("cut sho"), 0o600)
		p.wantFile(p.issue("S-2", "y").Entry) // without settling
		p.wantClean()
	})
}

func TestUndelivered(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		hasty := p.open(Options{})
		req := p.request("S-1", "x")
		var done Issuance
		err := hasty.store.write(t.Context(), func(w *tx) error { // the first half of an issue alone
			var pdf []byte
			var err error
			if done.Entry, pdf, err = hasty.enter(w, req, Number{}, "", render); err != nil {
				return err
			}
			return stageNew(done.Entry, pdf, req.Folder)
		})
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Join(p.folder, done.Entry.File)
		os.WriteFile(name, []byte("mine"), 0o600) // put there between commit and naming
		pdf, err := p.book.Document(t.Context(), done.Entry.Number)
		if err != nil {
			t.Fatal(err)
		}
		if err := hasty.hand(t.Context(), done.Entry, pdf, p.folder); !errors.Is(err, ErrOtherFile) {
			t.Errorf("got %v, want ErrOtherFile", err)
		}
		if got, _ := os.ReadFile(name); string(got) != "mine" {
			t.Error("the other file was overwritten")
		}
		os.Remove(name)
		if again := p.issue("S-1", "x"); again.Entry.Number != done.Entry.Number {
			t.Errorf("issued again: %s, want %s", again.Entry.Number, done.Entry.Number)
		}
		p.wantClean()
	})
}

func TestRestore(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		e := p.issue("S-1", "x").Entry
		if _, err := p.book.Void(t.Context(), e.Number, "slip"); err != nil {
			t.Fatal(err)
		}
		if written, err := p.book.Restore(t.Context(), e.Number, p.folder); err != nil || written {
			t.Errorf("there already: %v, %v", written, err)
		}
		os.Remove(filepath.Join(p.folder, e.File))
		if written, err := p.book.Restore(t.Context(), e.Number, p.folder); err != nil || !written {
			t.Errorf("lost: %v, %v", written, err)
		}
		p.wantFile(e) // of a void number, too
		p.sql(free, `UPDATE documents SET gzip = substr(gzip, 1, 40)`)
		os.Remove(filepath.Join(p.folder, e.File))
		if _, err := p.book.Restore(t.Context(), e.Number, p.folder); !errors.Is(err, ErrStored) {
			t.Errorf("damaged copy: got %v, want ErrStored", err)
		}
		if names := p.names(); len(names) > 0 {
			t.Errorf("a damaged copy was written: %q", names)
		}
	})
}

// TestHotJournal reads a register as a power cut in the middle of a write
// leaves it: file and journal are copied while a transaction is under way.
func TestHotJournal(t *testing.T) {
	p := newPractice(t)
	first := p.issue("S-1", "x").Entry
	p.book.Close()
	db, err := sql.Open("sqlite", p.path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	ctx := context.Background()
	for _, s := range []string{
		`PRAGMA cache_size = 1`, // so that pages reach the file before the commit
		`BEGIN IMMEDIATE`,
		`INSERT INTO pending VALUES (1, '', '` + strings.Repeat("x", 100_000) + `')`,
		`UPDATE entries SET stone = 'half written'`,
		`INSERT INTO events VALUES (2, '', '', '` + strings.Repeat("x", 100_000) + `', '')`,
	} {
		if _, err := db.ExecContext(ctx, s); err != nil {
			t.Fatal(err)
		}
	}
	cut := *p
	cut.path = filepath.Join(t.TempDir(), "register.db")
	for _, suffix := range []string{"", "-journal"} {
		data, err := os.ReadFile(p.path + suffix)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(cut.path+suffix, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	before := snapshot(t, filepath.Dir(cut.path))
	if _, err := OpenReader(ctx, cut.path); !errors.Is(err, ErrUnsettled) || Hint(err) == "" {
		t.Errorf("reading: got %v, want ErrUnsettled with a hint", err)
	}
	if after := snapshot(t, filepath.Dir(cut.path)); after != before {
		t.Error("reading changed the files")
	}
	cut.book = cut.open(Options{})
	if e, err := cut.book.Show(ctx, first.Number); err != nil || e.Stone != "S-1" {
		t.Errorf("after opening for writing: stone %q, %v, want S-1", e.Stone, err)
	}
	cut.wantClean()
}
