package pdf

import (
	"stonewrit/report"
)

// line is one line of a text: pieces from left to right.
type line struct {
	pieces []piece
	width  Point
	lead   Point // distance to the next baseline
}

// lines breaks a text to lines of the given width.
func (p *typeface) lines(t report.Text, size, width Point) []line {
	return p.linesAround(t, size, func(Point) Point { return width })
}

// linesAround breaks a text to lines whose width depends on how far below the
// top of the text they begin.
func (p *typeface) linesAround(t report.Text, size Point, width func(y Point) Point) []line {
	words := p.words(t, size)
	out := p.fill(words, size, width)
	// A last line of one short word looks like a slip. Where slightly narrower
	// lines, no more of them, carry some words over, they are taken.
	best := out
	for share := Point(0.98); share > 0.93 && runt(best, width); share -= 0.02 {
		narrow := p.fill(words, size, func(y Point) Point { return width(y) * share })
		if n := len(out); len(narrow) == n && narrow[n-1].width > best[n-1].width {
			best = narrow
		}
	}
	return best
}

// runt reports whether the last of several lines is very short.
func runt(lines []line, width func(y Point) Point) bool {
	n := len(lines)
	return n > 1 && lines[n-1].width < 0.2*width(height(lines[:n-1]))
}

// balanced breaks a text to as few lines as linesAround, all about as long.
func (p *typeface) balanced(t report.Text, size Point, width func(y Point) Point) []line {
	words := p.words(t, size)
	best := p.fill(words, size, width)
	for share := Point(0.97); share > 0.7; share -= 0.03 {
		narrow := p.fill(words, size, func(y Point) Point { return width(y) * share })
		if len(narrow) > len(best) {
			break
		}
		best = narrow
	}
	return best
}

// fill breaks words to lines, each as full as it will go.
func (p *typeface) fill(words []word, size Point, width func(y Point) Point) []line {
	b := breaker{press: p, size: size, width: width}
	for _, w := range words {
		b.add(w)
	}
	if len(b.cur.pieces) > 0 {
		b.end()
	}
	return b.out
}

// breaker fills lines with words, as many as fit each.
type breaker struct {
	press *typeface
	size  Point
	width func(y Point) Point

	out   []line
	y     Point  // top of the line being filled
	cur   line   // that line
	space *piece // owed before the next word
	soft  bool   // the last word may be continued after a hyphen
}

func (b *breaker) room() Point { return b.width(b.y) }

func (b *breaker) add(w word) {
	need := w.width
	if b.space != nil {
		need += b.space.width
	}
	if w.soft {
		need += b.press.measure(string(hyphen), b.voice(w)).width
	}
	if len(b.cur.pieces) > 0 && b.cur.width+need > b.room() {
		b.hyphenate()
		b.end()
	}
	if w.width > b.room() {
		w.pieces = b.cut(w.pieces)
	}
	if b.space != nil {
		b.put(*b.space)
	}
	for _, pc := range w.pieces {
		b.put(pc)
	}
	b.space, b.soft = w.space, w.soft
	if w.stop {
		b.end()
	}
}

func (b *breaker) voice(w word) voice {
	if n := len(w.pieces); n > 0 {
		return w.pieces[n-1].voice
	}
	return voice{FaceRegular, b.size, InkBlack}
}

// hyphenate shows the soft hyphen that the line breaks at, where there is room:
// a word cut for want of room may leave none.
func (b *breaker) hyphenate() {
	if !b.soft {
		return
	}
	sign := b.press.measure(string(hyphen), b.cur.pieces[len(b.cur.pieces)-1].voice)
	if b.cur.width+sign.width <= b.room() {
		b.put(sign)
	}
}

// put sets a piece, joined to the one before it if that is of the same voice.
func (b *breaker) put(pc piece) {
	b.cur.width += pc.width
	if n := len(b.cur.pieces) - 1; n >= 0 && b.cur.pieces[n].voice == pc.voice && b.cur.pieces[n].shift == nil && pc.shift == nil {
		b.cur.pieces[n].text += pc.text
		b.cur.pieces[n].width += pc.width
		return
	}
	b.cur.pieces = append(b.cur.pieces, pc)
}

