package worth_test

import (
	"regexp"
	"slices"
	"testing"

	"stonewrit/grading/phrase"
	"stonewrit/grading/phrase/phrasetest"
	"stonewrit/grading/worth"
)

// A calculation can be said in another language with all its figures: what
// stays as it is are the names that the appraiser gave.
func TestWorkingInAnotherLanguage(t *testing.T) {
	w := worthOf(t, `
currency: EUR
effective: 2027-10-14
price_steps: [1.50 ct]
round_to: "50"
tax: {rate: "19 %", lines: without, conclusion: with, comparables: without}
lines:
  - {what: centre stone, per_carat: "1850.00"}
  - {what: metal, mass: 4.53 g, mass_is: gross, fineness: 750, per_gram_fine: "71.40"}
  - {what: labour, amount: "240.005"}
  - {what: markup, percent: -10 %, of: [metal, labour]}
comparables:
  - {source: one, date: 2026-09-20, weight: 0.48 ct, amount: "2790.00", adjust: {colour: "-5 %", cut: -1/3}}
conclusion: {from: cost}`)
	r, _ := worth.Appraise(w, worth.Subject{Weight: "1.52", Estimated: true, Stones: "1.52 + 0.30"})
	var said []phrase.Line
	for _, l := range r.Lines {
		said = append(said, l.Says()...)
	}
	said = append(said, r.Cost.Says()...)
	said = append(said, r.CostTaxed.Says()...)
	said = append(said, r.Comparables[0].Says()...)
	said = append(said, r.Comparables[0].Concerns...)
	for _, k := range r.Conclusion.Working {
		said = append(said, k.Says())
	}
	if len(said) != 15 {
		t.Errorf("%d lines, want 15: %q", len(said), said)
	}
	names := []string{"metal", "labour", "colour", "cut"}
	for _, line := range said {
		text := line.In(phrasetest.Masked{})
		for _, left := range regexp.MustCompile(`[A-Za-z]+|[0-9.]+`).FindAllString(text, -1) {
			if !slices.Contains(names, left) {
				t.Errorf("of %q stays %q", line, left)
			}
		}
	}
}
