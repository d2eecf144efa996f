package register

import (
	"context"
	"fmt"
	"os"
	"slices"
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
		a, err := large.book.Audit(t.Context(), "")
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
	small := func(n Number, id uuid.UUID) []byte { return []byte(n.String() + id.String()) }
	err := p.book.store.write(context.Background(), func(w *tx) error {
		for i := range count {
			ev, err := p.book.next(w)
			if err != nil {
				return err
			}
			if ev.Number, err = NewNumber("HL", p.now.Year(), i+1); err != nil {
				return err
			}
			id, err := uuid.NewRandomFromReader(p.book.opts.Rand)
			if err != nil {
				return err
			}
			pdf := small(ev.Number, id)
			req := p.request(fmt.Sprintf("F%d-%d", p.now.Year(), i), "x")
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
