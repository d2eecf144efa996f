package worth_test

import (
	"slices"
	"strings"
	"testing"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// A piece has no single weight: a price a carat names the item it applies to,
// and a gross mass is lessened by the stones one after another. By hand:
// 1.03 x 2400.00 = 2472.00; 0.36 x 600.00 = 216.00; (4.53 - 0.206 - 0.072) x
// 0.750 x 71.40 = 227.6946.
func TestPiece(t *testing.T) {
	w := worthOf(t, `
currency: EUR
lines:
  - {what: centre stone, per_carat: "2400.00", item: 1}
  - {what: side stones, per_carat: "600.00", item: 2}
  - {what: metal, mass: 4.53 g, mass_is: gross, fineness: 750, per_gram_fine: "71.40"}
`)
	subject := worth.Subject{Stones: "1.03 + 0.36", Items: []worth.Item{{"1.03", true}, {"0.36", false}}}
	r, problems := worth.Appraise(w, subject)
	if problems.Has(stone.Error) {
		t.Fatal(problems)
	}
	want := [][]string{
		{"1.03 ct (estimated) x 2400.00 = 2472.00"},
		{"0.36 ct x 600.00 = 216.00"},
		{"4.53 g gross - 1.03 ct of stones x 0.2 g - 0.36 ct of stones x 0.2 g = 4.252 g net", "4.252 g x 750/1000 x 71.40 = 227.69"},
	}
	for i, l := range r.Lines {
		says := phrase.Strings(l.Says())
		if !slices.Equal(says, want[i]) {
			t.Errorf("%s:\n got %q\nwant %q", l.What, says, want[i])
		}
		for _, step := range says {
			if err := newPencil().follows(step); err != nil {
				t.Error(err)
			}
		}
	}
	if r.Cost.Amount != "2915.69" {
		t.Errorf("cost %s, want 2915.69", r.Cost.Amount)
	}
}

// An item that the piece has not, or whose weight nobody knows, is an error at
// its key.
func TestPieceItemMissing(t *testing.T) {
	for _, tt := range []struct{ item, path, message string }{
		{"3", "worth.lines[0].item", "item 3 is named, and there are 2"},
		{"2", "worth.lines[0]", "a price a carat needs a weight"},
	} {
		w := worthOf(t, "currency: EUR\nlines: [{what: a, per_carat: \"1\", item: "+tt.item+"}]")
		_, problems := worth.Appraise(w, worth.Subject{Items: []worth.Item{{"1.03", true}, {}}})
		i := slices.IndexFunc(problems, func(p stone.Problem) bool { return p.Severity == stone.Error })
		if i < 0 || problems[i].Path != tt.path || !strings.HasPrefix(problems[i].Message.String(), tt.message) {
			t.Errorf("item %s: %+v", tt.item, problems)
		}
	}
}
