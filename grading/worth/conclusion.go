package worth

import (
	"math/big"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// approaches lists the three ways to a value and whether each was used.
func (a *appraisal) approaches() {
	done := map[string]bool{"cost": len(a.w.Lines) > 0, "market": len(a.w.Comparables) > 0}
	for _, name := range []string{"cost", "market", "income"} {
		text, said := a.w.Approaches[name]
		r := Approach{Name: name, Used: done[name] && !said || text == "used"}
		if !r.Used {
			r.Reason = strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(strings.TrimPrefix(text, "left out")), "because"))
		}
		path := "worth.approaches." + name
		switch {
		case text == "used" && name != "income" && !done[name]:
			a.say(stone.Finding, path, map[string]phrase.Line{"cost": "add lines", "market": "add comparables"}[name], "%s is called used, and nothing of it stands in the file", approach(name))
		case said && text != "used" && a.from() == name:
			a.say(stone.Finding, path, "write used, or conclude from another", "%s is left out, and the conclusion follows it", approach(name))
		}
		a.result.Approaches = append(a.result.Approaches, r)
	}
}

// approach is an approach as the subject of a sentence.
func approach(name string) phrase.Line {
	return map[string]phrase.Line{"cost": "the cost approach", "market": "the market approach", "income": "the income approach"}[name]
}

// chosen is the conclusion as written, empty where the file has none.
func (a *appraisal) chosen() stone.Conclusion {
	if a.w.Conclusion == nil {
		return stone.Conclusion{}
	}
	return *a.w.Conclusion
}

// from is the approach that the conclusion follows: as written, or the only one
// there is, or cost.
func (a *appraisal) from() string {
	switch {
	case a.chosen().From != "":
		return a.chosen().From
	case len(a.w.Lines) > 0:
		return "cost"
	case len(a.w.Comparables) > 0:
		return "market"
	}
	return ""
}

// conclude settles the value.
func (a *appraisal) conclude() {
	chosen := a.chosen()
	r := &a.result.Conclusion
	r.From, r.Because = a.from(), chosen.Because
	if a.result.Tax != nil {
		r.Tax = a.result.Tax.Conclusion
	}
	if chosen.From == "" && len(a.w.Lines) > 0 && len(a.w.Comparables) > 0 {
		a.say(stone.Warning, "worth.conclusion", "add conclusion: {from: cost}, market or both", "lines and comparables are there, and nothing says which the value follows: it follows cost")
	}
	if chosen.Amount != "" || chosen.Low != "" || chosen.High != "" {
		a.own(chosen)
		return
	}
	a.computed()
}

// computed takes the conclusion from the one figure that was worked out.
func (a *appraisal) computed() {
	const choose = "add conclusion: {amount: \"…\", because: \"…\"}, or low: and high:"
	switch from := a.from(); {
	case from == "cost" && a.costFigure() != nil:
		a.roundTo(a.costFigure())
	case from == "market" && len(a.result.Comparables) == 1:
		a.roundTo(must(a.result.Comparables[0].Amount))
	case from == "market" && len(a.result.Comparables) > 1:
		a.say(stone.Missing, "worth.conclusion", choose, "%d comparables show %s to %s: the value is the appraiser's to name, nothing is averaged", len(a.result.Comparables), phrase.Figure(a.result.Low), phrase.Figure(a.result.High))
	case from == "both":
		a.say(stone.Missing, "worth.conclusion", choose, "a value from both approaches is the appraiser's to name, nothing is averaged")
	case !a.problems.Has(stone.Error):
		a.say(stone.Missing, "worth", "add lines or comparables, or conclusion: {amount: \"…\", because: \"…\"}", "there is nothing to conclude a value from")
	}
}

// costFigure is the cost on the footing of the conclusion, or nil.
func (a *appraisal) costFigure() *big.Rat {
	switch {
	case a.result.CostTaxed != nil:
		return must(a.result.CostTaxed.Amount)
	case a.result.Cost != nil:
		return must(a.result.Cost.Amount)
	}
	return nil
}

// roundTo brings a figure to the step of the file: to the nearest, a half up.
func (a *appraisal) roundTo(value *big.Rat) {
	r := &a.result.Conclusion
	r.Amount = a.mint.print(value)
	if a.step == nil {
		return
	}
	rounded := nearestStep(value, a.step)
	r.Amount = a.mint.print(rounded)
	r.Working = []Reckoning{{phrase.Say("%s to the nearest %s", phrase.Figure(a.mint.print(value)), phrase.Figure(a.w.RoundTo)), figure(r.Amount)}}
	if rounded.Sign() == 0 && value.Sign() != 0 {
		a.say(stone.Finding, "worth.round_to", "choose a smaller step", "%s rounds to nothing at a step of %s", phrase.Figure(a.mint.print(value)), phrase.Figure(a.w.RoundTo))
	}
}

