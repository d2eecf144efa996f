package pdf

import "stonewrit/report"

// The white beside and below the photo of the lead.
const (
	besidePhoto Point = 16
	belowPhoto  Point = 8
	tallAside   Point = 330 // margin figures higher than this are set as text
)

// lead sets the finding in the large size with the photo to its right, the
// figures in the margin, and the rest as sentences that flow round the photo.
func (s *setter) lead(b report.Lead) []strip {
	var st strip
	var photoTall, photoWide Point
	if b.Photo != nil {
		st.items, photoWide, photoTall = s.leadPhoto(b.Photo)
	}
	width := func(y Point) Point {
		if y < photoTall+belowPhoto && photoWide > 0 {
			return s.main - photoWide - besidePhoto
		}
		return s.main
	}
	lines := s.press.balanced(b.Sentence, sizeLarge, width)
	gaps := make(map[int]Point) // white above a line
	y := height(lines)
	for _, t := range b.Body {
		gap := Point(0)
		if len(lines) > 0 {
			gap = s.between
		}
		gaps[len(lines)] = gap
		from := y + gap
		more := s.press.linesAround(t, sizeOf(b.Small), func(at Point) Point { return width(from + at) })
		lines = append(lines, more...)
		y = from + height(more)
	}
	st.aside, st.tall = s.marginFigures(b.Margin)
	var loose []report.MarginFigure
	if st.tall > tallAside {
		st.aside, st.tall, loose = nil, 0, b.Margin
	}
	st.base = s.firstBase(lines)

	// The lines beside the photo, or the first three without one, are one strip.
	y = 0
	n := 0
	for ; n < len(lines) && (n < 3 || y+gaps[n] < photoTall+belowPhoto); n++ {
		y += gaps[n]
		st.items = append(st.items, s.press.place(lines[n:n+1], s.mainLeft(), y)...)
		y += lines[n].lead
	}
	st.height = max(y, photoTall)
	out := []strip{st}
	for ; n < len(lines); n++ {
		out = append(out, strip{before: gaps[n], height: lines[n].lead, items: s.press.place(lines[n:n+1], s.mainLeft(), 0)})
	}
	for _, f := range loose {
		text := report.Strong(f.Figure).Plain("  ").Then(f.Note)
		strips := s.flow(s.press.lines(text, sizeBody, s.main), s.mainLeft())
		if len(strips) > 0 {
			strips[0].before = 2
		}
		out = append(out, strips...)
	}
	return out
}

// leadPhoto places the photo with its caption at the right of the main column,
// or nothing if it cannot be read: Check reports that.
func (s *setter) leadPhoto(photo *report.Photo) (items []Placed, width, tall Point) {
	px, err := pixels(&photo.Image)
	if err != nil {
		return nil, 0, 0
	}
	w, h := px.fit(s.leadPhotoWide, s.leadPhotoHigh)
	width = max(w, 84) // a caption needs some room
	x := s.mainLeft() + s.main - width
	const down = 3 // level with the top of the large letters
	items = append(items, Picture{Image: &photo.Image, Box: Rect{x, down, w, h}})
	y := down + h
	bar, barTall := s.scaleBar(photo, px, w, x)
	items = append(items, moveAll(bar, 0, y)...)
	y += barTall + 3
	lines := s.captionLines(photo, width)
	items = append(items, s.press.place(lines, x, y)...)
	return items, width, y + height(lines)
}

// marginFigures sets figures in the margin column, each over its note.
func (s *setter) marginFigures(figures []report.MarginFigure) (items []Placed, tall Point) {
	size := sizeLarge
	for _, f := range figures { // none is broken within a number
		if s.press.longest(report.Plain(f.Figure), sizeLarge) > s.margin {
			size = sizeBody
		}
	}
	for i, f := range figures {
		if i > 0 {
			tall += 5
		}
		lines := s.press.lines(report.Plain(f.Figure), size, s.margin)
		lines = append(lines, s.press.lines(small(f.Note), sizeSmall, s.margin)...)
		items = append(items, s.press.place(lines, s.edge, tall)...)
		tall += height(lines)
	}
	return items, tall
}
