package identify

import (
	"testing"

	"pgregory.net/rapid"

	"stonewrit/grading/gem"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

func table(t testing.TB) *gem.Table {
	t.Helper()
	tab, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	return tab
}

// withTests draws tests of some material, good and bad ones, and their values.
func withTests(t *rapid.T, tab *gem.Table, label string) (*stone.Stone, reading.Values) {
	truth := rapid.SampledFrom(tab.Materials()).Draw(t, label)
	kinds := rapid.SliceOfN(rapid.SampledFrom([]string{"index", "polars", "gravity", "figure"}), 1, 5).Draw(t, label+" kinds")
	s, v := readings(truth, kinds...)
	s.Appearance = stone.Appearance{}
	for i := range v.Index {
		shift := rapid.Float64Range(-0.02, 0.02).Draw(t, "shift")
		v.Index[i].Low += shift
		v.Index[i].High += shift
		v.Index[i].U = rapid.Float64Range(0.0005, 0.02).Draw(t, "u")
		v.Index[i].BirefringenceU = rapid.Float64Range(0.0005, 0.01).Draw(t, "u of birefringence")
	}
	for i := range v.Gravity {
		v.Gravity[i].V += rapid.Float64Range(-0.3, 0.3).Draw(t, "shift")
		v.Gravity[i].U = rapid.Float64Range(0.001, 0.2).Draw(t, "u")
	}
	return s, v
}

func joined(s1 *stone.Stone, v1 reading.Values, s2 *stone.Stone, v2 reading.Values) (*stone.Stone, reading.Values) {
	s := *s1
	s.Tests = append(append([]stone.AnyTest{}, s1.Tests...), s2.Tests...)
	v := v1
	v.Index = append(append([]reading.IndexValue{}, v1.Index...), v2.Index...)
	v.Gravity = append(append([]reading.GravityValue{}, v1.Gravity...), v2.Gravity...)
	return &s, v
}

// Wider uncertainty never adds a conflict, and past the sharpness limit never
// leaves an agreement: a blunt reading must not be rewarded.
func TestWiderUncertainty(t *testing.T) {
	tab := table(t)
	rapid.Check(t, func(t *rapid.T) {
		_, v := withTests(t, tab, "truth")
		m := rapid.SampledFrom(tab.Materials()).Draw(t, "opinion")
		by := rapid.Float64Range(1, 100).Draw(t, "wider by")
		for _, x := range v.Index {
			wide := x
			wide.U, wide.BirefringenceU = by*x.U, by*x.BirefringenceU
			narrowly, widely := index(&x, m, ruleFor(true)), index(&wide, m, ruleFor(true))
			if widely.verdict == conflicts && narrowly.verdict != conflicts {
				t.Fatalf("%s: u %g gives %s, %g times that conflicts", m.Name, x.U, narrowly.verdict.verdict(), by)
			}
			if wide.Edges > 0 && wide.U > sharpIndex && widely.verdict == agrees {
				t.Fatalf("%s: an index with u %g agrees", m.Name, wide.U)
			}
		}
		for _, g := range v.Gravity {
			wide := g
			wide.U = by * g.U
			narrowly, widely := density(&g, m, ruleFor(true), nil), density(&wide, m, ruleFor(true), nil)
			if widely.verdict == conflicts && narrowly.verdict != conflicts {
				t.Fatalf("%s: u %g gives %s, %g times that conflicts", m.Name, g.U, narrowly.verdict.verdict(), by)
			}
			if wide.U > sharpGravity && widely.verdict == agrees {
				t.Fatalf("%s: a specific gravity with u %g agrees", m.Name, wide.U)
			}
		}
	})
}

// Adding a test that is not set aside never removes a contradiction, and never
// adds a rival.
func TestAddingTests(t *testing.T) {
	tab := table(t)
	d := New(tab)
	rapid.Check(t, func(t *rapid.T) {
		s1, v1 := withTests(t, tab, "truth")
		s2, v2 := withTests(t, tab, "another")
		s1.Opinion.Species = rapid.SampledFrom(tab.Materials()).Draw(t, "opinion").Name
		before := d.Identify(Case{Stone: s1, Values: v1})
		s, v := joined(s1, v1, s2, v2)
		after := d.Identify(Case{Stone: s, Values: v})
		if before.Species.Standing == Contradicted && after.Species.Standing != Contradicted {
			t.Fatalf("%s: contradicted by %v, and %s after another test", s1.Opinion.Species, before.Species.Because, after.Species.Standing)
		}
		if len(v1.Index)+len(v1.Gravity)+len(s1.Tests) > 0 && len(after.Rivals) > len(before.Rivals) && len(s1.Tests) > 0 {
			t.Fatalf("another test added rivals: %d before, %d after", len(before.Rivals), len(after.Rivals))
		}
	})
}

// The order of the tests never matters.
func TestOrder(t *testing.T) {
	tab := table(t)
	d := New(tab)
	rapid.Check(t, func(t *rapid.T) {
		s1, v1 := withTests(t, tab, "truth")
		s2, v2 := withTests(t, tab, "another")
		opinion := rapid.SampledFrom(tab.Materials()).Draw(t, "opinion").Name
		a, va := joined(s1, v1, s2, v2)
		b, vb := joined(s2, v2, s1, v1)
		a.Opinion.Species, b.Opinion.Species = opinion, opinion
		one, other := d.Identify(Case{Stone: a, Values: va}), d.Identify(Case{Stone: b, Values: vb})
		if one.Species.Standing != other.Species.Standing || len(one.Rivals) != len(other.Rivals) {
			t.Fatalf("%s: %s with %d rivals, in the other order %s with %d", opinion, one.Species.Standing, len(one.Rivals), other.Species.Standing, len(other.Rivals))
		}
		for i := range one.Rivals {
			if one.Rivals[i].Material != other.Rivals[i].Material {
				t.Fatalf("rival %d is %s, in the other order %s", i, one.Rivals[i].Material.Name, other.Rivals[i].Material.Name)
			}
		}
	})
}

// A test that is set aside changes nothing.
func TestSetAside(t *testing.T) {
	tab := table(t)
	d := New(tab)
	rapid.Check(t, func(t *rapid.T) {
		s1, v1 := withTests(t, tab, "truth")
		s2, v2 := withTests(t, tab, "another")
		s1.Opinion.Species = rapid.SampledFrom(tab.Materials()).Draw(t, "opinion").Name
		before := d.Identify(Case{Stone: s1, Values: v1})
		for _, a := range s2.Tests {
			a.Header().SetAside = "a slip"
		}
		s, v := joined(s1, v1, s2, v2)
		after := d.Identify(Case{Stone: s, Values: v})
		if before.Species.Standing != after.Species.Standing || len(before.Rivals) != len(after.Rivals) {
			t.Fatalf("%s with %d rivals, and %s with %d once a slip is set aside", before.Species.Standing, len(before.Rivals), after.Species.Standing, len(after.Rivals))
		}
	})
}
