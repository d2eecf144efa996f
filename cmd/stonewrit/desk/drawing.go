package desk

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"stonewrit/report"
	"stonewrit/report/chart"
)

// drawingView is a drawing of the evidence as the page shows it. Its caption is
// told to those who cannot see it.
type drawingView struct{ SVG template.HTML }

// drawings are those of an examined stone, the same as in its document.
func (v *viewer) drawings(j *judged) []drawingView {
	var list []drawingView
	if j.Examined == nil {
		return nil
	}
	for _, f := range (chart.Drawer{Words: v.voice.chart}).Evidence(j.Examined, v.d.o.Tables) {
		list = append(list, drawingView{svg(f)})
	}
	return list
}

// svg writes a figure as SVG without any style in line.
func svg(f report.Figure) template.HTML {
	var b strings.Builder
	fmt.Fprintf(&b, `<svg role="img" aria-label="%s" viewBox="0 0 %.1f %.1f" width="%.0f" height="%.0f">`,
		template.HTMLEscapeString(f.Alt), f.Width, f.Height, f.Width, f.Height)
	last := "" // pen of the lines that the open path has
	end := func() {
		if last != "" {
			b.WriteString(`" fill="none"` + last + "/>")
			last = ""
		}
	}
	for _, shape := range f.Shapes { // lines of one pen are one path
		switch s := shape.(type) {
		case report.Line:
			pen := stroke(s.Pen)
			if pen == "" {
				continue
			}
			if pen != last {
				end()
				last = pen
				b.WriteString(`<path d="`)
			}
			fmt.Fprintf(&b, "M%.1f %.1fL%.1f %.1f", s.From.X, s.From.Y, s.To.X, s.To.Y)
			continue
		}
		end()
		switch s := shape.(type) {
		case report.Polyline:
			fmt.Fprintf(&b, `<path d="%s" fill="none"%s/>`, along(s.Points), stroke(s.Pen))
		case report.Polygon:
			polygon(&b, s)
		case report.Arc:
			arc(&b, s)
		case report.Label:
			label(&b, s)
		}
	}
	end()
	b.WriteString("</svg>")
	return template.HTML(b.String()) // every text in it is escaped
}

// along is a path through places.
func along(points []report.XY) string {
	var b strings.Builder
	for i, p := range points {
		letter := "L"
		if i == 0 {
			letter = "M"
		}
		fmt.Fprintf(&b, "%s%.2f %.2f", letter, p.X, p.Y)
	}
	return b.String()
}

// stroke is how a pen draws.
func stroke(p report.Pen) string {
	if p.None {
		return ""
	}
	width := p.Width
	if width == 0 {
		width = report.Thin
	}
	dash := ""
	if len(p.Dash) > 0 {
		parts := make([]string, len(p.Dash))
		for i, d := range p.Dash {
			parts[i] = fmt.Sprintf("%.1f", d)
		}
		dash = ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	return fmt.Sprintf(` stroke="%s" stroke-width="%.2f"%s`, grey(p.Grey), width, dash)
}

// grey is an ink between black and white.
func grey(g float64) string {
	if g == 0 {
		return "currentColor"
	}
	v := int(math.Round(20 + g*235))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// polygon draws an outline; a hatched one is filled with a light grey, which
// says the same on a screen.
func polygon(b *strings.Builder, p report.Polygon) {
	fill := "none"
	switch {
	case p.Fill.Solid:
		fill = grey(p.Fill.Grey)
	case p.Fill.Hatch > 0:
		fill = "#e4e1d9"
	}
	fmt.Fprintf(b, `<path d="%sZ" fill="%s"%s/>`, along(p.Points), fill, stroke(p.Pen))
}

func arc(b *strings.Builder, a report.Arc) {
	if math.Abs(a.To-a.From) >= 360 {
		fill := "none"
		if a.Fill.Solid {
			fill = grey(a.Fill.Grey)
		}
		fmt.Fprintf(b, `<ellipse cx="%.2f" cy="%.2f" rx="%.2f" ry="%.2f" fill="%s"%s/>`, a.Center.X, a.Center.Y, a.RX, a.RY, fill, stroke(a.Pen))
		return
	}
	place := func(degrees float64) (x, y float64) {
		r := degrees * math.Pi / 180
		return float64(a.Center.X) + float64(a.RX)*math.Cos(r), float64(a.Center.Y) - float64(a.RY)*math.Sin(r)
	}
	x0, y0 := place(a.From)
	x1, y1 := place(a.To)
	large, sweep := 0, 0
	if math.Abs(a.To-a.From) > 180 {
		large = 1
	}
	if a.To < a.From {
		sweep = 1
	}
	fmt.Fprintf(b, `<path d="M%.2f %.2fA%.2f %.2f 0 %d %d %.2f %.2f" fill="none"%s/>`, x0, y0, a.RX, a.RY, large, sweep, x1, y1, stroke(a.Pen))
}

func label(b *strings.Builder, l report.Label) {
	anchor := []string{"start", "middle", "end"}[int(l.Anchor)%3]
	y := float64(l.At.Y)
	if l.Anchor >= report.AnchorStartCentred {
		y += 2.7 // from the middle of capitals to the baseline
	}
	turn := ""
	if l.Turn != 0 {
		turn = fmt.Sprintf(` transform="rotate(%.1f %.2f %.2f)"`, -l.Turn, l.At.X, l.At.Y)
	}
	fmt.Fprintf(b, `<text x="%.2f" y="%.2f" text-anchor="%s"%s>`, l.At.X, y, anchor, turn)
	for _, run := range l.Text {
		class := map[report.Style]string{report.StyleStrong: "strong", report.StyleItalic: "italic", report.StyleQuiet: "quiet"}[run.Style]
		fmt.Fprintf(b, `<tspan class="%s">%s</tspan>`, class, template.HTMLEscapeString(run.Text))
	}
	b.WriteString("</text>")
}
