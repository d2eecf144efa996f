package chart

import "math"

// scale maps figures to places along a line.
type scale struct {
	low, high float64 // figures at the ends
	from, to  pt      // places of the ends
}

func (s scale) at(v float64) pt {
	return s.from + pt((v-s.low)/(s.high-s.low))*(s.to-s.from)
}

// holds reports whether a figure lies on the scale.
func (s scale) holds(v float64) bool { return v >= s.low && v <= s.high }

// within is the figure, or the end of the scale that is nearest.
func (s scale) within(v float64) float64 { return min(max(v, s.low), s.high) }

// graduation is how a scale is divided.
type graduation struct {
	step     float64 // between figures
	parts    int     // that a step is divided into
	decimals int     // of the figures
}

// graduate finds a step of 1, 2 or 5 times a power of ten whose figures stand at
// least apart from one another, divided into as many parts as stay 2.6 points
// wide.
func graduate(s scale, apart pt, decimals int) graduation {
	perUnit := math.Abs(float64(s.to-s.from)) / (s.high - s.low)
	least := float64(apart) / perUnit
	power := math.Floor(math.Log10(least))
	g := graduation{}
	for _, c := range []struct {
		mantissa float64
		parts    []int
	}{{1, []int{10, 5, 2}}, {2, []int{10, 4, 2}}, {5, []int{10, 5}}, {10, []int{10, 5, 2}}, {20, []int{10, 4, 2}}} {
		step := c.mantissa * math.Pow(10, power)
		if step < least {
			continue
		}
		g.step, g.parts = step, c.parts[len(c.parts)-1]
		for _, n := range c.parts {
			if step/float64(n)*perUnit >= 2.6 {
				g.parts = n
				break
			}
		}
		break
	}
	g.decimals = max(decimals, int(math.Ceil(-math.Log10(g.step)-1e-9)))
	return g
}

// tick is one line of a graduation.
type tick struct {
	at    float64
	major bool // carries a figure
	half  bool // in the middle between two majors
}

// ticks lists the lines of the graduation on the scale.
func (g graduation) ticks(s scale) []tick {
	minor := g.step / float64(g.parts)
	first, last := int(math.Ceil(s.low/minor-1e-6)), int(math.Floor(s.high/minor+1e-6))
	var out []tick
	for i := first; i <= last; i++ {
		in := ((i % g.parts) + g.parts) % g.parts
		out = append(out, tick{at: float64(i) * minor, major: in == 0, half: 2*in == g.parts})
	}
	return out
}
