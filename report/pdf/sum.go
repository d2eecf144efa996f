package pdf

import "stonewrit/report"

// wholeSum is the height up to which a sum stands on one page.
const wholeSum Point = 240

// sum sets a calculation: label, working, amount; a rule stands above the
// amount of a total.
func (s *setter) sum(b report.Sum) []strip {
	var amount, label Point
	for _, l := range b.Lines {
		amount = max(amount, s.press.natural(report.Strong(l.Amount), sizeBody)+0.01)
		label = max(label, s.press.natural(labelText(l), sizeBody)+0.01)
	}
	const gap = 10
	amount = min(amount, s.main*0.4)
	label = min(label, (s.main-amount-2*gap)*0.55)
	working := s.main - amount - label - 2*gap
	right := s.mainLeft() + s.main - amount
	var out []strip
	for _, l := range b.Lines {
		amountText := report.Plain(l.Amount)
		if l.Total {
			amountText = report.Strong(l.Amount)
		}
		strips := s.sideBySide([]cell{
			{x: s.mainLeft(), width: label, lines: s.press.lines(labelText(l), sizeBody, label)},
			{x: s.mainLeft() + label + gap, width: working, lines: inked(s.press.lines(small(l.Working), sizeBody, working), InkGrey)},
			{x: right, width: amount, lines: s.press.lines(amountText, sizeBody, amount), right: true},
		}, 1.5)
		if l.Total && len(strips) > 0 {
			strips[0].items = append(strips[0].items, rule(right, 0.5, amount, ruleThick, InkBlack))
			if len(out) > 0 {
				out[len(out)-1].keepNext = true
			}
		}
		out = append(out, strips...)
	}
	var tall Point
	for _, st := range out {
		tall += st.height
	}
	if tall <= wholeSum {
		return keepTogether(out)
	}
	return out
}

func labelText(l report.SumLine) report.Text {
	if l.Total {
		return strong(l.Label)
	}
	return l.Label
}

// strong returns the text with its plain runs in bold.
func strong(t report.Text) report.Text { return restyled(t, report.StyleStrong) }

// small returns the text with its plain runs in the quiet voice.
func small(t report.Text) report.Text { return restyled(t, report.StyleQuiet) }

func restyled(t report.Text, style report.Style) report.Text {
	out := make(report.Text, len(t))
	for i, r := range t {
		if r.Style == report.StylePlain {
			r.Style = style
		}
		out[i] = r
	}
	return out
}
