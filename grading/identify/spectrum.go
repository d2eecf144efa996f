package identify

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
)

// clearLines is how many undoubted lines, none of which belongs to a material,
// speak against it (common practice, from memory).
const clearLines = 3

// narrowBand is how wide in nm a band seen may be and still be one published
// line, as it looks through a hand spectroscope (common practice, from memory).
const narrowBand = 25

// spectrum compares the lines and bands seen with those published. Missing
// lines prove nothing, except that a spectrometer shows a line which the table
// says is always there. A line within its tolerance (k = 2) of a published one
// is taken for it; one beyond three standard uncertainties of all is strange.
func spectrum(v *reading.SpectrumValue, m *gem.Material, colour string) finding {
	published := absorptions{m.Absorption, colour}
	if !published.any(func(*gem.Absorption) bool { return true }) {
		return unknown()
	}
	matched, strange := 0, 0
	for _, l := range v.Lines {
		switch {
		case published.meet(l.At, l.At, 2*l.U):
			matched++
		case l.Doubt == "" && !published.meet(l.At, l.At, 3*l.U):
			strange++
		}
	}
	for _, b := range v.Bands {
		switch {
		case published.any(func(a *gem.Absorption) bool { return bandHolds(a, b) }):
			matched++
		case !published.meet(b.From, b.To, 3*b.U):
			strange++
		}
	}
	for _, l := range v.Bright {
		if published.any(func(a *gem.Absorption) bool {
			return a.Kind == "emission" && l.At >= a.From-2*l.U && l.At <= a.To+2*l.U
		}) {
			matched++
		}
	}
	return weighSpectrum(v, published, matched, strange)
}

// absorptions are the published ones of a material for stones of a colour, or
// all of them where the colour is not known.
type absorptions struct {
	all    []gem.Absorption
	colour string
}

// any reports whether one of them passes the test.
func (p absorptions) any(test func(*gem.Absorption) bool) bool {
	for i := range p.all {
		if a := &p.all[i]; p.applies(a) && test(a) {
			return true
		}
	}
	return false
}

func (p absorptions) applies(a *gem.Absorption) bool {
	if p.colour == "" || len(a.Colours) == 0 {
		return true
	}
	return slices.ContainsFunc(a.Colours, func(c string) bool { return strings.Contains(p.colour, c) })
}

// meet reports whether any published absorption meets the stretch.
func (p absorptions) meet(from, to, tolerance float64) bool {
	return p.any(func(a *gem.Absorption) bool { return meets(a, from, to, tolerance) })
}

func meets(a *gem.Absorption, from, to, tolerance float64) bool {
	if a.Frequency == gem.Never || a.Kind == "cutoff" || a.Kind == "emission" {
		return false
	}
	return to >= a.From-tolerance && from <= a.To+tolerance
}

// bandHolds reports whether a published absorption is the band seen: a broad
// band is not matched by a line that happens to lie in it.
func bandHolds(a *gem.Absorption, b reading.Band) bool {
	if !meets(a, b.From, b.To, 2*b.U) {
		return false
	}
	overlap := min(a.To, b.To) - max(a.From, b.From)
	return b.To-b.From <= narrowBand || overlap >= (b.To-b.From)/2
}

func weighSpectrum(v *reading.SpectrumValue, published absorptions, matched, strange int) finding {
	seen := len(v.Lines) + len(v.Bands) + len(v.Bright)
	switch missing := missingAlways(v, published); {
	case missing != nil && !v.Hand:
		return finding{verdict: conflicts, known: true, low: missing.From, high: missing.To, tell: tellMissing}
	case seen == 0:
		return said(cannotTell, "no line was seen, which proves nothing")
	case strange >= clearLines && matched == 0:
		return said(conflicts, "none of the lines and bands seen is one of its own")
	case matched >= 2 && matched > strange, matched == seen && matched > 0:
		return finding{verdict: agrees, known: true, value: float64(matched), high: float64(seen), tell: tellMatched}
	}
	return said(cannotTell, "too few of the lines seen are its own, or may come from the lamp")
}

func tellMissing(f finding) phrase.Line {
	return phrase.Say("the line at %s nm is always there, and a spectrometer did not show it", span(f.low, f.high, 0))
}

func tellMatched(f finding) phrase.Line {
	return phrase.Say("%.0f of the %.0f lines and bands seen are among those published for it", f.value, f.high)
}

// missingAlways is a line that is always there and was looked for in vain; nil
// if there is none.
func missingAlways(v *reading.SpectrumValue, published absorptions) (missing *gem.Absorption) {
	if !v.Looked {
		return nil
	}
	published.any(func(a *gem.Absorption) bool {
		shown := func(l reading.Line) bool { return meets(a, l.At, l.At, 3*l.U) }
		if a.Frequency == gem.Always && a.Kind == "line" && !slices.ContainsFunc(v.Lines, shown) {
			missing = a
		}
		return missing != nil
	})
	return missing
}

// glow judges what the lamp makes the stone do: it decides only where the
// table says never or always.
func glow(long, short lampSeen, m *gem.Material) finding {
	known := false
	f := said(cannotTell, "fluorescence of this material varies")
	for _, g := range m.Glow {
		known = true
		seen, say := long, longWave
		if g.Wave == "short" {
			seen, say = short, shortWave
		}
		switch {
		case !seen.looked:
		case g.Frequency == gem.Never && seen.glows:
			return said(conflicts, say().never)
		case g.Frequency == gem.Always && !seen.glows:
			return said(conflicts, say().dark)
		case g.Frequency == gem.Always:
			f = said(agrees, say().always)
		}
	}
	if !known {
		return unknown()
	}
	return f
}

// waveWords tell what a stone does in one wavelength of the lamp.
type waveWords struct{ never, dark, always phrase.Line }

func longWave() waveWords {
	return waveWords{
		never:  "it glows in long-wave ultraviolet, which this material never does",
		dark:   "it stays dark in long-wave ultraviolet, where this material always glows",
		always: "it glows in long-wave ultraviolet, as this material always does",
	}
}

func shortWave() waveWords {
	return waveWords{
		never:  "it glows in short-wave ultraviolet, which this material never does",
		dark:   "it stays dark in short-wave ultraviolet, where this material always glows",
		always: "it glows in short-wave ultraviolet, as this material always does",
	}
}

// lampSeen is what one wavelength of the lamp showed.
type lampSeen struct{ looked, glows bool }
