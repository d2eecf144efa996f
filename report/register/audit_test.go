package register

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// numbers of the audited book; check digits by checkDigits, which is tested on
// its own.
const (
	n1 = "HL-2026-000001-16"
	n2 = "HL-2026-000002-13"
	n3 = "HL-2026-000003-10"
	n4 = "HL-2026-000004-07"
	n5 = "HL-2026-000005-04"
)

// auditedPractice has numbers 1 to 4 for stones S-1 to S-4, then number 2 void
// (event 5), number 3 amended by number 5 (event 6).
func auditedPractice(t testing.TB, newPractice opener) *practice {
	p := newPractice(t)
	for i := range 4 {
		stone := fmt.Sprintf("S-%d", i+1)
		p.issue(stone, stone)
	}
	entries := p.entries()
	if _, err := p.book.Void(t.Context(), entries[1].Number, "wrong stone"); err != nil {
		t.Fatal(err)
	}
	_, err := p.book.Amend(t.Context(), entries[2].Number, "heating missed", p.request("S-3", "heated"), render)
	if err != nil {
		t.Fatal(err)
	}
	p.wantClean()
	return p
}

const free = `DROP TRIGGER events_stay; DROP TRIGGER events_keep; DROP TRIGGER entries_stay;
	DROP TRIGGER documents_stay; DROP TRIGGER documents_keep; PRAGMA foreign_keys = OFF`

