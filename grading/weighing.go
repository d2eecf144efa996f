package grading

import (
	"math"
	"stonewrit/grading/phrase"

	"stonewrit/grading/gem"
	"stonewrit/grading/identify"
	"stonewrit/grading/quantity"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
	"stonewrit/grading/weight"
)

// Weight is what is known of the weight: weighed, estimated, or both.
type Weight struct {
	Measured   float64 // ct, of all stones together; 0 if not weighed
	MeasuredU  float64 // standard uncertainty, ct
	Check      reading.Check
	Estimate   *weight.Estimate // nil where the dimensions allow none
	NoEstimate phrase.Line      // why not, or ""
	ImpliedSG  quantity.Value   // zero if not both weighed and measured
	Dimensions weight.Dimensions
	Slips      []weight.Finding // figures that contradict one another
	Widened    []string         // rivals that widen the interval of the estimate
	volumes    []weight.Candidate
	omitted    []weight.Omission
	consistent bool // the dimensions alone agree with one another
}

// measure takes the measured weight and the volume, before anything is known
// of the material.
func (t *Tables) measure(s *stone.Stone, b *stone.Bench, rb reading.Bench) Weight {
	var w Weight
	if s.Weight.Measured.Given() {
		w.Measured, w.MeasuredU, w.Check = rb.Weight(s.Weight)
	}
	if !s.Size.Given() {
		w.NoEstimate = "no dimensions are recorded"
		return w
	}
	w.Dimensions = dimensions(s, b, t.asDiamond(s))
	w.Slips = t.weights.Contradictions(w.Dimensions, weight.Measure{}, weight.Gravity{})
	w.consistent = len(w.Slips) == 0
	var err error
	if w.volumes, w.omitted, err = t.weights.Volumes(w.Dimensions); err != nil {
		w.NoEstimate = weight.Says(err)
		return w
	}
	if w.Measured > 0 {
		sg := weight.ImpliedGravity(weight.Best(w.volumes).Volume, w.each(s))
		w.ImpliedSG = quantity.Value{V: sg.Value, U: sg.U}
	}
	return w
}

// each is the measured weight of one stone.
func (w Weight) each(s *stone.Stone) weight.Measure {
	n := float64(s.Size.Number())
	return weight.Measure{Value: w.Measured / n, U: w.MeasuredU / n}
}

// No gem material has a specific gravity outside these (amber floats in brine;
// cassiterite and scheelite reach 7): beyond them a figure slipped.
const (
	leastGravity = 1.0
	mostGravity  = 7.3
)

// implied is the specific gravity as evidence: only of a stone that was
// weighed loose.
func (w Weight) implied() *identify.Implied {
	if w.ImpliedSG.V == 0 {
		return nil
	}
	return &identify.Implied{SG: w.ImpliedSG, Consistent: w.consistent && w.ImpliedSG.V >= leastGravity && w.ImpliedSG.V <= mostGravity}
}

// asDiamond reports whether the opinion is diamond, which is cut to closer
// limits than coloured stones.
func (t *Tables) asDiamond(s *stone.Stone) bool {
	m, err := t.Gems.Find(s.Opinion.Species)
	if err != nil {
		return false
	}
	return t.Gems.SpeciesOf(m).Name == "diamond"
}

// estimate makes the weight from the volume with the specific gravity of the
// opinion, and of the rivals where the species is undecided.
func (t *Tables) estimate(e *Examined) {
	if len(e.Weight.volumes) == 0 {
		return
	}
	ranges := t.gravities(e)
	if len(ranges) == 0 {
		e.Weight.NoEstimate = "the table has no specific gravity for the opinion"
		return
	}
	estimate, err := t.weights.Weigh(e.Weight.Dimensions, e.Weight.volumes, e.Weight.omitted, ranges...)
	if err != nil {
		e.Weight.NoEstimate = weight.Says(err)
		return
	}
	e.Weight.Estimate = &estimate
	t.allowForRivals(e)
	if e.Weight.Measured > 0 {
		e.Weight.Slips = t.weights.Contradictions(e.Weight.Dimensions, e.Weight.each(e.Stone), estimate.Gravity)
	}
}

// allowForRivals widens the interval, not the estimate, by what the stone would
// weigh as one of the materials that the tests leave open.
func (t *Tables) allowForRivals(e *Examined) {
	rivals := e.Verdict.Rivals
	if e.Verdict.Species.Standing != identify.Undecided || e.Verdict.Opinion.Stated || len(rivals) > fewRivals {
		return
	}
	for _, r := range rivals {
		if !r.Material.SG.Known() {
			continue
		}
		ranges := narrowed([]weight.Gravity{{Low: r.Material.SG.Min, High: r.Material.SG.Max}}, e.Values.BestGravity())
		other, err := t.weights.Weigh(e.Weight.Dimensions, e.Weight.volumes, e.Weight.omitted, ranges...)
		if err != nil {
			continue
		}
		chosen := &e.Weight.Estimate.Chosen
		if other.Chosen.Low < chosen.Low || other.Chosen.High > chosen.High {
			e.Weight.Widened = append(e.Weight.Widened, r.Material.Name)
		}
		chosen.Low, chosen.High = min(chosen.Low, other.Chosen.Low), max(chosen.High, other.Chosen.High)
	}
}

// fewRivals is how many rivals may widen a weight. More of them mean that the
// tests hardly speak of the material at all; the weight is then that of the
// opinion, which a caveat says.
const fewRivals = 12

