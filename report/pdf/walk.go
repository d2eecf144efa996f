package pdf

import (
	"fmt"
	"strconv"

	"stonewrit/report"
)

// visitor is called with each text that the layout prints and with its place
// in the document, in words.
type visitor func(place string, t report.Text)

// eachText walks all printed text of a document in reading order.
func eachText(doc *report.Document, visit visitor) {
	pr := doc.Practice
	visit("letterhead, name", report.Plain(pr.Name).Then(report.Quiet(pr.Name)))
	visitAll("letterhead, address", pr.Address, visit)
	visitAll("letterhead, contact", pr.Contact, visit)
	visit("title", report.Strong(doc.Title).Then(report.Quiet(doc.Title)))
	visit("number", report.Plain(doc.Number))
	visit("date", report.Plain(doc.DateText))
	for i, sec := range doc.Sections {
		place := fmt.Sprintf("section %q", sec.Name)
		if sec.Name == "" {
			place = "section " + strconv.Itoa(i+1)
		}
		visit(place+", its name", report.Plain(sec.Name))
		for j, b := range sec.Blocks {
			eachBlockText(b, fmt.Sprintf("%s, block %d", place, j+1), visit)
		}
	}
	visit("end line", report.Quiet(doc.End))
	w := doc.Words
	visit("words of the layout", report.Strong(w.Draft).Then(report.Quiet(w.DraftNote+w.PageOf+w.Continued+w.Unnumbered)))
}

func visitAll(place string, lines []string, visit visitor) {
	for _, s := range lines {
		visit(place, report.Quiet(s))
	}
}

func eachBlockText(b report.Block, place string, visit visitor) {
	at := func(format string, args ...any) string { return place + ", " + fmt.Sprintf(format, args...) }
	switch b := b.(type) {
	case report.Lead:
		visit(at("finding"), b.Sentence)
		if b.Photo != nil {
			eachPhotoText(b.Photo, at("photo"), visit)
		}
		for i, f := range b.Margin {
			visit(at("margin figure %d", i+1), report.Plain(f.Figure).Then(f.Note))
		}
		for i, t := range b.Body {
			visit(at("sentence %d", i+1), t)
		}
	case report.Paragraph:
		visit(at("paragraph"), b.Text)
	case report.List:
		for i, t := range b.Items {
			visit(at("item %d", i+1), t)
		}
	case report.Claims:
		for _, c := range b.Claims {
			text := report.Strong(c.Name).Italic(c.Standing).Then(c.Statement)
			for _, t := range c.Because {
				text = text.Then(t)
			}
			visit(at("claim %q", c.Name), text)
		}
	case report.Table:
		eachTableText(b, place, visit)
	case report.Photos:
		for i := range b.Photos {
			eachPhotoText(&b.Photos[i], at("photo %d", i+1), visit)
		}
	case report.Figure:
		eachFigureText(b, place, visit)
	case report.Sum:
		for i, l := range b.Lines {
			visit(at("line %d", i+1), l.Label.Then(strong(l.Label)).Then(l.Working).Plain(l.Amount).Strong(l.Amount))
		}
	case report.Signature:
		text := report.Strong(b.Name).Plain(b.Date)
		for _, c := range b.Credentials {
			text = text.Quiet(c)
		}
		visit(at("signature"), text)
	}
}

func eachPhotoText(p *report.Photo, place string, visit visitor) {
	visit(place+", caption", p.Caption.Quiet(p.Taken).Quiet(p.SHA256))
}

func eachTableText(b report.Table, place string, visit visitor) {
	for _, c := range b.Columns {
		visit(place+", column head", report.Quiet(c.Head))
	}
	for i, row := range b.Rows {
		for j, c := range row.Cells {
			name := strconv.Itoa(j + 1)
			if j < len(b.Columns) && b.Columns[j].Head != "" {
				name = strconv.Quote(b.Columns[j].Head)
			}
			visit(fmt.Sprintf("%s, row %d, column %s", place, i+1, name), c.Text)
		}
		visit(fmt.Sprintf("%s, row %d, second line", place, i+1), row.Note)
	}
}

func eachFigureText(b report.Figure, place string, visit visitor) {
	for _, shape := range b.Shapes {
		if l, ok := shape.(report.Label); ok {
			visit(place+", label of the drawing", l.Text)
		}
	}
	visit(place+", caption", b.Caption)
}

// eachImage walks all pictures of a document.
func eachImage(doc *report.Document, visit func(place string, img *report.Image)) {
	if doc.Practice.Logo != nil {
		visit("letterhead, logo", doc.Practice.Logo)
	}
	for i, sec := range doc.Sections {
		for j, b := range sec.Blocks {
			place := fmt.Sprintf("section %d %q, block %d", i+1, sec.Name, j+1)
			switch b := b.(type) {
			case report.Lead:
				if b.Photo != nil {
					visit(place+", photo", &b.Photo.Image)
				}
			case report.Photos:
				for k := range b.Photos {
					visit(fmt.Sprintf("%s, photo %d", place, k+1), &b.Photos[k].Image)
				}
			case report.Table:
				for k, row := range b.Rows {
					for _, c := range row.Cells {
						if c.Picture != nil {
							visit(fmt.Sprintf("%s, row %d, picture", place, k+1), c.Picture)
						}
					}
				}
			case report.Signature:
				if b.Image != nil {
					visit(place+", signature", b.Image)
				}
			}
		}
	}
}
