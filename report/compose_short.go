package report

import (
	"slices"

	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// ownStock is the client of a stone that the practice examines for itself.
const ownStock = "own stock"

// shortForm reports whether the document is a note in the short form: the
// client agreed to one (ISO/IEC 17025:2017 7.8.1.3), or is the practice itself.
// It says all that a note must say, in fewer words, so that it keeps to one
// page. A piece has no short form.
func (c *composer) shortForm() bool {
	own := c.s.Client != nil && c.s.Client.Name == ownStock
	return c.s.Report == stone.ShortNote && c.p == nil && (c.s.ShortForm == "agreed" || own)
}

// shortSection is the blocks of one section of the short form; ok is false for
// one that is no shorter than in the long form.
func (c *composer) shortSection(name string) (blocks []Block, ok bool) {
	switch name {
	case "finding":
		return c.shortFinding(), true
	case "ground":
		return c.shortGround(), true
	case "tests":
		return c.shortTests(), true
	case "description":
		return c.small(slices.Concat(c.looks(), c.identity(), []Text{c.care()})...), true
	case "limits":
		return c.shortLimits(), true
	case "verify":
		return c.shortVerify(), true
	}
	return nil, false
}

// sectionName is what stands beside a section.
func (c *composer) sectionName(name string) string {
	if c.short && name == "description" {
		name = "description.short" // the treatment stands in the finding
	}
	return c.line("section."+name, templates.None{})
}

// orShort is the name of a sentence, or of its like in the short form.
func (c *composer) orShort(name string) string {
	if c.short {
		return name + ".short"
	}
	return name
}

// shortFinding is section 1 with all sentences in the small size, and with the
// treatment told whole, which section 5 need not repeat.
func (c *composer) shortFinding() []Block {
	lead := Lead{Sentence: c.say("finding", c.findingFacts()), Photo: c.leadPhoto(), Margin: c.margin(), Small: true}
	add := func(texts ...Text) {
		if t := together(texts...); !t.Empty() {
			lead.Body = append(lead.Body, t)
		}
	}
	add(c.amendment())
	add(c.contradictions()...)
	add(append([]Text{c.compositeNotice()}, c.treatment()...)...)
	weight := c.weight()
	if weight.Agrees { // what was weighed needs no estimate beside it
		weight.Estimated = ""
	}
	add(c.say("size", c.size()), c.say("weight", weight))
	add(c.worthInShort(), c.say("assignment", c.assignment()), c.say("examination", c.examination()))
	return []Block{lead}
}

// shortGround is section 2 with a line for each claim.
func (c *composer) shortGround() []Block {
	table := Table{Small: true, Columns: []Column{{}, {}, {Width: 1}}}
	for _, claim := range c.claims().Claims {
		said := strongly(claim.Statement)
		for _, because := range claim.Because {
			said = said.Plain(" ").Then(because)
		}
		table.Rows = append(table.Rows, Row{Cells: []Cell{{Text: Plain(claim.Name), Mark: claim.Mark}, {Text: Italic(claim.Standing)}, {Text: said}}})
	}
	return append([]Block{table}, c.small(c.say("ground.rivals.short", c.rivalFacts()), c.say("ground.opinion.short", c.subject))...)
}

// strongly is the text in bold.
func strongly(t Text) Text { return Strong(t.String()) }

// shortTests is section 4 with a line for each test: the verdict, what was read,
// the value, the instrument with the day of its last check. Cautions follow, and
// what identifies the instruments.
func (c *composer) shortTests() []Block {
	if len(c.e.Verdict.Tests) == 0 {
		return c.small(c.say("tests.none", templates.None{}))
	}
	table := Table{Small: true, Columns: []Column{{}, {Width: 1}}}
	cautions := c.newCautions()
	var rest []Text
	for _, r := range c.e.Verdict.Tests {
		table.Rows = append(table.Rows, Row{Cells: []Cell{c.verdict(r), {Text: c.testLine(r)}}})
		rest = append(rest, cautions.beside(r.Test))
	}
	rest = append(rest, cautions.cleaning(), c.instrumentsLine())
	return append([]Block{table}, c.small(Quiet(together(rest...).String()))...)
}

// testLine is a test in one line, as long as it need be.
func (c *composer) testLine(r identify.TestResult) Text {
	h := r.Test.Header()
	line := templates.TestLine{
		Name: c.line("tests.name", templates.TestName{Number: h.Index + 1, Kind: h.Kind, Place: h.Place}),
		Read: c.asRead(r.Test).String(), Value: c.reduced(r), Note: h.Note, Parts: c.circumstances(h),
	}
	if h.SetAside != "" {
		line.Aside = c.line("tests.aside", templates.Aside{Why: h.SetAside})
	}
	if check := c.shortCheck(r.Test); check != "" {
		line.Parts = append(line.Parts, check)
	}
	return c.say("tests.line", line)
}

// instrumentsLine is the instruments with what identifies them and what they
// were checked with.
func (c *composer) instrumentsLine() Text {
	var items []string
	for _, id := range c.used() {
		if in, ok := c.b.Instruments[id]; ok {
			items = append(items, c.line("tests.instrument.line", c.instrument(id, in)))
		}
	}
	if len(items) == 0 {
		return nil
	}
	return c.say("tests.instruments.line", templates.Items{Items: items})
}

// shortLimits is section 7 in one paragraph: what was done, what the signs mean,
// how long it holds.
func (c *composer) shortLimits() []Block {
	f := c.limitFacts()
	first := []Text{c.say("limits.items", templates.None{}), c.notMade(f), c.leftOut(), c.told(f)}
	var meaning []Text
	if len(c.e.Verdict.Tests) > 0 {
		meaning = append(meaning, c.say("limits.rule.line", templates.None{}))
	}
	meaning = append(meaning, c.say("limits.uncertainty.short", templates.None{}), c.say("limits.carat", templates.None{}))
	return c.small(slices.Concat(first, c.caveats(), meaning, c.closing(f))...)
}

// shortVerify is section 9, with the code beside it and the signature.
func (c *composer) shortVerify() []Block {
	var blocks []Block
	for _, b := range c.code() {
		if f, ok := b.(Figure); ok {
			f.Aside, f.Caption = true, nil
			b = f
		}
		blocks = append(blocks, b)
	}
	texts := c.checking()
	if len(blocks) > 0 {
		texts = append(texts, c.say("verify.code", templates.None{}))
	}
	blocks = append(blocks, c.small(texts...)...)
	return signed(blocks, c.signature())
}
