package register

import (
	"context"
	"fmt"
	"testing"

	"github.com/google/uuid"
)

// BenchmarkIssue measures one issue with a PDF of 18 kB that costs nothing to
// render, on a book that holds as many entries already. -short leaves out the
// larger book.
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

// fill enters stones in one transaction and without files.
func (p *practice) fill(count int) {
	p.t.Helper()
	small := func(n Number, id uuid.UUID) []byte { return []byte(n.String() + id.String()) }
	err := p.book.store.write(context.Background(), func(w *tx) error {
		for i := range count {
			ev, err := p.book.next(w)
			if err != nil {
				return err
			}
			if ev.Number, err = NewNumber("HL", 2026, i+1); err != nil {
				return err
			}
			id, err := uuid.NewRandomFromReader(p.book.opts.Rand)
			if err != nil {
				return err
			}
			pdf := small(ev.Number, id)
			req := p.request(fmt.Sprintf("F-%d", i), "x")
			ev.Kind = issueEvent
			ev.Issue = &particulars{
				UUID: id, Stone: req.Stone, Kind: req.Kind, Examined: req.Examined, Examiner: req.Examiner,
				Content: req.Content, PDF: Sum(pdf), Size: int64(len(pdf)), File: ev.Number.String() + pdfSuffix,
				Program: req.Program, Data: req.Data,
			}
			if _, err := w.enter(ev, pdf); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		p.t.Fatal(err)
	}
}
