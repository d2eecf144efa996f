package report

import (
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"stonewrit/grading/quality"
	"stonewrit/templates"
)

// care is how the stone is kept and cleaned: the strictest of what material,
// treatments, customary treatments and fissures ask for.
func (c *composer) care() Text {
	a := c.e.Told.Care
	f := templates.Care{Subject: c.subject, Name: c.commonName(), Note: strings.Join(c.sentences(a.Notes), "; "), Unknown: a.Unknown}
	if len(c.s.Opinion.Layers) > 0 {
		f.Unknown, f.Note = false, ""
	}
	for _, d := range quality.Dangers() {
		word := c.line("care."+d.String(), templates.None{})
		switch a.Words[d] {
		case quality.No:
			f.No = append(f.No, word)
		case quality.Careful:
			f.Careful = append(f.Careful, word)
		case quality.Yes:
			f.Yes = append(f.Yes, word)
		}
		f.Fissures = f.Fissures || slices.Contains(a.Because[d], "fissures")
	}
	for _, t := range c.disclosed() {
		f.Treated = f.Treated || t.Care != ""
	}
	f.Wash = !a.Unknown && !f.Treated && !c.porous()
	return together(Strong(c.line("care.head", templates.None{})), c.say("care", f), c.safety())
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
