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
	ground := strip{before: 10, height: signHigh + 4}
	if b.Image != nil {
		if px, err := pixels(b.Image); err == nil {
			w, h := px.fit(signWide, signHigh)
			ground.items = append(ground.items, Picture{Image: b.Image, Box: Rect{s.mainLeft(), signHigh - h, w, h}})
		}
	}
	ground.items = append(ground.items, rule(s.mainLeft(), signHigh+2, signWide, ruleThin, InkBlack))
	text := report.Strong(b.Name)
	for _, c := range b.Credentials {
		text = text.Plain("\n").Quiet(c)
	}
	if b.Date != "" {
		text = text.Plain("\n").Plain(b.Date)
	}
	return keepTogether(append([]strip{ground}, s.flow(s.press.lines(text, sizeBody, s.main), s.mainLeft())...))
}
