package chart

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/report"
)

// flags sets the wavelengths beside a strip whose edge lies at y, on the side
// given: -1 above, +1 below. Thin lines lead from the strip to them. Where level
// texts have no room they stand upright, and where those have none, near ones
// are gathered. It returns where the texts end.
func (c *spectrumChart) flags(list []Absorption, y pt, side pt) pt {
	if len(list) == 0 {
		return y
	}
	flags := c.flagsOf(list)
	wide := c.widths(flags)
	if at, ok := c.spreadOut(flags, wide); ok {
		for i, f := range flags {
			c.leader(f, at[i], y, side)
			baseline := y - leaderHigh - descent - 0.5
			if side > 0 {
				baseline = y + leaderHigh + ascent + 0.5
			}
			c.label(at[i], baseline, black(f.text), report.AnchorMiddle)
		}
		return y + side*(leaderHigh+lineHigh+0.5)
	}
	const most = 37 // upright texts beside one another on the width of a figure
	flags = gathered(flags, most, c.wavelength)
	high := slices.Max(c.widths(flags))
	for i := range wide[:len(flags)] {
		wide[i] = lineHigh
	}
	at, _ := spread(c.middles(flags), wide[:len(flags)], 1, 0, report.FigureWidth)
	for i, f := range flags {
		c.leader(f, at[i], y, side)
		w := c.width(f.text)
		middle := y + side*(leaderHigh+1.5+w/2)
		c.upright(at[i]+(ascent-descent)/2, middle, black(f.text))
	}
	return y + side*(leaderHigh+1.5+high)
}

// flagsOf makes a flag for each wavelength: one for those that are written
// alike, none for a bright line whose place the flag of a dark one tells.
func (c *spectrumChart) flagsOf(list []Absorption) []flag {
	var out []flag
	for _, a := range list {
		text := c.text(a)
		if a.Doubtful {
			text = "(" + text + ")"
		}
		n := len(out)
		if n > 0 && out[n-1].text == text || a.Kind == Emission && slices.ContainsFunc(list, a.around) {
			continue
		}
		out = append(out, flag{a.From, a.To, text})
	}
	return out
}

// around reports whether a dark line lies within the absorption.
func (a Absorption) around(o Absorption) bool {
	return o.Kind == Line && o.From >= a.From && o.To <= a.To
}

func (c *spectrumChart) widths(flags []flag) []pt {
	var out []pt
	for _, f := range flags {
		out = append(out, c.width(f.text))
	}
	return out
}

func (c *spectrumChart) middles(flags []flag) []pt {
	var out []pt
	for _, f := range flags {
		out = append(out, c.scale.at((f.from+f.to)/2))
	}
	return out
}

// farthest is how far a level text may stand from its line; beyond it upright
// ones are easier to follow.
const farthest pt = 42

func (c *spectrumChart) spreadOut(flags []flag, wide []pt) ([]pt, bool) {
	want := c.middles(flags)
	at, ok := spread(want, wide, flagGap, 0, report.FigureWidth)
	for i := range at {
		ok = ok && max(at[i]-want[i], want[i]-at[i]) <= farthest
	}
	return at, ok
}

// leader leads from a line, or the middle of a stretch, to its text.
func (c *spectrumChart) leader(f flag, to, y, side pt) {
	x := c.scale.at((f.from + f.to) / 2)
	pen := report.Pen{Width: report.Hairline, Grey: grey}
	if from, until := c.scale.at(f.from), c.scale.at(f.to); until-from > 4 {
		c.line(from+0.5, y+side*1.8, until-0.5, y+side*1.8, pen)
	}
	c.add(report.Polyline{Points: []xy{{X: x, Y: y + side*1.8}, {X: x, Y: y + side*3.4}, {X: to, Y: y + side*(leaderHigh-0.6)}}, Pen: pen})
}

// sayBelow sets a text over the whole width below a line and returns the
// baseline after it.
func (c *canvas) sayBelow(text string, y pt) pt {
	for _, line := range c.wrapped(text, report.FigureWidth) {
		c.label(0, y, black(line), report.AnchorStart)
		y += lineHigh + 1
	}
	return y
}

// key says what is drawn below and how: a small line of each sort that occurs,
// with its word.
func (c *spectrumChart) key(published []Absorption, title string, y pt) {
	x := pt(0)
	if c.width(title) > report.FigureWidth {
		y = c.sayBelow(title, y)
	} else if title != "" {
		c.label(0, y, black(title), report.AnchorStart)
		x = c.width(title) + 20
	}
	for _, k := range c.keys(published) {
		w := 7 + c.width(k.word)
		if k.word == "" || w > report.FigureWidth {
			continue
		}
		if x+w > report.FigureWidth {
			x, y = 0, y+lineHigh+2.5
		}
		k.draw(x+1.5, y-7, y+1.5)
		c.label(x+7, y, faded(k.word), report.AnchorStart)
		x += w + 16
	}
}

type sample struct {
	word string
	draw func(x, top, bottom pt)
}

func (c *spectrumChart) keys(published []Absorption) []sample {
	var out []sample
	for _, k := range []struct {
		f    gem.Frequency
		word string
	}{{gem.Always, c.Words.Always}, {gem.Often, c.Words.Often}, {gem.Sometimes, c.Words.Sometimes}} {
		if slices.ContainsFunc(published, func(a Absorption) bool { return a.Frequency == k.f }) {
			out = append(out, sample{k.word, func(x, top, bottom pt) { c.line(x, top, x, bottom, frequencyPen(k.f)) }})
		}
	}
	if slices.ContainsFunc(published, func(a Absorption) bool { return a.Kind == Emission }) {
		out = append(out, sample{c.Words.Emission, func(x, top, bottom pt) {
			c.add(report.Polyline{Points: []xy{{X: x - 1.2, Y: bottom}, {X: x - 1.2, Y: top}, {X: x + 1.2, Y: top}, {X: x + 1.2, Y: bottom}}, Pen: hairline()})
		}})
	}
	return out
}
