package chart

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestSpreadByHand(t *testing.T) {
	for _, tc := range []struct {
		name       string
		want, wide []pt
		out        []pt
		why        string
	}{
		{"room for all", []pt{10, 50, 90}, []pt{10, 10, 10}, []pt{10, 50, 90}, "nothing moves"},
		{"two at one place", []pt{50, 50}, []pt{10, 10}, []pt{44, 56}, "each by half of 10 and the gap of 2"},
		{"at the left end", []pt{0, 0}, []pt{10, 10}, []pt{5, 17}, "kept inside"},
		{"at the right end", []pt{100, 100}, []pt{10, 10}, []pt{83, 95}, "kept inside"},
		{"three, one apart", []pt{20, 20, 80}, []pt{10, 10, 10}, []pt{14, 26, 80}, "the third stays"},
	} {
		got, ok := spread(tc.want, tc.wide, 2, 0, 100)
		if !ok || !slices.EqualFunc(got, tc.out, func(a, b pt) bool { return math.Abs(float64(a-b)) < 1e-9 }) {
			t.Errorf("%s: %v, want %v: %s", tc.name, got, tc.out, tc.why)
		}
	}
	if _, ok := spread([]pt{1, 2}, []pt{60, 60}, 0, 0, 100); ok {
		t.Error("two of 60 find room on 100")
	}
}

// TestSpreadMovesLeast: no other arrangement that keeps order and gaps lies
// nearer to the places wanted, in the sum of squares.
func TestSpreadMovesLeast(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(rt, "n")
		var want, wide []pt
		for range n {
			want = append(want, pt(rapid.Float64Range(0, 372).Draw(rt, "want")))
			wide = append(wide, pt(rapid.Float64Range(4, 40).Draw(rt, "wide")))
		}
		slices.Sort(want)
		got, ok := spread(want, wide, 3, 0, 372)
		if !ok {
			return
		}
		holds := func(at []pt) bool {
			for i := range at {
				if at[i] < wide[i]/2-1e-6 || at[i] > 372-wide[i]/2+1e-6 || i > 0 && at[i]-at[i-1] < (wide[i]+wide[i-1])/2+3-1e-6 {
					return false
				}
			}
			return true
		}
		cost := func(at []pt) (sum float64) {
			for i := range at {
				sum += float64((at[i] - want[i]) * (at[i] - want[i]))
			}
			return sum
		}
		if !holds(got) {
			rt.Fatalf("%v overlap or leave the line", got)
		}
		// The cost is convex, so it is enough to try small moves of stretches.
		for from := range n {
			for to := from + 1; to <= n; to++ {
				for _, step := range []pt{-0.01, 0.01} {
					try := slices.Clone(got)
					for i := from; i < to; i++ {
						try[i] += step
					}
					if holds(try) && cost(try) < cost(got)-1e-9 {
						rt.Fatalf("%v is better than %v for %v", try, got, want)
					}
				}
			}
		}
	})
}

func TestGathered(t *testing.T) {
	say := func(from, to float64) string { return fmt.Sprintf("%g-%g", from, to) }
	flags := []flag{{400, 400, "400"}, {500, 500, "500"}, {501, 501, "501"}, {502, 502, "502"}, {600, 620, "600-620"}}
	got := gathered(flags, 3, say)
	want := []flag{{400, 400, "400"}, {500, 502, "500-502"}, {600, 620, "600-620"}}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if len(flags) != 5 || flags[1].text != "500" {
		t.Error("the list handed in was changed")
	}
}
