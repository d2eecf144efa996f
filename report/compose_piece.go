package report

import (
	"strconv"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/phrase"
	"stonewrit/grading/quality"
	"stonewrit/templates"
)

// asOne is a piece as the sections take it that are the same for a stone and a
// piece: parties, value, keeping, how to verify.
func asOne(p *grading.ExaminedPiece) *grading.Examined {
	head := p.Piece.Head()
	head.Marks = nil // a piece has a list of its own
	return &grading.Examined{Stone: head, Bench: p.Bench, Worth: p.Worth, Problems: p.Problems, Caveats: p.Caveats}
}

// preparePiece makes a composer for each item.
func (c *composer) preparePiece() {
	c.subject = templates.Subject{
		Piece: c.p.Piece.Kind, Items: len(c.p.Items), Count: 1, Reference: c.s.Reference,
		Many: c.p.Piece.Kind == "earrings" || c.p.Piece.Kind == "cufflinks",
	}
	set := c.Set
	for _, i := range c.p.Items {
		item := &composer{Input: c.Input, e: i.Stone, s: i.Stone.Stone, b: i.Stone.Bench, w: c.w, kind: c.kind}
		item.Photos, item.Evidence, item.StoneFile, item.Replaces = nil, nil, nil, nil
		if item.b == nil {
			item.b = c.b
		}
		if !i.Counted && len(set) > 0 {
			item.Photos, item.Evidence, item.StoneFile = set[0].Photos, set[0].Evidence, set[0].StoneFile
			set = set[1:]
		}
		item.subject = item.aboutWhat()
		c.items = append(c.items, item)
	}
}

// withFiles are the composers of the items that have a stone file, in order.
func (c *composer) withFiles() []*composer {
	var list []*composer
	if c.p == nil {
		return nil
	}
	for n, i := range c.p.Items {
		if !i.Counted && len(list) < len(c.Set) {
			list = append(list, c.items[n])
		}
	}
	return list
}

// pieceSection is a section that a piece says in its own way; ok is false for
// those that are the same.
func (c *composer) pieceSection(name string) (blocks []Block, ok bool) {
	switch name {
	case "finding":
		blocks = c.pieceFinding()
	case "ground":
		blocks = c.pieceGround()
	case "evidence":
		for _, i := range c.items {
			blocks = append(blocks, i.evidence()...)
		}
	case "tests":
		blocks = c.pieceTests()
	case "description":
		blocks = c.pieceDescription()
	case "limits":
		blocks = c.pieceLimits()
	case "photos":
		blocks = c.piecePhotos()
	default:
		return nil, false
	}
	for _, i := range c.items {
		if c.err == nil {
			c.err = i.err
		}
	}
	return blocks, true
}

// pieceFinding is section 1 of a piece.
func (c *composer) pieceFinding() []Block {
	lead := Lead{Sentence: c.say("piece", c.pieceFacts()), Photo: c.leadPhoto(), Margin: c.pieceMargin()}
	add := func(t Text) {
		if !t.Empty() {
			lead.Body = append(lead.Body, t)
		}
	}
	add(c.amendment())
	for n, i := range c.items {
		for _, t := range i.contradictions() {
			add(t)
		}
		add(c.say("item.ground", c.itemFacts(n)))
		if !c.p.Items[n].Counted {
			add(together(i.compositeNotice(), i.say("finding.treatment", i.treatments())))
		}
	}
	add(c.say("piece.mass", c.massFacts()))
	add(c.worthInShort())
	add(together(c.say("assignment", c.assignment()), c.say("examination", c.examination())))
	return []Block{lead}
}

func (c *composer) pieceFacts() templates.Piece {
	f := templates.Piece{Subject: c.subject, NoItems: len(c.p.Items) == 0}
	f.Marked, f.ByMass = len(c.p.Metals) > 0, c.p.ByMass
	for _, m := range c.p.Metals {
		f.Metals = append(f.Metals, c.prose(m.Name))
		f.Marked = f.Marked && m.KnownBy == "mark"
	}
	for n := range c.items {
		f.Items = append(f.Items, c.line("piece.item", c.itemFacts(n)))
	}
	return f
}

// nameOf is a name of the rules of naming in the language of the document.
// English alone makes plurals by rule; elsewhere the number before a name tells
// how many there are.
func (c *composer) nameOf(n quality.Name) string {
	n.Many = n.Many && c.w.Language() == templates.DefaultLanguage
	return n.Line().In(c.w)
}

func (c *composer) pieceMargin() []MarginFigure {
	var list []MarginFigure
	m := c.massFacts()
	if m.Gross != "" {
		list = append(list, MarginFigure{m.Gross, c.say("margin.mass", m)})
	}
	for n := range c.items {
		if f := c.itemFacts(n); f.Weight != "" {
			list = append(list, MarginFigure{f.Weight, c.say("piece.item", f)})
		}
	}
	if c.kind.Appraisal && c.marginValue() != "" {
		list = append(list, MarginFigure{c.marginValue(), c.say("margin.value", c.value())})
	}
	return list
}

