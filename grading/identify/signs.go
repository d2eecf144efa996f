package identify

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// observed is one feature of the table that the tests show, and the test.
type observed struct {
	feature *gem.Feature
	test    stone.Test
}

// observedIn lists the features that the tests of a case show: terms seen under
// magnification, and the patterns of spectrum and lamp that the table knows.
// The second list is what was seen and is no term of the table.
func (d *Identifier) observedIn(c *Case) (seen []observed, others []string) {
	n := counters{}
	for _, any := range c.Stone.Tests {
		t := any.Test
		aside := t.Header().SetAside != ""
		var terms []string
		var patterns []*gem.Feature
		switch t := t.(type) {
		case *stone.Magnification:
			terms = t.Sees.Items
		case *stone.Features:
			terms = t.Sees.Items
		case *stone.OwnSpectrum:
			terms = t.Sees.Items
		case *stone.Spectroscope:
			v := &c.Values.Spectrum[n.spectrum]
			n.spectrum++
			patterns = d.spectrumFeatures(v)
			if t.Pattern != "" {
				terms = []string{t.Pattern}
			}
		case *stone.Ultraviolet:
			patterns = d.lampFeatures(t)
		}
		if aside {
			continue
		}
		for _, term := range terms {
			if f, err := d.table.Feature(term); err == nil {
				patterns = append(patterns, f)
			} else {
				others = append(others, term)
			}
		}
		for _, f := range patterns {
			seen = append(seen, observed{f, t})
		}
	}
	return seen, others
}

// seen makes ready what magnification shows, as evidence of a species.
func (d *Identifier) seen(terms []string) evidence {
	var features []*gem.Feature
	for _, t := range terms {
		if f, err := d.table.Feature(t); err == nil {
			features = append(features, f)
		}
	}
	features = d.speaking(features)
	value := phrase.Line("nothing seen")
	if len(terms) > 0 {
		value = phrase.Commas(phrase.Words(terms)...)
	}
	return evidence{kind: KindInclusions, value: value, judge: func(m *gem.Material) finding { return d.guests(features, m) }}
}

// speaking keeps the features that prove or exclude some species.
func (d *Identifier) speaking(features []*gem.Feature) []*gem.Feature {
	return slices.DeleteFunc(features, func(f *gem.Feature) bool { return !f.NotGlass && d.guest[f] == nil })
}

// guests judges features against a material: one that names a material proves
// it and speaks against all others, one that a material cannot hold excludes
// it.
func (d *Identifier) guests(features []*gem.Feature, m *gem.Material) finding {
	f := said(cannotTell, "nothing seen names or excludes a material")
	for _, feature := range features {
		if feature.NotGlass && m.Class == "glass" {
			return finding{verdict: conflicts, known: true, figure: phrase.Word(feature.Term), note: "glass cannot hold it", tell: tellGuest}
		}
		switch decisive := d.guest[feature][m]; decisive.verdict {
		case conflicts:
			return decisive
		case agrees:
			f = decisive
		}
	}
	return f
}

func tellGuest(f finding) phrase.Line {
	return phrase.Say("%s: %s", f.figure, f.note)
}

// guestOf is what a feature proves or excludes of a material.
func guestOf(table *gem.Table, feature *gem.Feature, m *gem.Material) (f finding, decisive bool) {
	for _, s := range table.SignsFor(feature, m) {
		if s.Claim != "species" {
			continue
		}
		about, err := table.Find(s.About)
		if err != nil {
			continue
		}
		f := finding{known: true, figure: phrase.Word(feature.Term), note: phrase.Line(s.Because), tell: tellGuest}
		within := table.IsWithin(m, about)
		switch {
		case s.Force == gem.Excludes && within, s.Force == gem.Proves && !within && !table.IsWithin(about, m):
			f.verdict = conflicts
			return f, true
		case s.Force == gem.Proves && within:
			f.verdict = agrees
			return f, true
		}
	}
	return finding{}, false
}

// guestTable looks up once what each feature proves or excludes.
func guestTable(table *gem.Table) map[*gem.Feature]map[*gem.Material]finding {
	all := map[*gem.Feature]map[*gem.Material]finding{}
	for _, feature := range table.Features() {
		for _, m := range table.Materials() {
			f, decisive := guestOf(table, feature, m)
			if !decisive {
				continue
			}
			if all[feature] == nil {
				all[feature] = map[*gem.Material]finding{}
			}
			all[feature][m] = f
		}
	}
	return all
}

// spectrumFeatures are the patterns of which every line was seen, each as a line
// or band of its own: one broad band is not three.
func (d *Identifier) spectrumFeatures(v *reading.SpectrumValue) []*gem.Feature {
	var list []*gem.Feature
	for _, f := range d.bySpectrum {
		if len(f.Lines) > 0 && showsAll(v, f) {
			list = append(list, f)
		}
	}
	return list
}

func showsAll(v *reading.SpectrumValue, f *gem.Feature) bool {
	taken := map[int]bool{} // lines by index, bands by index below zero
	for _, nm := range f.Lines {
		at, ok := shows(v, f.LineKind, nm)
		if !ok || taken[at] {
			return false
		}
		taken[at] = true
	}
	return true
}

// shows finds the line or band that shows a wavelength.
func shows(v *reading.SpectrumValue, kind string, nm float64) (at int, ok bool) {
	for i, l := range v.Lines {
		if nm >= l.At-2*l.U && nm <= l.At+2*l.U {
			return i, true
		}
	}
	if kind != "band" {
		return 0, false
	}
	for i, b := range v.Bands {
		if nm >= b.From-2*b.U && nm <= b.To+2*b.U {
			return -1 - i, true
		}
	}
	return 0, false
}

// lampFeatures are the patterns of glow that the lamp showed in full.
func (d *Identifier) lampFeatures(t *stone.Ultraviolet) []*gem.Feature {
	var list []*gem.Feature
	for _, f := range d.byLamp {
		if glows(f, t) {
			list = append(list, f)
		}
	}
	return list
}

func glows(f *gem.Feature, t *stone.Ultraviolet) bool {
	if f.Wave == "" && len(f.Glow) == 0 && f.Strength == "" && f.Pattern == "" && f.Afterglow == "" {
		return false // only ever named by the examiner
	}
	waves := []stone.Fluorescence{t.Long, t.Short}
	switch f.Wave {
	case "long":
		waves = waves[:1]
	case "short":
		waves = waves[1:]
	}
	glow := f.Wave == "" && len(f.Glow) == 0 && f.Strength == "" || slices.ContainsFunc(waves, func(w stone.Fluorescence) bool {
		colour := len(f.Glow) == 0 || slices.ContainsFunc(f.Glow, func(c string) bool { return w.Colour != "" && strings.Contains(w.Colour, c) })
		strength := f.Strength == "" || strings.HasSuffix(w.Strength, f.Strength)
		return w.Given() && w.Strength != "none" && colour && strength
	})
	pattern := f.Pattern == "" || slices.Contains(t.Pattern.Items, f.Pattern)
	after := f.Afterglow == "" || t.Afterglow.Colour != "" && strings.Contains(t.Afterglow.Colour, f.Afterglow)
	return glow && pattern && after
}
