package weight

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"stonewrit/grading/phrase"
)

// ErrDimensions says that no way of estimating can work with the dimensions
// given, because lengths are missing.
var ErrDimensions = errors.New("not enough dimensions")

// A Method is a way to a volume.
type Method string

// The methods, by the names that are printed.
const (
	ByFactor      Method = "shape factor"
	BySolid       Method = "solid"
	ByFittedSolid Method = "fitted solid"
)

// A Candidate is one way's answer.
type Candidate struct {
	Method Method
	Basis  phrase.Line // what was multiplied or built, in words
	Source string      // keys into SOURCES.md
	Volume Measure     // mm3, one stone
	Budget []Share     // what each figure contributes to Volume.U, mm3
	Carats Measure     // of all stones together, at the specific gravity asked for
	// Low and High bound 95 % coverage of Carats.
	Low, High float64
	Warnings  []phrase.Line
}

// An Omission is a way that could not be used, and why.
type Omission struct {
	Method  Method
	Because phrase.Line
}

// An Estimate is the weight of a stone, or of several like ones together, with
// every way that was tried.
type Estimate struct {
	Chosen     Candidate   // the one with the smallest uncertainty
	Because    phrase.Line // why it was chosen
	Candidates []Candidate // all that gave an answer, Chosen among them: factor, solid, fitted solid
	Omitted    []Omission
	Gravity    Gravity // the range used: the hull of all that were handed in
	Count      int
	Each       Measure // carat, one stone
	Warnings   []phrase.Line
}

// Volumes gives the volume in mm3 of one stone by every way that the
// dimensions allow, and the ways that they do not. The error is ErrDimensions
// or ErrNoFactor when no way is left.
func (e *Estimator) Volumes(d Dimensions) ([]Candidate, []Omission, error) {
	if !d.Length.Given() {
		return nil, nil, unable(ErrDimensions, "not enough dimensions: %s %s without length or diameter", phrase.Word(d.Shape), phrase.Word(d.Cut))
	}
	var found []Candidate
	var omitted []Omission
	var first error
	for _, way := range []struct {
		method Method
		volume func(Dimensions) (Candidate, error)
	}{
		{ByFactor, e.byFactor}, {BySolid, e.bySolid}, {ByFittedSolid, e.byFittedSolid},
	} {
		c, err := way.volume(d)
		if err == nil {
			found = append(found, c)
			continue
		}
		omitted = append(omitted, Omission{way.method, Says(err)})
		if first == nil {
			first = err
		}
	}
	if len(found) == 0 {
		return nil, omitted, first
	}
	return found, omitted, nil
}

// Best is the candidate with the smallest relative uncertainty of its volume,
// the earlier one where they tie. It panics on an empty list.
func Best(cs []Candidate) Candidate {
	best := cs[0]
	for _, c := range cs[1:] {
		if c.Volume.U/c.Volume.Value < best.Volume.U/best.Volume.Value {
			best = c
		}
	}
	return best
}

// Estimate gives the weight of the stones at the specific gravity of their
// material; of several ranges, when it is undecided between materials, the
// whole span counts, every value in it equally likely. The error is
// ErrGravity, ErrDimensions or ErrNoFactor.
//
// The uncertainty of several like stones does not shrink by the square root of
// their number: the error of factor or solid is common to all.
func (e *Estimator) Estimate(d Dimensions, ranges ...Gravity) (Estimate, error) {
	found, omitted, err := e.Volumes(d)
	if err != nil {
		return Estimate{}, err
	}
	return e.Weigh(d, found, omitted, ranges...)
}

// Weigh is Estimate for volumes that Volumes has given for the same dimensions,
// which takes most of the time. The error is ErrGravity.
func (e *Estimator) Weigh(d Dimensions, volumes []Candidate, omitted []Omission, ranges ...Gravity) (Estimate, error) {
	g, err := hull(ranges)
	if err != nil {
		return Estimate{}, err
	}
	found := slices.Clone(volumes)
	gravity := rectangular(g.Low, g.High)
	for i := range found {
		c := &found[i]
		each := Carats(c.Volume, gravity)
		n := d.count()
		c.Carats = Measure{n * each.Value, n * each.U}
		c.Low, c.High = c.Carats.Low(), c.Carats.High()
	}
	out := Estimate{
		Candidates: found, Omitted: omitted, Gravity: g, Count: int(d.count()),
		Chosen: Best(found),
	}
	out.Each = Measure{out.Chosen.Carats.Value / d.count(), out.Chosen.Carats.U / d.count()}
	out.Because = because(out.Chosen, found, omitted)
	out.Warnings = append(e.unknownWords(d), out.Chosen.Warnings...)
	out.Warnings = append(out.Warnings, disagreements(found)...)
	return out, nil
}

// because says why the chosen candidate was taken.
func because(c Candidate, all []Candidate, omitted []Omission) phrase.Line {
	if len(all) == 1 {
		said := []phrase.Line{"the only way that these dimensions allow"}
		for _, o := range omitted {
			said = append(said, phrase.Say("%s: %s", phrase.Word(o.Method), o.Because))
		}
		return phrase.Semicolons(said...)
	}
	said := []phrase.Line{phrase.Say("its standard uncertainty, %s of the volume, is the smallest", percent(c.Volume))}
	for _, o := range all {
		if o.Method != c.Method {
			said = append(said, phrase.Say("%s has %s", phrase.Word(o.Method), percent(o.Volume)))
		}
	}
	return phrase.Semicolons(said...)
}

func percent(m Measure) phrase.Figure { return phrase.Figure(fmt.Sprintf("%.1f %%", 100*m.U/m.Value)) }

// disagreements reports pairs of candidates whose volumes differ by more than
// three times their combined uncertainty.
func disagreements(cs []Candidate) []phrase.Line {
	var out []phrase.Line
	for i, a := range cs {
		for _, b := range cs[i+1:] {
			apart := math.Abs(a.Volume.Value - b.Volume.Value)
			if apart > 3*math.Hypot(a.Volume.U, b.Volume.U) {
				out = append(out, phrase.Say("%s gives %.2f mm3 and %s %.2f mm3, more than three times their uncertainty apart: check the dimensions and the cut",
					phrase.Word(a.Method), a.Volume.Value, phrase.Word(b.Method), b.Volume.Value))
			}
		}
	}
	return out
}
