package weight

import "math"

// coverage is the factor k of an interval that holds the truth about 95 times
// in 100 (95.45 % of a normal distribution; NIST TN 1297, 6.2).
const coverage = 2

// An input is one figure that a volume is worked out from.
type input struct {
	name string
	Measure
}

// A model is a quantity worked out from inputs.
type model struct {
	in []input
	f  func(x []float64) float64
}

// measure propagates the inputs.
func (m model) measure() (Measure, []Share) { return propagate(m.in, m.f) }

// A Share is what one figure contributes to a standard uncertainty, in the
// unit of the result.
type Share struct {
	Of string // "length", "girdle", "shape" ...
	U  float64
}

// propagate applies f to the inputs and gives its value with the standard
// uncertainty that follows from theirs, taken as independent: JCGM 100:2008,
// 5.1.2, with the sensitivities found by the difference quotient over one
// standard uncertainty to both sides (5.1.3, note 2).
func propagate(in []input, f func(x []float64) float64) (Measure, []Share) {
	x := make([]float64, len(in))
	for i, q := range in {
		x[i] = q.Value
	}
	out := Measure{Value: f(x)}
	shares := make([]Share, 0, len(in))
	var sum float64
	for i, q := range in {
		if q.U == 0 {
			continue
		}
		x[i] = q.Value + q.U
		up := f(x)
		x[i] = q.Value - q.U
		down := f(x)
		x[i] = q.Value
		u := math.Abs(up-down) / 2
		shares = append(shares, Share{q.name, u})
		sum += u * u
	}
	out.U = math.Sqrt(sum)
	return out, shares
}

// rectangular is the measure of a quantity known only to lie between low and
// high: JCGM 100:2008, 4.3.7.
func rectangular(low, high float64) Measure {
	return Measure{Value: (low + high) / 2, U: (high - low) / math.Sqrt(12)}
}

// product multiplies measures that are independent of each other; the relative
// uncertainties add in squares (JCGM 100:2008, 5.1.6).
func product(ms ...Measure) Measure {
	out := Measure{Value: 1}
	var sum float64
	for _, m := range ms {
		out.Value *= m.Value
		r := m.U / m.Value
		sum += r * r
	}
	out.U = math.Abs(out.Value) * math.Sqrt(sum)
	return out
}
