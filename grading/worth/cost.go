package worth

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
)

// cost works out the lines and adds them.
func (a *appraisal) cost() {
	if len(a.w.Lines) == 0 {
		return
	}
	sum, complete := new(big.Rat), true
	var terms []string
	for i, l := range a.w.Lines {
		amount, working, ok := a.line(fmt.Sprintf("worth.lines[%d]", i), l, a.result.Lines)
		if !ok {
			complete = false
			continue
		}
		amount = a.mint.round(amount)
		text := a.mint.print(amount)
		if n := len(working); n > 0 {
			working[n-1].Result = figure(text)
		}
		a.result.Lines = append(a.result.Lines, Line{What: l.What, Step: Step{working, text}, Note: l.Note})
		sum = plus(sum, amount)
		terms = append(terms, text)
	}
	if !complete {
		return
	}
	step := &Step{Amount: a.mint.print(sum)}
	if len(terms) > 1 {
		step.Working = []Reckoning{{signed(terms...), figure(step.Amount)}}
	}
	a.result.Cost = step
	a.result.CostTaxed = a.taxed(sum, a.footing())
}

// line works out one line, unrounded; the last of its working lacks the result.
func (a *appraisal) line(path string, l stone.WorthLine, above []Line) (*big.Rat, []Reckoning, bool) {
	switch {
	case l.Amount != "":
		r, ok := a.number(path+".amount", string(l.Amount))
		if !ok || a.mint.round(r).Cmp(r) == 0 {
			return r, nil, ok
		}
		return r, []Reckoning{{Of: figure(l.Amount)}}, ok // it will be rounded
	case l.PerCarat != "":
		return a.byCarat(path, l)
	case l.PerGramFine != "":
		return a.byMetal(path, l)
	case l.Percent.Given():
		return a.byPercent(path, l, above)
	}
	a.say(stone.Error, path, "use exactly one of amount, per_carat, per_gram_fine, percent", "the line %q has no amount", l.What)
	return nil, nil, false
}

func (a *appraisal) byCarat(path string, l stone.WorthLine) (*big.Rat, []Reckoning, bool) {
	weight, text := a.subject.Weight, a.subject.weighing()
	switch n := len(a.subject.Items); {
	case l.Weight.Given():
		weight = l.Weight.Digits()
		text = figure(weight + " ct")
	case l.Item > n:
		a.say(stone.Error, path+".item", "count the entries under stones:", "item %d is named, and there are %d", l.Item, n)
		return nil, nil, false
	case l.Item > 0:
		weight, text = a.subject.Items[l.Item-1].Carats, a.subject.Items[l.Item-1].weighing()
	}
	if weight == "" {
		a.say(stone.Error, path, "add weight: 1.52 ct, or in a piece item: 1", "a price a carat needs a weight, and the line %q has none", l.What)
		return nil, nil, false
	}
	w, ok1 := a.number(path+".weight", weight)
	price, ok2 := a.number(path+".per_carat", string(l.PerCarat))
	if !ok1 || !ok2 {
		return nil, nil, false
	}
	return times(w, price), []Reckoning{{Of: phrase.Say("%s x %s", text, phrase.Figure(l.PerCarat))}}, true
}

func (a *appraisal) byMetal(path string, l stone.WorthLine) (*big.Rat, []Reckoning, bool) {
	mass, working, ok := a.netMass(path, l)
	if !ok {
		return nil, nil, false
	}
	price, ok := a.number(path+".per_gram_fine", string(l.PerGramFine))
	if !ok {
		return nil, nil, false
	}
	fine := times(mass, big.NewRat(int64(l.Fineness), 1000))
	working = append(working, Reckoning{Of: phrase.Say("%s g x %d/1000 x %s", phrase.Figure(massText(l, mass)), l.Fineness, phrase.Figure(l.PerGramFine))})
	return times(fine, price), working, true
}

// massText is the mass as written where it is net and in gram.
func massText(l stone.WorthLine, net *big.Rat) string {
	if m, err := quantity.Parse[quantity.Gram](l.Mass.Text); err == nil && l.MassIs != "gross" {
		return m.Digits()
	}
	return digits(net)
}

