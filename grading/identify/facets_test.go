package identify

import (
	"math"
	"math/rand/v2"
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/grading/quantity"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// crystal is a transparent crystal with three principal indices and some
// orientation; equal ones make it uniaxial. It foretells what a refractometer
// shows by crystal optics alone: for a wave normal in the plane of the facet
// the two indices are the half axes of the section of the index ellipsoid at
// right angles to it (Born and Wolf, Principles of Optics, 15.2.3, from
// memory). No code of the program takes part.
type crystal struct {
	n    [3]float64
	axes [3][3]float64 // orthonormal
}

func randomCrystal(r *rand.Rand, alpha, beta, gamma float64) crystal {
	c := crystal{n: [3]float64{alpha, beta, gamma}}
	a, b := randomVector(r), randomVector(r)
	a = unit(a)
	d := dot(a, b)
	for i := range b {
		b[i] -= d * a[i]
	}
	b = unit(b)
	c.axes = [3][3]float64{a, b, cross(a, b)}
	return c
}

// edges are the two indices for a wave normal k.
func (c crystal) edges(k [3]float64) (low, high float64) {
	// Impermeability in the plane square to k, as a symmetric 2 x 2 matrix.
	p := unit(cross(k, pick(k)))
	q := cross(k, p)
	var pp, pq, qq float64
	for i, axis := range c.axes {
		w := 1 / (c.n[i] * c.n[i])
		a, b := dot(axis, p), dot(axis, q)
		pp, pq, qq = pp+w*a*a, pq+w*a*b, qq+w*b*b
	}
	mean, half := (pp+qq)/2, math.Hypot((pp-qq)/2, pq)
	return 1 / math.Sqrt(mean+half), 1 / math.Sqrt(mean-half)
}

// refractometer reads the crystal on the facet with the given normal.
func (c crystal) refractometer(r *rand.Rand, normal [3]float64, turns int, u float64) *stone.Refractometer {
	t := &stone.Refractometer{TestHeader: stone.TestHeader{Kind: stone.KindRefractometer, Light: "sodium"}}
	p := unit(cross(normal, pick(normal)))
	q := cross(normal, p)
	start := r.Float64() * math.Pi
	for i := range turns {
		angle := start + math.Pi*float64(i)/float64(turns) // spread over half a circle
		var k [3]float64
		for j := range k {
			k[j] = p[j]*math.Cos(angle) + q[j]*math.Sin(angle)
		}
		low, high := c.edges(k)
		var e stone.Edges
		if read(r, high, u)-read(r, low, u) < 0.0015 { // the two shadows fall together
			e.Seen = []stone.Index{index3(read(r, (low+high)/2, u))}
		} else {
			l, h := read(r, low, u), read(r, high, u)
			e.Seen = []stone.Index{index3(min(l, h)), index3(max(l, h))}
		}
		t.Readings.Items = append(t.Readings.Items, e)
	}
	t.Readings.Given = true
	return t
}

// read is a reading with normal scatter u, to three decimals.
func read(r *rand.Rand, n, u float64) float64 { return math.Round((n+r.NormFloat64()*u)*1000) / 1000 }

func index3(v float64) stone.Index {
	return stone.Index{V: quantity.Number(v), Decimals: 3, Text: "x"}
}

func randomVector(r *rand.Rand) [3]float64 {
	return [3]float64{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func unit(a [3]float64) [3]float64 {
	l := math.Sqrt(dot(a, a))
	return [3]float64{a[0] / l, a[1] / l, a[2] / l}
}

// pick is some vector not parallel to a.
func pick(a [3]float64) [3]float64 {
	if math.Abs(a[0]) < 0.7 {
		return [3]float64{1, 0, 0}
	}
	return [3]float64{0, 1, 0}
}

func reduced(t *testing.T, test *stone.Refractometer) reading.Values {
	t.Helper()
	figures, err := reading.LoadFigures()
	if err != nil {
		t.Fatal(err)
	}
	s := &stone.Stone{Tests: []stone.AnyTest{{Test: test}}}
	return reading.Reduce(s, reading.Bench{Figures: figures})
}

// Doubly refractive crystals on random facets, with one to six turns and
// scatter of the readings, must not be contradicted under their own name, and
// the sign must not come out wrong. The instrument is taken as one without a
// check, whose conflicts need 5u, and once more as a checked one.
func TestRandomFacets(t *testing.T) {
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(7, 11))
	const perMaterial = 300
	facets, contradicted, shown, wrongShown, sure, wrongSure := 0, 0, 0, 0, 0, 0
	for _, m := range table.Materials() {
		if m.Level != gem.Species || m.High.Max > 1.79 || m.Birefringence.Max > 0.1 || m.Class != "mineral" || m.Optic != gem.Uniaxial && m.Optic != gem.Biaxial || !m.Low.Known() {
			continue
		}
		for range perMaterial {
			c, sign, ok := likely(r, m)
			if !ok {
				continue
			}
			test := c.refractometer(r, unit(randomVector(r)), 1+r.IntN(6), 0.0007)
			v := reduced(t, test)
			facets++
			f := index(&v.Index[0], m, ruleFor(true))
			if f.verdict == conflicts {
				contradicted++
				if contradicted < 20 {
					t.Logf("%s: %+v %s", m.Name, edgesOf(test), f.because())
				}
			}
			if x := v.Index[0]; x.Sign != "" {
				shown++
				if x.Sign != sign {
					wrongShown++
				}
				if x.SignSure {
					sure++
					if x.Sign != sign {
						wrongSure++
					}
				}
			}
		}
	}
	t.Logf("%d facets, %d contradicted (%.2f %%), sign shown on %d, wrong on %d, sure on %d, wrong on %d", facets, contradicted, 100*float64(contradicted)/float64(facets), shown, wrongShown, sure, wrongSure)
	if share := float64(contradicted) / float64(facets); share > 0.005 {
		t.Errorf("%.2f %% of right names are contradicted; at 3u of a value with normal scatter at most a half per cent may be", 100*share)
	}
	if sure == 0 || float64(wrongSure) > 0.002*float64(sure) {
		t.Errorf("a sure sign is wrong on %d of %d facets", wrongSure, sure)
	}
	if float64(wrongShown) > 0.01*float64(shown) {
		t.Errorf("a shown sign is wrong on %d of %d facets", wrongShown, shown)
	}
}

// likely draws indices of gem material inside the ranges of its row, and tells
// the optic sign they have.
func likely(r *rand.Rand, m *gem.Material) (c crystal, sign string, ok bool) {
	for range 200 {
		low := m.Low.Min + r.Float64()*(m.Low.Max-m.Low.Min)
		biref := m.Birefringence.Min + r.Float64()*(m.Birefringence.Max-m.Birefringence.Min)
		high := low + biref
		if high < m.High.Min || high > m.High.Max || biref < 0.002 {
			continue
		}
		switch {
		case m.Optic == gem.Uniaxial && m.Sign == "+":
			return randomCrystal(r, low, low, high), "+", true
		case m.Optic == gem.Uniaxial:
			if m.Sign != "-" {
				return crystal{}, "", false
			}
			return randomCrystal(r, low, high, high), "-", true
		}
		beta := low + biref*(0.15+0.7*r.Float64())
		if beta < (low+high)/2 {
			sign = "+"
		} else {
			sign = "-"
		}
		if m.Sign != "+/-" && m.Sign != sign {
			beta, sign = low+high-beta, m.Sign
		}
		return randomCrystal(r, low, beta, high), sign, true
	}
	return crystal{}, "", false
}

func edgesOf(t *stone.Refractometer) (list [][]float64) {
	for _, e := range t.Readings.Items {
		var turn []float64
		for _, s := range e.Seen {
			turn = append(turn, s.Float())
		}
		list = append(list, turn)
	}
	return list
}

// A topaz with its table square to the acute bisectrix, as is usual because of
// the cleavage, reads like a perfect uniaxial negative stone (indices 1.610,
// 1.613, 1.620 from memory): it must not be contradicted.
func TestTopazTable(t *testing.T) {
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	topaz, err := table.Find("topaz")
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 2))
	c := crystal{n: [3]float64{1.610, 1.613, 1.620}, axes: [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}
	for turns := 1; turns <= 8; turns++ {
		test := c.refractometer(r, [3]float64{0, 0, 1}, turns, 0) // Z is the acute bisectrix of a positive stone
		v := reduced(t, test)
		if f := index(&v.Index[0], topaz, ruleFor(true)); f.verdict == conflicts {
			t.Errorf("%d turns %v: %s", turns, edgesOf(test), f.because())
		}
	}
}
