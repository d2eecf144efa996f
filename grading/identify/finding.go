package identify

import (
	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
)

// outcome is a verdict in the small form that the judging of some thousand pairs
// of test and material works with.
type outcome int8

const (
	unset outcome = iota
	agrees
	cannotTell
	conflicts
)

// verdict is the outcome in words.
func (o outcome) verdict() Verdict {
	switch o {
	case agrees:
		return Agrees
	case conflicts:
		return Conflicts
	}
	return CannotTell
}

// finding is what one piece of evidence says of one material.
type finding struct {
	verdict outcome
	known   bool // the table has the figure that the test needs
	joint   bool // the range is that at the stone's refractive index
	digits  int8
	figure  phrase.Word // which figure decided
	value   float64     // of the stone
	low     float64     // of the material
	high    float64
	d, u    float64                     // distance and standard uncertainty
	note    phrase.Line                 // a sentence without figures
	tell    func(f finding) phrase.Line // how the figures are told, if not against the range
}

// unknown is the finding where the table lacks the figure.
func unknown() finding { return finding{verdict: cannotTell, note: "not in the table"} }

// said is a finding of a test whose outcome is a word.
func said(v outcome, note phrase.Line) finding {
	return finding{verdict: v, known: true, note: note}
}

// rule holds the limits of the decision rule.
type rule struct {
	reject float64 // conflicts beyond so many u: 3, or 5 without a valid check
	accept float64 // agrees within so many u
}

func ruleFor(checked bool) rule {
	if checked {
		return rule{reject: 3, accept: 2}
	}
	return rule{reject: 5, accept: 2}
}

// Sharpness limits: a value with a larger standard uncertainty agrees with
// nothing.
const (
	sharpIndex         = 0.010
	sharpBirefringence = 0.003
	sharpGravity       = 0.05
)

// atEdge keeps a distance that is exactly 2u or 3u from falling to either side
// by binary rounding.
const atEdge = 1e-9

// judge applies the decision rule to a finding that has its figures.
func (r rule) judge(f finding, sharp float64) finding {
	f.known = true
	switch {
	case f.d > r.reject*f.u+atEdge:
		f.verdict = conflicts
	case f.d <= r.accept*f.u+atEdge && f.u <= sharp+atEdge:
		f.verdict = agrees
	case f.u > sharp:
		f.verdict, f.note = cannotTell, "too coarse to agree"
	default:
		f.verdict, f.note = cannotTell, "between the limits of agreement and conflict"
	}
	return f
}

// within makes a finding of a value against a range.
func within(figure phrase.Word, value, low, high, u float64, digits int8) finding {
	return finding{figure: figure, value: value, low: low, high: high, u: u, digits: digits, d: max(low-value, value-high, 0)}
}

// worse returns the finding that weighs more against the material.
func worse(a, b finding) finding {
	switch {
	case a.verdict == unset:
		return b
	case rank(b) > rank(a), rank(b) == rank(a) && b.misfit() > a.misfit():
		return b
	}
	return a
}

// better returns the finding that weighs less against the material.
func better(a, b finding) finding {
	if rank(b) < rank(a) || rank(b) == rank(a) && b.misfit() < a.misfit() {
		return b
	}
	return a
}

func rank(f finding) outcome { return f.verdict }

// misfit is (d/u) squared, by which rivals are ordered.
func (f finding) misfit() float64 {
	if f.u == 0 {
		return 0
	}
	return f.d / f.u * f.d / f.u
}

// because tells the finding with its figures.
func (f finding) because() phrase.Line {
	switch {
	case f.tell != nil:
		return f.tell(f)
	case f.figure == "":
		return f.note
	}
	text := f.place()
	if f.note != "" {
		text = phrase.Semicolons(text, f.note)
	}
	if f.joint {
		text = phrase.Semicolons(text, "the range at this refractive index")
	}
	return text
}

// place tells where the figure of the stone lies.
func (f finding) place() phrase.Line {
	digits := int(f.digits)
	value := phrase.Figure(quantity.Decimal(f.value, digits))
	switch {
	case f.d == 0:
		return phrase.Say("%s %s lies inside %s", f.figure, value, span(f.low, f.high, digits))
	case f.u > 0:
		return phrase.Say("%s %s lies %s outside %s, %.1f times its standard uncertainty", f.figure, value, phrase.Figure(quantity.Decimal(f.d, digits)), span(f.low, f.high, digits), f.d/f.u)
	}
	return phrase.Say("%s %s", f.figure, value)
}

// span is a range in figures.
func span(low, high float64, digits int) phrase.Line {
	from := phrase.Figure(quantity.Decimal(low, digits))
	if low == high {
		return phrase.Say("%s", from)
	}
	return phrase.Say("%s to %s", from, phrase.Figure(quantity.Decimal(high, digits)))
}

// word is a word of a list as a line of its own; none says nothing.
func word(w string) phrase.Line {
	if w == "" {
		return ""
	}
	return phrase.Say("%s", phrase.Word(w))
}
