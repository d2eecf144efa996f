package reading

import (
	"math"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// IndexValue is what one index test comes to, its offset taken off.
type IndexValue struct {
	Test  stone.Test
	Low   float64 // lowest lower edge
	High  float64 // highest upper edge; equal to Low where one edge was seen
	U     float64 // standard uncertainty of each, offset included
	Edges int     // 0 over the limit, 1 or 2

	// Birefringence seen, with the reading part of the uncertainty alone. It
	// is a lower bound; Most bounds the true one from above, 0 if it does not.
	Birefringence, BirefringenceU, Most float64

	Over      float64 // no edge below this limit; 0 otherwise
	UpperOver bool    // an upper edge lies beyond the limit
	Spot      bool
	Reflected bool // an instrument without edges
	Turns     int
	Biaxial   bool   // both edges moved
	Sign      string // "+", "-" or "" for not shown
	SignSure  bool   // the sign holds also if the extremes are not quite those seen
	LowMoved  bool
	HighMoved bool
	Poor      bool // contact not good, or not said to be on a flat facet: absence of an edge shows nothing
	Check     Check
	Limit     float64
	Suspect   phrase.Line // why the reading is not to be trusted, or ""
}

// Refractometer reduces the turns of one refractometer test.
func (b Bench) Refractometer(t *stone.Refractometer) IndexValue {
	u := b.Figures["index "+method(t)+" "+light(t)]
	c := b.indexCheck(t.Instrument, middleOf(t), false, "days refractometer")
	v := IndexValue{Test: t, Spot: t.Method == "spot", Check: c, Poor: t.Contact == "poor", Limit: b.limit(t), Turns: len(t.Readings.Items)}
	if t.FullTurn {
		v.Turns = max(v.Turns, fullTurn)
	}
	if t.Over || v.Turns == 0 {
		v.Over = b.overOf(v.Limit)
		v.Poor = v.Poor || t.Contact != "good" || t.Method == "spot"
		return v
	}
	b.edges(&v, t, u)
	b.suspect(&v)
	return v
}

// middleOf is about where a test reads, to take the check there.
func middleOf(t *stone.Refractometer) float64 {
	var all []float64
	for _, turn := range t.Readings.Items {
		for _, e := range turn.Seen {
			all = append(all, e.Float())
		}
	}
	if len(all) == 0 {
		return 0
	}
	low, high := extremes(all)
	return (low + high) / 2
}

// fullTurn is how many turns a stone turned all round is worth.
const fullTurn = 6

func method(t *stone.Refractometer) string {
	if t.Method == "spot" {
		return "spot"
	}
	return "facet"
}

func light(t *stone.Refractometer) string {
	if t.Light == "white" {
		return "white"
	}
	return "sodium"
}

// limit is the highest index that can be read: the instrument's, or the
// liquid's if the test names it.
func (b Bench) limit(t *stone.Refractometer) float64 {
	if t.Liquid.Given() {
		return t.Liquid.Float()
	}
	return b.Instruments[t.Instrument].Limit.Float()
}

func (b Bench) edges(v *IndexValue, t *stone.Refractometer, u float64) {
	var lows, highs, singles []float64
	stated := 0.0
	for _, turn := range t.Readings.Items {
		v.UpperOver = v.UpperOver || turn.Over
		for _, e := range turn.Seen {
			stated = max(stated, e.U)
		}
		switch len(turn.Seen) {
		case 2:
			lows = append(lows, turn.Seen[0].Float())
			highs = append(highs, turn.Seen[1].Float())
		case 1:
			singles = append(singles, turn.Seen[0].Float())
		}
	}
	if stated > 0 {
		u = stated
	}
	v.U = b.indexU(u, v.Check, "index unchecked")
	switch {
	case len(lows) > 0:
		b.pair(v, lows, highs, singles, u)
	case len(singles) > 0:
		b.single(v, singles, u, t.Filter)
	default:
		v.Over = b.overOf(v.Limit)
	}
}

// overOf is the bound of a reading over the limit.
func (b Bench) overOf(limit float64) float64 {
	if limit == 0 {
		return b.Figures["index limit unknown"]
	}
	return limit
}

// indexU adds what the check leaves open to the uncertainty of a reading.
func (b Bench) indexU(u float64, c Check, unchecked string) float64 {
	if c.State == CheckValid {
		return rootSum(u, c.U)
	}
	return rootSum(u, b.Figures[unchecked])
}

// pair reduces turns in which two edges were seen. Single edges among them, in
// positions where the two fall together, widen the extremes and say nothing of
// how each edge moves.
func (b Bench) pair(v *IndexValue, lows, highs, singles []float64, u float64) {
	low, topLow := extremes(lows)
	bottomHigh, high := extremes(highs)
	if len(singles) > 0 {
		least, most := extremes(singles)
		low, high = min(low, least), max(high, most)
	}
	v.Edges, v.Low, v.High = 2, low-v.Check.Offset, high-v.Check.Offset
	v.Birefringence, v.BirefringenceU = high-low, math.Sqrt2*u
	if v.Turns >= 3 {
		v.Most = v.Birefringence / b.Figures["birefringence part seen"]
	}
	leastLow, _ := extremes(lows)
	_, mostHigh := extremes(highs)
	moved := 3 * math.Sqrt2 * u // three standard uncertainties of the difference of two readings
	v.LowMoved, v.HighMoved = topLow-leastLow > moved+slack, mostHigh-bottomHigh > moved+slack
	v.Biaxial = v.LowMoved && v.HighMoved
	if len(lows) >= 3 { // fewer turns leave too much of both extremes unseen for a sign
		b.sign(v, (low+high)/2, topLow, bottomHigh, u)
	}
}

// sign tells the optic sign from the edge that passes the middle of the
// extremes. The extremes seen are not quite the true ones: the sign is sure
// where it holds also if all that may be unseen lies on one side.
func (b Bench) sign(v *IndexValue, middle, topLow, bottomHigh, u float64) {
	rose, fell := topLow-middle-2*u, middle-2*u-bottomHigh
	unseen := (v.Most - v.Birefringence) / 2
	switch {
	case rose >= -slack && fell < -slack:
		v.Sign, v.SignSure = "-", rose >= unseen-slack
	case fell >= -slack && rose < -slack:
		v.Sign, v.SignSure = "+", fell >= unseen-slack
	}
}

// slack keeps readings that lie exactly on a bound, such as 1.768 on 1.766 and
// two steps of 0.001, from falling to either side by binary rounding.
const slack = 1e-9

func (b Bench) single(v *IndexValue, singles []float64, u float64, filter bool) {
	mean, scatter := meanOf(singles)
	low, high := extremes(singles)
	v.Edges, v.Low, v.High = 1, mean-v.Check.Offset, mean-v.Check.Offset
	v.U = rootSum(v.U, scatter)
	if high-low > 3*u+slack { // one edge that wanders is not one index
		v.Low, v.High = low-v.Check.Offset, high-v.Check.Offset
	}
	if filter && len(singles) >= 3 && !v.UpperOver {
		v.Most = (b.Figures["birefringence still"] + high - low) / b.Figures["birefringence part seen"]
		v.BirefringenceU = math.Sqrt2 * u
	}
}

func extremes(xs []float64) (lowest, highest float64) {
	lowest, highest = xs[0], xs[0]
	for _, x := range xs[1:] {
		lowest, highest = min(lowest, x), max(highest, x)
	}
	return lowest, highest
}

// suspect notes a reading that is likely the contact liquid's own edge.
func (b Bench) suspect(v *IndexValue) {
	if v.Limit == 0 || v.Edges == 0 {
		return
	}
	raw := v.High + v.Check.Offset
	near := b.Figures["index at the limit"]
	if v.Spot {
		near = b.Figures["spot at the limit"]
	}
	if raw < v.Limit-near-slack {
		return
	}
	v.Suspect = phrase.Say("%.3f lies within %.3f of the contact liquid's own index %.3f and may be the liquid's edge", raw, near, v.Limit)
	switch {
	case v.Edges == 2 && v.Low+v.Check.Offset < v.Limit-near:
		v.Edges, v.High, v.UpperOver = 1, v.Low, true
		v.Birefringence, v.Most, v.Sign, v.SignSure, v.Biaxial = 0, 0, "", false, false
	case !v.Spot:
		v.Over, v.Edges, v.Poor = v.Limit, 0, true
	}
}

// Digital reduces an index by an instrument without edges.
func (b Bench) Digital(t *stone.Digital) IndexValue {
	var all []float64
	stated := 0.0
	for _, r := range t.Readings.Items {
		all = append(all, r.Float())
		stated = max(stated, r.U)
	}
	mean, scatter := meanOf(all)
	u := b.Figures["index digital"]
	if mean > b.Figures["index digital step"] {
		u = b.Figures["index digital high"]
	}
	if stated > 0 {
		u = stated
	}
	c := b.indexCheck(t.Instrument, mean, true, "days other")
	return IndexValue{
		Test: t, Low: mean - c.Offset, High: mean - c.Offset, Edges: 1, Reflected: true, Turns: len(all),
		U: rootSum(b.indexU(u, c, "index digital unchecked"), scatter), Check: c,
	}
}
