package identify

import (
	"fmt"
	"strings"

	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// The value texts print a reduced reading with its expanded uncertainty
// (k = 2), as the test table of the document shows it.

func indexText(v *reading.IndexValue) string {
	switch {
	case v.Edges == 0 && v.Over > 0:
		return fmt.Sprintf("over %.2f", v.Over)
	case v.Edges == 0:
		return "no reading"
	case v.Reflected:
		return fmt.Sprintf("%.2f ± %.2f", v.Low, 2*v.U)
	case v.Edges == 1 && v.UpperOver:
		return fmt.Sprintf("%.3f and over %.2f, ± %.3f", v.Low, v.Limit, 2*v.U)
	case v.Edges == 1 && v.High > v.Low:
		return fmt.Sprintf("%.3f to %.3f ± %.3f", v.Low, v.High, 2*v.U)
	case v.Edges == 1 && v.Spot:
		return fmt.Sprintf("%.2f ± %.2f", v.Low, 2*v.U)
	case v.Edges == 1:
		return fmt.Sprintf("%.3f ± %.3f", v.Low, 2*v.U)
	}
	return fmt.Sprintf("%s and %s ± %.4f, birefringence %s ± %.4f", decimal(v.Low, 4), decimal(v.High, 4), 2*v.U, decimal(v.Birefringence, 4), 2*v.BirefringenceU)
}

func gravityText(g *reading.GravityValue) string {
	switch {
	case g.Void != "":
		return "not usable"
	case g.Bound != "":
		return fmt.Sprintf("%s %.2f", g.Bound, g.Liquid)
	}
	return fmt.Sprintf("%.3f ± %.3f", g.V, 2*g.U)
}

func spectrumText(v *reading.SpectrumValue) string {
	var parts []string
	for _, l := range v.Lines {
		parts = append(parts, fmt.Sprintf("%.0f", l.At))
	}
	if len(parts) > 0 {
		parts = []string{"lines " + strings.Join(parts, ", ") + " nm"}
	} else if v.Looked {
		parts = []string{"no lines seen"}
	}
	for _, b := range v.Bands {
		parts = append(parts, fmt.Sprintf("band %.0f to %.0f nm", b.From, b.To))
	}
	if v.Cutoff.At > 0 {
		parts = append(parts, fmt.Sprintf("dark below %.0f nm", v.Cutoff.At))
	}
	for _, l := range v.Bright {
		parts = append(parts, fmt.Sprintf("bright line %.0f nm", l.At))
	}
	return strings.Join(parts, ", ")
}

func polarsText(t *stone.Polariscope) string {
	var parts []string
	if t.Sees != "" {
		parts = append(parts, t.Sees)
	}
	if t.Figure != "" && t.Figure != "none seen" {
		parts = append(parts, t.Figure+" figure")
	} else if t.Figure != "" {
		parts = append(parts, "no figure seen")
	}
	if t.Orientations > 0 {
		parts = append(parts, fmt.Sprintf("%d directions", t.Orientations))
	}
	return strings.Join(parts, ", ")
}

func dichroscopeText(t *stone.Dichroscope) string {
	if len(t.Colours.Items) == 0 {
		return "no second colour seen"
	}
	text := strings.Join(t.Colours.Items, " and ")
	if t.Strength != "" {
		text += ", " + t.Strength
	}
	return text
}

func lampText(t *stone.Ultraviolet) string {
	var parts []string
	for _, w := range []struct {
		name string
		seen stone.Fluorescence
	}{{"long wave", t.Long}, {"short wave", t.Short}} {
		if w.seen.Given() {
			parts = append(parts, w.name+" "+w.seen.Text)
		}
	}
	if len(t.Pattern.Items) > 0 {
		parts = append(parts, strings.Join(t.Pattern.Items, ", "))
	}
	return strings.Join(parts, "; ")
}

func hardnessText(t *stone.Hardness) string {
	var parts []string
	if n := t.Scratches.Items; len(n) > 0 {
		parts = append(parts, "scratches "+strings.Join(n, ", "))
	}
	if n := t.ScratchedBy.Items; len(n) > 0 {
		parts = append(parts, "scratched by "+strings.Join(n, ", "))
	}
	return strings.Join(parts, "; ")
}
