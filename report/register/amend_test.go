package register

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
)

func TestAmend(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first := p.issue("HL-0412", "ruby").Entry
		req := p.request("HL-0412", "ruby, heated")
		done, err := p.book.Amend(t.Context(), first.Number, "heating was missed", req, render)
		if err != nil {
			t.Fatal(err)
		}
		if e := done.Entry; done.Outcome != New || e.Replaces != first.Number || e.Number.Ordinal() != 2 {
			t.Errorf("got %v: %s replaces %s", done.Outcome, e.Number, e.Replaces)
		}
		old, err := p.book.Show(t.Context(), first.Number)
		if err != nil || old.State != Amended || old.ReplacedBy != done.Entry.Number || old.Reason != "heating was missed" {
			t.Errorf("old entry: %v, %s, replaced by %s because %q", err, old.State, old.ReplacedBy, old.Reason)
		}
		p.wantFile(old)
		p.wantFile(done.Entry)

		os.Remove(done.Path)
		again, err := p.book.Amend(t.Context(), first.Number, "heating was missed", req, render)
		if err != nil || again.Outcome != Restored || again.Entry.Number != done.Entry.Number {
			t.Errorf("amended again: %v %v, %v; want the same number restored", again.Entry.Number, again.Outcome, err)
		}
		if same := p.issue("HL-0412", "ruby, heated"); same.Entry.Number != done.Entry.Number {
			t.Errorf("issued the amended content: got %s, want %s", same.Entry.Number, done.Entry.Number)
		}
		if _, err := p.book.Issue(t.Context(), p.request("HL-0412", "ruby"), render); !errors.Is(err, ErrChanged) {
			t.Errorf("issued the old content: got %v, want ErrChanged", err)
		}
		p.wantClean()
	})
}

func TestAmendRefused(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		ruby := p.issue("HL-0412", "ruby").Entry.Number
		opal := p.issue("HL-0413", "opal").Entry.Number
		gone := p.issue("HL-0414", "spinel").Entry.Number
		if _, err := p.book.Void(t.Context(), gone, "sold before examination ended"); err != nil {
			t.Fatal(err)
		}
		none, err := NewNumber("HL", 2026, 77)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range []struct {
			name, stone, text, because string
			old                        Number
			want                       error
		}{
			{"nothing changed", "HL-0412", "ruby", "why not", ruby, ErrUnchanged},
			{"another stone's number", "HL-0412", "new", "slip", opal, ErrRequest},
			{"void", "HL-0414", "new", "slip", gone, ErrState},
			{"unknown number", "HL-0412", "new", "slip", none, ErrNotFound},
			{"no reason", "HL-0412", "new", "  ", ruby, ErrRequest},
		} {
			if _, err := p.book.Amend(t.Context(), row.old, row.because, p.request(row.stone, row.text), render); !errors.Is(err, row.want) {
				t.Errorf("%s: got %v, want %v", row.name, err, row.want)
			}
		}
		if n := len(p.entries()); n != 3 {
			t.Errorf("%d entries, want 3: a refused amendment takes no number", n)
		}
	})
}

func TestVoid(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first := p.issue("HL-0412", "ruby").Entry
		for reason, want := range map[string]string{
			" \n": "a reason is missing", "wrong \xff stone": "not UTF-8", "\x1b[31mred": "control character", strings.Repeat("x", 2001): "longer than 2000 bytes",
		} {
			if _, err := p.book.Void(t.Context(), first.Number, reason); !errors.Is(err, ErrRequest) || !strings.Contains(err.Error(), want) {
				t.Errorf("reason %.20q: got %v, want ErrRequest: %s", reason, err, want)
			}
		}
		e, err := p.book.Void(t.Context(), first.Number, "wrong stone\n on the\tpan ")
		if err != nil || e.State != Void || e.Reason != "wrong stone on the pan" {
			t.Fatalf("got %v %q, %v", e.State, e.Reason, err)
		}
		if _, err := p.book.Void(t.Context(), first.Number, "again"); !errors.Is(err, ErrState) {
			t.Errorf("voided twice: got %v, want ErrState", err)
		}
		p.wantFile(first) // nothing is deleted
		second := p.issue("HL-0412", "ruby")
		if second.Outcome != New || second.Entry.Number == first.Number {
			t.Errorf("the stone of a void number: got %v %v, want a new number", second.Entry.Number, second.Outcome)
		}
		history, err := p.book.History(t.Context(), "HL-0412")
		if err != nil || len(history) != 2 || history[0].State != Void || history[1].State != Issued {
			t.Errorf("history: %v, %v", history, err)
		}
		p.wantClean()
	})
}

func TestList(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.issue("S-1", "a")
		note := p.request("S-2", "b")
		note.Kind = Note
		if _, err := p.book.Issue(t.Context(), note, render); err != nil {
			t.Fatal(err)
		}
		p.now = p.now.AddDate(1, 0, 0)
		p.issue("S-3", "c")
		p.book = p.open(Options{AllowEarlier: true})
		p.now = p.now.AddDate(-1, 0, 0)
		p.issue("S-4", "d") // later in the log, earlier in number
		for _, row := range []struct {
			name   string
			filter Filter
			want   []string
		}{
			{"all, by year and number", Filter{}, []string{"S-1", "S-2", "S-4", "S-3"}},
			{"a year", Filter{Year: 2026}, []string{"S-1", "S-2", "S-4"}},
			{"a kind", Filter{Kind: Note}, []string{"S-2"}},
			{"a stone", Filter{Stone: "S-3"}, []string{"S-3"}},
			{"all three", Filter{Stone: "S-1", Kind: Note, Year: 2026}, nil},
			{"quoting", Filter{Stone: "' OR 1=1 --"}, nil},
		} {
			list, err := p.reader().List(t.Context(), row.filter)
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, e := range list {
				got = append(got, e.Stone)
			}
			if !slices.Equal(got, row.want) {
				t.Errorf("%s: got %q, want %q", row.name, got, row.want)
			}
		}
		none, _ := NewNumber("HL", 2026, 77)
		if _, err := p.reader().Show(t.Context(), none); !errors.Is(err, ErrNotFound) {
			t.Errorf("show: got %v, want ErrNotFound", err)
		}
	})
}