// itemFacts is what there is to say of an item.
func (c *composer) itemFacts(n int) templates.Item {
	i, item := c.p.Items[n], c.items[n]
	f := templates.Item{
		Number: i.Number, Of: len(c.p.Items), Count: i.Count, Counted: i.Counted, Name: item.line("name", item.name(true)), KnownBy: i.Entry.KnownBy,
		Setting: i.Entry.Setting, Place: i.Entry.Place, Note: i.Entry.Note, Condition: i.Entry.Condition,
		Stated: item.e.Verdict.Opinion.Stated, Tested: item.tested(),
	}
	if i.Counted {
		f.Name = c.nameOf(i.Name)
		f.Colour, f.Clarity, f.System = c.grades(i.Entry.Colour), c.grades(i.Entry.Clarity), i.Entry.System
	}
	v := item.e.Verdict
	f.Supported = v.Species.Standing == identify.Supported && (item.opinion().varietyName() == "" || v.Variety.Standing == identify.Supported)
	for _, claim := range item.e.Claims() {
		if claim.Claim.Standing == identify.Contradicted {
			f.Against = append(f.Against, item.line("against."+claim.Name, templates.None{}))
		}
	}
	size := item.size()
	f.Form, f.Size = size.Form, joined(size.Measures)
	if f.Size == "" {
		f.Size = size.Sizes
	}
	if i.Carats != "" {
		f.Weight, f.Basis = c.carats(i.Carats), string(i.Basis)
		if i.Basis == grading.Stated {
			f.StatedBy = item.s.Weight.By
		}
	}
	return f
}

func joined(list []string) string {
	var s string
	for i, t := range list {
		if i > 0 {
			s += ", "
		}
		s += t
	}
	return s
}

func (c *composer) massFacts() templates.Mass {
	m, written := c.p.Mass, c.p.Piece.Mass
	f := templates.Mass{How: written.How, Reckoned: m.Reckoned, Unknown: !m.AllStones}
	grams := func(v float64) string { return c.figure(strconv.FormatFloat(v, 'f', 2, 64) + " g") }
	if written.Gross.Given() {
		f.Gross = grams(m.Gross)
	}
	switch {
	case m.Reckoned:
		f.Net = c.figure(strconv.FormatFloat(m.Net, 'f', 3, 64) + " g")
		var stones []phrase.Line
		for _, i := range c.p.Items {
			stones = append(stones, phrase.Say("%s", c.carats(i.Carats)))
		}
		f.Stones = phrase.Join("%s and %s", stones...).In(c.w)
	case m.Net > 0:
		f.Net = grams(m.Net)
	}
	return f
}

// pieceGround is section 2 of a piece: the four claims of each stone with a file
// of its own, in short, and what the names of the others rest on.
func (c *composer) pieceGround() []Block {
	var blocks []Block
	for n, i := range c.items {
		facts := c.itemFacts(n)
		if c.p.Items[n].Counted {
			blocks = append(blocks, c.paragraph(c.say("item.ground", facts))...)
			continue
		}
		blocks = append(blocks, Subhead(c.line("item.head", facts)), i.claimsInShort())
		blocks = append(blocks, c.small(i.say("ground.rivals.short", i.rivalFacts()))...)
	}
	opinion := Paragraph{Text: c.say("ground.opinion", templates.Subject{Many: true}), Small: true, KeepNext: true}
	return append([]Block{opinion}, blocks...)
}

// claimsInShort is the claims with the first reason of each; a contradiction is
// told whole.
func (c *composer) claimsInShort() Claims {
	short := *c
	short.kind.Note = true
	claims := short.claims()
	if c.err == nil {
		c.err = short.err
	}
	return claims
}

// pieceTests is section 4: the tests of each stone with a file of its own.
func (c *composer) pieceTests() []Block {
	var blocks []Block
	for n, i := range c.items {
		if c.p.Items[n].Counted {
			continue
		}
		blocks = append(blocks, Subhead(c.line("item.head", c.itemFacts(n))))
		blocks = append(blocks, i.tests()...)
	}
	return blocks
}

// pieceLimits is section 7 of a piece.
func (c *composer) pieceLimits() []Block {
	blocks := c.small(c.say("limits.items", templates.None{}))
	for n, i := range c.items {
		f := i.limitFacts()
		texts := append([]Text{i.notMade(f), i.told(f)}, i.caveatsOf(i.e.Verdict.Caveats)...)
		if t := together(texts...); !t.Empty() && !c.p.Items[n].Counted {
			blocks = append(blocks, c.small(c.say("item.limits", c.itemFacts(n)), t)...)
		}
	}
	blocks = append(blocks, c.small(append([]Text{c.leftOut()}, c.caveats()...)...)...)
	for _, t := range c.rules() {
		blocks = append(blocks, c.small(t)...)
	}
	blocks = append(blocks, c.small(c.meaning()...)...)
	return append(blocks, c.small(c.closing(c.limitFacts())...)...)
}

// rules is how verdicts and standings come about, where any item was tested.
func (c *composer) rules() []Text {
	for _, i := range c.items {
		if list := i.rule(); list != nil {
			return list
		}
	}
	return nil
}

// piecePhotos is section 8: the pictures of the piece, then those of its stones.
func (c *composer) piecePhotos() []Block {
	var out Photos
	for _, from := range append([]*composer{c}, c.items...) {
		for i := range from.Photos {
			if p, ok := from.photo(i); ok {
				out.Photos = append(out.Photos, p)
			}
		}
	}
	if len(out.Photos) == 0 {
		return nil
	}
	return append([]Block{out}, c.small(c.say("photos.note", templates.None{}))...)
}
