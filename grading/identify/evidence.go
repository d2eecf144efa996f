package identify

import (
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// evidence is one test made ready to be judged against any material.
type evidence struct {
	test  stone.Test  // nil for the implied specific gravity
	name  phrase.Line // of the test's kind
	kind  Kind
	value phrase.Line
	place string
	aside string
	judge func(m *gem.Material) finding
}

// evidenceOf makes the tests of a case ready, in their order, and the implied
// specific gravity last.
func (d *Identifier) evidenceOf(c *Case) []evidence {
	var list []evidence
	next := counters{}
	for _, any := range c.Stone.Tests {
		e := d.of(any.Test, c, &next)
		h := any.Header()
		e.test, e.name, e.place, e.aside = any.Test, word(h.Kind), h.Place, h.SetAside
		e.judge = ofOnePart(e.judge, h.Place)
		if e.kind == KindDensity && d.filled(c.Stone) {
			e.judge = withFiller(e.judge)
		}
		list = append(list, e)
	}
	if c.Implied != nil {
		i := c.Implied
		list = append(list, evidence{kind: KindOther, value: phrase.Say("%.2f ± %.2f", i.SG.V, 2*i.SG.U), judge: func(m *gem.Material) finding { return implied(i, m) }})
	}
	return list
}

// ofOnePart spares the rows of composites: their figures are those of the part
// on top, so a test that was not made there says nothing against them.
func ofOnePart(judge func(*gem.Material) finding, place string) func(*gem.Material) finding {
	if place == "crown" || place == "table" {
		return judge
	}
	return func(m *gem.Material) finding {
		f := judge(m)
		if f.verdict == conflicts && m.Class == "composite" {
			return said(cannotTell, "another part of an assembled stone is of another material")
		}
		return f
	}
}

// fillerShare is how far a filler may move a specific gravity, as a part of it
// (common practice, from memory: lead glass in corundum reaches about 4.3).
const fillerShare = 0.10

// withFiller spares a material that a filler in the stone may make heavier or
// lighter than it is.
func withFiller(judge func(*gem.Material) finding) func(*gem.Material) finding {
	return func(m *gem.Material) finding {
		f := judge(m)
		if f.verdict == conflicts && f.d <= fillerShare*f.value {
			f.verdict, f.note, f.joint = cannotTell, "a filler changes the weight", false
		}
		return f
	}
}

// filled reports whether the opinion names a filling or impregnation.
func (d *Identifier) filled(s *stone.Stone) bool {
	for _, claim := range s.Opinion.Treatments.Items {
		t, err := d.table.Treatment(claim.Name)
		if err != nil {
			continue
		}
		for _, name := range fillings() {
			if wide, err := d.table.Treatment(name); err == nil && d.table.TreatmentIsWithin(t, wide) {
				return true
			}
		}
	}
	return false
}

// fillings are the treatments that put so much of another substance into a stone
// that its weight changes.
func fillings() []string {
	return []string{"glass filled", "resin", "impregnated", "pearl filled", "reconstructed"}
}

// counters walk the reduced values beside the tests they came from.
type counters struct{ index, gravity, spectrum int }

func (d *Identifier) of(t stone.Test, c *Case, n *counters) evidence {
	look := c.Stone.Appearance
	switch t := t.(type) {
	case *stone.Refractometer, *stone.Digital:
		v := &c.Values.Index[n.index]
		n.index++
		r := ruleFor(v.Check.State == reading.CheckValid)
		return evidence{kind: KindIndex, value: indexText(v), judge: func(m *gem.Material) finding { return index(v, m, r) }}
	case *stone.Gravity:
		g := &c.Values.Gravity[n.gravity]
		n.gravity++
		r := ruleFor(g.Check.State == reading.CheckValid)
		return evidence{kind: KindDensity, value: gravityText(g), judge: func(m *gem.Material) finding { return densityAtAnyIndex(g, m, r, c.Values.Index) }}
	case *stone.Spectroscope:
		v := &c.Values.Spectrum[n.spectrum]
		n.spectrum++
		known := d.speaking(d.spectrumFeatures(v))
		return evidence{kind: KindAbsorption, value: spectrumText(v), judge: func(m *gem.Material) finding {
			f := spectrum(v, m, look.Colour)
			if g := d.guests(known, m); g.verdict == conflicts {
				return g
			}
			return f
		}}
	case *stone.Polariscope:
		return evidence{kind: KindOptic, value: polarsText(t), judge: func(m *gem.Material) finding { return polariscope(t, m, look.Transparency) }}
	case *stone.Dichroscope:
		return evidence{kind: KindOptic, value: dichroscopeText(t), judge: func(m *gem.Material) finding { return dichroscope(t, m) }}
	case *stone.Ultraviolet:
		long := lampSeen{t.Long.Given(), t.Long.Given() && t.Long.Strength != "none"}
		short := lampSeen{t.Short.Given(), t.Short.Given() && t.Short.Strength != "none"}
		return evidence{kind: KindLuminescence, value: lampText(t), judge: func(m *gem.Material) finding { return glow(long, short, m) }}
	case *stone.Magnification:
		return d.seen(t.Sees.Items)
	case *stone.Features:
		return d.seen(t.Sees.Items)
	case *stone.LaboratoryReport:
		return d.report(t, c)
	}
	return d.lesser(t, c)
}

// lesser makes ready the tests that never count toward a supported species.
func (d *Identifier) lesser(t stone.Test, c *Case) evidence {
	e := evidence{kind: KindOther, judge: func(*gem.Material) finding { return said(cannotTell, "recorded; it names no material") }}
	switch t := t.(type) {
	case *stone.Hardness:
		e.value = hardnessText(t)
		bounds := scratches(t, d.table)
		e.judge = func(m *gem.Material) finding { return hardness(bounds, m) }
	case *stone.Thermal:
		size := smallest(c.Stone.Size)
		e.value = word(t.Shows)
		e.judge = func(m *gem.Material) finding { return thermal(t, m, size) }
	case *stone.Electrical:
		e.value = word(t.Shows)
		e.judge = func(m *gem.Material) finding { return electrical(t, m) }
	case *stone.Magnet:
		e.value = phrase.Say("attraction %s", phrase.Word(t.Shows))
		e.judge = func(m *gem.Material) finding { return magnet(t, m) }
	case *stone.Filter:
		e.value = word(t.Shows)
		may := phrase.Say("%s through the filter, as this material may be", phrase.Word(t.Shows))
		e.judge = func(m *gem.Material) finding { return filter(t, m, may) }
	case *stone.Doubling:
		e.value = word(strings.TrimSpace(t.Shows + t.Sees))
		e.kind = KindOptic
		e.judge = func(m *gem.Material) finding { return doubling(t, m) }
	case *stone.CarbonateFlash:
		e.value = phrase.Say("swing %s", phrase.Word(strings.TrimSpace(t.Shows)))
		e.kind = KindIndex
		e.judge = func(m *gem.Material) finding { return carbonateFlash(t, m) }
	case *stone.Screening:
		e.value = word(t.Shows)
	case *stone.Radioactivity:
		e.value = radioactivityText(t)
	case *stone.OwnSpectrum:
		e = d.seen(t.Sees.Items)
		e.value = phrase.Commas(append(phrase.Figures(t.Peaks.Items), phrase.Words(t.Sees.Items)...)...)
	}
	return e
}

// densityAtAnyIndex judges a specific gravity with each index that was read:
// the worst is the verdict, so that a further reading never mends it.
func densityAtAnyIndex(g *reading.GravityValue, m *gem.Material, r rule, all []reading.IndexValue) finding {
	f := density(g, m, r, nil)
	if len(m.Joint) < 2 || !f.known {
		return f
	}
	for i := range all {
		if all[i].Test.Header().SetAside != "" || all[i].Suspect != "" {
			continue
		}
		if joint := density(g, m, r, &all[i]); joint.verdict >= f.verdict {
			f = worse(joint, f)
		}
	}
	return f
}

func smallest(z stone.Size) float64 {
	least := 0.0
	for _, list := range []stone.List[stone.Length]{z.Diameter, z.Length, z.Width} {
		for _, l := range list.Items {
			if v := l.Float(); least == 0 || v < least {
				least = v
			}
		}
	}
	return least
}
