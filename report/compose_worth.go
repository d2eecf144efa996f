package report

import (
	"slices"
	"strings"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/phrase"
	"stonewrit/grading/worth"
	"stonewrit/templates"
)

// value is the conclusion in short.
func (c *composer) value() templates.Value {
	v := templates.Value{Purpose: c.purpose()}
	if w := c.s.Worth; w != nil {
		v.Market, v.Effective = w.Market, c.day(w.Effective)
	}
	if r := c.e.Worth; r != nil {
		v.Amount, v.Low, v.High, v.Tax = c.money(r.Conclusion.Amount, r.Currency), c.money(r.Conclusion.Low, r.Currency), c.money(r.Conclusion.High, r.Currency), r.Conclusion.Tax
	}
	return v
}

// worth is section 6: what kind of value, on what market and day, by which
// approach, from what, and who stands for it.
func (c *composer) worth() []Block {
	if c.s.Worth == nil {
		return c.signature()
	}
	f := c.worthFacts()
	blocks := c.paragraph(c.say("worth.purpose", f))
	blocks = append(blocks, c.paragraph(c.say("worth.type", f))...)
	blocks = append(blocks, c.paragraph(c.say("worth.date", f))...)
	if r := c.e.Worth; r != nil {
		blocks = append(blocks, c.arithmetic(r)...)
	}
	if len(f.Treated) > 0 {
		blocks = append(blocks, c.paragraph(c.say("worth.treated", f))...)
	}
	blocks = append(blocks, c.paragraph(c.say("worth.scope", f))...)
	blocks = append(blocks, c.paragraph(c.say("worth.gift", f), c.court())...)
	blocks = append(blocks, c.assumptions()...)
	blocks = append(blocks, c.subhead("worth.statement"))
	blocks = append(blocks, Paragraph{
		Text:     together(c.say("worth.true", templates.None{}), c.say("worth.interest", f), c.say("worth.prior", f), c.say("worth.fee", f), c.say("worth.inspected", f), c.say("worth.standards", f), c.say("worth.oath", f)),
		KeepNext: true,
	})
	return append(blocks, c.signature()...)
}

func (c *composer) worthFacts() templates.Worth {
	w, i, s := c.s.Worth, c.s.Interest, c.s.Scope
	f := templates.Worth{
		Purpose: c.purpose(), Users: c.s.Use.Users.Items, Restrictions: c.s.Use.Restrictions,
		Type: w.Type, Source: w.Source, Replacement: w.Replacement, Market: w.Market, Exposure: w.Exposure,
		Effective: c.day(w.Effective), Issued: c.date(c.Issued), Currency: w.Currency, Terms: w.Terms, PriorSales: w.PriorSales,
		Inspected: s.Inspected.Items, Researched: s.Researched.Items, Helpers: s.Helpers.Items, NoHelpers: s.Helpers.Given && len(s.Helpers.Items) == 0,
		InItem: i.InItem, Prior: i.Prior, Fee: i.Fee, NoInterest: i.InItem == "none", NoPrior: i.Prior == "none",
		Sellers: w.Sellers, Standards: c.s.Standards, Oath: c.s.Oath,
		Sold: c.kind.Sold, NotSold: c.s.Sold != nil && !*c.s.Sold, Treated: c.treatmentNames(append(c.s.Opinion.Treatments.Items, c.pieceTreatments()...)),
	}
	if w.Effective.Given() {
		day := time.Date(c.Issued.Year(), c.Issued.Month(), c.Issued.Day(), 0, 0, 0, 0, time.UTC)
		switch apart := w.Effective.Compare(day); {
		case apart < 0:
			f.Past = day.Sub(w.Effective.Time) > currentFor
		case apart > 0:
			f.Future = true
		}
	}
	if o := c.s.Owned; o != nil {
		f.Ownership, f.Receipt = o.Interest, o.Receipt
	}
	if g := c.s.Gift; g != nil {
		f.GiftDate, f.GiftTo = c.day(g.Date), g.To
	}
	for _, l := range s.LeftOut {
		f.LeftOut = append(f.LeftOut, c.line("worth.leftout", templates.LeftOut{What: l.What, Why: l.Why}))
	}
	if r := c.e.Worth; r != nil && r.Tax != nil {
		f.TaxRate, f.TaxConclusion = c.figure(r.Tax.Rate+" %"), r.Tax.Conclusion
	}
	return f
}

// currentFor is how long before the day of issue a value still counts as
// current (common practice, no source).
const currentFor = 31 * 24 * time.Hour

// arithmetic is approaches, comparables, the calculation and the conclusion.
func (c *composer) arithmetic(r *worth.Result) []Block {
	var said []string
	for _, a := range r.Approaches {
		said = append(said, c.line("worth.approach", templates.Approach{Name: a.Name, Used: a.Used, Reason: a.Reason}))
	}
	blocks := c.paragraph(c.say("worth.approaches", templates.Items{Items: said}))
	if len(r.Comparables) > 0 {
		blocks = append(blocks, c.subhead("worth.comparables"), c.comparables(r))
		if len(r.Comparables) > 1 {
			blocks = append(blocks, c.small(c.say("worth.span", templates.Span{Low: c.money(r.Low, r.Currency), High: c.money(r.High, r.Currency)}))...)
		}
	}
	if len(r.Lines) > 0 {
		blocks = append(blocks, c.subhead("worth.sum"), c.calculation(r))
		blocks = append(blocks, c.small(c.say("worth.rules", templates.Words{Text: c.money(r.SmallestUnit, r.Currency)}))...)
	}
	v := r.Conclusion
	if v.Amount == "" && v.Low == "" {
		return append(blocks, c.paragraph(c.say("value.none", templates.None{}))...)
	}
	return append(blocks, c.paragraph(c.say("worth.conclusion", templates.Conclusion{
		Amount: c.money(v.Amount, r.Currency), Low: c.money(v.Low, r.Currency), High: c.money(v.High, r.Currency), From: v.From, Own: v.Own, Tax: v.Tax, Because: v.Because,
	}))...)
}

