package report

import (
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// limits is section 7. A note says it in short: the rule of the verdicts stays,
// since it is what they mean.
func (c *composer) limits() []Block {
	f := c.limitFacts()
	first := []Text{c.say("limits.items", templates.None{}), c.notMade(f), c.leftOut(), c.told(f)}
	last := append(c.meaning(), c.closing(f)...)
	if c.kind.Note {
		return append(c.small(append(first, c.caveats()...)...), c.small(append(c.rule(), last...)...)...)
	}
	blocks := append(c.small(first...), c.small(c.caveats()...)...)
	for _, t := range c.rule() {
		blocks = append(blocks, c.small(t)...)
	}
	blocks = append(blocks, c.small(c.meaning()...)...)
	return append(blocks, c.small(c.closing(f)...)...)
}

// rule is how verdicts and standings come about, where there are any.
func (c *composer) rule() []Text {
	if len(c.e.Verdict.Tests) == 0 {
		return nil
	}
	if c.kind.Note {
		return []Text{c.say("limits.rule.short", templates.None{})}
	}
	return []Text{c.say("limits.rule", templates.None{}), c.say("limits.standing", templates.None{})}
}

// meaning is what the signs and units mean.
func (c *composer) meaning() []Text {
	texts := []Text{c.say("limits.uncertainty", templates.None{})}
	if w := c.weight(); w.Estimated != "" && !c.kind.Note {
		texts = append(texts, c.say("weight.method", w))
	}
	return append(texts, c.say("limits.carat", templates.None{}))
}

// closing is program and data, validity, records and copies.
func (c *composer) closing(f templates.Limits) []Text {
	var texts []Text
	if c.short {
		texts = append(texts, c.say("limits.short", templates.None{}))
	}
	texts = append(texts, c.spoken()...)
	if c.kind.Note && c.leadPhoto() != nil {
		texts = append(texts, c.say(c.orShort("photos.note"), templates.None{}))
	}
	if c.kind.Appraisal || c.kind.Record && len(c.s.Valued) > 0 {
		texts = append(texts, c.say("limits.current", templates.None{}))
	}
	texts = append(texts, c.say("limits.program", f))
	if f.Validity != "" {
		texts = append(texts, c.say("limits.validity", f))
	}
	texts = append(texts, c.say("limits.records", templates.None{}))
	if f.Keep != "" {
		texts = append(texts, c.say("limits.keep", f))
	}
	return append(texts, c.say("limits.copies", f))
}

func (c *composer) limitFacts() templates.Limits {
	f := templates.Limits{
		Program: c.Program, Table: c.Gems.Version(), Validity: c.b.Terms.Validity, Copies: c.copies(), Keep: c.b.Keep,
	}
	for _, kind := range c.testsNotMade() {
		f.NotMade = append(f.NotMade, c.word("notmade", kind))
	}
	f.ToldByOthers = c.toldByOthers()
	return f
}

// copies is to whom the document may be shown: as the file says, or the bench
// for all.
func (c *composer) copies() string {
	if c.s.Use.Copies == "" {
		return c.b.Terms.Copies
	}
	return c.s.Use.Copies
}

// spoken are the opinions given by word of mouth.
func (c *composer) spoken() []Text {
	var texts []Text
	for _, s := range c.s.Spoken {
		texts = append(texts, c.say("limits.spoken", templates.Spoken{Date: c.day(s.Date), To: s.To, What: s.What}))
	}
	return texts
}

func (c *composer) notMade(f templates.Limits) Text {
	if len(f.NotMade) == 0 {
		return nil
	}
	return c.say("limits.notmade", f)
}

// testsNotMade lists the tests that a reader may expect and that no reading
// stands for.
func (c *composer) testsNotMade() []string {
	made := map[string]bool{}
	for _, t := range c.s.Tests {
		if h := t.Header(); h.SetAside == "" {
			made[h.Kind] = true
		}
	}
	made[stone.KindRefractometer] = made[stone.KindRefractometer] || made[stone.KindDigital]
	expected := []string{
		stone.KindRefractometer, stone.KindPolariscope, stone.KindGravity, stone.KindSpectroscope, stone.KindUltraviolet, stone.KindMagnification,
		stone.KindInfrared, stone.KindRaman, "chemical analysis",
	}
	if c.subject.Pearl {
		expected = append(expected, "radiography")
	}
	return slices.DeleteFunc(expected, func(k string) bool { return made[k] })
}

// leftOut is what the scope of work leaves out; an appraisal tells it beside
// its value.
func (c *composer) leftOut() Text {
	if c.kind.Appraisal || len(c.s.Scope.LeftOut) == 0 {
		return nil
	}
	var items []string
	for _, l := range c.s.Scope.LeftOut {
		items = append(items, c.line("worth.leftout", templates.LeftOut{What: l.What, Why: l.Why}))
	}
	return c.say("limits.leftout", templates.Items{Items: items})
}

// toldByOthers lists what was taken on somebody else's word.
func (c *composer) toldByOthers() []string {
	var list []string
	add := func(is bool, name string) {
		if is {
			list = append(list, c.line("others."+name, templates.None{}))
		}
	}
	add(c.e.Verdict.Opinion.Stated, "opinion")
	add(c.s.Weight.Stated.Given(), "weight")
	add(len(c.s.Opinion.Told.Items) > 0, "treatments")
	report, value := false, false
	for _, t := range c.s.Tests {
		switch t := t.Test.(type) {
		case *stone.LaboratoryReport:
			report = report || t.SetAside == ""
		case *stone.Gravity:
			value = value || t.Method == "value" && t.SetAside == ""
		}
	}
	add(report, "report")
	add(value, "value")
	return list
}

func (c *composer) told(f templates.Limits) Text {
	if len(f.ToldByOthers) == 0 {
		return nil
	}
	return c.say("limits.others", f)
}

// caveats are the printed limits that the examination itself found.
func (c *composer) caveats() []Text { return c.caveatsOf(c.e.Caveats) }

func (c *composer) caveatsOf(list []phrase.Line) []Text {
	var texts []Text
	for _, s := range list {
		if t := strings.TrimSpace(c.prose(s)); t != "" {
			texts = append(texts, c.say("limits.caveat", templates.Words{Text: t}))
		}
	}
	return texts
}
