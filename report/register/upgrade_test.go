package register

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"
	"time"
)

// TestReadVersion1 reads a register of version 1, which changes nothing of it,
// and goes on reading when another brings it up to date.
func TestReadVersion1(t *testing.T) {
	everyOldStore(t, func(t *testing.T, p *practice) {
		before := snapshot(t, filepath.Dir(p.folder))
		r := p.reader()
		p.wantOld(r)
		if found := p.audit(); len(found) != 2 || !strings.Contains(strings.Join(found, ""), "missing PDF") {
			t.Errorf("audited with an empty folder: %q, want two missing PDFs", found)
		}
		if v := p.tableVersion(); v != 1 {
			t.Errorf("after reading the tables are of version %d, want 1", v)
		}
		if after := snapshot(t, filepath.Dir(p.folder)); after != before {
			t.Errorf("the folder was %s, is %s", before, after)
		}

		p.open(Options{Office: "north"}).Close()
		p.wantOld(r)
		p.book = p.open(Options{Office: "north"})
		p.issue("HL-0703", "x")
		if list, err := r.List(t.Context(), Filter{}); err != nil || len(list) != 3 || list[2].Office != "north" {
			t.Errorf("the reader from before sees %v, %v; want the third entry of north", list, err)
		}
	})
}

// wantOld checks that a reader sees what was issued under version 1.
func (p *practice) wantOld(r *Reader) {
	p.t.Helper()
	list, err := r.List(p.t.Context(), Filter{})
	if err != nil {
		p.t.Fatal(err)
	}
	if len(list) != 2 {
		p.t.Fatalf("%d entries, want 2", len(list))
	}
	for i, want := range []struct {
		number, stone string
		state         State
	}{{"HL-2026-000001-16", "HL-0701", Issued}, {"HL-2026-000002-13", "HL-0702", Void}} {
		if e := list[i]; e.Number.String() != want.number || e.Stone != want.stone || e.State != want.state || e.Office != "" {
			p.t.Errorf("entry %d is %s, %s, %s, of office %q", i+1, e.Number, e.Stone, e.State, e.Office)
		}
	}
}

// TestUpgrade opens a register of version 1 for writing and goes on with it.
func TestUpgrade(t *testing.T) {
	everyOldStore(t, func(t *testing.T, p *practice) {
		events, documents := p.rowsOf("events"), p.rowsOf("documents")
		p.book = p.open(Options{})
		if v := p.tableVersion(); v != 2 {
			t.Errorf("the tables are of version %d, want 2", v)
		}
		p.wantOld(p.book.Reader)
		for _, e := range p.entries() {
			if _, err := p.book.Restore(t.Context(), e.Number, p.folder); err != nil {
				t.Fatal(err)
			}
			p.wantFile(e)
		}
		p.wantClean()

		next := p.issue("HL-0703", "x").Entry
		if next.Number.String() != "HL-2026-000003-10" || next.Event != 4 {
			t.Errorf("the next number is %s by event %d, want HL-2026-000003-10 by event 4", next.Number, next.Event)
		}
		p.wantClean()
		p.sql(`UPDATE entries SET office = 'south' WHERE event = 1`)
		wantFindings(t, p.audit(), [][]string{{"HL-2026-000001-16", "changed entry", `office is "south"`}})
		p.sql(`UPDATE entries SET office = '' WHERE event = 1`)

		if got := p.rowsOf("events"); !reflect.DeepEqual(got[:len(events)], events) {
			t.Error("the old events are no longer byte for byte what they were")
		}
		if got := p.rowsOf("documents"); !reflect.DeepEqual(got[:len(documents)], documents) {
			t.Error("the old documents are no longer byte for byte what they were")
		}
	})
}

// TestUpgradeOnce has several come first together.
func TestUpgradeOnce(t *testing.T) {
	everyOldStore(t, func(t *testing.T, p *practice) {
		var wait sync.WaitGroup
		for i := range 4 {
			wait.Go(func() {
				b, err := Open(t.Context(), p.path, Options{Prefix: "HL", Zone: time.UTC, Now: func() time.Time { return p.now }, Rand: zeros{}})
				if err != nil {
					t.Errorf("opener %d: %v", i, err)
					return
				}
				b.Close()
			})
		}
		wait.Wait()
		p.book = p.open(Options{})
		p.wantOld(p.book.Reader)
	})
}

// TestUpgradeOfMarked opens tables that say version 1 and have offices already,
// as some that were made between the two have.
func TestUpgradeOfMarked(t *testing.T) {
	everyOldStore(t, func(t *testing.T, p *practice) {
		p.sql(addOffice, `UPDATE entries SET office = 'north'`)
		for _, open := range []func() *Reader{p.reader, func() *Reader { return p.open(Options{}).Reader }} {
			list, err := open().List(t.Context(), Filter{})
			if err != nil || len(list) != 2 || list[0].Office != "north" {
				t.Errorf("got %v, %v, want the office on record", list, err)
			}
		}
		if v := p.tableVersion(); v != 2 {
			t.Errorf("the tables are of version %d, want 2", v)
		}
	})
}

// TestUpgradeIsWhole has the upgrade fail at its last step.
func TestUpgradeIsWhole(t *testing.T) {
	p := oldPractice(t, false)
	before := fileSum(t, p.path)
	s, err := dialSQLite(p.path, "rw", defaultWait)
	if err != nil {
		t.Fatal(err)
	}
	defer s.close()
	halt := errors.New("halt")
	err = s.write(t.Context(), func(w *tx) error {
		if err := s.prepare(w); err != nil {
			return err
		}
		return halt
	})
	if !errors.Is(err, halt) {
		t.Errorf("got %v, want the fault", err)
	}
	if fileSum(t, p.path) != before {
		t.Error("half an upgrade stayed in the file")
	}
	p.wantOld(p.reader())
}

func fileSum(t *testing.T, path string) Digest {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return Sum(data)
}
