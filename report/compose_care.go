package report

import (
	"maps"
	"slices"
	"unicode"
	"unicode/utf8"

	"stonewrit/grading/gem"
	"stonewrit/templates"
)

// careOf is one kind of harm, with what the material's row says of it and the
// test of the harm table that stands for it.
type careOf struct {
	name, advice, test string
}

// care is how the stone is kept and cleaned: by its material and, where it is
// stricter, by its treatment.
func (c *composer) care() Text {
	row, known := c.careRow()
	f := templates.Care{Subject: c.subject, Name: c.commonName(), Note: row.Note, Unknown: !known}
	if len(c.s.Opinion.Layers) > 0 {
		f.Unknown, f.Note = false, ""
	}
	for _, k := range []careOf{
		{"ultrasonic", row.Ultrasonic, "ultrasonic"}, {"steam", row.Steam, "steam"}, {"heat", row.Heat, "heat"},
		{"solvents", row.Solvents, "acetone wipe"}, {"light", row.Light, ""}, {"knocks", row.Knocks, ""},
	} {
		word := c.line("care."+k.name, templates.None{})
		switch c.stricter(k) {
		case "no":
			f.No = append(f.No, word)
		case "care":
			f.Careful = append(f.Careful, word)
		case "yes":
			f.Yes = append(f.Yes, word)
		}
	}
	for _, t := range c.disclosed() {
		f.Treated = f.Treated || t.Care != ""
	}
	f.Wash = known && !f.Treated && !c.porous()
	return together(Strong(c.line("care.head", templates.None{})), c.say("care", f))
}

// careRow is the advice of the table. What is assembled or unknown gets the
// strictest.
func (c *composer) careRow() (gem.Care, bool) {
	m := c.opinion().Narrow
	if m == nil {
		return gem.Care{Ultrasonic: "no", Steam: "no", Heat: "no", Solvents: "no", Light: "care", Knocks: "care"}, false
	}
	row := c.Gems.CareFor(m)
	return row, row.Source != ""
}

// stricter is the advice of material and treatment together.
func (c *composer) stricter(k careOf) string {
	if k.test != "" {
		for _, t := range c.disclosed() {
			if _, harmful := c.Gems.HarmToTreated(k.test, t); harmful {
				return "no"
			}
		}
	}
	return k.advice
}

func (c *composer) porous() bool {
	m := c.opinion().Narrow
	return m != nil && m.Porous
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

func upperFirst(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[size:]
}
