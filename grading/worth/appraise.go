package worth

import (
	"math/big"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// appraisal is the work in hand.
type appraisal struct {
	w        *stone.Worth
	subject  Subject
	mint     mint
	step     *big.Rat // of round_to; nil without
	result   *Result
	problems stone.Problems
}

// Appraise computes the worth of a stone or piece. Problems carry the path of
// the key they are about, below "worth"; give them their place with
// [stone.Problems.At]. An Error means that the result is not complete.
func Appraise(w *stone.Worth, subject Subject) (*Result, stone.Problems) {
	a := &appraisal{w: w, subject: subject, result: &Result{Currency: w.Currency}}
	var ok bool
	if a.mint, ok = mintOf(w.Currency); !ok {
		hint, _ := stone.CheckCurrency(w.Currency)
		a.say(stone.Error, "worth.currency", hint, "%q is not a currency of ISO 4217", w.Currency)
		return a.result, a.problems
	}
	a.result.SmallestUnit = new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(a.mint.digits)), nil)).FloatString(a.mint.digits)
	a.readStep()
	a.tax()
	a.cost()
	a.market()
	a.approaches()
	a.conclude()
	return a.result, a.problems
}

func (a *appraisal) say(severity stone.Severity, path string, hint, form phrase.Line, parts ...any) {
	a.problems = append(a.problems, stone.Problem{Severity: severity, Path: path, Message: phrase.Say(form, parts...), Hint: hint})
}

// number reads a decimal of the file, or notes that it is none.
func (a *appraisal) number(path, text string) (*big.Rat, bool) {
	r, err := exact(text)
	if err != nil {
		a.say(stone.Error, path, "", "%q is not a decimal number", text)
		return nil, false
	}
	return r, true
}

// weighing writes the subject's weight as it stands in the working.
func (s Subject) weighing() phrase.Line { return Item{s.Weight, s.Estimated}.weighing() }

func (i Item) weighing() phrase.Line {
	if i.Estimated {
		return phrase.Say("%s ct (estimated)", phrase.Figure(i.Carats))
	}
	return figure(i.Carats + " ct")
}
