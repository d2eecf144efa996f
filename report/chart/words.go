package chart

import (
	"strconv"
	"strings"
)

// Words are the words of the drawings. A part in braces is replaced: {names},
// {figures} and the like, as told beside each field. An empty field is left
// out of the drawing.
type Words struct {
	// Number writes a decimal figure as the language does; nil leaves it.
	Number func(string) string
	// Material is a material's name as printed; nil leaves it.
	Material func(string) string
	// Place is a place on the stone as printed, "crown"; nil leaves it.
	Place func(string) string

	Index   string // heads the ruler: "Refractive index"
	Gravity string
	Over    string // "over {figure}"
	Above   string // a stone that sinks: "above {figure}"
	Below   string
	Layer   string // a part of a composite: "{material}, {part}"
	More    string // "and {count} more"
	Unknown string // materials without the figure: "not in the table: {names}"

	IndexCaption, GravityCaption string
	IndexAlt, GravityAlt         string // {stone} its values, {ranges} the materials with their ranges

	Turns        string // heads the turns: "Refractive index, turn by turn"
	Turn         string // below them: "turn"
	Lowest       string // "lowest {figure}"
	Highest      string // "highest {figure}"
	TurnsCaption string
	TurnsAlt     string // {count} turns, {low}, {high}

	Seen            string // above the strip: "seen in this stone"
	NoLines         string // the same, where lines were looked for in vain
	Published       string // "published for {name}"
	NonePublished   string // the same, where the table has none: {name}
	Always          string // of published lines
	Often           string
	Sometimes       string
	Emission        string // a bright line
	SpectrumCaption string
	SpectrumAlt     string // {seen} and {published}, lists of wavelengths, and {name}

	Profile       string // below the view: "profile"
	FaceUp        string
	Scale         string // "scale {scale}, millimetres"
	Assumed       string // "dashed: usual proportions, not measured"
	NoProfile     string // where no profile is drawn: "depth {figure}, not drawn"
	MakingCaption string
	MakingAlt     string // {figures}, a list of lengths in mm
}

// fill replaces the parts in braces; parts are names and what stands for them
// in turn.
func fill(text string, parts ...string) string {
	for i := 0; i+1 < len(parts); i += 2 {
		parts[i] = "{" + parts[i] + "}"
	}
	return strings.NewReplacer(parts...).Replace(text)
}

// number writes a figure with so many decimals.
func (w Words) number(v float64, decimals int) string {
	// The small push keeps a decimal tie such as 1.76125 from falling by binary
	// rounding, as in the values of the test table.
	s := strconv.FormatFloat(v+1e-9, 'f', decimals, 64)
	if w.Number != nil {
		return w.Number(s)
	}
	return s
}

// valued writes a value with its expanded uncertainty.
func (w Words) valued(v, expanded float64, decimals int) string {
	s := w.number(v, decimals)
	if expanded > 0 {
		s += "\u00a0±\u00a0" + w.number(expanded, decimals)
	}
	return s
}

func (w Words) material(name string) string {
	if w.Material != nil {
		return w.Material(name)
	}
	return name
}

func (w Words) place(name string) string {
	if w.Place != nil {
		return w.Place(name)
	}
	return name
}
