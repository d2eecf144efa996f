package report

import (
	"strings"

	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// photos is section 8. The first picture leads on page one; here are all of
// them, so that each has its bar and its digest in one place.
func (c *composer) photos() []Block {
	var out Photos
	for i := range c.Photos {
		if p, ok := c.photo(i); ok {
			out.Photos = append(out.Photos, p)
		}
	}
	if len(out.Photos) == 0 {
		return nil
	}
	return append([]Block{out}, c.small(c.say("photos.note", templates.None{}))...)
}

// keeping is where the owner keeps the stone, what was paid, who insures it, and
// what others said that it is worth.
func (c *composer) keeping() []Block {
	var texts []Text
	add := func(name string, f templates.Keeping) {
		f.Subject = c.subject
		texts = append(texts, c.say("keeping."+name, f))
	}
	if c.s.Location != "" {
		add("location", templates.Keeping{Location: c.s.Location})
	}
	if o := c.s.Owned; o != nil {
		add("owned", templates.Keeping{From: c.day(o.From), Seller: o.Seller, Paid: c.paid(o.Paid), Receipt: o.Receipt, Interest: o.Interest, Provenance: o.Provenance})
		if o.Receipt == "" {
			texts = append(texts, c.say("keeping.noreceipt", templates.None{}))
		}
	}
	if r := c.s.Use.Restrictions; r != "" {
		add("restrictions", templates.Keeping{Restrictions: r})
	}
	if i := c.s.Insured; i != nil {
		add("insured", templates.Keeping{With: i.With, Policy: i.Policy, Sum: c.paid(i.Sum), Until: c.day(i.Until)})
	}
	for _, v := range c.s.Valued {
		add("valued", templates.Keeping{Date: c.day(v.Date), By: v.By, Amount: c.paid(v.Amount), Type: v.Type, Paper: v.Paper})
	}
	if len(c.s.Valued) > 0 {
		texts = append(texts, c.say("keeping.theirs", templates.None{}))
	}
	var blocks []Block
	for _, t := range texts {
		blocks = append(blocks, c.paragraph(t)...)
	}
	blocks = append(blocks, c.small(append([]Text{c.say("limits.carat", templates.None{})}, c.closing(c.limitFacts())...)...)...)
	return append(blocks, c.small(c.checking()...)...) // a record has no section of its own for it
}

func (c *composer) paid(m stone.Money) string {
	if !m.Given() {
		return ""
	}
	return c.money(string(m.Amount), m.Currency)
}

// verify is section 9: how a reader finds out whether this is the document that
// was issued. A note is signed here.
func (c *composer) verify() []Block {
	blocks := c.small(c.checking()...)
	blocks = append(blocks, c.code()...)
	if c.kind.Note {
		blocks = signed(blocks, c.signature())
	}
	return blocks
}

// checking is what a reader needs to find out whether this is the document that
// was issued.
func (c *composer) checking() []Text {
	f := templates.Verify{
		Number: c.Number, Check: lastDigits(c.Number), UUID: c.UUID, Digest: digest(c.StoneFile), File: c.stoneFileName(), JSON: c.jsonName(),
	}
	for _, i := range c.withFiles() {
		f.Stones = append(f.Stones, i.stoneFileName())
	}
	texts := []Text{c.say("verify.draft", templates.None{})}
	if c.Number != "" {
		texts = []Text{c.say(c.orShort("verify.number"), f), c.say(c.orShort("verify.register"), f)}
	}
	if len(c.StoneFile) > 0 && len(c.JSON) > 0 {
		texts = append(texts, c.say(c.orShort("verify.files"), f))
	}
	return texts
}

// signed puts a signature below the blocks and keeps the last paragraph with
// it, so that no signature stands alone on a page.
func signed(blocks, signature []Block) []Block {
	if len(blocks) > 0 && len(signature) > 0 {
		if p, ok := blocks[len(blocks)-1].(Paragraph); ok {
			p.KeepNext = true
			blocks[len(blocks)-1] = p
		}
	}
	return append(blocks, signature...)
}

// lastDigits is what stands behind the last hyphen of a number.
func lastDigits(number string) string { return number[strings.LastIndexByte(number, '-')+1:] }
