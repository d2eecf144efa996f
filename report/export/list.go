package export

import (
	"strconv"
	"strings"
	"time"

	"stonewrit/grading/reading"
	"stonewrit/report"
)

// ListOptions are what a printed list tells besides its items.
type ListOptions struct {
	Limits
	Made        time.Time // written into the file
	Practice    report.Practice
	Paper       report.Paper
	Filter      Filter          // that the items have passed
	Instruments []reading.Check // that are out of date on the day
	Left        []string        // files that could not be used
	Program     string
}

// list is a document in the making.
type list struct {
	ListOptions
	*wording
	items   []Item
	summary Summary
}

// List makes the printed list of a collection: what it comes to, by species, by
// place and by value, and each item in the order given.
func List(items []Item, o ListOptions) (report.Document, error) {
	w, err := loadWording()
	if err != nil {
		return report.Document{}, err
	}
	l := &list{o, w, items, Summarise(items)}
	day := o.Today.Format(time.DateOnly)
	doc := report.Document{
		Kind: "inventory", Title: l.say("title"), Language: "en", Number: l.say("number", "files", l.count("files", len(items))),
		Date: o.Made, DateText: day, Practice: o.Practice, Paper: o.Paper, End: l.say("end"),
		Metadata: report.Metadata{Subject: l.say("subject"), Program: o.Program},
		Sections: []report.Section{{Blocks: []report.Block{l.lead()}}},
	}
	add := func(name string, blocks ...report.Block) {
		if len(blocks) > 0 {
			doc.Sections = append(doc.Sections, report.Section{Name: l.say(name), Blocks: blocks})
		}
	}
	add("section.species", l.groups("head.species", "unnamed", l.summary.Species)...)
	add("section.places", l.groups("head.place", "noplace", l.summary.Location)...)
	add("section.values", l.values()...)
	add("section.instruments", l.instruments()...)
	add("section.list", l.rows()...)
	add("section.left", l.left()...)
	add("section.sums", report.Small(report.Plain(l.say("sums"))))
	return doc, l.err()
}

// lead says how much there is, what was asked for, and what needs looking at.
func (l *list) lead() report.Lead {
	what := l.count("stones", l.summary.Stones)
	if l.summary.Pieces > 0 {
		what = l.say("lead.and", "a", what, "b", l.count("pieces", l.summary.Pieces))
	}
	if n := l.places(); n > 0 {
		what = l.say("lead.places", "what", what, "places", l.count("places", n))
	}
	lead := report.Lead{Sentence: report.Plain(l.say("lead", "what", what))}
	var body []string
	if filters := l.filters(); len(filters) > 0 {
		body = append(body, l.say("filtered", "filters", strings.Join(filters, ", and of that ")))
	}
	for _, about := range []struct {
		key string
		n   int
	}{{"undecided", l.summary.Undecided}, {"outofdate", l.summary.OutOfDate}, {"tomend", l.summary.ToMend}} {
		if about.n > 0 {
			body = append(body, l.count(about.key, about.n))
		}
	}
	if l.Values == (Age{}) {
		body = append(body, l.say("nolimit"))
	} else {
		body = append(body, l.say("limit", "age", l.Values.String()))
	}
	lead.Body = report.Texts(strings.Join(body, " "))
	return lead
}

// places is how many places the files name.
func (l *list) places() int {
	n := 0
	for _, g := range l.summary.Location {
		n += one(g.Of != "")
	}
	return n
}

func (l *list) filters() []string {
	var list []string
	f := l.Filter
	if f.Material != nil {
		list = append(list, l.say("filter.species", "species", f.Material.Name))
	}
	if f.Location != "" {
		list = append(list, l.say("filter.location", "location", f.Location))
	}
	if f.Document != "" {
		list = append(list, l.say("filter.document", "document", f.Document))
	}
	if f.Undecided {
		list = append(list, l.say("filter.undecided"))
	}
	return list
}

func (l *list) groups(head, unnamed string, groups []Group) []report.Block {
	if len(groups) == 0 {
		return nil
	}
	t := report.Table{Columns: []report.Column{
		{Head: l.say(head), Width: 1}, {Head: l.say("head.files"), Align: report.AlignRight}, {Head: l.say("head.stones"), Align: report.AlignRight},
		{Head: l.say("head.carats"), Align: report.AlignRight}, {Head: l.say("head.value"), Align: report.AlignRight},
	}}
	for _, g := range groups {
		of := g.Of
		if of == "" {
			of = l.say(unnamed)
		}
		name := report.Plain(of)
		if g.Unweighed > 0 {
			name = name.Quiet("  " + l.say("unweighed", "n", strconv.Itoa(g.Unweighed)))
		}
		stones := ""
		if g.Stones > 0 {
			stones = strconv.Itoa(g.Stones)
		}
		t.Rows = append(t.Rows, report.Cells(name, report.Plain(strconv.Itoa(g.Files)), report.Plain(stones), report.Plain(g.Carats), report.Plain(amounts(g.Values))))
	}
	return []report.Block{t}
}

// amounts writes a sum a line.
func amounts(list []Money) string {
	var lines []string
	for _, m := range list {
		lines = append(lines, unbroken(m.String()))
	}
	return strings.Join(lines, "\n")
}

// unbroken keeps an amount and its currency on one line.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }

func (l *list) values() []report.Block {
	if len(l.summary.Values) == 0 {
		return nil
	}
	t := report.Table{Columns: []report.Column{
		{Head: l.say("head.kind"), Width: 1}, {Head: l.say("head.files"), Align: report.AlignRight}, {Head: l.say("head.sum"), Align: report.AlignRight},
	}}
	for _, v := range l.summary.Values {
		t.Rows = append(t.Rows, report.Cells(report.Plain(v.Kind), report.Plain(strconv.Itoa(v.Files)), report.Plain(unbroken(v.Money.String()))))
	}
	return []report.Block{t}
}

func (l *list) instruments() []report.Block {
	var lines []report.Text
	for _, c := range l.Instruments {
		lines = append(lines, report.Plain(l.say("instrument", "id", c.Instrument, "words", c.Words().String())))
	}
	if len(lines) == 0 {
		return nil
	}
	return []report.Block{report.Bullets(lines...)}
}

func (l *list) left() []report.Block {
	if len(l.Left) == 0 {
		return nil
	}
	intro := report.Para(report.Plain(l.say("left")))
	intro.KeepNext = true
	return []report.Block{intro, report.List{Items: report.Texts(l.Left...), Small: true}}
}
