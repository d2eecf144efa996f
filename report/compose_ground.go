package report

import (
	"stonewrit/grading/identify"
	"stonewrit/templates"
)

// mostRivals is how many rivals a document names; the JSON inside it has all.
const mostRivals = 8

// ground is section 2: the four claims, each with its standing and the tests
// behind it, and the materials that are not excluded.
func (c *composer) ground() []Block {
	opinion := c.say("ground.opinion", c.subject)
	if c.kind.Note {
		return append([]Block{c.claims()}, c.small(c.say("ground.rivals.short", c.rivalFacts()), opinion)...)
	}
	blocks := []Block{Paragraph{Text: opinion, Small: true, KeepNext: true}, c.claims()}
	blocks = append(blocks, c.rivals()...)
	if noted := c.e.Verdict.Noted; len(noted) > 0 {
		blocks = append(blocks, c.small(c.say("ground.noted", templates.Items{Items: noted}))...)
	}
	return blocks
}

func (c *composer) claims() Claims {
	var out Claims
	for _, claim := range c.e.Claims() {
		standing := claim.Claim.Standing
		out.Claims = append(out.Claims, Claim{
			Name: c.line("claim."+claim.Name, templates.None{}), Statement: c.statement(claim.Name),
			Mark: standingMark(standing), Standing: c.line("standing."+string(standing), templates.None{}),
			Because: c.because(claim.Claim),
		})
	}
	return out
}

func standingMark(s identify.Standing) Mark {
	switch s {
	case identify.Supported:
		return MarkFilled
	case identify.Contradicted:
		return MarkStruck
	}
	return MarkOpen
}

// statement is what the opinion says for a claim.
func (c *composer) statement(claim string) Text {
	o := c.s.Opinion
	f := templates.Claim{Name: c.name(true), Growth: o.Growth}
	switch claim {
	case "species":
		f.Given = c.opinion().speciesName() != ""
	case "variety":
		f.Given = f.Name.Variety != ""
	case "growth":
		f.Given = o.Growth != ""
		if o.Growth == "imitation" {
			f.Growth = string(c.opinion().Growth)
		}
	case "treatment":
		f.Treatments = c.treatmentNames(o.Treatments.Items)
		f.NoneSeen = o.Treatments.Given
	}
	return c.say("ground."+claim, f)
}

// because lists the reasons of a standing: all, or in a note the first. A
// contradiction is told whole, with the examiner's explanation.
func (c *composer) because(claim identify.Claim) []Text {
	against := claim.Standing == identify.Contradicted
	reasons := claim.Because
	if c.kind.Note && !against && len(reasons) > 1 {
		reasons = reasons[:1]
	}
	var out []Text
	for _, b := range reasons {
		out = append(out, c.say("ground.because", templates.Because{Text: c.prose(b)}))
	}
	if against {
		out = append(out, c.say("ground.explained", templates.Explanation{Text: c.s.Explanation}))
	}
	return out
}

func (c *composer) rivalFacts() templates.Rivals {
	r := templates.Rivals{Tested: c.tested(), Named: c.opinion().speciesName() != "" || len(c.s.Opinion.Layers) > 0}
	for i, rival := range c.e.Verdict.Rivals {
		if i == mostRivals {
			r.More = len(c.e.Verdict.Rivals) - mostRivals
			break
		}
		r.Names = append(r.Names, c.materialName(rival.Material.Name))
	}
	return r
}

// rivals names the materials that are not excluded, each with why not.
func (c *composer) rivals() []Block {
	facts := c.rivalFacts()
	head := Small(c.say("ground.rivals", facts))
	if len(facts.Names) == 0 {
		return []Block{head}
	}
	head.KeepNext = true
	list := List{Small: true}
	for i, name := range facts.Names {
		list.Items = append(list.Items, c.say("ground.rival", templates.Rival{Name: name, Because: c.prose(c.e.Verdict.Rivals[i].Because)}))
	}
	if facts.More > 0 {
		list.Items = append(list.Items, c.say("ground.more", facts))
	}
	return []Block{head, list}
}
