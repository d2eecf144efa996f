package register

import (
	"maps"
	"os"
	"path/filepath"
	"testing"
)

// TestOffices has two offices share one register, each with a folder of its own:
// what the other keeps is no finding, what is lost or changed here is, and so is
// what the register itself has lost of either.
func TestOffices(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		north := newPractice(t)
		north.office = "north"
		north.book = north.open(Options{Office: "north"})
		south := &practice{t: t, path: north.path, folder: filepath.Join(t.TempDir(), "issued"), now: north.now, office: "south"}
		south.book = south.open(Options{Office: "south"})

		first := north.issue("RU-1", "a").Entry
		second := south.issue("RU-2", "b").Entry
		third := south.issue("RU-3", "c").Entry
		if first.Office != "north" || second.Office != "south" {
			t.Fatalf("the entries are of %q and %q", first.Office, second.Office)
		}
		wantElsewhere := func(p *practice, want map[string]int) {
			t.Helper()
			p.wantClean()
			a, err := p.reader().Audit(t.Context(), Shelf{Folder: p.folder, Office: p.office})
			if err != nil {
				t.Fatal(err)
			}
			if !maps.Equal(a.Elsewhere, want) {
				t.Errorf("%s: kept elsewhere: %v, want %v", p.office, a.Elsewhere, want)
			}
		}
		wantElsewhere(north, map[string]int{"south": 2})
		wantElsewhere(south, map[string]int{"north": 1})

		// A document of the other office that is here as well is looked at.
		if _, err := north.book.Restore(t.Context(), second.Number, north.folder); err != nil {
			t.Fatal(err)
		}
		wantElsewhere(north, map[string]int{"south": 1})
		if err := os.WriteFile(filepath.Join(north.folder, second.File), []byte("%PDF-1.7"), 0o600); err != nil {
			t.Fatal(err)
		}
		wantFindings(t, north.audit(), [][]string{{second.Number.String(), "changed PDF"}})

		// One's own that is gone is missing here alone.
		if err := os.Remove(filepath.Join(south.folder, third.File)); err != nil {
			t.Fatal(err)
		}
		wantFindings(t, south.audit(), [][]string{{third.Number.String(), "missing PDF"}})

		// An office that gives itself another name finds what it was told to look
		// for elsewhere, under the old name.
		other := *south
		other.office = ""
		wantElsewhere(&other, map[string]int{"north": 1, "south": 1})

		// What the register stores of another office's is proven everywhere.
		north.sql(free, `DELETE FROM documents WHERE event = 3`)
		wantFindings(t, north.audit(), [][]string{{third.Number.String(), "changed stored PDF"}, {second.Number.String(), "changed PDF"}})
	})
}

// TestOfficeOnRecord changes which office keeps a document behind the back of
// the book.
func TestOfficeOnRecord(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		n := p.issue("RU-1", "a").Entry.Number
		p.sql(`UPDATE entries SET office = 'south'`)
		wantFindings(t, p.audit(), [][]string{{n.String(), "changed entry", `office is "south", the chain says ""`}})
	})
}
