package chart

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/report"
)

// Spectrum is what the spectroscope showed beside what is published.
type Spectrum struct {
	Seen      []Absorption
	Looked    bool // lines were looked for, even if none was seen
	Name      string
	Published []Absorption
}

// Absorption is one line, band, cutoff or emission line, in nm.
type Absorption struct {
	Kind      Kind
	From, To  float64       // equal for a line; all is dark below a cutoff
	U         float64       // standard uncertainty of what was seen
	Frequency gem.Frequency // of what is published
	Doubtful  bool          // of what was seen: it may be the lamp's
}

// Kind is the kind of an absorption.
type Kind string

// The kinds, by the words of the gem table.
const (
	Line     Kind = "line"
	Band     Kind = "band"
	Cutoff   Kind = "cutoff"
	Emission Kind = "emission"
)

// Ends of the scale in nm: what the eye sees in a spectroscope, and further
// where something was recorded there.
const (
	violet, red          = 400, 700
	farRed               = 780
	shortest, longest    = 300, 1100
	everyNM              = 20 // that a widened end is rounded to
	stripHigh         pt = 26
	stripInset        pt = 1 // from the sides of the figure, for lines at its ends
	scaleHigh         pt = 17
	leaderHigh        pt = 9
	flagGap           pt = 4
)

// spectrumChart is the work on a spectrum; the upper strip begins at y = 0.
type spectrumChart struct {
	canvas
	scale scale
}

// Spectrum draws what was seen as a strip, the scale, and what is published as
// a strip below. It returns false where nothing was seen and nothing is
// published, or nothing was looked for.
func (d Drawer) Spectrum(in Spectrum) (report.Figure, bool) {
	seen, published := sound(in.Seen), sound(in.Published)
	if len(seen)+len(published) == 0 || len(seen) == 0 && !in.Looked {
		return report.Figure{}, false
	}
	c := spectrumChart{canvas: canvas{Drawer: d}, scale: spectrumScale(append(slices.Clone(seen), published...))}
	c.upperStrip(seen)
	bottom := c.figures()
	switch {
	case len(published) > 0:
		c.lowerStrip(published, in.Name)
	case in.Name != "":
		c.sayBelow(fill(d.Words.NonePublished, "name", in.Name), bottom+ascent+2)
	}
	alt := fill(d.Words.SpectrumAlt, "seen", c.list(seen), "published", c.list(published), "name", in.Name)
	return c.figure(report.FigureWidth, d.Words.SpectrumCaption, alt), true
}

// sound leaves out what is no wavelength, what is never there, and twins, and
// sorts the rest.
func sound(list []Absorption) []Absorption {
	var out []Absorption
	for _, a := range list {
		if a.To == 0 {
			a.To = a.From
		}
		if a.From >= shortest && a.To >= a.From && a.To <= longest && a.Frequency != gem.Never {
			out = append(out, a)
		}
	}
	slices.SortStableFunc(out, func(a, b Absorption) int {
		return cmp.Or(cmp.Compare(a.From+a.To, b.From+b.To), cmp.Compare(a.From, b.From), cmp.Compare(a.Kind, b.Kind))
	})
	return slices.Compact(out)
}

// linesLast puts what has an area before the lines, which would vanish below it.
func linesLast(list []Absorption) []Absorption {
	order := map[Kind]int{Cutoff: 0, Band: 1, Emission: 2, Line: 3}
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b Absorption) int { return cmp.Compare(order[a.Kind], order[b.Kind]) })
	return out
}

// spectrumScale is 400 to 700 nm, to 780 where something lies beyond, and
// further at either end where that does.
func spectrumScale(list []Absorption) scale {
	low, high := float64(violet), float64(red)
	for _, a := range list {
		if a.From < low {
			low = math.Floor(a.From/everyNM) * everyNM
		}
		if a.To > high {
			high = max(farRed, math.Ceil(a.To/everyNM)*everyNM)
		}
	}
	return scale{low: low, high: high, from: stripInset, to: report.FigureWidth - stripInset}
}

// figures draws the scale between the strips and returns its lower edge.
func (c *spectrumChart) figures() pt {
	g := graduate(c.scale, 40, 0)
	bottom := stripHigh + scaleHigh
	for _, t := range g.ticks(c.scale) {
		x, long := c.scale.at(t.at), pt(2)
		if t.major {
			long = 4
			text := c.Words.number(t.at, 0)
			c.label(inside(x, c.width(text), report.FigureWidth), stripHigh+scaleHigh/2, black(text), report.AnchorMiddleCentred)
		}
		c.line(x, stripHigh, x, stripHigh+long, hairline())
		c.line(x, bottom-long, x, bottom, hairline())
	}
	return bottom
}

// upperStrip draws what was seen, as the eye sees it: dark on light.
func (c *spectrumChart) upperStrip(seen []Absorption) {
	c.ground(0)
	for _, a := range linesLast(seen) {
		c.dark(a, lineHighOf(a, seen))
	}
	c.frame(0)
	c.flags(seen, 0, -1)
	title := c.Words.Seen
	if len(seen) == 0 {
		title = c.Words.NoLines
	}
	c.headed(title)
}

// list says absorptions one after the other.
func (c *spectrumChart) list(all []Absorption) string {
	var parts []string
	for _, a := range all {
		parts = append(parts, c.text(a))
	}
	return strings.Join(parts, ", ")
}

// text writes an absorption: what was seen as closely as it is known, what is
// published as it is published.
func (c *spectrumChart) text(a Absorption) string {
	if a.U >= 0.3 {
		return c.wavelength(math.Round(a.From), math.Round(a.To))
	}
	return c.wavelength(a.From, a.To)
}

// wavelength writes a line or a stretch, with a decimal where it has one.
func (c *spectrumChart) wavelength(from, to float64) string {
	one := func(nm float64) string {
		if math.Abs(nm-math.Round(nm)) < 0.05 {
			return c.Words.number(nm, 0)
		}
		return c.Words.number(nm, 1)
	}
	if from == to || one(from) == one(to) {
		return one(from)
	}
	return one(from) + "–" + one(to)
}
