package pdf

import "stonewrit/report"

// claimWide is the column of a claim's name and standing.
const claimWide Point = 104

// claims sets each claim with its mark, name and standing on the left and what
// it says and rests on beside them.
func (s *setter) claims(b report.Claims) []strip {
	var out []strip
	for _, c := range b.Claims {
		left := cell{
			x: s.mainLeft(), width: claimWide, mark: c.Mark,
			lines: s.press.lines(report.Strong(c.Name).Plain("\n").Italic(c.Standing), sizeBody, claimWide-markRoom),
		}
		x := s.mainLeft() + claimWide + 8
		width := s.main - claimWide - 8
		right := cell{x: x, width: width, lines: s.press.lines(c.Statement, sizeBody, width)}
		for _, t := range c.Because {
			right.lines = append(right.lines, inked(s.press.lines(t, sizeSmall, width), InkGrey)...)
		}
		strips := s.sideBySide([]cell{left, right}, 3)
		if len(out) > 0 && len(strips) > 0 {
			strips[0].over = append(strips[0].over, rule(s.mainLeft(), 0, s.main, ruleThin, InkPale))
		}
		out = append(out, strips...)
	}
	return out
}
