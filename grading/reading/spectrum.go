package reading

import (
	"math"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// SpectrumValue is what one spectroscope test comes to, its offset taken off.
type SpectrumValue struct {
	Test   *stone.Spectroscope
	Lines  []Line
	Bands  []Band
	Cutoff Line // zero if none
	Bright []Line
	Looked bool // lines were looked for, even if none was seen
	Hand   bool // a hand instrument
	Lamp   bool // the light is named, so that lamp lines are not mistaken
	Check  Check
}

// Line is a wavelength in nm with its standard uncertainty.
type Line struct {
	At, U float64
	Doubt phrase.Line // what else the line may be, or ""
}

// Band is a stretch in nm with the standard uncertainty of its ends.
type Band struct{ From, To, U float64 }

// Spectrum reduces one spectroscope test.
func (b Bench) Spectrum(t *stone.Spectroscope) SpectrumValue {
	kind := t.Type
	if kind == "" {
		kind = b.Instruments[t.Instrument].Type
	}
	if kind == "" {
		kind = "prism"
	}
	v := SpectrumValue{Test: t, Looked: t.Lines.Given, Hand: kind != "spectrometer", Lamp: t.Light != ""}
	v.Check = b.wavelengthCheck(t.Instrument)
	for _, l := range t.Lines.Items {
		v.Lines = append(v.Lines, b.line(l, kind, v))
	}
	for _, s := range t.Bands.Items {
		v.Bands = append(v.Bands, Band{s.From.Float() - v.Check.Offset, s.To.Float() - v.Check.Offset, b.wavelengthU(s.To.Float(), kind, v.Check)})
	}
	if t.Cutoff.Given() {
		v.Cutoff = b.line(t.Cutoff, kind, v)
	}
	for _, l := range t.Bright.Items {
		v.Bright = append(v.Bright, b.line(l, kind, v))
	}
	return v
}

func (b Bench) line(w stone.Wavelength, kind string, v SpectrumValue) Line {
	l := Line{At: w.Float() - v.Check.Offset, U: b.wavelengthU(w.Float(), kind, v.Check)}
	if w.U > 0 {
		l.U = w.U
	}
	if !v.Lamp {
		l.Doubt = strayLine(l.At)
	}
	return l
}

func (b Bench) wavelengthU(nm float64, kind string, c Check) float64 {
	name := "wavelength " + kind
	if kind == "prism" && nm >= b.Figures["wavelength prism step"] {
		name = "wavelength prism red"
	}
	// The figures are the tolerance met in practice by unchecked instruments of
	// the kind; a failed or overdue check of an instrument that is checked at
	// all makes it worse.
	if c.State == CheckFailed || c.State == CheckOverdue {
		return rootSum(b.Figures[name], b.Figures["wavelength unchecked"])
	}
	return b.Figures[name]
}

func (b Bench) wavelengthCheck(id string) Check {
	_, last, c := b.last(id, b.Figures["days other"])
	if c.State != CheckValid {
		return c
	}
	if !last.Reading.Wave.Given() || !last.Known.Wave.Given() {
		return c
	}
	c.Known = last.Known.Wave.Float()
	c.Offset = last.Reading.Wave.Float() - c.Known
	if math.Abs(c.Offset) > b.Figures["wavelength check fails"] {
		c.State, c.Offset = CheckFailed, 0
	}
	return c
}

// strayLine names what a line may be that is not the stone's: lines of
// mercury, sodium and blood (common practice, from memory).
func strayLine(nm float64) phrase.Line {
	for _, s := range []struct {
		at   float64
		what phrase.Line
	}{
		{404.7, "a mercury line of the lamp"}, {435.8, "a mercury line of the lamp"}, {546.1, "a mercury line of the lamp"},
		{577.0, "a mercury line of the lamp or of blood in the skin behind the stone"}, {579.1, "a mercury line of the lamp"},
		{542, "blood in the skin behind the stone"}, {589.3, "the sodium line of the lamp"},
	} {
		if math.Abs(nm-s.at) <= 3 {
			return s.what
		}
	}
	return ""
}
