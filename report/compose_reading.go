package report

import (
	"strings"

	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// asRead is what a test showed, as it was written down.
func (c *composer) asRead(t stone.Test) Text {
	switch t := t.(type) {
	case *stone.Refractometer:
		return c.readRefractometer(t)
	case *stone.Digital:
		return c.say("read.shown", templates.ReadShown{Readings: texts(c, t.Readings)})
	case *stone.Polariscope:
		return c.say("read.polariscope", templates.ReadPolars{Sees: t.Sees, Figure: t.Figure, Directions: t.Orientations})
	case *stone.Dichroscope:
		return c.say("read.dichroscope", templates.ReadColours{Colours: t.Colours.Items, Strength: t.Strength, Directions: t.Directions})
	case *stone.Spectroscope:
		return c.readSpectrum(t)
	case *stone.Ultraviolet:
		return c.readLamp(t)
	case *stone.Gravity:
		return c.readGravity(t)
	case *stone.Hardness:
		return c.say("read.hardness", templates.ReadHardness{Scratches: t.Scratches.Items, ScratchedBy: t.ScratchedBy.Items, Consent: t.Consent})
	case *stone.LaboratoryReport:
		return c.readReport(t)
	}
	return c.readLess(t)
}

// readLess is what the tests showed that show a word or a sight.
func (c *composer) readLess(t stone.Test) Text {
	var shown templates.ReadShown
	switch t := t.(type) {
	case *stone.Magnification:
		return c.say("read.seen", templates.ReadSeen{
			Sees: c.featuresSaid(t.Sees.Items), Nothing: t.Sees.Given && len(t.Sees.Items) == 0, Power: t.Power, Corrected: t.Corrected, Lighting: t.Lighting.Items,
		})
	case *stone.Features:
		return c.say("read.seen", templates.ReadSeen{Sees: c.featuresSaid(t.Sees.Items), Nothing: t.Sees.Given && len(t.Sees.Items) == 0})
	case *stone.OwnSpectrum:
		return c.say("read.seen", templates.ReadSeen{Sees: c.featuresSaid(t.Sees.Items), Peaks: t.Peaks.Items, Matches: t.Matches})
	case *stone.Thermal:
		shown = templates.ReadShown{Shows: t.Shows, Condition: t.Condition}
	case *stone.Electrical:
		shown.Shows = t.Shows
	case *stone.Magnet:
		shown.Shows = t.Shows
	case *stone.Filter:
		shown.Shows = t.Shows
	case *stone.Screening:
		shown.Shows = t.Shows
	case *stone.Radioactivity:
		shown.Shows = t.Shows
		if t.Reading != "" {
			shown.Readings = []string{c.figure(t.Reading)}
		}
	case *stone.CarbonateFlash:
		shown = templates.ReadShown{Shows: t.Shows, Readings: texts(c, t.Readings)}
	case *stone.Doubling:
		shown = templates.ReadShown{Shows: t.Shows + t.Sees, Through: t.Through.Items}
		if t.Shows == t.Sees {
			shown.Shows = t.Shows
		}
	}
	return c.say("read.shown", shown)
}

// texts prints quantities as they were written.
func texts[T quantity.Unit](c *composer, list stone.List[quantity.Measure[T]]) []string {
	var out []string
	for _, m := range list.Items {
		out = append(out, c.figure(m.Text))
	}
	return out
}

func (c *composer) readRefractometer(t *stone.Refractometer) Text {
	r := templates.ReadIndex{Spot: t.Method == "spot", Over: t.Over, Filter: t.Filter, Poor: t.Contact == "poor"}
	for _, turn := range t.Readings.Items {
		var edges [2]string
		for i, e := range turn.Seen {
			edges[min(i, 1)] = c.figure(e.Text)
		}
		r.Turns = append(r.Turns, templates.Turn{Low: edges[0], High: edges[1], Over: turn.Over})
	}
	return c.say("read.index", r)
}

func (c *composer) readSpectrum(t *stone.Spectroscope) Text {
	r := templates.ReadSpectrum{NoLines: t.Lines.Given && len(t.Lines.Items) == 0, Strength: t.Strength, Pattern: t.Pattern, Cutoff: c.figure(t.Cutoff.Text)}
	for _, l := range t.Lines.Items {
		r.Lines = append(r.Lines, c.figure(l.Digits()))
	}
	for _, b := range t.Bands.Items {
		r.Bands = append(r.Bands, c.line("span", templates.Span{Low: c.figure(b.From.Digits()), High: c.figure(b.To.Digits())}))
	}
	for _, l := range t.Bright.Items {
		r.Bright = append(r.Bright, c.figure(l.Digits()))
	}
	return c.say("read.spectroscope", r)
}

func (c *composer) readLamp(t *stone.Ultraviolet) Text {
	r := templates.ReadLamp{Long: t.Long.Text, Short: t.Short.Text, NoAfterglow: t.Afterglow.None, Afterglow: t.Afterglow.Colour, Seconds: c.figure(t.Afterglow.Seconds.Text), Pattern: t.Pattern.Items}
	for _, w := range c.b.Instruments[t.Instrument].Wavelengths {
		if w.Float() > longWave {
			r.LongNM = c.figure(w.Text)
		} else {
			r.ShortN = c.figure(w.Text)
		}
	}
	return c.say("read.ultraviolet", r)
}

// longWave parts the two lamps, in nm: UV-A begins at 315 nm (IEC 62471, from
// memory).
const longWave = 315

func (c *composer) readGravity(t *stone.Gravity) Text {
	r := templates.ReadGravity{
		Weighed: t.Method == "hydrostatic", Liquid: t.Method == "liquid", Value: t.Method == "value",
		InAir: masses(c, t.InAir), InWater: masses(c, t.InWater), InLiquid: masses(c, t.InLiquid), After: c.figure(t.After.Text),
		Water: c.figure(t.Water.Text), LiquidSG: c.figure(t.Liquid.Text), Stone: t.Stone, CheckedBy: t.CheckedBy, Given: c.figure(t.Given.Text),
	}
	if t.Bath != nil {
		r.Bath, r.BathDensity = t.Bath.Name, c.figure(t.Bath.Density.Text)
	}
	return c.say("read.gravity", r)
}

func masses(c *composer, list stone.List[stone.Mass]) []string {
	var out []string
	for _, m := range list.Items {
		out = append(out, c.figure(m.Text))
	}
	return out
}

func (c *composer) readReport(t *stone.LaboratoryReport) Text {
	r := templates.ReadReport{Issuer: t.Issuer, Number: t.Number, Date: c.day(t.Issued), Matched: t.Matched.Items, Seen: t.Seen}
	if r.Date == "" {
		r.Date = c.day(t.Date)
	}
	if s := t.States; s != nil {
		r.Words = s.Words
		for _, one := range []struct{ what, text string }{
			{"species", s.Species}, {"variety", s.Variety}, {"growth", s.Growth}, {"method", s.Method}, {"treatments", c.statedTreatments(s)}, {"origin", s.Origin},
			{"weight", s.Weight.Text}, {"length", s.Length.Text}, {"width", s.Width.Text}, {"depth", s.Depth.Text}, {"colour", s.Colour}, {"clarity", s.Clarity},
		} {
			if one.text != "" {
				r.States = append(r.States, c.line("read.stated", templates.Stated{What: c.word("stated", one.what), Text: c.figure(one.text)}))
			}
		}
	}
	return c.say("read.report", r)
}

// statedTreatments are those of a quoted report; none is said as the report
// says it.
func (c *composer) statedTreatments(s *stone.Statement) string {
	var names []string
	for _, t := range s.Treatments.Items {
		names = append(names, t.Name)
	}
	if s.Treatments.Given && len(names) == 0 {
		return c.word("stated", "none")
	}
	return strings.Join(names, ", ")
}
