package chart

import (
	"slices"
	"strings"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
	"stonewrit/report"
)

// Evidence draws all that an examined stone has figures for, in the order in
// which a document shows it: index, specific gravity, turns, spectrum, making.
// t are the tables that the stone was examined with.
func (d Drawer) Evidence(e *grading.Examined, t *grading.Tables) []report.Figure {
	var out []report.Figure
	take := func(f report.Figure, ok bool) {
		if ok {
			out = append(out, f)
		}
	}
	s := subject{Examined: e, tables: t, words: d.Words}
	take(d.Index(Index{Readings: s.indices(), Materials: s.materials(indexRanges)}))
	take(d.Gravity(s.gravity()))
	if turns, ok := s.turns(); ok {
		take(d.Turns(turns))
	}
	if spectrum, ok := s.spectrum(); ok {
		take(d.Spectrum(spectrum))
	}
	if e.Stone.Size.Given() && !severalSizes(e.Stone) {
		take(d.Making(MakingOf(t.Weights(), e.Weight.Dimensions)))
	}
	return out
}

// subject is an examined stone as the drawings ask for it.
type subject struct {
	*grading.Examined
	tables *grading.Tables
	words  Words
}

// named is a row of the gem table, or several together, under one name.
type named struct {
	name string
	rows []*gem.Material
}

// opinion is what the stone is said to be: one name, or the parts of a
// composite.
func (s subject) opinion() []named {
	o := s.Verdict.Opinion
	if o.Narrow != nil {
		return []named{{s.words.material(o.Narrow.Name), s.tables.Gems.Leaves(o.Narrow)}}
	}
	var out []named
	for _, l := range o.Layers {
		if l.Material != nil {
			name := fill(s.words.Layer, "material", s.words.material(l.Material.Name), "part", s.words.place(l.Part))
			out = append(out, named{name, s.tables.Gems.Leaves(l.Material)})
		}
	}
	return out
}

// materials are what the stone is said to be and its rivals, with their ranges.
func (s subject) materials(ranges func(m *gem.Material) [2]gem.Range) []Material {
	make := func(n named, own bool) Material {
		var both [2]gem.Range
		for _, row := range n.rows {
			r := ranges(row)
			both[0], both[1] = both[0].Union(r[0]), both[1].Union(r[1])
		}
		return Material{Name: n.name, Own: own, Ranges: both[:]}
	}
	var out []Material
	for _, n := range s.opinion() {
		out = append(out, make(n, true))
	}
	for _, r := range s.Verdict.Rivals {
		out = append(out, make(named{s.words.material(r.Material.Name), []*gem.Material{r.Material}}, false))
	}
	return out
}

func indexRanges(m *gem.Material) [2]gem.Range   { return [2]gem.Range{m.Low, m.High} }
func gravityRanges(m *gem.Material) [2]gem.Range { return [2]gem.Range{m.SG} }

// indices are the stone's own index and those of other places on it, which a
// composite has.
func (s subject) indices() []IndexReading {
	best := s.Values.Best()
	if best == nil {
		return nil
	}
	other := map[string]*reading.IndexValue{}
	for i := range s.Values.Index {
		v := &s.Values.Index[i]
		h := v.Test.Header()
		known := v.Edges > 0 || v.Over > 0 && v.Suspect == ""
		if h.SetAside != "" || h.Place == "" || h.Place == best.Test.Header().Place || !known {
			continue
		}
		if o := other[h.Place]; o == nil || v.Edges > 0 && (o.Edges == 0 || v.U < o.U) {
			other[h.Place] = v
		}
	}
	first := indexReading(best)
	if len(other) > 0 {
		first.Place = best.Test.Header().Place
	}
	out := []IndexReading{first}
	for _, place := range sortedKeys(other) {
		r := indexReading(other[place])
		r.Place = place
		out = append(out, r)
	}
	return out
}

func sortedKeys(m map[string]*reading.IndexValue) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// indexReading takes a value with as many decimals as the table of tests has.
func indexReading(v *reading.IndexValue) IndexReading {
	r := IndexReading{Edges: v.Edges, Low: v.Low, High: v.High, U: v.U, Limit: v.Limit, UpperOver: v.UpperOver, Birefringence: v.Birefringence, Decimals: 3}
	switch {
	case v.Edges == 0:
		r.Limit = v.Over
	case v.Edges == 2:
		r.Decimals = 4
	case v.Reflected, v.Spot && v.Low == v.High && !v.UpperOver:
		r.Decimals = 2
	}
	return r
}

