package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/go-pdf/fpdf"

	"stonewrit/report"
)

// Write draws the pages and writes them as PDF with the document's metadata
// and attachments. The same pages and document give the same bytes.
func (p *Press) Write(w io.Writer, doc report.Document, pages []Page) error {
	if len(pages) == 0 {
		return errors.New("a PDF needs a page")
	}
	d := drawing{press: p, accent: doc.Accent, pdf: fpdf.New("P", "pt", "A4", "")}
	d.setUp(doc)
	var err error
	if d.fonts, err = p.fonts(pages); err != nil {
		return err
	}
	for _, page := range pages {
		d.page(page)
	}
	var raw bytes.Buffer
	if err := d.pdf.Output(&raw); err != nil {
		return fmt.Errorf("writing PDF: %w", err)
	}
	return p.complete(w, raw.Bytes(), doc, pages, d.fonts, d.pictures)
}

// drawing draws pages with fpdf.
type drawing struct {
	press  *Press
	pdf    *fpdf.Fpdf
	accent report.Color

	pen    *penState    // chosen on this page; nil at its beginning
	font   string       // chosen on this page
	filled report.Color // the same

	fonts    fonts
	pictures pictures
}

// penState is what fpdf has been told of lines.
type penState struct {
	color report.Color
	width Point
	dash  []Point
}

func (d *drawing) setUp(doc report.Document) {
	d.pdf.SetCatalogSort(true)
	d.pdf.SetCompression(false) // of pages: complete does it
	d.pdf.SetAutoPageBreak(false, 0)
	d.pdf.SetMargins(0, 0, 0)
	d.pdf.SetCreationDate(fileDate(doc))
	d.pdf.SetModificationDate(fileDate(doc))
	d.pdf.SetProducer(doc.Metadata.Program, true)
	d.pdf.SetCreator(doc.Metadata.Program, true)
	d.pdf.SetTitle(fileTitle(doc), true)
	d.pdf.SetAuthor(doc.Metadata.Author, true)
	d.pdf.SetSubject(doc.Metadata.Subject, true)
	d.pdf.SetKeywords(keywords(doc), true)
}

func (d *drawing) page(page Page) {
	d.pdf.AddPageFormat("P", fpdf.SizeType{Wd: float64(page.Width), Ht: float64(page.Height)})
	d.pen, d.font, d.filled = nil, "", report.Color{} // black (ISO 32000-1, 8.4.1)
	d.pdf.SetLineCapStyle("butt")
	d.pdf.SetLineJoinStyle("miter")
	for _, it := range page.Items {
		d.item(it)
	}
}

func (d *drawing) item(it Placed) {
	switch it := it.(type) {
	case Text:
		d.text(it)
	case Path:
		d.path(it)
	case Picture:
		d.described(it.Image.Alt, func() { d.picture(it) })
	case Drawing:
		d.described(it.Alt, func() {
			for _, inner := range it.Items {
				d.item(inner)
			}
		})
	}
}

// described draws something as marked content with its description in words:
// ISO 32000-1, 14.9.3.
func (d *drawing) described(alt string, draw func()) {
	if alt != "" {
		d.pdf.RawWriteStr("/Span <</Alt " + textString(alt) + ">> BDC")
		defer d.pdf.RawWriteStr("EMC")
	}
	draw()
}

// text sets text in the font of its face (ISO 32000-1, 9.4).
func (d *drawing) text(t Text) {
	if font := fmt.Sprintf("/%s %.2f Tf", t.Face.name(), float64(t.Size)); d.font != font {
		d.pdf.RawWriteStr("BT " + font + " ET")
		d.font = font
	}
	d.fill(t.Ink.rgb(d.accent))
	x, y := float64(t.At.X), float64(t.At.Y)
	if t.Turn != 0 {
		d.pdf.TransformBegin()
		d.pdf.TransformRotate(t.Turn, x, y)
		defer d.pdf.TransformEnd()
	}
	_, height := d.pdf.GetPageSize()
	d.pdf.RawWriteStr(fmt.Sprintf("BT %.2f %.2f Td %s Tj ET", x, height-y, d.fonts[t.Face].codes(t.S)))
}

// fill chooses the colour of text and of filled paths.
func (d *drawing) fill(c report.Color) {
	if d.filled != c {
		d.filled = c
		d.pdf.RawWriteStr(fmt.Sprintf("%.3f %.3f %.3f rg", float64(c.R)/255, float64(c.G)/255, float64(c.B)/255))
	}
}

func (d *drawing) path(p Path) {
	d.usePen(p)
	for _, part := range p.Parts {
		d.pdf.MoveTo(float64(part.Start.X), float64(part.Start.Y))
		for _, s := range part.Steps {
			if s.Curved {
				d.pdf.CurveBezierCubicTo(float64(s.C1.X), float64(s.C1.Y), float64(s.C2.X), float64(s.C2.Y), float64(s.To.X), float64(s.To.Y))
			} else {
				d.pdf.LineTo(float64(s.To.X), float64(s.To.Y))
			}
		}
		if part.Closed {
			d.pdf.ClosePath()
		}
	}
	switch {
	case p.Fill.Solid && p.Pen.None:
		d.pdf.DrawPath("F")
	case p.Fill.Solid:
		d.pdf.DrawPath("FD")
	case p.Pen.None:
		d.pdf.RawWriteStr("n")
	default:
		d.pdf.DrawPath("D")
	}
}

// usePen tells fpdf of pen and fill, the pen only where it changes.
func (d *drawing) usePen(p Path) {
	pen := penState{color: p.Ink.rgb(d.accent), width: p.Pen.Width, dash: p.Pen.Dash}
	switch {
	case p.Pen.Accent:
		pen.color = InkAccent.rgb(d.accent)
	case p.Pen.Grey > 0:
		pen.color = grey(p.Pen.Grey)
	}
	if !p.Pen.None {
		old := d.pen
		if old == nil || old.color != pen.color {
			d.pdf.SetDrawColor(int(pen.color.R), int(pen.color.G), int(pen.color.B))
		}
		if old == nil || old.width != pen.width {
			d.pdf.SetLineWidth(float64(pen.width))
		}
		if old == nil || !slices.Equal(old.dash, pen.dash) {
			dash := make([]float64, len(pen.dash))
			for i, v := range pen.dash {
				dash[i] = float64(v)
			}
			d.pdf.SetDashPattern(dash, 0)
		}
		d.pen = &pen
	}
	if p.Fill.Solid {
		g := grey(p.Fill.Grey)
		if p.Fill.Grey == 0 {
			g = InkBlack.rgb(d.accent)
		}
		d.fill(g)
	}
}

func grey(v float64) report.Color {
	g := uint8(min(max(v, 0), 1) * 255)
	return report.Color{R: g, G: g, B: g}
}

// picture paints a picture that complete adds to the file: a unit square,
// stretched and moved to its box (ISO 32000-1, 8.9.5).
func (d *drawing) picture(p Picture) {
	_, height := d.pdf.GetPageSize()
	d.pdf.RawWriteStr(fmt.Sprintf("q %.2f 0 0 %.2f %.2f %.2f cm /%s Do Q",
		p.Box.W, p.Box.H, p.Box.X, Point(height)-p.Box.Y-p.Box.H, d.pictures.name(p.Image)))
}