// TestTampering edits the file or the folder behind the book's back. Each row
// lists all that the audit must say, each as words that the line must hold,
// and nothing else may be said.
func TestTampering(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		clean := copies(t, newPractice)
		for _, row := range []struct {
			name string
			sql  string
			file func(p *practice)
			want [][]string
		}{
			{name: "text of an event",
				sql:  `UPDATE events SET body = replace(body, '"stone":"S-2"', '"stone":"S-9"') WHERE seq = 2`,
				want: [][]string{{n2, "event 2", "broken chain", "changed after it was written"}, {n2, "event 2", "broken chain", `its entry says otherwise: stone is "S-2", the chain says "S-9"`}}},
			{name: "hash of an event",
				sql: `UPDATE events SET hash = replace(hash, substr(hash, 1, 8), '00000000') WHERE seq = 2`,
				want: [][]string{{n2, "event 2", "broken chain", "changed after it was written"},
					{n3, "event 3", "broken chain", "does not follow event 2"}, {n2, "event 2", "broken chain", "hash is"}}},
			{name: "an event in no language",
				sql:  `UPDATE events SET body = 'gone' WHERE seq = 2`,
				want: [][]string{{n2, "event 2", "broken chain", "cannot be read"}}},
			{name: "reason of a void",
				sql:  `UPDATE events SET body = replace(body, 'wrong stone', 'right stone') WHERE seq = 5`,
				want: [][]string{{n2, "event 5", "broken chain", "changed after"}, {n2, "event 2", "changed entry", "reason"}}},
			{name: "filed at another time",
				sql:  `UPDATE events SET at = '2020-01-01T00:00:00Z' WHERE seq = 4`,
				want: [][]string{{n4, "event 4", "broken chain", "filed as another"}}},
			{name: "an event removed",
				sql: `DELETE FROM events WHERE seq = 2`,
				want: [][]string{{"damaged database", "row 2 of entries has no row of events"}, {"event 2", "broken chain", "removed: the log goes on with event 3"},
					{n2, "event 2", "changed entry", "no event of the log made it"}}},
			{name: "a number removed everywhere",
				sql: `DELETE FROM documents WHERE event = 2; DELETE FROM entries WHERE event = 2; DELETE FROM events WHERE seq = 2`,
				want: [][]string{{"event 2", "broken chain", "removed"}, {"number gap", "number 2 of 2026"},
					{n2 + ".pdf", "PDF not on register"}}},
			{name: "a void undone by removing it",
				sql:  `DELETE FROM events WHERE seq = 5; UPDATE entries SET state = 'issued', reason = '' WHERE event = 2`,
				want: [][]string{{"event 5", "broken chain", "removed"}}},
			{name: "stone of an entry",
				sql:  `UPDATE entries SET stone = 'S-9' WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed entry", `stone is "S-9", the chain says "S-4"`}}},
			{name: "a void undone in the entry",
				sql:  `UPDATE entries SET state = 'issued', reason = '' WHERE event = 2`,
				want: [][]string{{n2, "changed entry", `state is "issued", the chain says "void"`, `reason is ""`}}},
			{name: "an amendment undone in the entry",
				sql:  `UPDATE entries SET state = 'issued', reason = '', replaced_by = '' WHERE event = 3`,
				want: [][]string{{n3, "changed entry", `the chain says "amended"`, `the chain says "` + n5 + `"`}}},
			{name: "number of an entry",
				sql: `UPDATE entries SET number = 'HL-2026-000123-` + checkDigits("2026000123") + `', ordinal = 123 WHERE event = 4`,
				want: [][]string{{"HL-2026-000123", "changed entry", "number is"}, {"number gap", "number 4 of 2026"},
					{"number gap", "numbers 6 to 122 of 2026"}, {n4 + ".pdf", "PDF not on register"}}},
			{name: "place in the series",
				sql:  `UPDATE entries SET ordinal = 6 WHERE event = 4`,
				want: [][]string{{"number gap", "number 4 of 2026"}, {n4, "changed entry", "filed as number 6 of 2026"}}},
			{name: "a cell that cannot be read",
				sql:  `UPDATE entries SET issued = 'yesterday', uuid = 'none' WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed entry", `uuid "none"`, `issued "yesterday"`}}},
			{name: "an entry removed",
				sql: `DELETE FROM documents WHERE event = 4; DELETE FROM entries WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed entry", "removed"}, {"number gap", "number 4 of 2026"},
					{n4 + ".pdf", "PDF not on register"}}},
			{name: "the newest removed, but for its stored PDF",
				sql: `DELETE FROM entries WHERE event = 6; DELETE FROM events WHERE seq = 6`,
				want: [][]string{{"damaged database", "row 6 of documents has no row of entries"},
					{n3, "changed entry", `the chain says "issued"`}, {n5 + ".pdf", "PDF not on register"}}},
			{name: "an entry put in",
				sql: `INSERT INTO entries SELECT 99, replace(number, '000001', '000007'), year, 7, 'x' || uuid, stone, kind, first_day,
					last_day, examiner, issued, stone_sha256, photos_sha256, letterhead_sha256, pdf_sha256, pdf_bytes, file, office, program,
					data, state, reason, replaces, replaced_by, prev, hash FROM entries WHERE event = 1`,
				want: [][]string{{"damaged database", "row 99 of entries has no row of events"}, {"event 99", "changed entry", "no event of the log made it"},
					{"number gap", "number 6 of 2026"}}},
			{name: "stored PDF cut short",
				sql:  `UPDATE documents SET gzip = substr(gzip, 1, 50) WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed stored PDF", "unexpected EOF"}}},
			{name: "stored PDF of another stone",
				sql:  `UPDATE documents SET gzip = (SELECT gzip FROM documents WHERE event = 1) WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed stored PDF", "SHA-256"}}},
			{name: "stored PDF that would fill memory",
				sql:  `UPDATE documents SET gzip = x'` + bomb() + `' WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed stored PDF", "SHA-256"}}},
			{name: "stored PDF removed",
				sql:  `DELETE FROM documents WHERE event = 4`,
				want: [][]string{{n4, "event 4", "changed stored PDF", "nothing is stored"}}},
			{name: "PDF lost",
				file: func(p *practice) { os.Remove(filepath.Join(p.folder, n4+".pdf")) },
				want: [][]string{{n4, n4 + ".pdf", "missing PDF"}}},
			{name: "PDF of a void number lost",
				file: func(p *practice) { os.Remove(filepath.Join(p.folder, n2+".pdf")) },
				want: [][]string{{n2, n2 + ".pdf", "missing PDF"}}},
			{name: "one byte of a PDF",
				file: func(p *practice) {
					name := filepath.Join(p.folder, n4+".pdf")
					data, _ := os.ReadFile(name)
					data[len(data)/2] ^= 1
					os.WriteFile(name, data, 0o600)
				},
				want: [][]string{{n4, n4 + ".pdf", "changed PDF", "SHA-256"}}},
			{name: "PDF cut short",
				file: func(p *practice) { os.Truncate(filepath.Join(p.folder, n4+".pdf"), 100) },
				want: [][]string{{n4, n4 + ".pdf", "changed PDF", "100 bytes"}}},
			{name: "two PDFs exchanged",
				file: func(p *practice) {
					a, b := filepath.Join(p.folder, n1+".pdf"), filepath.Join(p.folder, n4+".pdf")
					os.Rename(a, a+"x")
					os.Rename(b, a)
					os.Rename(a+"x", b)
				},
				want: [][]string{{n1, n1 + ".pdf", "changed PDF"}, {n4, n4 + ".pdf", "changed PDF"}}},
			{name: "PDFs put in",
				file: func(p *practice) {
					os.MkdirAll(filepath.Join(p.folder, "old"), 0o700)
					for _, name := range []string{"extra.PDF", "HL-2026-000009-89.pdf", "old/" + n1 + ".pdf", "notes.txt"} {
						os.WriteFile(filepath.Join(p.folder, name), []byte("x"), 0o600)
					}
				},
				want: [][]string{{"HL-2026-000009-89.pdf", "PDF not on register"}, {"extra.PDF", "PDF not on register"},
					{"old/" + n1 + ".pdf", "PDF not on register"}}},
			{name: "a link for a PDF",
				file: func(p *practice) {
					name := filepath.Join(p.folder, n4+".pdf")
					os.Rename(name, filepath.Join(p.folder, "kept"))
					os.Symlink("kept", name)
				},
				want: [][]string{{n4, "changed PDF", "no ordinary file"}}},
			{name: "folder gone",
				file: func(p *practice) { os.RemoveAll(p.folder) },
				want: [][]string{{n1, "missing PDF"}, {n2, "missing PDF"}, {n3, "missing PDF"}, {n4, "missing PDF"}, {n5, "missing PDF"}}},
		} {
			t.Run(row.name, func(t *testing.T) {
				p := clean(t)
				if row.sql != "" {
					p.sql(free, row.sql)
				}
				if row.file != nil {
					row.file(p)
				}
				before := snapshot(t, filepath.Dir(p.folder))
				found := p.audit()
				if after := snapshot(t, filepath.Dir(p.folder)); after != before {
					t.Errorf("the audit changed the files: was\n%sis\n%s", before, after)
				}
				wantFindings(t, found, row.want)
			})
		}
	})
}

// copies returns what makes practices that are audited and closed: a file is
// copied, a server's register made anew.
func copies(t *testing.T, newPractice opener) opener {
	first := auditedPractice(t, newPractice)
	first.book.Close()
	return func(tb testing.TB) *practice {
		if first.onServer() {
			p := auditedPractice(tb, newPractice)
			p.book.Close()
			return p
		}
		q, dir := *first, tb.TempDir()
		if err := os.CopyFS(dir, os.DirFS(filepath.Dir(first.path))); err != nil {
			tb.Fatal(err)
		}
		q.t, q.book = tb, nil
		q.path, q.folder = filepath.Join(dir, filepath.Base(first.path)), filepath.Join(dir, filepath.Base(first.folder))
		return &q
	}
}

// bomb is a gzip of ten megabytes of nothing, in hexadecimal.
func bomb() string {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	w.Write(make([]byte, 10<<20))
	w.Close()
	return hex.EncodeToString(b.Bytes())
}

// TestRehashedEvent changes an event and its entry, and hashes it anew, as
// somebody who knows the program could. The next event tells.
func TestRehashedEvent(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := auditedPractice(t, newPractice)
		var body string
		err := p.book.store.read(t.Context(), func(r *tx) error {
			return r.sql.QueryRowContext(t.Context(), `SELECT body FROM events WHERE seq = 4`).Scan(&body)
		})
		if err != nil {
			t.Fatal(err)
		}
		forged := strings.Replace(body, `"stone":"S-4"`, `"stone":"S-8"`, 1)
		hash := Sum([]byte(forged)).String()
		p.book.Close()
		p.sql(free, `UPDATE events SET body = '`+forged+`', hash = '`+hash+`' WHERE seq = 4`,
			`UPDATE entries SET stone = 'S-8', hash = '`+hash+`' WHERE event = 4`)
		found := p.audit()
		if len(found) != 1 || !strings.Contains(found[0], "event 5: broken chain: does not follow event 4") {
			t.Errorf("found %q, want that event 5 does not follow event 4", found)
		}
	})
}

