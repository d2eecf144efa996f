package report_test

import (
	"strings"

	"stonewrit/report"
)

// textOf is everything that a document prints, one line for each text. It walks
// the model with a list of its own, so that a block which is composed and not
// printed by the layout would show here alone.
func textOf(doc report.Document) string {
	lines := []string{doc.Practice.Name, strings.Join(doc.Practice.Address, "\n"), doc.Title, doc.Number, doc.DateText}
	for _, s := range doc.Sections {
		lines = append(lines, s.Name)
		for _, b := range s.Blocks {
			lines = append(lines, blockText(b)...)
		}
	}
	return strings.Join(append(lines, doc.End), "\n")
}

// sectionText is what one section prints.
func sectionText(doc report.Document, name string) string {
	for _, s := range doc.Sections {
		if s.Name != name {
			continue
		}
		var lines []string
		for _, b := range s.Blocks {
			lines = append(lines, blockText(b)...)
		}
		return strings.Join(lines, "\n")
	}
	return ""
}

func blockText(b report.Block) []string {
	var lines []string
	add := func(texts ...report.Text) {
		for _, t := range texts {
			lines = append(lines, t.String())
		}
	}
	photo := func(p report.Photo) { add(p.Caption, report.Plain(p.Taken), report.Plain(p.SHA256)) }
	switch b := b.(type) {
	case report.Lead:
		add(b.Sentence)
		add(b.Body...)
		for _, f := range b.Margin {
			add(report.Plain(f.Figure), f.Note)
		}
		if b.Photo != nil {
			photo(*b.Photo)
		}
	case report.Paragraph:
		add(b.Text)
	case report.List:
		add(b.Items...)
	case report.Claims:
		for _, c := range b.Claims {
			add(report.Plain(c.Name), report.Plain(c.Standing), c.Statement)
			add(c.Because...)
		}
	case report.Table:
		for _, c := range b.Columns {
			add(report.Plain(c.Head))
		}
		for _, r := range b.Rows {
			for _, c := range r.Cells {
				add(c.Text)
			}
			add(r.Note)
		}
	case report.Photos:
		for _, p := range b.Photos {
			photo(p)
		}
	case report.Sum:
		for _, l := range b.Lines {
			add(l.Label, l.Working, report.Plain(l.Amount))
		}
	case report.Signature:
		add(report.Plain(b.Name), report.Plain(strings.Join(b.Credentials, "\n")), report.Plain(b.Date))
	}
	return lines
}
