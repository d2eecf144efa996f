package report

import (
	"strconv"

	"stonewrit/grading"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// pieceDescription is section 5 of a piece: what it looks like, its marks and
// metals, its stones in a table, and each stone with treatment and care.
func (c *composer) pieceDescription() []Block {
	blocks := c.paragraph(c.pieceLooks()...)
	blocks = append(blocks, c.marks()...)
	blocks = append(blocks, c.metals()...)
	blocks = append(blocks, c.stones()...)
	for n, i := range c.items {
		entry := c.p.Items[n]
		facts := c.itemFacts(n)
		texts := []Text{}
		if !entry.Counted {
			texts = append(i.looks(), i.identity()...)
		}
		texts = append(texts, c.say("item.described", facts))
		blocks = append(blocks, Subhead(c.line("item.head", facts)))
		blocks = append(blocks, c.small(texts...)...)
		for _, t := range i.treatment() {
			blocks = append(blocks, c.small(t)...)
		}
		blocks = append(blocks, c.small(i.care())...)
	}
	if len(c.items) > 1 {
		blocks = append(blocks, c.small(c.say("piece.care", templates.None{}))...)
	}
	return blocks
}

func (c *composer) pieceLooks() []Text {
	p := c.p.Piece
	var texts []Text
	if p.Description != "" {
		texts = append(texts, c.say("piece.noted", templates.Words{Text: p.Description}))
	}
	if p.Condition != "" {
		texts = append(texts, c.say("description.condition", templates.Words{Text: p.Condition}))
	}
	if parts := c.pieceSizes(); len(parts) > 0 {
		texts = append(texts, c.say("piece.size", templates.PieceSize{Parts: parts}))
	}
	if k := p.Construction; k != nil {
		texts = append(texts, c.say("piece.construction", templates.Construction{Words: k.Words, ByHand: k.ByHand}))
	}
	if m := p.Inscription; m != nil {
		texts = append(texts, c.say("piece.inscription", templates.Mark{Text: m.Text, Where: m.Where}))
	}
	return append(texts, c.say("piece.mass", c.massFacts()), c.history())
}

func (c *composer) pieceSizes() []string {
	z := c.p.Piece.Size
	var parts []string
	for _, part := range []struct{ name, text string }{
		{"ring", z.Ring}, {"length", z.Length.Text}, {"width", z.Width.Text}, {"height", z.Height.Text}, {"diameter", z.Diameter.Text}, {"thickness", z.Thickness.Text},
	} {
		if part.text != "" {
			parts = append(parts, c.line("piece.size."+part.name, templates.Words{Text: c.figure(part.text)}))
		}
	}
	return parts
}

// marks are the marks as struck, or that none was found.
func (c *composer) marks() []Block {
	if len(c.p.Piece.Marks) == 0 {
		return c.paragraph(c.say("piece.nomarks", templates.None{}))
	}
	head := Para(c.say("piece.marks", templates.None{}))
	head.KeepNext = true
	list := List{}
	for _, m := range c.p.Piece.Marks {
		list.Items = append(list.Items, c.say("piece.mark", templates.Mark{Text: m.Text, Where: m.Where, How: m.How}))
	}
	return []Block{head, list}
}

// metals is the metal of each part.
func (c *composer) metals() []Block {
	if len(c.p.Metals) == 0 {
		return nil
	}
	head := func(name string) string { return c.line("metal.head."+name, templates.None{}) }
	t := Table{Small: true, Columns: []Column{{Head: head("part"), Width: 1}, {Head: head("metal"), Width: 2}, {Head: head("known"), Width: 1.6}, {Head: head("layer"), Width: 0.8}}}
	for _, m := range c.p.Metals {
		f := c.metal(m)
		row := Cells(Plain(f.Part), c.say("metal.part", f), c.say("metal.known", f), c.say("metal.layer", f))
		if m.Note != "" {
			row.Note = c.say("piece.noted", templates.Words{Text: m.Note})
		}
		t.Rows = append(t.Rows, row)
	}
	return []Block{c.subhead("piece.metals"), t}
}

func (c *composer) metal(m grading.PartMetal) templates.Metal {
	f := templates.Metal{
		Part: m.Part, Name: c.prose(m.Name), KnownBy: m.KnownBy, Result: m.Result, Consent: m.Consent, Exempt: m.Exempt, Note: m.Note,
		Mass: c.figure(m.Mass.Text), Unlisted: m.Fineness > 0 && !m.Listed && len(m.Classes) > 0,
	}
	for _, class := range m.Classes {
		f.Classes = append(f.Classes, strconv.Itoa(class))
	}
	for _, a := range m.Alloy {
		f.Alloy = append(f.Alloy, phrase.Say("%d %s", a.Fineness, phrase.Word(a.Metal)).In(c.w))
	}
	if l := m.Plated; l != nil {
		f.NoLayer, f.Layer, f.LayerDepth, f.Worn = l.None, l.Metal, c.figure(l.Depth.Text), l.Worn
	}
	for _, j := range m.Judged {
		f.Judged = append(f.Judged, c.line("metal.judged", templates.Judged{
			Law: j.Law, Measured: c.figure(m.Measured.Digits()), Lowest: c.figure(strconv.FormatFloat(j.Lowest, 'f', -1, 64)), Holds: j.Holds,
		}))
	}
	return f
}

// stones is the table of the stones, items 1 to n, with the totals that may be
// told.
func (c *composer) stones() []Block {
	if len(c.items) == 0 {
		return nil
	}
	head := func(name string) string { return c.line("piece.head."+name, templates.None{}) }
	t := Table{Small: true, Columns: []Column{
		{Head: head("number")}, {Head: head("what"), Width: 2.4}, {Head: head("size"), Width: 1.4}, {Head: head("weight"), Width: 1}, {Head: head("setting"), Width: 1},
	}}
	for n := range c.items {
		f := c.itemFacts(n)
		t.Rows = append(t.Rows, Cells(Plain(phrase.Say("%d of %d", f.Number, f.Of).In(c.w)), c.say("item.what", f), c.say("item.size", f), c.say("item.weight", f), c.say("item.setting", f)))
	}
	blocks := []Block{c.subhead("piece.stones"), t}
	for _, total := range c.p.Totals {
		f := templates.Total{Name: c.nameOf(total.Name), Count: total.Count, Weight: c.carats(total.Carats), Basis: string(total.Basis)}
		for _, i := range total.Items {
			f.Items = append(f.Items, strconv.Itoa(i))
		}
		blocks = append(blocks, c.small(c.say("piece.total", f))...)
	}
	return blocks
}

// anyItem reports whether the weight of any item is known in a way.
func (c *composer) anyItem(basis grading.WeightBasis) bool {
	for _, i := range c.p.Items {
		if i.Basis == basis {
			return true
		}
	}
	return false
}

// pieceTreatments are the treatments of all stones of a piece.
func (c *composer) pieceTreatments() []stone.TreatmentClaim {
	var list []stone.TreatmentClaim
	for _, i := range c.items {
		list = append(list, i.s.Opinion.Treatments.Items...)
	}
	return list
}
