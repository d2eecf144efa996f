package report

import (
	"github.com/bojanz/currency"

	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/templates"
)

// finding is section 1: the one sentence, the figures in the margin, a photo,
// and what else a reader should know at once.
func (c *composer) finding() []Block {
	lead := Lead{Sentence: c.say("finding", c.findingFacts()), Photo: c.leadPhoto(), Margin: c.margin()}
	add := func(t Text) {
		if !t.Empty() {
			lead.Body = append(lead.Body, t)
		}
	}
	add(c.amendment())
	for _, t := range c.contradictions() {
		add(t)
	}
	add(together(c.compositeNotice(), c.say("finding.treatment", c.treatments())))
	add(together(c.say("size", c.size()), c.say("weight", c.weight())))
	add(c.worthInShort())
	add(together(c.say("assignment", c.assignment()), c.say("examination", c.examination())))
	return []Block{lead}
}

// amendment names the document that this one takes the place of (ISO/IEC 17025
// 7.8.8).
func (c *composer) amendment() Text {
	r := c.Replaces
	if r == nil {
		return nil
	}
	var changes []string
	for _, ch := range r.Changes {
		changes = append(changes, c.line("amendment.change", templates.Change(ch)))
	}
	return c.say("amendment", templates.Amendment{Number: r.Number, Date: c.date(r.Issued), Because: r.Because, Changes: changes})
}

// findingFacts settles which of its forms the first sentence takes.
func (c *composer) findingFacts() templates.Finding {
	v := c.e.Verdict
	f := templates.Finding{Subject: c.subject, Rivals: len(v.Rivals), Tested: c.tested()}
	for _, claim := range c.e.Claims() {
		if claim.Claim.Standing == identify.Contradicted {
			f.Against = append(f.Against, c.line("against."+claim.Name, templates.None{}))
		}
	}
	name := c.name(true)
	species := v.Species.Standing == identify.Supported
	varietyOpen := name.Variety != "" && v.Variety.Standing == identify.Undecided
	f.Contradicted = len(f.Against) > 0
	switch {
	case v.Opinion.Stated:
		f.Stated = true
	case f.Contradicted:
	case species && c.growthInName(name):
		f.Material = true
	case species:
		f.Supported = true
		if varietyOpen {
			name = c.name(false)
			f.Whether = append(f.Whether, c.line("whether.variety", templates.Whether{Variety: c.opinion().varietyName(), Subject: c.subject}))
		}
	default:
		f.Open = true
	}
	f.Name = c.line("name", name)
	if issuer := c.reportedBy(v.Growth); issuer != "" {
		f.Reported = c.line("reported.growth", templates.Reported{Issuer: issuer, Growth: name.Growth, Subject: c.subject})
	}
	f.Whether = append(f.Whether, c.whether(name)...)
	return f
}

// growthInName reports whether the name holds a word about growth that the
// tests leave undecided.
func (c *composer) growthInName(n templates.Name) bool {
	return !n.Shown && n.Growth != "" && (n.Growth != "natural" || n.Diamond || n.Pearl || n.Imitates != "")
}

// whether lists what is undecided of growth and treatment.
func (c *composer) whether(n templates.Name) []string {
	var list []string
	if c.e.Verdict.Growth.Standing == identify.Undecided {
		list = append(list, c.line("whether.growth", templates.Whether{Growth: n.Growth, Either: n.Growth == "", Subject: c.subject}))
	}
	if c.e.Verdict.Treatment.Standing == identify.Undecided && len(c.s.Opinion.Treatments.Items) > 0 {
		list = append(list, c.line("whether.treatment", templates.Whether{Subject: c.subject}))
	}
	return list
}

// tested reports whether a test counts that was made here.
func (c *composer) tested() bool {
	for _, i := range c.items {
		if i.tested() {
			return true
		}
	}
	for _, t := range c.e.Verdict.Tests {
		if t.Test.Header().SetAside == "" {
			return true
		}
	}
	return false
}

// contradictions are told on page one with the examiner's explanation.
func (c *composer) contradictions() []Text {
	var against []identify.Claim
	var names []string
	for _, claim := range c.e.Claims() {
		if claim.Claim.Standing == identify.Contradicted {
			against, names = append(against, claim.Claim), append(names, claim.Name)
		}
	}
	var out []Text
	for i, claim := range against {
		out = append(out, c.say("contradiction", templates.Contradiction{
			Claim: names[i], Because: c.proses(claim.Because), Explanation: c.s.Explanation, Last: i == len(against)-1,
		}))
	}
	return out
}

// worthInShort is the conclusion of an appraisal, or a shop's asking price.
func (c *composer) worthInShort() Text {
	switch {
	case c.kind.Appraisal:
		sold := Text(nil)
		if c.kind.Sold {
			sold = c.say("value.sold", templates.None{})
		}
		v := c.value()
		if v.Amount == "" && v.Low == "" {
			return together(c.say("value.none", templates.None{}), sold)
		}
		return together(c.say("value", v), sold)
	case c.kind.Note && c.s.Stock != nil && c.s.Stock.Price != nil:
		return c.say("price", templates.Price{Amount: c.price(), Subject: c.subject})
	}
	return nil
}

func (c *composer) price() string {
	p := c.s.Stock.Price
	return c.money(string(p.Amount), p.Currency)
}