// netMass is the mass of the metal alone, in gram.
func (a *appraisal) netMass(path string, l stone.WorthLine) (*big.Rat, []Reckoning, bool) {
	mass, ok := grams(l.Mass.Text)
	if !ok {
		a.say(stone.Error, path+".mass", "for example mass: 4.20 g", "%q is not a mass", l.Mass.Text)
		return nil, nil, false
	}
	if l.MassIs != "gross" {
		return mass, nil, true
	}
	if a.subject.Stones == "" {
		a.say(stone.Error, path+".mass_is", "give the weight of the stones, or the net mass", "a gross mass cannot be lessened: the weight of the stones is not known")
		return nil, nil, false
	}
	stones, text, ok := a.stones(path)
	if !ok {
		return nil, nil, false
	}
	net := minus(mass, times(stones, must(gramsPerCarat)))
	if net.Sign() <= 0 {
		a.say(stone.Error, path+".mass", "", "the stones of %s ct weigh more than the gross mass of %s", phrase.Figure(a.subject.Stones), phrase.Figure(l.Mass.String()))
		return nil, nil, false
	}
	return net, []Reckoning{{phrase.Say("%s g gross - %s", phrase.Figure(digits(mass)), text), phrase.Say("%s g net", phrase.Figure(digits(net)))}}, true
}

// stones is the carats of all stones, and how a working takes them off: each
// weight by itself, since weights of several are never told as one (16 CFR
// 23.18).
func (a *appraisal) stones(path string) (sum *big.Rat, text phrase.Line, ok bool) {
	sum = new(big.Rat)
	for _, w := range strings.Split(a.subject.Stones, " + ") {
		r, ok := a.number(path, w)
		if !ok {
			return nil, "", false
		}
		sum = plus(sum, r)
		term := phrase.Say("%s ct of stones x %s g", phrase.Figure(w), phrase.Figure(gramsPerCarat))
		if text == "" {
			text = term
		} else {
			text = phrase.Say("%s - %s", text, term)
		}
	}
	return sum, text, true
}

// grams reads a mass in gram or carat exactly.
func grams(text string) (*big.Rat, bool) {
	if m, err := quantity.Parse[quantity.Gram](text); err == nil {
		r, err := exact(m.Digits())
		return r, err == nil
	}
	m, err := quantity.Parse[quantity.Carat](text)
	if err != nil {
		return nil, false
	}
	r, err := exact(m.Digits())
	if err != nil {
		return nil, false
	}
	return times(r, must(gramsPerCarat)), true
}

// byPercent is a per cent of lines above, by their names.
func (a *appraisal) byPercent(path string, l stone.WorthLine, above []Line) (*big.Rat, []Reckoning, bool) {
	sum, ok := new(big.Rat), true
	var terms phrase.Line
	for i, name := range l.Of.Items {
		found := named(above, name)
		if len(found) != 1 {
			a.unclear(fmt.Sprintf("%s.of[%d]", path, i), name, above, found)
			ok = false
			continue
		}
		amount := must(found[0].Amount)
		sum = plus(sum, amount)
		term := phrase.Say("%s %s", phrase.Word(name), phrase.Figure(found[0].Amount))
		if terms == "" {
			terms = term
		} else {
			terms = phrase.Say("%s + %s", terms, term)
		}
	}
	rate, fine := a.number(path+".percent", l.Percent.Digits())
	if !ok || !fine {
		return nil, nil, false
	}
	return times(sum, over(rate, big.NewRat(100, 1))),
		[]Reckoning{{Of: phrase.Say("%s %% of %s (%s)", phrase.Figure(l.Percent.Digits()), phrase.Figure(a.mint.print(sum)), terms)}}, true
}

func named(lines []Line, what string) []Line {
	var found []Line
	for _, l := range lines {
		if strings.EqualFold(l.What, what) {
			found = append(found, l)
		}
	}
	return found
}

func (a *appraisal) unclear(path, name string, above, found []Line) {
	var names []string
	for _, l := range above {
		names = append(names, l.What)
	}
	below := slices.ContainsFunc(a.w.Lines, func(l stone.WorthLine) bool { return strings.EqualFold(l.What, name) })
	switch {
	case len(found) > 1:
		a.say(stone.Error, path, "give each its own name", "%d lines above are called %q", len(found), name)
	case below:
		a.say(stone.Error, path, "put the per cent below the lines it is of", "the line %q does not stand above", name)
	case len(names) == 0:
		a.say(stone.Error, path, "put the per cent below the lines it is of", "no line stands above")
	default:
		a.say(stone.Error, path, "", "no line above is called %q, there are: %s", name, phrase.Commas(phrase.Texts(names)...))
	}
}