// end closes the line.
func (b *breaker) end() {
	var size Point
	for _, pc := range b.cur.pieces {
		size = max(size, pc.size)
	}
	if size == 0 {
		size = b.size
	}
	b.cur.lead = b.press.leading(size)
	b.y += b.cur.lead
	b.out = append(b.out, b.cur)
	b.cur, b.space, b.soft = line{}, nil, false
}

// cut breaks a word that is wider than a line: it fills lines and returns what
// is left for the last one. An accent stays with its letter.
func (b *breaker) cut(pieces []piece) []piece {
	for i, pc := range pieces {
		if pc.shift != nil {
			b.put(pc)
			continue
		}
		rest := []rune(pc.text)
		for {
			n := b.fitting(rest, pc.voice)
			if n == len(rest) {
				break
			}
			if n > 0 {
				b.put(b.press.measure(string(rest[:n]), pc.voice))
			}
			b.end()
			rest = rest[n:]
		}
		last := b.press.measure(string(rest), pc.voice)
		if i == len(pieces)-1 {
			return []piece{last}
		}
		b.put(last)
	}
	return nil
}

// fitting returns how many characters of a word fit the rest of the line; one
// at least on an empty line.
func (b *breaker) fitting(word []rune, v voice) int {
	width := b.cur.width
	for n, r := range word {
		width += b.press.measure(string(r), v).width
		if width > b.room() {
			if n == 0 && len(b.cur.pieces) == 0 {
				return 1
			}
			return n
		}
	}
	return len(word)
}

// natural is the width of a text set in one line, newlines apart.
func (p *typeface) natural(t report.Text, size Point) Point {
	var widest Point
	for _, l := range p.lines(t, size, 1e6) {
		widest = max(widest, l.width)
	}
	return widest
}

// longest is the width of the longest word of a text.
func (p *typeface) longest(t report.Text, size Point) Point {
	var widest Point
	for _, w := range p.words(t, size) {
		widest = max(widest, w.width)
	}
	return widest
}

// height is the height of lines set below one another.
func height(lines []line) Point {
	var sum Point
	for _, l := range lines {
		sum += l.lead
	}
	return sum
}

// place sets lines with their left edge at x and the top of the first at y.
func (p *typeface) place(lines []line, x, y Point) []Placed {
	var out []Placed
	for _, l := range lines {
		out = append(out, p.placeLine(l, x, y)...)
		y += l.lead
	}
	return out
}

// baseline is how far below its top a line of the given leading has its
// baseline.
func (p *typeface) baseline(size, lead Point) Point {
	f := p.faces[FaceRegular]
	return (lead-Point(f.ascent+f.descent)*size)/2 + Point(f.ascent)*size
}

func (p *typeface) placeLine(l line, x, y Point) []Placed {
	var out []Placed
	base := y + p.baseline(sizeFor(l.lead), l.lead)
	for _, pc := range l.pieces {
		if pc.text != " " {
			out = append(out, p.text(pc, x, base))
		}
		x += pc.width
	}
	return out
}

// sizeFor is the size of text that has the given leading.
func sizeFor(lead Point) Point {
	switch {
	case lead >= leastLeadLarge:
		return sizeLarge
	case lead >= leastLeadBody:
		return sizeBody
	}
	return sizeSmall
}

// text places a piece with its baseline at y.
func (p *typeface) text(pc piece, x, y Point) Text {
	f := p.faces[pc.face]
	up, down := Point(f.ascent)*pc.size, Point(f.descent)*pc.size
	t := Text{At: report.XY{X: x, Y: y}, S: pc.text, Face: pc.face, Size: pc.size, Ink: pc.ink, box: Rect{x, y - up, pc.width, up + down}}
	if pc.shift != nil {
		t.Accent = true
		t.At.X, t.At.Y = x+pc.shift.X, y+pc.shift.Y
	}
	return t
}
