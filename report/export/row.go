package export

import (
	"strconv"
	"strings"

	"stonewrit/report"
)

// rows is the list itself, an item a row.
func (l *list) rows() []report.Block {
	if len(l.items) == 0 {
		return nil
	}
	t := report.Table{Small: true, Wide: true, Columns: []report.Column{
		{Head: l.say("head.item"), Width: 5}, {Head: l.say("head.weight"), Align: report.AlignRight},
		{Head: l.say("head.at"), Width: 2}, {Head: l.say("head.worth"), Width: 2.4, Align: report.AlignRight},
	}}
	pictures := false
	for _, i := range l.items {
		pictures = pictures || len(i.Thumbnail) > 0
	}
	if pictures {
		t.Columns = append([]report.Column{{Head: l.say("head.picture")}}, t.Columns...)
	}
	for _, i := range l.items {
		row := report.Cells(l.name(i), l.weighing(i), report.Plain(i.Location), l.worth(i))
		if pictures {
			row.Cells = append([]report.Cell{{}}, row.Cells...)
			if len(i.Thumbnail) > 0 {
				row.Cells[0].Picture = &report.Image{Data: i.Thumbnail, Alt: i.Reference}
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return []report.Block{t}
}

func (l *list) name(i Item) report.Text {
	text := report.Strong(i.Reference).Plain("  " + i.Name)
	if i.Piece != "" {
		text = text.Quiet("  " + l.say("set", "piece", i.Piece))
	}
	if open := l.open(i); open != "" {
		text = text.Quiet("\n" + open)
	}
	return text
}

func (l *list) weighing(i Item) report.Text {
	var lines report.Text
	if i.Carats != "" {
		lines = report.Plain(unbroken(l.say("weight", "carats", i.Carats)))
	}
	if i.WeightIs != "" && i.WeightIs != "weighed" {
		lines = lines.Quiet("\n" + i.WeightIs)
	}
	if i.Count > 1 {
		lines = lines.Quiet("\n" + unbroken(l.say("weight.count", "n", strconv.Itoa(i.Count))))
	}
	return lines
}

// worth is the value, and below it what else was told of money.
func (l *list) worth(i Item) report.Text {
	var text report.Text
	v := i.Value
	if v.Given() {
		text = report.Plain(unbroken(v.text()))
		switch {
		case v.Is == Told:
			text = text.Quiet("\n" + l.say("value.told", "by", v.By, "date", v.Date))
		case v.Date == "":
			text = text.Quiet("\n" + l.say("value.concluded.undated"))
		default:
			text = text.Quiet("\n" + l.say("value.concluded", "date", v.Date))
		}
	}
	var more []string
	switch {
	case i.Insured.Given() && i.InsuredUntil != "":
		more = append(more, l.say("insured.until", "amount", unbroken(i.Insured.String()), "date", i.InsuredUntil))
	case i.Insured.Given():
		more = append(more, l.say("insured", "amount", unbroken(i.Insured.String())))
	}
	if i.Asking.Given() {
		more = append(more, l.say("asking", "amount", unbroken(i.Asking.String())))
	}
	if i.Paid.Given() {
		more = append(more, l.say("paid", "amount", unbroken(i.Paid.String())))
	}
	for _, line := range more {
		if !text.Empty() {
			line = "\n" + line
		}
		text = text.Quiet(line)
	}
	return text
}

// open tells what is undecided, out of date and to mend.
func (l *list) open(i Item) string {
	var parts []string
	if len(i.Undecided) > 0 {
		parts = append(parts, l.say("note.undecided", "list", strings.Join(i.Undecided, ", ")))
	}
	if len(i.Contradicted) > 0 {
		parts = append(parts, l.say("note.contradicted", "list", strings.Join(i.Contradicted, ", ")))
	}
	if len(i.OutOfDate) > 0 {
		parts = append(parts, l.say("note.outofdate", "list", strings.Join(i.OutOfDate, several)))
	}
	if i.ToMend > 0 {
		parts = append(parts, l.count("note.tomend", i.ToMend))
	}
	return strings.Join(parts, " ")
}
