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
	fonts, err := d.fonts(pages)
	if err != nil {
		return err
	}
	for _, page := range pages {
		d.page(page)
	}
	var raw bytes.Buffer
	if err := d.pdf.Output(&raw); err != nil {
		return fmt.Errorf("writing PDF: %w", err)
	}
	return p.complete(w, raw.Bytes(), doc, pages, fonts, d.pictures)
}

// drawing draws pages with fpdf.
type drawing struct {
	press  *Press
	pdf    *fpdf.Fpdf
	accent report.Color
	pen    *penState // chosen on this page; nil at its beginning

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

// family is the name that fpdf knows the typeface by; it never reaches the
// finished file.
const family = "s"

func (f Face) fpdfStyle() string { return [...]string{"", "B", "I", "BI"}[f] }

// fonts hands fpdf, for each face that the pages use, a font with just the
// characters they use.
func (d *drawing) fonts(pages []Page) ([]embedded, error) {
	var used [faceCount]map[rune]bool
	for _, page := range pages {
		eachPlacedText(page.Items, func(t Text) {
			if used[t.Face] == nil {
				used[t.Face] = make(map[rune]bool)
			}
			for _, r := range t.S {
				used[t.Face][r] = true
			}
		})
	}
	var out []embedded
	for i, set := range used {
		if set == nil {
			continue
		}
		face := d.press.faces[i]
		e := embedded{face: Face(i), name: face.name}
		for r := range set {
			if face.has(r) {
				e.chars = append(e.chars, r)
			}
		}
		slices.Sort(e.chars)
		small, err := face.subset(e.chars)
		if err != nil {
			return nil, err
		}
		d.pdf.AddUTF8FontFromBytes(family, e.face.fpdfStyle(), small)
		out = append(out, e)
	}
	return out, nil
}

func eachPlacedText(items []Placed, visit func(Text)) {
	for _, it := range items {
		switch it := it.(type) {
		case Text:
			visit(it)
		case Drawing:
			eachPlacedText(it.Items, visit)
		}
	}
}

func (d *drawing) page(page Page) {
	d.pdf.AddPageFormat("P", fpdf.SizeType{Wd: float64(page.Width), Ht: float64(page.Height)})
	d.pen = nil
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

func (d *drawing) text(t Text) {
	d.pdf.SetFont(family, t.Face.fpdfStyle(), float64(t.Size))
	c := t.Ink.rgb(d.accent)
	d.pdf.SetTextColor(int(c.R), int(c.G), int(c.B))
	x, y := float64(t.At.X), float64(t.At.Y)
	if t.Turn != 0 {
		d.pdf.TransformBegin()
		d.pdf.TransformRotate(t.Turn, x, y)
		defer d.pdf.TransformEnd()
	}
	d.pdf.Text(x, y, t.S)
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
		d.pdf.SetFillColor(int(g.R), int(g.G), int(g.B))
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
