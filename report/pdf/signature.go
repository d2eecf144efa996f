package pdf

import "stonewrit/report"

// The room for a signature above its line.
const (
	signWide Point = 190
	signHigh Point = 46
)

// signature sets the picture of a signature, or white to sign on, over a line;
// name, credentials and date stand below it.
func (s *setter) signature(b report.Signature) []strip {
	if s.doc.Short {
		return s.signatureBeside(b)
	}
	ground := strip{before: 10, height: signHigh + 4, items: s.signed(b, signWide, signHigh, 2)}
	text := report.Strong(b.Name)
	for _, c := range b.Credentials {
		text = text.Plain("\n").Quiet(c)
	}
	if b.Date != "" {
		text = text.Plain("\n").Plain(b.Date)
	}
	return keepTogether(append([]strip{ground}, s.flow(s.press.lines(text, sizeBody, s.main), s.mainLeft())...))
}

// signed is the picture of a signature, if there is one, over a line that leaves
// a gap below it.
func (s *setter) signed(b report.Signature, wide, high, gap report.Point) []Placed {
	var items []Placed
	if b.Image != nil {
		if px, err := pixels(b.Image); err == nil {
			w, h := px.fit(wide, high)
			items = append(items, Picture{Image: b.Image, Box: Rect{s.mainLeft(), high - h, w, h}})
		}
	}
	return append(items, rule(s.mainLeft(), high+gap, wide, ruleThin, InkBlack))
}

// signatureBeside sets a signature over a lower line, with name, credentials
// and date to its right.
func (s *setter) signatureBeside(b report.Signature) []strip {
	const wide, high, gap = 150, 23, 12
	st := strip{items: s.signed(b, wide, high, 1)}
	text := report.Strong(b.Name)
	for _, c := range b.Credentials {
		text = text.Plain(", ").Plain(c)
	}
	if b.Date != "" {
		text = text.Plain("\n").Plain(b.Date)
	}
	lines := s.press.lines(text, sizeSmall, s.main-wide-gap)
	tall := height(lines)
	if tall > splitAbove { // names without end flow below the line
		st.height = high + 4
		return keepTogether(append([]strip{st}, s.flow(s.press.lines(text, sizeSmall, s.main), s.mainLeft())...))
	}
	// The last line of the text stands level with the line to sign on.
	top := max(0, high+3-tall)
	st.items = append(st.items, s.press.place(lines, s.mainLeft()+wide+gap, top)...)
	st.height = max(high+3, top+tall)
	return []strip{st}
}
