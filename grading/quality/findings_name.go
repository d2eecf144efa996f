package quality

import (
	"fmt"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
)

// names checks what the name of the stone needs.
func (r *review) names() {
	c := r.g.settled(r.c.Subject)
	if c.Growth == gem.Composite && len(c.Layers) == 0 {
		r.lack("assembled", "opinion.layers", "layers: [{part: crown, material: …}, {part: join, material: glue}, {part: pavilion, material: …}]", "an assembled stone is named with every layer")
	}
	if r.c.Growth == gem.Cultured && !r.g.is(c, "pearl") && c.narrow() != nil {
		r.finding("cultured-stone", "opinion.growth", "growth: laboratory-grown", "cultured is a word for pearls, %s is none", phrase.Word(c.narrow().Name))
	}
	for i, t := range r.s.Opinion.Treatments.Items {
		if tr, err := r.g.gems.Treatment(t.Name); err == nil && t.Amount != "" && !r.g.fills(tr) {
			r.warning("treat-degree", fmt.Sprintf("opinion.treatments[%d]", i), "", "the amount %q is a word for fillers in fissures, and %s is none", t.Amount, phrase.Word(tr.Name))
		}
	}
}

func (g *Grader) fills(t *gem.Treatment) bool {
	for _, wider := range []string{"fracture filled", "healed with flux", "pearl filled", "dyed"} {
		if w, err := g.gems.Treatment(wider); err == nil && g.gems.TreatmentIsWithin(t, w) {
			return true
		}
	}
	return false
}

// A text is words of the file that will be printed about the stone.
type text struct{ path, words string }

// texts are the free words about the stone, in the order of the file.
func (r *review) texts() []text {
	q := r.s.Quality
	list := []text{{"quality.phenomenon", q.Phenomenon}, {"quality.condition", q.Condition}, {"quality.description", q.Words}, {"explanation", r.s.Explanation}}
	if q.Colour != nil {
		list = append(list, text{"quality.colour.words", q.Colour.Words})
	}
	if q.Pearl != nil {
		list = append(list, text{"quality.pearl.colour", q.Pearl.Colour}, text{"quality.pearl.overtone", q.Pearl.Overtone})
	}
	for i, p := range r.s.Photos {
		list = append(list, text{fmt.Sprintf("photos[%d].caption", i), p.Caption})
	}
	for i, a := range r.s.Assumptions {
		list = append(list, text{fmt.Sprintf("assumptions[%d]", i), a})
	}
	if w := r.s.Worth; w != nil {
		for i, l := range w.Lines {
			list = append(list, text{fmt.Sprintf("worth.lines[%d].what", i), l.What})
		}
	}
	return list
}

// words checks the free words.
func (r *review) words() {
	for _, t := range r.texts() {
		for _, w := range r.g.Refused(t.words, r.c) {
			if w.Advice {
				r.warning(w.Statement, t.path, phrase.Say("better: %s", w.Proper), "%q is better not said of this stone (%s)", w.Word, w.Clause)
				continue
			}
			r.finding(w.Statement, t.path, phrase.Say("write: %s", w.Proper), "%q may not be said of this stone (%s)", w.Word, w.Clause)
		}
	}
}

// leastDecimals is how many decimals of a reading in carats are kept (common
// practice, after CIBJO).
const leastDecimals = 3

// weight checks the stated against the measured weight.
func (r *review) weight() {
	w := r.s.Weight
	if w.Measured.Given() && w.Measured.Decimals < leastDecimals {
		r.lack("ct-two-decimals", "weight.measured", "write the reading with its third decimal, if the balance shows one", "%s keeps %d decimals of the reading", phrase.Figure(w.Measured.Text), w.Measured.Decimals)
	}
	if !w.Measured.Given() || !w.Stated.Given() || w.Stated.Decimals >= leastDecimals {
		return
	}
	if !quantity.ClaimHolds(w.Stated.Digits(), w.Measured.Digits()) {
		r.finding("ct-last-decimal", "weight.stated", "weigh again, or tell whose figure it is under by:", "%s is stated and %s measured: a weight is true to its last decimal (16 CFR 23.18(c))", phrase.Figure(w.Stated.Text), phrase.Figure(w.Measured.Text))
	}
}
