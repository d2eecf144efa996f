package pdf

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"stonewrit/report"
)

// Write draws the pages and writes them as PDF with the document's metadata
// and attachments. The same pages and document give the same bytes.
func (p *Press) Write(w io.Writer, doc report.Document, pages []Page) error {
	if len(pages) == 0 {
		return errors.New("a PDF needs a page")
	}
	f := &file{writers: &p.writers}
	root, numbers, err := f.pages(p, doc, pages)
	if err != nil {
		return err
	}
	_, err = w.Write(f.write(f.catalog(doc, pages, root, numbers), f.information(doc)))
	return err
}

// pages adds the pages with the fonts and pictures that they share, and returns
// the objects of their list and of each.
func (f *file) pages(p *Press, doc report.Document, pages []Page) (root int, numbers []int, err error) {
	root = f.reserve()
	resources := f.reserve()
	c := content{accent: doc.Accent, fonts: p.used(pages), pics: &pictures{}}
	var kids strings.Builder
	for _, page := range pages {
		c := c // what was set on one page does not hold on the next
		c.height = page.Height
		for _, it := range page.Items {
			c.item(it)
		}
		n := f.add(fmt.Sprintf("<</Type /Page /Parent %d 0 R /MediaBox [0 0 %.2f %.2f] /Resources %d 0 R /Contents %d 0 R>>",
			root, page.Width, page.Height, resources, f.addDeflated("", c.out)))
		numbers = append(numbers, n)
		fmt.Fprintf(&kids, "%d 0 R ", n)
	}
	f.set(root, fmt.Sprintf("<</Type /Pages /Count %d /Kids [%s]>>", len(pages), strings.TrimSpace(kids.String())))
	var fonts strings.Builder
	for i, e := range c.fonts {
		if e == nil {
			continue
		}
		n, err := f.addFont(e)
		if err != nil {
			return 0, nil, err
		}
		fmt.Fprintf(&fonts, "%s %d 0 R ", Face(i).resource(), n)
	}
	images, err := f.addPictures(c.pics)
	f.set(resources, fmt.Sprintf("<</Font <<%s>> /XObject <<%s>>>>", fonts.String(), images))
	return root, numbers, err
}

// catalog adds the object that leads to all others (ISO 32000-1, 7.7.2).
func (f *file) catalog(doc report.Document, pages []Page, root int, numbers []int) int {
	entries := fmt.Sprintf("<</Type /Catalog /Pages %d 0 R /ViewerPreferences <</DisplayDocTitle true>>", root)
	if doc.Language != "" {
		entries += " /Lang " + textString(doc.Language)
	}
	if n := f.outline(pages, numbers); n > 0 {
		entries += fmt.Sprintf(" /Outlines %d 0 R", n)
	}
	entries += f.attach(doc)
	entries += fmt.Sprintf(" /Metadata %d 0 R>>", f.addStream("/Type /Metadata /Subtype /XML", xmp(doc)))
	return f.add(entries)
}

// information adds the document information (14.3.3).
func (f *file) information(doc report.Document) int {
	m := doc.Metadata
	var b strings.Builder
	for _, e := range []struct{ key, value string }{
		{"Title", fileTitle(doc)}, {"Author", m.Author}, {"Subject", m.Subject}, {"Keywords", keywords(doc)}, {"Creator", m.Program}, {"Producer", m.Program},
	} {
		if e.value != "" {
			b.WriteString("/" + e.key + " " + textString(e.value) + " ")
		}
	}
	date := pdfDate(doc)
	return f.add("<<" + b.String() + "/CreationDate " + date + " /ModDate " + date + ">>")
}

// outline adds an entry for each named section (12.3.3) and returns the number
// of the root, 0 if there is none.
func (f *file) outline(pages []Page, numbers []int) int {
	type entry struct{ title, dest string }
	var entries []entry
	for i, page := range pages {
		for _, s := range page.Sections {
			if s.Name != "" {
				entries = append(entries, entry{s.Name, fmt.Sprintf("[%d 0 R /XYZ 0 %.2f null]", numbers[i], page.Height-max(0, s.Y-10))})
			}
		}
	}
	if len(entries) == 0 {
		return 0
	}
	root := f.add(fmt.Sprintf("<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", len(f.objects)+2, len(f.objects)+1+len(entries), len(entries)))
	for i, e := range entries {
		links := ""
		if i > 0 {
			links += fmt.Sprintf(" /Prev %d 0 R", root+i)
		}
		if i < len(entries)-1 {
			links += fmt.Sprintf(" /Next %d 0 R", root+i+2)
		}
		f.add(fmt.Sprintf("<</Title %s /Parent %d 0 R%s /Dest %s>>", textString(e.title), root, links, e.dest))
	}
	return root
}
