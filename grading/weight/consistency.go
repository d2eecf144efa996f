package weight

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"stonewrit/grading/phrase"
)

// Contradictions reports figures of one stone that contradict one another, each
// with the slip that explains it best. carats is the weight of one stone, if it
// is known, and gravity the specific gravity of its material; leave both zero
// otherwise. Where changing a single figure makes all the others agree, there
// is one finding, which names that figure.
//
// A finding says "look again": per cents and millimetres are reported from two
// standard uncertainties apart, a weight from six.
func (e *Estimator) Contradictions(d Dimensions, carats Measure, gravity Gravity) []Finding {
	s := stone{d, carats, gravity}
	found := slices.Collect(e.violations(s))
	if len(found) == 0 {
		return nil
	}
	if f, ok := e.explain(s, found); ok {
		found = []Finding{f}
	}
	for i := range found {
		found[i].Dimension = s.key(found[i].Dimension)
	}
	return found
}

// A stone is what the checks look at.
type stone struct {
	Dimensions
	carats  Measure
	gravity Gravity
}

// violations runs the checks one after the other, for as long as they are asked
// for.
func (e *Estimator) violations(s stone) iter.Seq[Finding] {
	return func(yield func(Finding) bool) {
		if missing := s.missing(); len(missing) > 0 {
			for _, f := range missing {
				if !yield(f) {
					return
				}
			}
			return
		}
		for _, check := range [...]func(*Estimator, stone) (Finding, bool){
			(*Estimator).order, (*Estimator).roundness, (*Estimator).depthInShape, (*Estimator).totalDepth,
			(*Estimator).crown, (*Estimator).pavilion, (*Estimator).sum, (*Estimator).weight,
		} {
			if f, bad := check(e, s); bad && !yield(f) {
				return
			}
		}
		for _, f := range e.ranges(s) {
			if !yield(f) {
				return
			}
		}
	}
}

// consistent tells whether no check finds anything.
func (e *Estimator) consistent(s stone) bool {
	for range e.violations(s) {
		return false
	}
	return true
}

// missing reports lengths that other figures presuppose.
func (s stone) missing() []Finding {
	var out []Finding
	add := func(name string, message phrase.Line) { out = append(out, Finding{name, Missing, message}) }
	if !s.Length.Given() {
		add("length", "length or diameter is missing or zero")
	}
	if !s.Depth.Given() && s.TotalDepth.Given() {
		add("depth", phrase.Say("depth is missing or zero, yet a total depth of %s is given", pc(s.TotalDepth)))
	}
	if !s.Width.Given() && s.Shape != "round" && s.Shape != "bead" && s.Length.Given() {
		add("width", "width is missing or zero")
	}
	return out
}

func pc(m Measure) phrase.Figure     { return phrase.Figure(fmt.Sprintf("%.4g %%", m.Value)) }
func inMM(v float64) phrase.Figure   { return phrase.Figure(fmt.Sprintf("%.2f mm", v)) }
func degree(m Measure) phrase.Figure { return phrase.Figure(fmt.Sprintf("%.4g deg", m.Value)) }

// order: the length is the longer one. Two per cent are let pass, since nobody
// turns a square stone to find its longer side.
func (e *Estimator) order(s stone) (Finding, bool) {
	if s.Shape == "round" || s.Shape == "bead" || lengthMayBeShort(s.Shape) {
		return Finding{}, false
	}
	if s.Width.Value-s.Length.Value <= max(0.02*s.Length.Value, 3*math.Hypot(s.Width.U, s.Length.U)) {
		if r := s.Length.Value / s.Width.Value; s.Width.Given() && !e.limits["ratio"].holds(max(1, r)) {
			return Finding{"length", OutOfShape, phrase.Say("length %s is %.1f times the width %s", inMM(s.Length.Value), r, inMM(s.Width.Value))}, true
		}
		return Finding{}, false
	}
	return Finding{"length", Swapped, phrase.Say("length %s is less than width %s", inMM(s.Length.Value), inMM(s.Width.Value))}, true
}

// lengthMayBeShort lists shapes whose length is a direction and not the longer
// side.
func lengthMayBeShort(shape string) bool {
	switch shape {
	case "triangle", "curved triangle", "half moon", "heart", "shield", "kite", "irregular":
		return true
	}
	return false
}

// roundness: the diameters of a round stone hardly differ.
func (e *Estimator) roundness(s stone) (Finding, bool) {
	if s.Shape != "round" || !s.Width.Given() {
		return Finding{}, false
	}
	out := 100 * math.Abs(s.Length.Value-s.Width.Value) / s.meanDiameter()
	if e.limits["round"].holds(out) {
		return Finding{}, false
	}
	return Finding{"diameter", OutOfShape, phrase.Say(
		"diameters %s and %s differ by %.1f %%, too much for a round stone", inMM(s.Length.Value), inMM(s.Width.Value), out)}, true
}

// depthInShape: the depth lies near what the shape allows.
func (e *Estimator) depthInShape(s stone) (Finding, bool) {
	rows, err := e.factorFor(s.Dimensions)
	if err != nil || rows[0].high == 0 || !s.Depth.Given() {
		return Finding{}, false
	}
	l := e.limits["depth"]
	share := s.Depth.Value / s.reference()
	if share >= l.low*rows[0].low && share <= l.high*rows[0].high {
		return Finding{}, false
	}
	return Finding{"depth", OutOfShape, phrase.Say("depth %s is %.0f %% of %s; %.0f to %.0f %% is usual for %s %s",
		inMM(s.Depth.Value), 100*share, inMM(s.reference()), 100*rows[0].low, 100*rows[0].high, phrase.Word(s.Shape), phrase.Word(s.Cut))}, true
}

// totalDepth: the per cent and the millimetres tell the same depth.
func (e *Estimator) totalDepth(s stone) (Finding, bool) {
	if !s.TotalDepth.Given() || !s.Depth.Given() {
		return Finding{}, false
	}
	made := s.depthPercent()
	apart := made.Value - s.TotalDepth.Value
	u := math.Hypot(made.U, s.TotalDepth.U)
	if math.Abs(apart) <= e.limits["percent"].high*u {
		return Finding{}, false
	}
	return Finding{"total_depth", PercentAgainst, phrase.Say("depth %s of %s is %.1f %%, not %s; %s would be %s",
		inMM(s.Depth.Value), inMM(s.reference()), made.Value, pc(s.TotalDepth), pc(s.TotalDepth), inMM(s.TotalDepth.Value*s.reference()/100))}, true
}

// depthPercent is the depth in millimetres as a per cent, with the uncertainty
// of both lengths.
func (s stone) depthPercent() Measure {
	ref := Measure{s.reference(), s.Width.U}
	if s.Shape == "round" {
		ref.U = math.Hypot(s.Length.U, s.Width.U) / 2
		if !s.Width.Given() {
			ref.U = s.Length.U
		}
	}
	m, _ := propagate([]input{{"", s.Depth}, {"", ref}}, func(x []float64) float64 { return 100 * x[0] / x[1] })
	return m
}