// TestHeadShowsWhatTheChainCannot cuts off the newest event everywhere, which
// leaves a chain that holds. The head that was noted tells.
func TestHeadShowsWhatTheChainCannot(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.issue("S-1", "x")
		last := p.issue("S-2", "x")
		before, err := p.book.Audit(t.Context(), Shelf{Folder: p.folder})
		if err != nil || before.Head != last.Entry.Hash || before.Events != 2 || before.Entries != 2 {
			t.Fatalf("audit: %+v, %v", before, err)
		}
		p.book.Close()
		p.sql(free, `DELETE FROM documents WHERE event = 2`, `DELETE FROM entries WHERE event = 2`, `DELETE FROM events WHERE seq = 2`)
		os.Remove(last.Path)
		after, err := p.reader().Audit(t.Context(), Shelf{Folder: p.folder})
		if err != nil || !after.Clean() {
			t.Fatalf("audit: %v, %v; if it finds this now, say so in the package comment", after.Findings, err)
		}
		if after.Head == before.Head {
			t.Error("the head did not change")
		}
	})
}

// TestChainByHand proves the chain without the code that made it: with the
// stored text and SHA-256 alone, as the package comment promises.
func TestChainByHand(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := auditedPractice(t, newPractice)
		prev := strings.Repeat("0", 64)
		err := p.book.store.read(t.Context(), func(r *tx) error {
			rows, err := r.sql.QueryContext(t.Context(), `SELECT body, hash FROM events ORDER BY seq`)
			if err != nil {
				return err
			}
			defer rows.Close()
			n := 0
			for rows.Next() {
				n++
				var body, hash string
				if err := rows.Scan(&body, &hash); err != nil {
					return err
				}
				if !strings.Contains(body, `"prev":"`+prev+`"`) {
					t.Errorf("event %d does not hold the hash before it: %s", n, body)
				}
				if got := Sum([]byte(body)).String(); got != hash {
					t.Errorf("event %d: SHA-256 of the text is %s, stored %s", n, got, hash)
				}
				prev = hash
			}
			if n != 6 {
				t.Errorf("%d events, want 6", n)
			}
			return rows.Err()
		})
		if err != nil {
			t.Fatal(err)
		}
	})
}

func TestDamagedFile(t *testing.T) {
	p := auditedPractice(t, newPractice)
	p.book.Close()
	f, err := os.OpenFile(p.path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	info, _ := f.Stat()
	for at := int64(8192); at < info.Size(); at += 4096 { // the head of all pages but two
		f.WriteAt(bytes.Repeat([]byte{0xff}, 200), at)
	}
	f.Close()
	r, err := OpenReader(t.Context(), p.path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	a, err := r.Audit(context.Background(), Shelf{Folder: p.folder})
	if err != nil || a.Clean() || a.Findings[0].Kind != Damaged {
		t.Errorf("got %v, %v, want a damaged database", a.Findings, err)
	}
}
