package register

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"
)

// BenchmarkIssue measures one issue with a PDF of 18 kB that costs nothing to
// render, on a book that holds as many entries already. -short leaves out the
// larger book. TestIssueTime compares more.
func BenchmarkIssue(b *testing.B) {
	for _, entries := range []int{1_000, 100_000} {
		b.Run(fmt.Sprintf("entries=%d", entries), func(b *testing.B) {
			if testing.Short() && entries > 1_000 {
				b.Skip("takes up to a minute to fill")
			}
			p := newPractice(b)
			p.fill(entries)
			done := 0
			for b.Loop() {
				p.issue(fmt.Sprintf("B-%d", done), "x")
				done++
			}
			if got := p.issue("last", "x").Entry.Number.Ordinal(); got != entries+done+1 {
				b.Errorf("the last number is %d, want %d", got, entries+done+1)
			}
		})
	}
}

// TestIssueTime compares what issuing takes on a book of a thousand entries
// with one of a hundred thousand, or of a million in a long run. The two take
// turns, so that what else the machine does falls on both.
func TestIssueTime(t *testing.T) {
	if os.Getenv(longVariable) == "" {
		t.Skipf("fills a register for minutes: %s is not set", longVariable)
	}
	const most = 1.3
	everyStore(t, func(t *testing.T, newPractice opener) {
		small, large := newPractice(t), newPractice(t)
		small.fill(1_000)
		began := time.Now()
		large.fill(1_000_000)
		t.Logf("filled in %v", time.Since(began).Round(time.Second))
		var took [2][]time.Duration
		for i := range 300 {
			for n, p := range []*practice{small, large} {
				began := time.Now()
				if _, err := p.book.Settle(t.Context(), p.folder); err != nil {
					t.Fatal(err)
				}
				p.issue(fmt.Sprintf("B-%d", i), "x")
				took[n] = append(took[n], time.Since(began))
			}
		}
		least, middle := [2]time.Duration{}, [2]time.Duration{}
		for n := range took {
			slices.Sort(took[n])
			least[n], middle[n] = took[n][0], took[n][len(took[n])/2]
		}
		ratio := float64(middle[1]) / float64(middle[0])
		t.Logf("medians of 300: %v at 1,000 entries, %v at 1,000,000: ratio %.2f (least: %v and %v)", middle[0], middle[1], ratio, least[0], least[1])
		if ratio > most {
			t.Errorf("issuing takes %.2f times as long, at most %.1f is allowed", ratio, most)
		}
		began = time.Now()
		a, err := large.book.Audit(t.Context(), Shelf{})
		if err != nil || !a.Clean() {
			t.Errorf("audit: %v, %v", a.Findings, err)
		}
		t.Logf("audited %d entries in %v", a.Entries, time.Since(began).Round(time.Second))
	})
}

// fill enters stones without files, in the years up to that of the clock, at
// most half a million each.
func (p *practice) fill(count int) {
	p.t.Helper()
	const ofYear = 500_000
	now := p.now
	for years := (count - 1) / ofYear; years >= 0; years-- {
		p.now = now.AddDate(-years, 0, 0)
		p.fillYear(min(count-years*ofYear, ofYear))
	}
}

func (p *practice) fillYear(count int) {
	p.t.Helper()
	err := p.book.store.write(context.Background(), func(w *tx) error {
		into := bulk{tx: w, server: p.onServer()}
		ev, err := p.book.next(w)
		if err != nil {
			return err
		}
		for i := range count {
			pdf, err := p.filler(&ev, i)
			if err != nil {
				return err
			}
			hash, err := into.add(ev, pdf)
			if err != nil {
				return err
			}
			ev.Seq, ev.Prev = ev.Seq+1, hash
		}
		return into.flush()
	})
	if err != nil {
		p.t.Fatal(err)
	}
}

