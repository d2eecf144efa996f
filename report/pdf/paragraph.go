package pdf

import (
	"strconv"

	"stonewrit/report"
)

func sizeOf(small bool) Point {
	if small {
		return sizeSmall
	}
	return sizeBody
}

func (s *setter) paragraph(b report.Paragraph) []strip {
	out := s.flow(s.press.lines(b.Text, sizeOf(b.Small), s.main), s.mainLeft())
	if b.KeepNext {
		for i := range out {
			out[i].keepNext = true
		}
	}
	return out
}

// hang is how far the text of a list stands in from its dash or number.
const hang Point = 13

func (s *setter) list(b report.List) []strip {
	size := sizeOf(b.Small)
	var out []strip
	for i, item := range b.Items {
		strips := s.flow(s.press.lines(item, size, s.main-hang), s.mainLeft()+hang)
		if len(strips) == 0 {
			continue
		}
		sign := "–"
		if b.Numbered {
			sign = strconv.Itoa(i+1) + "."
		}
		first := &strips[0]
		mark := s.press.measure(sign, voice{FaceRegular, size, InkGrey})
		first.items = append(first.items, s.press.text(mark, s.mainLeft(), first.base))
		if len(out) > 0 {
			first.before = 2
		}
		out = append(out, strips...)
	}
	return out
}
