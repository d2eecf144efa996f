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
	name := "name"
	if len(published) > 0 {
		c.lowerStrip(published, in.Name)
	} else {
		c.sayBelow(fill(d.Words.NonePublished, name, in.Name), bottom+ascent+2)
	}
	alt := fill(d.Words.SpectrumAlt, "seen", c.list(seen), "published", c.list(published), name, in.Name)
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
	return scale{low: low, high: high, from: 0, to: report.FigureWidth}
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
		c.dark(a)
	}
	c.frame(0)
	top := c.flags(seen, 0, -1)
	title := c.Words.Seen
	if len(seen) == 0 {
		title = c.Words.NoLines
	}
	lines := c.wrapped(title, report.FigureWidth)
	slices.Reverse(lines)
	for i, line := range lines {
		c.label(0, top-5-pt(i)*(lineHigh+1), black(line), report.AnchorStart)
	}
}

func (c *spectrumChart) ground(y pt) {
	ground := report.Rectangle(xy{X: 0, Y: y}, report.FigureWidth, stripHigh)
	ground.Pen, ground.Fill = report.Pen{None: true}, report.Fill{Solid: true, Grey: 0.945}
	c.add(ground)
}

func (c *spectrumChart) frame(y pt) {
	half := report.Hairline / 2
	frame := report.Rectangle(xy{X: half, Y: y}, report.FigureWidth-2*half, stripHigh)
	frame.Pen = hairline()
	c.add(frame)
}

// dark draws one thing seen.
func (c *spectrumChart) dark(a Absorption) {
	from, to := c.scale.at(a.From), c.scale.at(a.To)
	switch a.Kind {
	case Band:
		c.shade(from, to, 0.62)
	case Cutoff:
		c.shade(0, from, 0.4)
		c.line(from, 0, from, stripHigh, report.Pen{Width: report.Thin})
	case Emission:
		c.bright(from, to, 0, report.Pen{Width: report.Thin})
	default:
		pen := report.Pen{Width: 1.1}
		if a.Doubtful {
			pen.Dash = []pt{2, 1.6}
		}
		c.line(from, 0, from, stripHigh, pen)
		c.whisker(a)
	}
}

// whisker spans the expanded uncertainty of a line, at the scale.
func (c *spectrumChart) whisker(a Absorption) {
	u := expand(a.U)
	from, to := c.scale.at(c.scale.within(a.From-u)), c.scale.at(c.scale.within(a.From+u))
	if to-from > 1.5 {
		c.line(from, stripHigh-2.6, to, stripHigh-2.6, report.Pen{Width: report.Thin})
	}
}

func (c *spectrumChart) shade(from, to pt, shade float64) {
	area := report.Rectangle(xy{X: from}, to-from, stripHigh)
	area.Pen, area.Fill = report.Pen{None: true}, report.Fill{Solid: true, Grey: shade}
	c.add(area)
}

// bright draws a bright line: white between two lines.
func (c *spectrumChart) bright(from, to, y pt, pen report.Pen) {
	half := max((to-from)/2, 1.2)
	middle := min(max((from+to)/2, half+pen.Width), report.FigureWidth-half-pen.Width)
	area := report.Rectangle(xy{X: middle - half, Y: y}, 2*half, stripHigh)
	area.Pen, area.Fill = report.Pen{None: true}, report.Fill{Solid: true, Grey: 1}
	c.add(area)
	c.line(middle-half, y, middle-half, y+stripHigh, pen)
	c.line(middle+half, y, middle+half, y+stripHigh, pen)
}

// lowerStrip draws what is published: full lines for what is always there,
// dashed for often, dotted for sometimes; bands and cutoffs hatched.
func (c *spectrumChart) lowerStrip(published []Absorption, name string) {
	y := stripHigh + scaleHigh
	for _, a := range linesLast(published) {
		c.expected(a, y)
	}
	c.frame(y)
	bottom := c.flags(published, y+stripHigh, +1)
	c.key(published, fill(c.Words.Published, "name", name), bottom+ascent+4)
}

// expected draws one thing published.
func (c *spectrumChart) expected(a Absorption, y pt) {
	from, to := c.scale.at(a.From), c.scale.at(a.To)
	pen := frequencyPen(a.Frequency)
	upright := func(x pt) { c.line(x, y, x, y+stripHigh, pen) }
	switch a.Kind {
	case Band:
		c.hatch(from, to, y)
		upright(from)
		upright(to)
	case Cutoff:
		c.hatch(0, from, y)
		upright(from)
		if to > from {
			upright(to)
		}
	case Emission:
		c.bright(from, to, y, pen)
	default:
		upright((from + to) / 2)
	}
}

func (c *spectrumChart) hatch(from, to, y pt) {
	if to-from < 0.5 {
		return
	}
	area := report.Rectangle(xy{X: from, Y: y}, to-from, stripHigh)
	area.Pen, area.Fill = report.Pen{None: true, Grey: 0.5}, report.Fill{Hatch: 2.6, Angle: 45}
	c.add(area)
}

// frequencyPen tells by its dashes how dependable a line is.
func frequencyPen(f gem.Frequency) report.Pen {
	switch f {
	case gem.Always:
		return report.Pen{Width: 1}
	case gem.Often:
		return report.Pen{Width: 0.8, Dash: []pt{4, 2}}
	}
	return report.Pen{Width: 0.8, Dash: []pt{0.9, 2.1}}
}

// list says absorptions one after the other.
func (c *spectrumChart) list(all []Absorption) string {
	var parts []string
	for _, a := range all {
		parts = append(parts, c.wavelength(a.From, a.To))
	}
	return strings.Join(parts, ", ")
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