func (c *composer) comparables(r *worth.Result) Table {
	head := func(name string) string { return c.line("worth.head."+name, templates.None{}) }
	code := templates.Words{Text: r.Currency}
	t := Table{Small: true, Columns: []Column{
		{Head: head("source"), Width: 3}, {Head: head("date")}, {Head: head("weight"), Align: AlignRight},
		{Head: c.line("worth.head.price", code), Align: AlignRight}, {Head: c.line("worth.head.adjusted", code), Align: AlignRight},
	}}
	for _, k := range r.Comparables {
		row := Cells(c.say("worth.comparison", templates.Comparison{Source: k.Source, Note: k.Note}), Plain(c.isoDate(k.Date)), Plain(c.figure(k.Weight)),
			Plain(c.bareAmount(k.Price, r.Currency)), Plain(c.bareAmount(k.Amount, r.Currency)))
		var notes []string
		for _, step := range k.Beside() {
			notes = append(notes, c.working(step, r.Currency))
		}
		t.Rows = append(t.Rows, row.Noted(Plain(strings.Join(append(notes, c.proses(k.Concerns)...), "; "))))
	}
	return t
}

func (c *composer) isoDate(s string) string {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return s
	}
	return c.date(t)
}

// calculation is the cost build-up as a ledger. The conclusion is its last line
// where it follows from the lines.
func (c *composer) calculation(r *worth.Result) Sum {
	var sum Sum
	add := func(label Text, steps []phrase.Line, amount string, total bool) {
		var shown []string
		for _, s := range steps {
			shown = append(shown, c.working(s, r.Currency))
		}
		sum.Lines = append(sum.Lines, SumLine{Label: label, Working: Plain(strings.Join(shown, "; ")), Amount: c.bareAmount(amount, r.Currency), Total: total})
	}
	for _, l := range r.Lines {
		add(c.say("worth.line", templates.Line{What: l.What, Note: l.Note}), l.Beside(), l.Amount, false)
	}
	if r.Cost != nil && len(r.Lines) > 1 {
		add(c.say("worth.total", templates.None{}), nil, r.Cost.Amount, true)
	}
	if t := r.CostTaxed; t != nil {
		steps := t.Beside()
		add(c.say("worth.taxed", templates.Words{Text: r.Tax.Conclusion}), steps[:1], t.Amount, true)
	}
	if v := r.Conclusion; v.From == "cost" && !v.Own && len(v.Working) > 0 {
		add(c.say("worth.concluded", templates.None{}), worth.Step{Working: v.Working, Amount: v.Amount}.Beside(), v.Amount, true)
		sum.Lines[len(sum.Lines)-1].Amount = c.money(v.Amount, r.Currency)
	}
	return sum
}

// assumptions are the facts taken as true and those taken against better
// knowledge, each with what follows from it.
func (c *composer) assumptions() []Block {
	var blocks []Block
	list := func(head string, items []string) {
		if len(items) == 0 {
			return
		}
		p := Para(c.say(head, templates.None{}))
		p.KeepNext = true
		l := List{}
		for _, s := range items {
			l.Items = append(l.Items, c.say("limits.caveat", templates.Words{Text: s}))
		}
		blocks = append(blocks, p, l)
	}
	uncertain := append(slices.Clone(c.s.Assumptions), c.assumed()...)
	list("worth.assumptions", uncertain)
	list("worth.hypothetical", c.s.Hypothetical)
	var none []Text
	if len(uncertain) == 0 {
		none = append(none, c.say("worth.noassumptions", templates.None{}))
	}
	if len(c.s.Hypothetical) == 0 {
		none = append(none, c.say("worth.nohypothetical", templates.None{}))
	}
	return append(blocks, c.paragraph(none...)...)
}

// court is what a court asks for beside.
func (c *composer) court() Text {
	k := c.s.Court
	if k == nil {
		return nil
	}
	return c.say("worth.court", templates.Court{Exhibits: k.Exhibits.Items, Publications: k.Publications.Items, Testimony: k.Testimony.Items, Pay: k.Pay})
}

// assumed is what the file itself shows to be uncertain.
func (c *composer) assumed() []string {
	var list []string
	if c.p != nil {
		if c.anyItem(grading.Estimated) {
			list = append(list, c.line("worth.assumed.weight", templates.None{}))
		}
		if c.anyItem(grading.Stated) {
			list = append(list, c.line("worth.assumed.stated", templates.None{}))
		}
		return list
	}
	w := c.weight()
	switch {
	case w.Measured != "":
	case w.Estimated != "":
		list = append(list, c.line("worth.assumed.weight", templates.None{}))
	case w.Stated != "":
		list = append(list, c.line("worth.assumed.stated", templates.None{}))
	}
	if c.e.Verdict.Opinion.Stated {
		list = append(list, c.line("worth.assumed.owner", templates.None{}))
	}
	return list
}

// signature is where the examiner signs. Who authorised the document is named on
// page one.
func (c *composer) signature() []Block {
	id := c.s.Examiner
	s := Signature{Name: c.person(id), Date: c.date(c.Issued), Image: c.described(c.Signature, "alt.signature", templates.Words{Text: c.person(id)})}
	if k := c.b.Examiners[id].Credentials; k != "" {
		s.Credentials = []string{k}
	}
	return []Block{s}
}
