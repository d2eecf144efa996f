package weight

import "math"

// A part is one of the heights that make up the depth of a stone: crown,
// girdle or pavilion, in per cent of the reference. It may be told by several
// figures at once, each with its weight 1/u2.
type part struct {
	values []func(x []float64) float64
	us     []float64
}

// add takes one more figure for the part.
func (p *part) add(u float64, value func(x []float64) float64) {
	p.values = append(p.values, value)
	p.us = append(p.us, u)
}

// mean is the weighted mean of the figures and its variance.
func (p part) mean(x []float64) (value, variance float64) {
	var sum, weights float64
	for i, v := range p.values {
		w := 1 / (p.us[i] * p.us[i])
		sum += w * v(x)
		weights += w
	}
	return sum / weights, 1 / weights
}

// reconcile adjusts the parts so that they fit the total depth as well as each
// other, by least squares: what the sum lacks is shared out in proportion to
// the variances, so that what was measured well hardly moves. total is the
// figure for the sum; without one the parts stand as they are.
func reconcile(parts [3]part, total part, x []float64) [3]float64 {
	var out, variance [3]float64
	var sum, all float64
	for i, p := range parts {
		out[i], variance[i] = p.mean(x)
		sum += out[i]
		all += variance[i]
	}
	if len(total.values) == 0 {
		return out
	}
	t, v := total.mean(x)
	lack := t - sum
	for i := range out {
		out[i] = max(0, out[i]+lack*variance[i]/(all+v))
	}
	return out
}

// crownFromAngle is the crown height that a table and a crown angle (degrees)
// make, in per cent: half of what the table leaves, times the tangent.
func crownFromAngle(table, angle float64) float64 {
	return (100 - table) / 2 * math.Tan(angle*math.Pi/180)
}

// pavilionFromAngle is the pavilion depth of a pavilion angle (degrees) that
// runs to a point or keel, in per cent.
func pavilionFromAngle(culet, angle float64) float64 {
	return (100 - culet) / 2 * math.Tan(angle*math.Pi/180)
}

// least is the standard uncertainty of a proportion that came without one.
// Common practice, no source: half a per cent, half a degree.
const least = 0.5

func withU(m Measure) Measure {
	if m.U <= 0 {
		m.U = least
	}
	return m
}
