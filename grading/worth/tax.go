package worth

import (
	"math/big"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// The footings of an amount.
const (
	with    = "with"
	without = "without"
)

// tax settles on which footing the lines and the conclusion stand.
func (a *appraisal) tax() {
	t := a.w.Tax
	if t == nil {
		return
	}
	r := &Tax{Rate: t.Rate.Digits(), Lines: t.Lines, Conclusion: t.Conclusion}
	if r.Lines == "" && t.Included != nil { // the older form
		r.Lines = without
		if *t.Included {
			r.Lines = with
		}
	}
	if r.Lines == "" {
		r.Lines = r.Conclusion
	}
	if r.Conclusion == "" {
		r.Conclusion = r.Lines
		if t.Included != nil && !*t.Included {
			a.say(stone.Warning, "worth.tax", "write lines: without, and conclusion: with or without",
				"included: false does not say whether the conclusion is with tax: it is taken as without")
		}
	}
	if r.Lines == "" {
		a.say(stone.Error, "worth.tax", "for example {rate: \"19 %\", lines: without, conclusion: with}", "the tax does not say whether the lines are with or without it")
		return
	}
	a.result.Tax = r
}

// footing is how the lines stand to tax.
func (a *appraisal) footing() string {
	if a.result.Tax == nil {
		return ""
	}
	return a.result.Tax.Lines
}

// taxed takes the sum of the lines to the footing of the conclusion, or returns
// nil where it stands there already.
func (a *appraisal) taxed(sum *big.Rat, footing string) *Step {
	step, difference := a.across(sum, footing)
	if step != nil {
		a.result.Tax.Amount = a.mint.print(difference)
	}
	return step
}

// across takes an amount from its footing to that of the conclusion. It returns
// nil where it stands there already.
func (a *appraisal) across(sum *big.Rat, footing string) (*Step, *big.Rat) {
	t := a.result.Tax
	if t == nil || footing == "" || footing == t.Conclusion {
		return nil, nil
	}
	rate, ok := a.number("worth.tax.rate", t.Rate)
	if !ok {
		return nil, nil
	}
	factor, from := onePlus(rate), phrase.Figure(a.mint.print(sum))
	if footing == without {
		tax := a.mint.round(times(sum, over(rate, big.NewRat(100, 1))))
		total := plus(sum, tax)
		return &Step{
			Working: []Reckoning{
				{phrase.Say("tax: %s %% of %s", phrase.Figure(t.Rate), from), figure(a.mint.print(tax))},
				{phrase.Say("%s + %s", from, phrase.Figure(a.mint.print(tax))), phrase.Say("%s with tax", phrase.Figure(a.mint.print(total)))},
			},
			Amount: a.mint.print(total),
		}, tax
	}
	net := a.mint.round(over(sum, factor))
	return &Step{
		Working: []Reckoning{{phrase.Say("%s / %s", from, phrase.Figure(digits(factor))), phrase.Say("%s without tax", phrase.Figure(a.mint.print(net)))}},
		Amount:  a.mint.print(net),
	}, minus(sum, net)
}
