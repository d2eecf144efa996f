package worth

import (
	"fmt"
	"math/big"
	"strings"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// staleAfter is the age in days at which a comparable is called stale where the
// file does not say. Common practice, no source.
const staleAfter = 365

// market takes every comparable to the subject and notes the span they show.
func (a *appraisal) market() {
	var low, high *big.Rat
	for i, c := range a.w.Comparables {
		path := fmt.Sprintf("worth.comparables[%d]", i)
		amount, working, ok := a.compare(path, c)
		if !ok {
			continue
		}
		amount = a.mint.round(amount)
		step := Step{[]Reckoning{{working, figure(a.mint.print(amount))}}, a.mint.print(amount)}
		footing := ""
		if a.w.Tax != nil {
			footing = a.w.Tax.Comparables
		}
		if onward, _ := a.across(amount, footing); onward != nil {
			step = Step{append(step.Working, onward.Working...), onward.Amount}
			amount = must(onward.Amount)
		}
		r := Comparison{
			Source: c.Source, Date: c.Date.String(), Weight: c.Weight.Text, Price: string(c.Amount),
			ByPiece: a.byPiece(c), Step: step, Note: c.Note,
		}
		if !r.ByPiece {
			r.PerCarat = a.mint.print(over(must(string(c.Amount)), must(c.Weight.Digits())))
		}
		a.concerns(path, c, &r)
		a.result.Comparables = append(a.result.Comparables, r)
		low, high = least(low, amount), greatest(high, amount)
	}
	if low != nil {
		a.result.Low, a.result.High = a.mint.print(low), a.mint.print(high)
	}
}

func (a *appraisal) byPiece(c stone.Comparable) bool { return c.By == "piece" }

// compare is the price taken to the subject, unrounded, with its working.
func (a *appraisal) compare(path string, c stone.Comparable) (*big.Rat, phrase.Line, bool) {
	price, ok := a.number(path+".amount", string(c.Amount))
	if !ok {
		return nil, "", false
	}
	working := figure(c.Amount)
	subject := big.NewRat(1, 1)
	if !a.byPiece(c) {
		if a.subject.Weight == "" || !c.Weight.Given() {
			a.say(stone.Error, path, "add by: piece to compare it as a whole", "the comparison by carat needs the weight of both")
			return nil, "", false
		}
		weight, ok1 := a.number(path+".weight", c.Weight.Digits())
		own, ok2 := a.number(path, a.subject.Weight)
		if !ok1 || !ok2 || weight.Sign() <= 0 {
			return nil, "", false
		}
		price, subject = over(price, weight), own
		working = phrase.Say("%s / %s ct", working, phrase.Figure(c.Weight.Digits()))
	}
	for i, adjust := range c.Adjust {
		factor, text, ok := a.factor(fmt.Sprintf("%s.adjust.%s", path, c.Adjust[i].What), adjust)
		if !ok {
			return nil, "", false
		}
		price = times(price, factor)
		working = phrase.Say("%s x %s (%s)", working, text, adjust.What)
	}
	if !a.byPiece(c) {
		working = phrase.Say("%s x %s", working, a.subject.weighing())
	}
	return times(price, subject), working, true
}

// factor is 1 + the adjustment, with its text.
func (a *appraisal) factor(path string, adjust stone.Adjustment) (*big.Rat, phrase.Line, bool) {
	if adjust.Fraction != "" {
		part, ok := a.number(path, adjust.Fraction)
		if !ok {
			return nil, "", false
		}
		return plus(big.NewRat(1, 1), part), phrase.Say("(%s)", signed("1", strings.TrimPrefix(adjust.Fraction, "+"))), true
	}
	percent, ok := a.number(path, adjust.By.Digits())
	if !ok {
		return nil, "", false
	}
	f := onePlus(percent)
	return f, figure(digits(f)), true
}

// concerns tells why a comparable may not carry far.
func (a *appraisal) concerns(path string, c stone.Comparable, r *Comparison) {
	for _, message := range a.weightConcerns(c) {
		r.Concerns = append(r.Concerns, message)
		a.say(stone.Finding, path+".weight", "price a carat is not linear in weight: adjust for size, or choose another", "%s", message)
	}
	if !a.w.Effective.Given() {
		return
	}
	r.Days = int(a.w.Effective.Sub(c.Date.Time) / (24 * time.Hour))
	limit := staleAfter
	if a.w.Stale.Given() {
		limit = int(a.w.Stale.V)
	}
	var message phrase.Line
	switch {
	case r.Days < 0:
		message = phrase.Say("dated %s, after the effective date %s", c.Date, a.w.Effective)
	case r.Days > limit:
		r.Stale = true
		message = phrase.Say("%d days old at the effective date, more than %d", r.Days, limit)
	default:
		return
	}
	r.Concerns = append(r.Concerns, message)
	a.say(stone.Warning, path+".date", "", "the comparable %q is %s", c.Source, message)
}

// weightConcerns compares the weights: more than a quarter apart, or on either
// side of a weight at which the user says prices step.
func (a *appraisal) weightConcerns(c stone.Comparable) []phrase.Line {
	if !c.Weight.Given() || a.subject.Weight == "" {
		return nil
	}
	theirs, err1 := exact(c.Weight.Digits())
	ours, err2 := exact(a.subject.Weight)
	if err1 != nil || err2 != nil {
		return nil
	}
	var messages []phrase.Line
	apart := new(big.Rat).Abs(minus(theirs, ours))
	if apart.Cmp(over(ours, big.NewRat(4, 1))) > 0 {
		messages = append(messages, phrase.Say("its weight of %s differs by more than a quarter from %s", phrase.Figure(c.Weight.String()), a.subject.weighing()))
	}
	for _, step := range a.w.PriceSteps {
		at, err := exact(step.Digits())
		if err == nil && (theirs.Cmp(at) < 0) != (ours.Cmp(at) < 0) {
			messages = append(messages, phrase.Say("the price step at %s lies between its weight of %s and %s", phrase.Figure(step.String()), phrase.Figure(c.Weight.String()), a.subject.weighing()))
		}
	}
	return messages
}

func least(a, b *big.Rat) *big.Rat {
	if a == nil || b.Cmp(a) < 0 {
		return b
	}
	return a
}

func greatest(a, b *big.Rat) *big.Rat {
	if a == nil || b.Cmp(a) > 0 {
		return b
	}
	return a
}
