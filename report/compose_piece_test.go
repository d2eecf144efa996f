package report_test

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"stonewrit/report"
)

func composeDemo(t testing.TB, name string) report.Document {
	t.Helper()
	doc, err := report.Compose(demoInput(t, readDemo(t, name), demoBench(t, readDemo(t, "bench.yaml").src)))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// The document of the demo ring tells the piece once and its stones item by
// item.
func TestPieceDocument(t *testing.T) {
	doc := composeDemo(t, "hl-0500.yaml")
	text := plainSpaces(textOf(doc))
	for _, tt := range []struct{ wanted, why string }{
		{"The ring is of yellow 18 K gold (750 per mille), by its marks, set with", "16 CFR 23.3(b)(2): the karat directly before the word; marked or tested"},
		{"1 of 2", "items 1 to n without a gap"},
		{"2 of 2", "items 1 to n without a gap"},
		{"6 natural or laboratory-grown diamonds, growth not determined", "ISO 18323: never a bare diamond"},
		{"0.17 ct in all, estimated", "16 CFR 23.18: a total told apart from one weight"},
		{"1.81 ct, weighed", "weighed or estimated: say which"},
		{"counted and measured together, not examined one by one", "nothing is claimed of what was not examined"},
		{"“750”, inside of the shank (struck)", "marks copied exactly"},
		{"“a lantern in a square”, beside it (read only)", "marks copied exactly; tested or only read"},
		{"4.53 g with the stones", "mass with the stones or net"},
		{"4.53 g gross - 1.81 ct of stones × 0.2 g - 0.17 ct of stones × 0.2 g = 4.134 g net", "how net was found"},
		{"54 mm inside circumference", "size"},
		{"in claws", "type of setting"},
		{"Aquamarine is commonly treated", "assume so"},
		{"EUR 1,700.00", "one value for the piece"},
		{"Examined from 8 October 2026 to 9 October 2026", "the dates of the piece"},
		{"hl-0500.yaml, the piece file as examined, hl-0501.yaml, of its stones, and hl-0500.json", "what travels inside"},
	} {
		if !strings.Contains(text, tt.wanted) {
			t.Errorf("the document does not say %q: %s", tt.wanted, tt.why)
		}
	}
	for _, word := range []string{"1.98 ct", "The stone is", "0.18 ct"} {
		if strings.Contains(text, word) {
			t.Errorf("the document says %q", word)
		}
	}
	var names []string
	for _, a := range doc.Attachments {
		names = append(names, a.Name)
	}
	if want := []string{"hl-0500.yaml", "hl-0501.yaml", "hl-0500.json"}; !slices.Equal(names, want) {
		t.Errorf("attached %q, want %q", names, want)
	}
}

// Claims of a main stone stand in short, one reason each.
func TestPieceClaimsInShort(t *testing.T) {
	doc := composeDemo(t, "hl-0500.yaml")
	found := 0
	for _, s := range doc.Sections {
		for _, b := range s.Blocks {
			claims, ok := b.(report.Claims)
			if !ok {
				continue
			}
			found++
			for _, c := range claims.Claims {
				if len(c.Because) > 1 {
					t.Errorf("%s has %d reasons", c.Name, len(c.Because))
				}
			}
		}
	}
	if found != 1 {
		t.Errorf("%d lists of claims, want one: the counted stones make none", found)
	}
}

// Every printed sum of the demo's appraisals comes to what is printed: the lines
// above the first total add up to it.
func TestPrintedSumsAddUp(t *testing.T) {
	for _, name := range []string{"hl-0402.yaml", "hl-0412.yaml", "hl-0500.yaml"} {
		sums := 0
		for _, s := range composeDemo(t, name).Sections {
			for _, b := range s.Blocks {
				if sum, ok := b.(report.Sum); ok {
					sums++
					addsUp(t, name, sum)
				}
			}
		}
		if sums != 1 {
			t.Errorf("%s: %d sums, want one", name, sums)
		}
	}
}

func addsUp(t *testing.T, name string, sum report.Sum) {
	total := new(big.Rat)
	for _, l := range sum.Lines {
		amount, ok := new(big.Rat).SetString(strings.ReplaceAll(l.Amount, ",", ""))
		if !ok {
			t.Fatalf("%s: %q is no amount", name, l.Amount)
		}
		if l.Total {
			if total.Cmp(amount) != 0 {
				t.Errorf("%s: the lines come to %s, printed is %s", name, total.FloatString(2), l.Amount)
			}
			return
		}
		total.Add(total, amount)
	}
	t.Errorf("%s: no total", name)
}