func (c *composer) assignment() templates.Assignment {
	a := templates.Assignment{Kind: c.kind, Subject: c.subject, Purpose: c.purpose(), Users: c.s.Use.Users.Items}
	if cl := c.s.Client; cl != nil {
		a.OwnStock = cl.Name == ownStock
		a.Client, a.Address, a.Contact = cl.Name, oneLine(cl.Address), oneLine(cl.Contact)
	}
	if c.s.Stock != nil {
		a.StockNumber = c.s.Stock.Number
	}
	return a
}

// purpose is what the document is for.
func (c *composer) purpose() string {
	if c.s.Use.Purpose == "" && c.s.Worth != nil {
		return c.s.Worth.Purpose
	}
	return c.s.Use.Purpose
}

func (c *composer) examination() templates.Examination {
	x := templates.Examination{
		Subject: c.subject, Tested: c.tested(), Mounted: c.s.Mounted, Place: c.s.Place, Received: c.day(c.s.Received),
		Examiner: c.examiner(), Credentials: c.b.Examiners[c.s.Examiner].Credentials,
	}
	if days := c.s.Examined.Items; len(days) > 0 {
		x.From = c.day(days[0])
		if last := days[len(days)-1]; last != days[0] {
			x.To = c.day(last)
		}
	}
	switch by := c.s.Authorised; {
	case by == c.s.Examiner:
		x.OwnAuthority = true
	case by != "":
		x.Authorised = c.person(by)
	}
	if c.kind.Note { // an appraisal says it in its statement
		x.Helpers, x.NoHelpers = c.s.Scope.Helpers.Items, c.s.Scope.Helpers.Given && len(c.s.Scope.Helpers.Items) == 0
	}
	if p := c.s.Prepared; p != nil && p.Cleaned {
		x.Cleaned, x.CleanedBy = true, p.By.Items
	}
	return x
}

// margin is the figures beside the finding: weight, size, value.
func (c *composer) margin() []MarginFigure {
	var list []MarginFigure
	add := func(figure string, note Text) {
		if figure != "" {
			list = append(list, MarginFigure{Figure: figure, Note: note})
		}
	}
	w := c.weight()
	switch {
	case w.Measured != "" && w.Before:
		add(w.Measured, c.say("margin.weighed before", c.subject))
	case w.Measured != "":
		add(w.Measured, c.say("margin.weighed", c.subject))
	case w.Estimated != "":
		add(c.line("span", templates.Span{Low: withoutUnit(w.Low), High: w.High}), c.say("margin.estimated", c.subject))
	case w.Stated != "":
		add(w.Stated, c.say("margin.stated", c.subject))
	}
	add(c.marginSize())
	if c.kind.Appraisal {
		add(c.marginValue(), c.say("margin.value", c.value()))
	}
	if c.kind.Note && c.s.Stock != nil && c.s.Stock.Price != nil {
		add(c.price(), c.say("margin.price", templates.None{}))
	}
	return list
}

// marginValue is the conclusion: an amount, or the two ends of a range.
func (c *composer) marginValue() string {
	r := c.e.Worth
	switch {
	case r == nil:
		return ""
	case r.Conclusion.Amount != "":
		return c.inMargin(r.Conclusion.Amount, r.Currency, currency.DisplayCode)
	case r.Conclusion.Low != "":
		return c.line("span", templates.Span{
			Low: c.inMargin(r.Conclusion.Low, r.Currency, currency.DisplayCode), High: c.inMargin(r.Conclusion.High, r.Currency, currency.DisplayNone),
		})
	}
	return ""
}

func (c *composer) leadPhoto() *Photo {
	for i := range c.Photos {
		if p, ok := c.photo(i); ok {
			return &p
		}
	}
	return nil
}

// photo is a picture of the stone file with its caption; ok is false where it
// could not be read.
func (c *composer) photo(i int) (Photo, bool) {
	if i >= len(c.Photos) || i >= len(c.s.Photos) || len(c.Photos[i].JPEG) == 0 {
		return Photo{}, false
	}
	made, written := c.Photos[i], c.s.Photos[i]
	caption := templates.Caption{Text: written.Caption, Light: written.Light, GreyCard: written.GreyCard, Number: i + 1, Subject: c.subject}
	return Photo{
		Image:   Image{Data: made.JPEG, Alt: c.line("alt.photo", caption)},
		Caption: c.say("photo.caption", caption), MMPerPixel: scale(made, written), Taken: c.taken(made, written), SHA256: hexadecimal(made.SHA256),
	}, true
}

// scale is millimetres in a pixel of the picture as printed: that of the file
// times how much smaller it was made.
func scale(made photos.Photo, written stone.Photo) float64 {
	if !written.Scale.Given() || made.Thumbnail.Width == 0 {
		return 0
	}
	return written.Scale.Float() * float64(made.Source.Width) / float64(made.Thumbnail.Width)
}

// taken is the day as the camera noted it, or as written.
func (c *composer) taken(made photos.Photo, written stone.Photo) string {
	if written.Taken.Given() {
		return c.day(written.Taken)
	}
	return c.date(made.Taken)
}

func hexadecimal(sum [32]byte) string {
	const digits = "0123456789abcdef"
	out := make([]byte, 0, 64)
	for _, b := range sum {
		out = append(out, digits[b>>4], digits[b&15])
	}
	return string(out)
}
