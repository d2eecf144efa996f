package chart

import (
	"math"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/report"
)

// Index is the refractive index of a stone beside those of materials.
type Index struct {
	// Readings are the values at one place each, the stone's own first.
	Readings  []IndexReading
	Materials []Material
}

// IndexReading is the index at one place of the stone.
type IndexReading struct {
	Place     string  // "" where only one is known
	Edges     int     // 2, 1, or 0 for none below the limit
	Low, High float64 // edges; alike where there is one
	U         float64 // standard uncertainty of each
	Limit     float64 // of the contact liquid; 0 where it does not matter
	UpperOver bool    // the upper edge lies above Limit
	Decimals  int     // that the values are printed with

	Birefringence float64 // between the edges as read
}

// Material is a material with its published ranges.
type Material struct {
	Name string // as printed
	Own  bool   // what the stone is said to be; all others are rivals
	// Ranges are those of the lower and of the higher index, or the one range
	// of a singly refractive material or of a specific gravity. None says that
	// the table lacks the figure.
	Ranges []gem.Range
}

// Gravity is the specific gravity of a stone beside those of materials.
type Gravity struct {
	Value, U     float64 // with its standard uncertainty; 0 where no value is known
	Above, Below float64 // liquids in which it sinks and floats, where no value is known; 0 for none
	Materials    []Material
}

// Spans that a ruler shows at least, and figures beyond which nothing is a
// reading: no gem has an index outside 1 to 4 or is heavier than gold.
const (
	leastIndex, leastGravity = 0.04, 0.4
	lowestIndex, highIndex   = 1, 4
	lowestGravity, highest   = 0.3, 25
)

// Index draws the ruler of the refractive index: a tick and a bracket for each
// edge, the birefringence between the two, an arrow where an edge lies over the
// limit. It returns false where there is no reading.
func (d Drawer) Index(in Index) (report.Figure, bool) {
	r := ruler{canvas: canvas{Drawer: d}, title: d.Words.Index, least: leastIndex, decimals: 2, materials: in.Materials}
	var said []string
	for _, reading := range in.Readings {
		said = append(said, r.readIndex(reading)...)
	}
	if len(r.marks) == 0 {
		return report.Figure{}, false
	}
	return r.drawn(d.Words.IndexCaption, d.Words.IndexAlt, said), true
}

// readIndex makes the marks of one reading, and says it.
func (r *ruler) readIndex(v IndexReading) []string {
	w, place := r.Words, ""
	if v.Place != "" {
		place = w.place(v.Place) + "\u00a0"
	}
	valid := func(x float64) bool { return x >= lowestIndex && x <= highIndex }
	expanded := expand(v.U)
	value := func(at float64, side int) {
		r.marks = append(r.marks, mark{at: at, expanded: expanded, text: place + w.valued(at, expanded, v.Decimals), side: side})
	}
	first := len(r.marks)
	switch {
	case v.Edges == 0 && valid(v.Limit):
		r.over(place, v.Limit)
	case v.Edges > 0 && valid(v.Low) && valid(v.High) && v.High > v.Low:
		value(v.Low, -1)
		value(v.High, +1)
		if v.Edges == 2 && v.Birefringence > 0 {
			r.pairs = append(r.pairs, pair{v.Low, v.High, w.number(v.Birefringence, max(v.Decimals, 3))})
		}
	case v.Edges == 1 && valid(v.Low), v.Edges == 2 && valid(v.Low) && v.High == v.Low:
		value(v.Low, +1)
		if v.Edges == 1 && v.UpperOver && valid(v.Limit) {
			r.marks[first].side = -1
			r.over(place, v.Limit)
		}
	}
	var said []string
	for _, m := range r.marks[first:] {
		said = append(said, m.text)
	}
	return said
}

func (r *ruler) over(place string, limit float64) {
	r.marks = append(r.marks, mark{at: limit, bound: +1, text: place + fill(r.Words.Over, "figure", r.Words.number(limit, 2))})
}

// Gravity draws the ruler of the specific gravity: a tick and a bracket, or
// arrows from the liquids in which the stone sinks and floats. It returns false
// where nothing is known.
func (d Drawer) Gravity(in Gravity) (report.Figure, bool) {
	r := ruler{canvas: canvas{Drawer: d}, title: d.Words.Gravity, least: leastGravity, decimals: 1, materials: in.Materials}
	valid := func(x float64) bool { return x >= lowestGravity && x <= highest }
	bound := func(at float64, side int, words string) {
		if valid(at) {
			r.marks = append(r.marks, mark{at: at, bound: side, text: fill(words, "figure", d.Words.number(at, 2))})
		}
	}
	if expanded := expand(in.U); valid(in.Value) {
		r.marks = append(r.marks, mark{at: in.Value, expanded: expanded, text: d.Words.valued(in.Value, expanded, 3), side: +1})
	} else {
		bound(in.Above, +1, d.Words.Above)
		bound(in.Below, -1, d.Words.Below)
	}
	if len(r.marks) == 0 {
		return report.Figure{}, false
	}
	var said []string
	for _, m := range r.marks {
		said = append(said, m.text)
	}
	return r.drawn(d.Words.GravityCaption, d.Words.GravityAlt, said), true
}

// expand is the expanded uncertainty, k = 2, of a standard one; 0 for one that
// is no figure.
func expand(u float64) float64 {
	if math.IsNaN(u) || math.IsInf(u, 0) || u < 0 {
		return 0
	}
	return 2 * u
}

// alt says the ruler in words: the stone's values and the ranges drawn.
func (r *ruler) alt(text string, said []string) string {
	var ranges []string
	for _, m := range r.rows {
		low, high := ends(m.Ranges)
		ranges = append(ranges, m.Name+" "+r.Words.number(low, r.decimals+1)+"–"+r.Words.number(high, r.decimals+1))
	}
	return fill(text, "stone", strings.Join(said, "; "), "ranges", strings.Join(ranges, "; "))
}

// ends are the lowest and highest figure of ranges.
func ends(list []gem.Range) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, r := range list {
		low, high = min(low, r.Min), max(high, r.Max)
	}
	return low, high
}
