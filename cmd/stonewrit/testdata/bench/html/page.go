package main

import (
	"bytes"
	"fmt"
	"html"
	"strings"

	"stonewrit/report"
)

// The look of a page is about that of a draft: the same size of letters, a wide
// margin with the names of the sections, head and foot on every page.
const style = `@page { size: A4; margin: 24mm 18mm 18mm 57mm; @bottom-right { content: "page " counter(page) " of " counter(pages) } }
body { font: 10pt/13.6pt "Liberation Serif", serif } h1 { font-size: 16pt } h2 { font-size: 10pt; margin-left: -38mm }
table { border-collapse: collapse; width: 100%; font-size: 8pt } td, th { border-bottom: .35pt solid #b4b4b4; text-align: left; vertical-align: top; padding: 2pt }
.quiet, small { color: #595959; font-size: 8pt } .lead { font-size: 14pt }`

// sheet is a page of HTML in the making.
type sheet struct{ bytes.Buffer }

func page(doc report.Document) []byte {
	var s sheet
	fmt.Fprintf(&s, "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>%s</title><style>%s</style></head><body>\n", html.EscapeString(doc.Title), style)
	s.lines("small", append(append([]string{doc.Practice.Name}, doc.Practice.Address...), doc.Practice.Contact...)...)
	s.element("h1", html.EscapeString(doc.Title))
	s.lines("small", doc.Words.Draft, doc.Words.DraftNote, doc.DateText)
	for _, section := range doc.Sections {
		if section.Name != "" {
			s.element("h2", html.EscapeString(section.Name))
		}
		for _, b := range section.Blocks {
			s.block(b)
		}
	}
	s.lines("p", doc.End)
	s.WriteString("</body></html>\n")
	return s.Bytes()
}

// element writes an element; what stands behind its name are attributes.
func (s *sheet) element(name, inner string) {
	tag, _, _ := strings.Cut(name, " ")
	fmt.Fprintf(s, "<%s>%s</%s>\n", name, inner, tag)
}

func (s *sheet) lines(name string, list ...string) {
	for _, line := range list {
		s.element(name, html.EscapeString(line)+"<br>")
	}
}

func (s *sheet) block(b report.Block) {
	switch b := b.(type) {
	case report.Lead:
		s.element(`p class="lead"`, text(b.Sentence))
		for _, m := range b.Margin {
			s.element("p", "<b>"+html.EscapeString(m.Figure)+"</b> "+text(m.Note))
		}
		s.texts("p", b.Body)
	case report.Paragraph:
		s.element("p", text(b.Text))
	case report.List:
		s.WriteString("<ul>\n")
		s.texts("li", b.Items)
		s.WriteString("</ul>\n")
	case report.Claims:
		for _, c := range b.Claims {
			s.element("p", "<b>"+html.EscapeString(c.Name)+"</b> "+text(c.Statement)+" <b>"+html.EscapeString(c.Standing)+"</b>")
			s.texts("p", c.Because)
		}
	case report.Table:
		s.table(b)
	case report.Sum:
		s.WriteString("<table>\n")
		for _, l := range b.Lines {
			s.element("tr", cells("td", text(l.Label), text(l.Working), html.EscapeString(l.Amount)))
		}
		s.WriteString("</table>\n")
	case report.Signature:
		s.lines("p", append([]string{b.Name, b.Date}, b.Credentials...)...)
	}
}

func (s *sheet) texts(name string, list []report.Text) {
	for _, t := range list {
		s.element(name, text(t))
	}
}

func (s *sheet) table(t report.Table) {
	s.WriteString("<table>\n")
	var heads []string
	for _, c := range t.Columns {
		heads = append(heads, html.EscapeString(c.Head))
	}
	s.element("tr", cells("th", heads...))
	for _, row := range t.Rows {
		var list []string
		for _, c := range row.Cells {
			list = append(list, text(c.Text))
		}
		s.element("tr", cells("td", list...))
		if !row.Note.Empty() {
			s.element("tr", fmt.Sprintf(`<td colspan="%d">%s</td>`, len(t.Columns), text(row.Note)))
		}
	}
	s.WriteString("</table>\n")
}

func cells(name string, list ...string) string {
	var b strings.Builder
	for _, inner := range list {
		fmt.Fprintf(&b, "<%s>%s</%[1]s>", name, inner)
	}
	return b.String()
}

// text marks the styles of running text.
func text(t report.Text) string {
	var b strings.Builder
	for _, r := range t {
		s := html.EscapeString(r.Text)
		switch r.Style {
		case report.StyleStrong:
			s = "<b>" + s + "</b>"
		case report.StyleItalic:
			s = "<i>" + s + "</i>"
		case report.StyleQuiet:
			s = `<span class="quiet">` + s + "</span>"
		}
		b.WriteString(s)
	}
	return b.String()
}