// readStep takes round_to, if the file has one that can be used. It is read once,
// so that its fault is told once.
func (a *appraisal) readStep() {
	if a.w.RoundTo == "" {
		return
	}
	step, ok := a.number("worth.round_to", string(a.w.RoundTo))
	switch {
	case !ok:
	case step.Sign() <= 0:
		a.say(stone.Error, "worth.round_to", "", "%s is not above 0", phrase.Figure(a.w.RoundTo))
	case a.mint.round(step).Cmp(step) != 0:
		a.say(stone.Error, "worth.round_to", "", "a step of %s cannot be paid in %s, whose smallest unit is %s", phrase.Figure(a.w.RoundTo), a.w.Currency, phrase.Figure(a.result.SmallestUnit))
	default:
		a.step = step
	}
}

// nearestStep rounds to the nearest multiple of step, a half up.
func nearestStep(v, step *big.Rat) *big.Rat {
	q := plus(over(v, step), big.NewRat(1, 2))
	n := new(big.Int).Div(q.Num(), q.Denom()) // floor, since the denominator is above zero
	return times(new(big.Rat).SetInt(n), step)
}

// own takes the appraiser's amount or range as written, and says where it does
// not fit the figures.
func (a *appraisal) own(c stone.Conclusion) {
	r := &a.result.Conclusion
	r.Own = true
	var named [3]*big.Rat // low, amount, high
	for i, d := range []struct {
		key  string
		text stone.Decimal
		out  *string
	}{{"low", c.Low, &r.Low}, {"amount", c.Amount, &r.Amount}, {"high", c.High, &r.High}} {
		if d.text == "" {
			continue
		}
		v, ok := a.number("worth.conclusion."+d.key, string(d.text))
		if !ok {
			return
		}
		named[i], *d.out = v, a.mint.print(v)
		a.fits("worth.conclusion."+d.key, d.key, v)
	}
	low, amount, high := named[0], named[1], named[2]
	switch {
	case low != nil && high != nil && low.Cmp(high) > 0:
		a.say(stone.Finding, "worth.conclusion.low", "", "the low end %s lies above the high end %s", phrase.Figure(r.Low), phrase.Figure(r.High))
	case (low == nil) != (high == nil):
		a.say(stone.Finding, "worth.conclusion", "give low and high, or an amount", "a range has two ends")
	case amount != nil && low != nil && (amount.Cmp(low) < 0 || amount.Cmp(high) > 0):
		a.say(stone.Finding, "worth.conclusion.amount", "", "the amount %s lies outside its range of %s to %s", phrase.Figure(r.Amount), phrase.Figure(r.Low), phrase.Figure(r.High))
	}
}

// fits holds an amount of the appraiser against what was worked out.
func (a *appraisal) fits(path, key string, v *big.Rat) {
	slack := new(big.Rat)
	if a.step != nil {
		if nearestStep(v, a.step).Cmp(v) != 0 {
			a.say(stone.Warning, path, "", "%s is no multiple of round_to %s", phrase.Figure(a.mint.print(v)), phrase.Figure(a.w.RoundTo))
		}
		slack = over(a.step, big.NewRat(2, 1))
	}
	low, high := a.shown()
	if low == nil || key != "amount" {
		return
	}
	if v.Cmp(minus(low, slack)) < 0 || v.Cmp(plus(high, slack)) > 0 {
		shown := figure(a.mint.print(low))
		if low.Cmp(high) != 0 {
			shown = phrase.Say("%s to %s", shown, phrase.Figure(a.mint.print(high)))
		}
		const mend = "mend the amount or the figures; because: is printed beside it"
		if a.from() == "both" {
			a.say(stone.Finding, path, mend, "the amount %s is not what the two approaches show, %s", phrase.Figure(a.mint.print(v)), shown)
			return
		}
		a.say(stone.Finding, path, mend, "the amount %s is not what %s shows, %s", phrase.Figure(a.mint.print(v)), approach(a.from()), shown)
	}
}

// shown is the span of the figures that the conclusion follows.
func (a *appraisal) shown() (low, high *big.Rat) {
	if cost := a.costFigure(); cost != nil && a.from() != "market" {
		low, high = cost, cost
	}
	if a.result.Low != "" && a.from() != "cost" {
		low, high = least(low, must(a.result.Low)), greatest(high, must(a.result.High))
	}
	return low, high
}
