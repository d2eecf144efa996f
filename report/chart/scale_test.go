package chart

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestScale(t *testing.T) {
	s := scale{low: 1.7, high: 1.8, from: 10, to: 210}
	for _, tc := range []struct {
		v    float64
		want pt
		why  string
	}{{1.7, 10, "low end"}, {1.8, 210, "high end"}, {1.75, 110, "the middle"}, {1.725, 60, "a quarter"}} {
		if got := s.at(tc.v); math.Abs(float64(got-tc.want)) > 1e-9 {
			t.Errorf("%v lies at %v, want %v: %s", tc.v, got, tc.want, tc.why)
		}
	}
	if s.within(2) != 1.8 || s.within(1) != 1.7 || s.within(1.75) != 1.75 || s.holds(1.81) || !s.holds(1.8) {
		t.Error("figures beyond the ends are not kept to them")
	}
}

// TestGraduation: steps of 1, 2 or 5 times a power of ten, as close as the
// figures allow, and every tick in its place.
func TestGraduation(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		low := rapid.Float64Range(0.5, 20).Draw(rt, "low")
		s := scale{low: low, high: low + rapid.Float64Range(1e-4, 30).Draw(rt, "span"), to: 372}
		g := graduate(s, 44, 1)
		mantissa := g.step / math.Pow(10, math.Floor(math.Log10(g.step)+1e-9))
		if !slices.ContainsFunc([]float64{1, 2, 5}, func(m float64) bool { return math.Abs(m-mantissa) < 1e-6 }) {
			rt.Fatalf("a step of %v", g.step)
		}
		apart := g.step / (s.high - s.low) * 372
		if apart < 44-1e-6 || apart > 44*2.5+1e-6 { // from 2 to 5 is the widest gap of steps
			rt.Fatalf("figures stand %v apart", apart)
		}
		if shift := g.step * math.Pow10(g.decimals); math.Abs(shift-math.Round(shift)) > 1e-6 {
			rt.Fatalf("%d decimals cannot write steps of %v", g.decimals, g.step)
		}
		ticks := g.ticks(s)
		for i, k := range ticks {
			if k.at < s.low-1e-4*g.step || k.at > s.high+1e-4*g.step {
				rt.Fatalf("tick at %v beyond the scale", k.at)
			}
			n := k.at / g.step
			if k.major != (math.Abs(n-math.Round(n)) < 1e-6) {
				rt.Fatalf("tick at %v carries a figure: %v, step %v", k.at, k.major, g.step)
			}
			if i > 0 && math.Abs(k.at-ticks[i-1].at-g.step/float64(g.parts)) > 1e-9 {
				rt.Fatalf("ticks are not even: %v, %v", ticks[i-1].at, k.at)
			}
		}
	})
}