// gravity is the specific gravity, or else the liquids that bound it.
func (s subject) gravity() Gravity {
	out := Gravity{Materials: s.materials(gravityRanges)}
	if best := s.Values.BestGravity(); best != nil {
		out.Value, out.U = best.V, best.U
		return out
	}
	for _, g := range s.Values.Gravity {
		if g.Test.Header().SetAside != "" || g.Void != "" {
			continue
		}
		switch g.Bound {
		case "above":
			out.Above = max(out.Above, g.Liquid)
		case "below":
			if out.Below == 0 || g.Liquid < out.Below {
				out.Below = g.Liquid
			}
		}
	}
	return out
}

// turns are those of the stone's own index, or of the first refractometer test
// on a facet that has some.
func (s subject) turns() (Turns, bool) {
	values := s.Values.Index
	if best := s.Values.Best(); best != nil {
		values = append([]reading.IndexValue{*best}, values...)
	}
	for _, v := range values {
		t, ok := v.Test.(*stone.Refractometer)
		if !ok || v.Spot || v.Edges == 0 || t.SetAside != "" || len(t.Readings.Items) < fewestTurns {
			continue
		}
		out := Turns{U: v.U, Decimals: indexReading(&v).Decimals}
		for _, r := range t.Readings.Items {
			turn := Turn{Over: r.Over}
			if len(r.Seen) > 0 {
				turn.Low = r.Seen[0].Float() - v.Check.Offset
				turn.High = r.Seen[len(r.Seen)-1].Float() - v.Check.Offset
			}
			out.Turns = append(out.Turns, turn)
		}
		return out, true
	}
	return Turns{}, false
}

// spectrum is the first spectroscope test in which something was seen, or else
// the first in which lines were looked for, over what is published for the
// narrowest name in stones of its colour.
func (s subject) spectrum() (Spectrum, bool) {
	var chosen *reading.SpectrumValue
	for i := range s.Values.Spectrum {
		v := &s.Values.Spectrum[i]
		shows := len(v.Lines)+len(v.Bands)+len(v.Bright) > 0 || v.Cutoff.At > 0
		if v.Test.SetAside != "" || !shows && !v.Looked {
			continue
		}
		if shows {
			chosen = v
			break
		}
		if chosen == nil {
			chosen = v
		}
	}
	if chosen == nil {
		return Spectrum{}, false
	}
	out := Spectrum{Looked: chosen.Looked, Seen: absorptions(chosen)}
	if o := s.opinion(); len(o) > 0 {
		out.Name, out.Published = o[0].name, published(o[0].rows, s.Stone.Appearance.Colour)
	}
	return out, true
}

func absorptions(v *reading.SpectrumValue) []Absorption {
	var out []Absorption
	line := func(kind Kind, l reading.Line) {
		out = append(out, Absorption{Kind: kind, From: l.At, To: l.At, U: l.U, Doubtful: l.Doubt != ""})
	}
	for _, l := range v.Lines {
		line(Line, l)
	}
	for _, b := range v.Bands {
		out = append(out, Absorption{Kind: Band, From: b.From, To: b.To, U: b.U})
	}
	for _, l := range v.Bright {
		line(Emission, l)
	}
	if v.Cutoff.At > 0 {
		line(Cutoff, v.Cutoff)
	}
	return out
}

// published gathers what the table has for stones of the colour, or for all
// where no colour is recorded.
func published(rows []*gem.Material, colour string) []Absorption {
	var out []Absorption
	for _, m := range rows {
		for _, a := range m.Absorption {
			fits := colour == "" || len(a.Colours) == 0 || slices.ContainsFunc(a.Colours, func(c string) bool { return strings.Contains(colour, c) })
			if fits {
				out = append(out, Absorption{Kind: Kind(a.Kind), From: a.From, To: a.To, Frequency: a.Frequency})
			}
		}
	}
	return out
}

// severalSizes reports whether the sizes are those of several stones that
// differ: one drawing would show none of them.
func severalSizes(s *stone.Stone) bool {
	z := s.Size
	lists := [][]stone.Length{z.Sizes.Items}
	if p := s.Quality.Pearl; p != nil {
		lists = append(lists, p.Sizes.Items)
	}
	if z.Number() > 1 {
		lists = append(lists, z.Length.Items, z.Width.Items, z.Diameter.Items, z.Depth.Items)
	}
	return slices.ContainsFunc(lists, func(list []stone.Length) bool {
		return slices.ContainsFunc(list, func(l stone.Length) bool { return l.V != list[0].V })
	})
}