func (t *Tables) gravities(e *Examined) []weight.Gravity {
	var list []weight.Gravity
	add := func(m *gem.Material) {
		if m != nil && m.SG.Known() {
			list = append(list, weight.Gravity{Low: m.SG.Min, High: m.SG.Max})
		}
	}
	o := e.Verdict.Opinion
	switch {
	case o.Narrow == nil:
	case o.Narrow.SG.Known():
		add(o.Narrow)
	default:
		for _, m := range t.Gems.Leaves(o.Narrow) {
			add(m)
		}
	}
	for _, l := range o.Layers {
		add(l.Material)
	}
	return narrowed(list, e.Values.BestGravity())
}

// narrowed keeps of the ranges what the stone's own specific gravity leaves, if
// it was found and lies within any of them.
func narrowed(list []weight.Gravity, g *reading.GravityValue) []weight.Gravity {
	if g == nil {
		return list
	}
	var kept []weight.Gravity
	for _, r := range list {
		low, high := max(r.Low, g.V-2*g.U), min(r.High, g.V+2*g.U)
		if low < high {
			kept = append(kept, weight.Gravity{Low: low, High: high})
		}
	}
	if len(kept) == 0 {
		return list
	}
	return kept
}

// dimensions turns the record into the figures of the weight package.
func dimensions(s *stone.Stone, b *stone.Bench, diamond bool) weight.Dimensions {
	z := s.Size
	g := gauge{s: s, readability: readability(z, b)}
	d := weight.Dimensions{
		Shape: z.Shape, Cut: z.Cut, AsDiamond: diamond, Count: z.Number(), Girdle: z.Girdle.Word, Bulge: z.Bulge,
		Table: ratio(z.Table), CrownHeight: ratio(z.CrownHeight), PavilionDepth: ratio(z.PavilionDepth),
		TotalDepth: worked(z.TotalDepth), Star: ratio(z.Star), LowerHalves: ratio(z.LowerHalves),
		GirdlePercent: ratio(z.Girdle.Percent), Culet: ratio(z.Culet.Percent),
		CrownAngle:    weight.Measure{Value: z.CrownAngle.Float(), U: z.CrownAngle.U},
		PavilionAngle: weight.Measure{Value: z.PavilionAngle.Float(), U: z.PavilionAngle.U},
	}
	g.lengths(&d)
	return d
}

func ratio(r stone.Ratio) weight.Measure { return weight.Measure{Value: r.Float(), U: r.U} }

// worked is a per cent that was worked out from millimetres: without a stated
// uncertainty it is good to half its last place (JCGM 100, 4.3.7).
func worked(r stone.Ratio) weight.Measure {
	m := ratio(r)
	if r.Given() && m.U == 0 {
		m.U = math.Pow10(-r.Decimals) / math.Sqrt(12)
	}
	return m
}

// readability is that of the named gauge in mm, or the step that the decimals
// written show: those of the length written most finely, since one gauge took
// them all and 4.80 is often written 4.8.
func readability(z stone.Size, b *stone.Bench) float64 {
	if b != nil {
		if in, ok := b.Instruments[z.Instrument]; ok && in.Readability.Length.Given() {
			return in.Readability.Length.Float()
		}
	}
	decimals := 0
	for _, list := range []stone.List[stone.Length]{z.Length, z.Width, z.Depth, z.Diameter, z.Sizes} {
		for _, l := range list.Items {
			decimals = max(decimals, l.Decimals)
		}
	}
	return math.Pow10(-decimals)
}

// gauge makes measures of lengths with their uncertainty.
type gauge struct {
	s           *stone.Stone
	readability float64
}

func (g gauge) lengths(d *weight.Dimensions) {
	z := g.s.Size
	switch {
	case z.Diameter.Given && z.Number() > 1:
		d.Length = g.mean("diameter", z.Diameter)
	case z.Diameter.Given:
		d.Length, d.Width = g.largest("diameter", z.Diameter), g.smallest("diameter", z.Diameter)
	case z.Sizes.Given:
		d.Length = g.mean("sizes", z.Sizes)
	default:
		d.Length, d.Width = g.mean("length", z.Length), g.mean("width", z.Width)
	}
	if z.Shape == "tapered baguette" && len(z.Width.Items) == 2 {
		d.Width, d.NarrowWidth = g.largest("width", z.Width), g.smallest("width", z.Width)
	}
	d.Depth = g.mean("depth", z.Depth)
}

// u is the standard uncertainty of one length.
func (g gauge) u(key string, l stone.Length) float64 {
	if l.U > 0 {
		return l.U
	}
	hidden := false
	for _, h := range g.s.Size.Hidden.Items {
		hidden = hidden || h == key
	}
	return weight.DimensionU(g.readability, g.s.Size.InSetting || g.s.Mounted, hidden)
}

// mean is the middle of the least and greatest length; of stones alike the
// spread between them counts as uncertainty of the one size taken.
func (g gauge) mean(key string, list stone.List[stone.Length]) weight.Measure {
	if len(list.Items) == 0 {
		return weight.Measure{}
	}
	low, high, u := g.ends(key, list)
	return weight.Measure{Value: (low + high) / 2, U: math.Hypot(u, (high-low)/math.Sqrt(12))}
}

func (g gauge) largest(key string, list stone.List[stone.Length]) weight.Measure {
	_, high, u := g.ends(key, list)
	return weight.Measure{Value: high, U: u}
}

func (g gauge) smallest(key string, list stone.List[stone.Length]) weight.Measure {
	if len(list.Items) < 2 {
		return weight.Measure{}
	}
	low, _, u := g.ends(key, list)
	return weight.Measure{Value: low, U: u}
}

func (g gauge) ends(key string, list stone.List[stone.Length]) (low, high, u float64) {
	for i, l := range list.Items {
		v := l.Float()
		if i == 0 || v < low {
			low = v
		}
		high, u = max(high, v), max(u, g.u(key, l))
	}
	return low, high, u
}