// filler completes an event as the issue of the stone i of the year.
func (p *practice) filler(ev *event, i int) (pdf []byte, err error) {
	if ev.Number, err = NewNumber("HL", p.now.Year(), i+1); err != nil {
		return nil, err
	}
	id, err := uuid.NewRandomFromReader(p.book.opts.Rand)
	if err != nil {
		return nil, err
	}
	pdf = []byte(ev.Number.String() + id.String())
	req := p.request(fmt.Sprintf("F%d-%d", p.now.Year(), i), "x")
	ev.Kind = issueEvent
	ev.Issue = &particulars{
		UUID: id, Stone: req.Stone, Kind: req.Kind, Examined: req.Examined, Examiner: req.Examiner,
		Content: req.Content, PDF: Sum(pdf), Size: int64(len(pdf)), File: ev.Number.String() + pdfSuffix,
		Program: req.Program, Data: req.Data,
	}
	return pdf, nil
}

// bulk enters many events: on a server a thousand at a time, since each
// statement takes a journey there.
type bulk struct {
	*tx
	server                     bool
	zip                        *gzip.Writer
	events, entries, documents []map[string]any
}

func (b *bulk) add(ev event, pdf []byte) (Digest, error) {
	body, hash, err := ev.encode()
	if err != nil {
		return hash, err
	}
	e := ev.entry(hash)
	var packed bytes.Buffer
	if b.zip == nil {
		b.zip = gzip.NewWriter(&packed)
	}
	b.zip.Reset(&packed)
	if _, err := b.zip.Write(pdf); err != nil {
		return hash, err
	}
	if err := b.zip.Close(); err != nil {
		return hash, err
	}
	b.events = append(b.events, map[string]any{
		"seq": ev.Seq, "number": ev.Number.String(), "at": ev.At.Format(time.RFC3339), "body": string(body), "hash": hash.String()})
	b.entries = append(b.entries, map[string]any{
		"event": e.Event, "number": e.Number.String(), "uuid": e.UUID.String(), "stone": e.Stone, "kind": string(e.Kind),
		"first_day": e.Examined.First.String(), "last_day": e.Examined.Last.String(), "examiner": e.Examiner, "issued": e.Issued.Format(time.RFC3339),
		"stone_sha256": e.Content.Stone.String(), "photos_sha256": e.Content.Photos.String(), "letterhead_sha256": e.Content.Letterhead.String(),
		"pdf_sha256": e.PDF.String(), "pdf_bytes": e.Size, "file": e.File, "office": "", "program": e.Program, "data": e.Data, "state": string(e.State), "reason": "",
		"replaces": "", "replaced_by": "", "prev": e.Prev.String(), "hash": e.Hash.String(), "year": e.Number.Year(), "ordinal": e.Number.Ordinal()})
	b.documents = append(b.documents, map[string]any{"event": e.Event, "gzip": hex.EncodeToString(packed.Bytes())})
	if len(b.events) == 1000 {
		return hash, b.flush()
	}
	return hash, nil
}

// flush writes what was collected, from JSON, which both databases read.
func (b *bulk) flush() error {
	for _, table := range []struct {
		name string
		rows *[]map[string]any
	}{{"events", &b.events}, {"entries", &b.entries}, {"documents", &b.documents}} {
		if len(*table.rows) == 0 {
			continue
		}
		src, err := json.Marshal(*table.rows)
		if err != nil {
			return err
		}
		if _, err := b.sql.ExecContext(b.ctx, b.insert(table.name, (*table.rows)[0]), string(src)); err != nil {
			return err
		}
		*table.rows = nil
	}
	return nil
}

// insert is the statement that enters rows of JSON like the first.
func (b *bulk) insert(table string, first map[string]any) string {
	columns := slices.Sorted(maps.Keys(first))
	var values, typed []string
	for _, c := range columns {
		value, kind := "value ->> '"+c+"'", "text"
		switch _, isText := first[c].(string); {
		case c == "gzip":
			value = "unhex(" + value + ")"
		case !isText:
			kind = "bigint"
		}
		values, typed = append(values, value), append(typed, c+" "+kind)
	}
	if b.server {
		list := strings.Join(columns, ", ")
		from := strings.Replace(list, "gzip", "decode(gzip, 'hex')", 1)
		return "INSERT INTO " + table + " (" + list + ") SELECT " + from + " FROM jsonb_to_recordset($1::jsonb) AS r(" + strings.Join(typed, ", ") + ")"
	}
	return "INSERT INTO " + table + " (" + strings.Join(columns, ", ") + ") SELECT " + strings.Join(values, ", ") + " FROM json_each($1)"
}
