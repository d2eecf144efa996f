package identify

import (
	"cmp"
	"math"
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// A Suggestion is a test worth doing next.
type Suggestion struct {
	Test     string
	Excludes []string    // the rivals it would exclude if the opinion is right
	Expected float64     // rivals excluded on expectation, opinion and rivals equally likely
	Caution  phrase.Line // printed beside it; "" if none
	Owned    bool        // an instrument of the bench does it
}

// A trial is a test that can be foretold from a material's row.
type trial struct {
	test  string
	harm  string // the name under which the gem table knows its harm
	loose bool   // the stone must not be mounted
	light bool   // light must pass the stone
	kinds []string
	judge func(truth *gem.Material, m *gem.Material) finding
}

// Next orders the tests not yet recorded by how many of the remaining rivals
// each would exclude on expectation. Only tests of the instruments in owned are
// suggested, and never one that can harm the stone. A nil owned asks for all.
func (d *Identifier) Next(c Case, r Result, owned []string) []Suggestion {
	if len(r.Rivals) == 0 || r.Opinion.Narrow == nil {
		return nil
	}
	var list []Suggestion
	for _, t := range trials(weightOf(c)) {
		has := slices.ContainsFunc(t.kinds, func(k string) bool { return slices.Contains(owned, k) })
		if owned != nil && !has || done(c.Stone, t.test) || t.loose && c.Stone.Mounted || t.light && c.Stone.Appearance.Transparency == "opaque" {
			continue
		}
		if _, harmful := d.table.HarmOf(t.harm, r.Opinion.Narrow, c.Stone.Mounted); harmful {
			continue
		}
		s := t.expect(r)
		s.Owned = has
		for _, caution := range d.table.CautionsFor(t.harm) {
			if caution.From == 0 && s.Caution == "" {
				s.Caution = phrase.Line(caution.Wording)
			}
		}
		if s.Expected > 0 {
			list = append(list, s)
		}
	}
	slices.SortStableFunc(list, func(a, b Suggestion) int { return cmp.Compare(b.Expected, a.Expected) })
	return list
}

// mostTruths bounds the work on a stone of which hardly anything is known.
const mostTruths = 40

// expect foretells the test for the opinion and for each rival being the
// truth.
func (t trial) expect(r Result) Suggestion {
	s := Suggestion{Test: t.test}
	truths := []*gem.Material{r.Opinion.Narrow}
	for _, rival := range r.Rivals[:min(len(r.Rivals), mostTruths)] {
		truths = append(truths, rival.Material)
	}
	for i, truth := range truths {
		for _, rival := range r.Rivals {
			if rival.Material == truth || t.judge(truth, rival.Material).verdict != conflicts {
				continue
			}
			s.Expected++
			if i == 0 {
				s.Excludes = append(s.Excludes, rival.Material.Name)
			}
		}
	}
	s.Expected /= float64(len(truths))
	return s
}

// done reports whether a test of the kind stands in the file already.
func done(s *stone.Stone, kind string) bool {
	return slices.ContainsFunc(s.Tests, func(a stone.AnyTest) bool {
		return a.Header().Kind == kind && a.Header().SetAside == ""
	})
}

// Uncertainties foretold for a checked instrument of the usual kind.
const (
	foretoldIndex  = 0.0012
	foretoldLoss   = 0.0003 // g, of the weighing in water
	foretoldWeight = 1.0    // ct, where the weight is not known
)

func weightOf(c Case) float64 {
	if w := c.Stone.Weight.Measured; w.Given() {
		return w.Float()
	}
	return foretoldWeight
}

func trials(carats float64) []trial {
	sharp := ruleFor(true)
	return []trial{
		{test: stone.KindPolariscope, harm: "polariscope", light: true, kinds: []string{stone.KindPolariscope}, judge: func(truth, m *gem.Material) finding {
			return polariscope(foretoldPolars(truth), m, "transparent")
		}},
		{test: stone.KindRefractometer, harm: "refractometer", kinds: []string{stone.KindRefractometer}, judge: func(truth, m *gem.Material) finding {
			if !truth.Low.Known() {
				return unknown()
			}
			return index(foretoldEdges(truth), m, sharp)
		}},
		{test: stone.KindGravity, harm: "specific gravity: hydrostatic", loose: true, kinds: []string{"balance", "scales in ct", stone.KindGravity}, judge: func(truth, m *gem.Material) finding {
			if !truth.SG.Known() {
				return unknown()
			}
			g := &reading.GravityValue{V: truth.SG.Mid(), U: foretoldGravityU(truth.SG.Mid(), carats), Weighed: true}
			return density(g, m, sharp, nil)
		}},
		{test: stone.KindSpectroscope, harm: "spectroscope", light: true, kinds: []string{stone.KindSpectroscope}, judge: func(truth, m *gem.Material) finding {
			return spectrum(foretoldSpectrum(truth), m, "")
		}},
		{test: stone.KindThermal, harm: "thermal conductivity", kinds: []string{stone.KindThermal, "thermal probe"}, judge: func(truth, m *gem.Material) finding {
			if truth.Thermal == "" {
				return unknown()
			}
			return thermal(&stone.Thermal{Shows: truth.Thermal}, m, 0)
		}},
		{test: stone.KindDoubling, harm: "doubling", light: true, kinds: []string{"loupe", "microscope", stone.KindMagnification}, judge: func(truth, m *gem.Material) finding {
			if truth.Birefringence.Min < doublingSeen {
				return unknown()
			}
			return doubling(&stone.Doubling{Shows: "seen"}, m)
		}},
	}
}

func foretoldPolars(m *gem.Material) *stone.Polariscope {
	p := &stone.Polariscope{Orientations: enoughDirections}
	switch m.Optic {
	case gem.Isotropic:
		p.Sees = "stays dark"
	case gem.Uniaxial, gem.Biaxial:
		p.Sees = "blinks"
	default:
		p.Sees = "stays light"
	}
	return p
}

func foretoldEdges(m *gem.Material) *reading.IndexValue {
	v := &reading.IndexValue{Low: m.Low.Mid(), High: m.High.Mid(), U: foretoldIndex, BirefringenceU: foretoldIndex, Turns: 4, Edges: 2}
	if m.Optic == gem.Isotropic || m.Optic == gem.Aggregate {
		v.Edges, v.High = 1, v.Low
		return v
	}
	v.Birefringence = v.High - v.Low
	v.Most = v.Birefringence / (1 - unseenPart)
	if m.Sign == "+" || m.Sign == "-" {
		v.Sign, v.SignSure = m.Sign, true
	}
	return v
}

// foretoldGravityU is what weighing in water leaves open for a stone of the
// weight.
func foretoldGravityU(sg, carats float64) float64 {
	return sg * sg * foretoldLoss / (carats / 5)
}

func foretoldSpectrum(m *gem.Material) *reading.SpectrumValue {
	v := &reading.SpectrumValue{Looked: true, Hand: true, Lamp: true}
	for _, a := range m.Absorption {
		if a.Kind == "line" && (a.Frequency == gem.Always || a.Frequency == gem.Often) {
			v.Lines = append(v.Lines, reading.Line{At: (a.From + a.To) / 2, U: math.Sqrt2})
		}
	}
	return v
}
