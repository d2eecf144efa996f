package identify

import (
	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// The value texts print a reduced reading with its expanded uncertainty
// (k = 2), as the test table of the document shows it.

func indexText(v *reading.IndexValue) phrase.Line {
	switch {
	case v.Edges == 0 && v.Over > 0:
		return phrase.Say("over %.2f", v.Over)
	case v.Edges == 0:
		return "no reading"
	case v.Reflected:
		return phrase.Say("%.2f ± %.2f", v.Low, 2*v.U)
	case v.Edges == 1 && v.UpperOver:
		return phrase.Say("%.3f and over %.2f, ± %.3f", v.Low, v.Limit, 2*v.U)
	case v.Edges == 1 && v.High > v.Low:
		return phrase.Say("%.3f to %.3f ± %.3f", v.Low, v.High, 2*v.U)
	case v.Edges == 1 && v.Spot:
		return phrase.Say("%.2f ± %.2f", v.Low, 2*v.U)
	case v.Edges == 1:
		return phrase.Say("%.3f ± %.3f", v.Low, 2*v.U)
	}
	return phrase.Say("%s and %s ± %.4f, birefringence %s ± %.4f", figure4(v.Low), figure4(v.High), 2*v.U, figure4(v.Birefringence), 2*v.BirefringenceU)
}

// figure4 is a figure to four decimals.
func figure4(v float64) phrase.Figure { return phrase.Figure(quantity.Decimal(v, 4)) }

func gravityText(g *reading.GravityValue) phrase.Line {
	switch {
	case g.Void != "":
		return "not usable"
	case g.Bound == "above":
		return phrase.Say("above %.2f", g.Liquid)
	case g.Bound == "below":
		return phrase.Say("below %.2f", g.Liquid)
	}
	return phrase.Say("%.3f ± %.3f", g.V, 2*g.U)
}

func spectrumText(v *reading.SpectrumValue) phrase.Line {
	var parts, lines []phrase.Line
	for _, l := range v.Lines {
		lines = append(lines, phrase.Say("%.0f", l.At))
	}
	if len(lines) > 0 {
		parts = append(parts, phrase.Say("lines %s nm", phrase.Commas(lines...)))
	} else if v.Looked {
		parts = append(parts, "no lines seen")
	}
	for _, b := range v.Bands {
		parts = append(parts, phrase.Say("band %.0f to %.0f nm", b.From, b.To))
	}
	if v.Cutoff.At > 0 {
		parts = append(parts, phrase.Say("dark below %.0f nm", v.Cutoff.At))
	}
	for _, l := range v.Bright {
		parts = append(parts, phrase.Say("bright line %.0f nm", l.At))
	}
	return phrase.Commas(parts...)
}

func polarsText(t *stone.Polariscope) phrase.Line {
	var parts []phrase.Line
	if t.Sees != "" {
		parts = append(parts, word(t.Sees))
	}
	if t.Figure != "" && t.Figure != "none seen" {
		parts = append(parts, phrase.Say("%s figure", phrase.Word(t.Figure)))
	} else if t.Figure != "" {
		parts = append(parts, "no figure seen")
	}
	switch n := t.Orientations; {
	case n == 1:
		parts = append(parts, "1 direction")
	case n > 1:
		parts = append(parts, phrase.Say("%d directions", n))
	}
	return phrase.Commas(parts...)
}

func dichroscopeText(t *stone.Dichroscope) phrase.Line {
	if len(t.Colours.Items) == 0 {
		return "no second colour seen"
	}
	text := phrase.Join("%s and %s", phrase.Words(t.Colours.Items)...)
	if t.Strength != "" {
		text = phrase.Commas(text, word(t.Strength))
	}
	return text
}

func lampText(t *stone.Ultraviolet) phrase.Line {
	var parts []phrase.Line
	if t.Long.Given() {
		parts = append(parts, phrase.Say("long wave %s", phrase.Word(t.Long.Text)))
	}
	if t.Short.Given() {
		parts = append(parts, phrase.Say("short wave %s", phrase.Word(t.Short.Text)))
	}
	return phrase.Semicolons(append(parts, phrase.Commas(phrase.Words(t.Pattern.Items)...))...)
}

func hardnessText(t *stone.Hardness) phrase.Line {
	var parts []phrase.Line
	if n := t.Scratches.Items; len(n) > 0 {
		parts = append(parts, phrase.Say("scratches %s", phrase.Commas(phrase.Words(n)...)))
	}
	if n := t.ScratchedBy.Items; len(n) > 0 {
		parts = append(parts, phrase.Say("scratched by %s", phrase.Commas(phrase.Words(n)...)))
	}
	return phrase.Semicolons(parts...)
}

func radioactivityText(t *stone.Radioactivity) phrase.Line {
	switch {
	case t.Reading == "":
		return word(t.Shows)
	case t.Shows == "":
		return phrase.Say("%s", phrase.Figure(t.Reading))
	}
	return phrase.Say("%s %s", phrase.Word(t.Shows), phrase.Figure(t.Reading))
}
