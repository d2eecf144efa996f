package report

import (
	"strings"

	"stonewrit/templates"
)

// notGraded is what was left ungraded, with the reasons.
func (c *composer) notGraded() Text {
	var items []string
	for _, what := range sortedKeys(c.s.Quality.NotGraded) {
		items = append(items, c.line("description.reason", templates.Reason{What: what, Why: c.s.Quality.NotGraded[what]}))
	}
	if len(items) == 0 {
		return nil
	}
	return c.say("description.notgraded", templates.Items{Items: items})
}

// history is what else moves the value; what nobody told is not determined.
func (c *composer) history() Text {
	h := c.s.History
	if h == nil {
		return nil
	}
	maker := h.Maker
	if h.NamesMaker() && h.MakerBy != "" {
		maker += ", by " + h.MakerBy
	}
	var f templates.History
	for _, part := range []struct{ name, text string }{
		{"style", h.Style}, {"maker", maker}, {"age", h.Age}, {"provenance", h.Provenance},
		{"alterations", h.Alterations}, {"restoration", h.Restoration}, {"obsolescence", h.Obsolescence},
	} {
		if part.text == "" || strings.EqualFold(part.text, "not determined") {
			f.Not = append(f.Not, c.line("history.word."+part.name, templates.None{}))
			continue
		}
		f.Told = append(f.Told, c.line("history."+part.name, templates.Words{Text: part.text}))
	}
	return c.say("description.history", f)
}

// restricted is what may limit the sale of a material.
func (c *composer) restricted() []Text {
	var texts []Text
	for _, r := range c.e.Told.Restricted {
		texts = append(texts, c.say("description.restricted", templates.Words{Text: c.sentence(r.Note)}))
	}
	return texts
}

// safety is for whoever works on the stone; an appraisal is for readers who do
// not.
func (c *composer) safety() Text {
	var text Text
	if c.kind.Appraisal {
		return nil
	}
	for _, k := range c.e.Told.Safety {
		text = together(text, c.say("description.safety", templates.Words{Text: c.sentence(k.Wording)}))
	}
	return text
}
