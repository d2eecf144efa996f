package pdf

import "stonewrit/report"

// strip is a slice of a block that stands on one page whole. The x of its items
// counts from the left edge of the page, their y from the strip's top.
type strip struct {
	before   Point // white above it, none at the top of a page
	height   Point
	items    []Placed
	base     Point    // first baseline below the top, for the name beside it
	over     []Placed // a line between it and what stands above, none at the top of a page
	aside    []Placed // in the margin column
	tall     Point    // height of aside
	besides  bool     // nothing but an aside, which stands beside the next strip of its section
	keepNext bool     // stays on the page of the next strip
	wide     bool     // takes the margin column
	repeat   []strip  // set again above it where it opens a page
	starts   bool     // first strip of its section
	section  int
}

// splitAbove is the height above which a row of cells may be broken between
// its lines; a lower one moves to the next page whole.
const splitAbove Point = 150

// setter turns the blocks of a document into strips.
type setter struct {
	press *typeface
	grid
	doc  *report.Document
	main Point // width of the main column
}

// column returns the left edge and width of the main column, or of the whole
// width of the text for what takes the margin too.
func (s *setter) column(wide bool) (left, width Point) {
	if wide {
		return s.edge, s.main + s.mainLeft() - s.edge
	}
	return s.mainLeft(), s.main
}

// strips returns the strips of the whole document.
func (s *setter) strips() []strip {
	var out []strip
	for i, sec := range s.doc.Sections {
		out = append(out, s.sectionStrips(i, sec)...)
	}
	return out
}

// longName is the height above which a section's name is set above its text
// instead of beside it.
const longName Point = 122

func (s *setter) sectionStrips(index int, sec report.Section) []strip {
	name := s.press.lines(report.Plain(sec.Name), sizeBody, s.margin)
	tall := height(name)
	var out []strip
	if tall > longName {
		out = s.flow(inked(s.press.lines(report.Plain(sec.Name), sizeBody, s.main), InkAccent), s.mainLeft())
		out[len(out)-1].keepNext = true
		name, tall = nil, 0
	}
	for _, b := range sec.Blocks {
		strips := s.block(b)
		if len(strips) > 0 && len(out) > 0 && strips[0].before == 0 {
			strips[0].before = s.between
		}
		if n := len(out); n > 0 && out[n-1].besides && len(strips) > 0 && len(strips[0].aside) == 0 && !strips[0].wide {
			strips[0].aside, strips[0].tall, strips[0].before = out[n-1].aside, out[n-1].tall, out[n-1].before
			out = out[:n-1]
		}
		out = append(out, strips...)
	}
	if len(out) == 0 {
		if len(name) == 0 {
			return nil
		}
		out = []strip{{}}
	}
	first := &out[0]
	if len(name) > 0 {
		if first.wide { // the margin is taken: the name stands on a line of its own
			out = append([]strip{{height: tall, keepNext: true}}, out...)
			first = &out[0]
			out[1].before = s.between / 2
		}
		down := max(0, first.base-s.press.baseline(sizeBody, s.leadBody))
		placed := s.press.place(inked(name, InkAccent), s.edge, down)
		below := moveAll(first.aside, 0, tall+down+s.between)
		if len(below) > 0 {
			tall += s.between + first.tall
		}
		first.aside, first.tall = append(placed, below...), tall+down
	}
	first.starts = true
	first.before = 2 * s.betweenSec
	for i := range out {
		out[i].section = index
	}
	return out
}

// block returns the strips of one block.
func (s *setter) block(b report.Block) []strip {
	switch b := b.(type) {
	case report.Lead:
		return s.lead(b)
	case report.Paragraph:
		return s.paragraph(b)
	case report.List:
		return s.list(b)
	case report.Claims:
		return s.claims(b)
	case report.Table:
		return s.table(b)
	case report.Photos:
		return s.photos(b)
	case report.Figure:
		return s.figure(b)
	case report.Sum:
		return s.sum(b)
	case report.Signature:
		return s.signature(b)
	}
	return nil
}

// inked returns the lines in another ink.
func inked(lines []line, ink Ink) []line {
	for _, l := range lines {
		for i := range l.pieces {
			l.pieces[i].ink = ink
		}
	}
	return lines
}

func moveAll(items []Placed, dx, dy Point) []Placed {
	out := make([]Placed, len(items))
	for i, it := range items {
		out[i] = it.moved(dx, dy)
	}
	return out
}

// groups says how many lines stand in each strip of a text of n lines, so that
// neither its first nor its last line ever stands alone on a page.
func groups(n int) []int {
	if n <= 3 {
		return []int{n}
	}
	out := []int{2}
	for range n - 4 {
		out = append(out, 1)
	}
	return append(out, 2)
}

// flow sets running lines at x.
func (s *setter) flow(lines []line, x Point) []strip {
	if len(lines) == 0 {
		return nil
	}
	var out []strip
	for _, n := range groups(len(lines)) {
		out = append(out, strip{height: height(lines[:n]), items: s.press.place(lines[:n], x, 0), base: s.firstBase(lines)})
		lines = lines[n:]
	}
	return out
}

func (s *setter) firstBase(lines []line) Point {
	if len(lines) == 0 {
		return 0
	}
	return s.press.baseline(sizeFor(lines[0].lead), lines[0].lead)
}

// cell is a stack of lines in a column of its own, with an optional mark
// before the first.
type cell struct {
	x, width Point
	lines    []line
	right    bool
	mark     report.Mark
	down     Point // lowers the first lines to the common baseline of a row
}

// put places the lines from..to of the cell with the top of the first at y.
func (c cell) put(p *typeface, from, to int, y Point) []Placed {
	var out []Placed
	for i := from; i < to && i < len(c.lines); i++ {
		l := c.lines[i]
		x := c.x
		if c.right {
			x += c.width - l.width
		}
		if i == 0 && c.mark != report.MarkNone {
			out = append(out, p.mark(c.mark, c.x, y, l.lead)...)
		}
		if c.mark != report.MarkNone && !c.right {
			x += markRoom
		}
		out = append(out, p.placeLine(l, x, y)...)
		y += l.lead
	}
	return out
}

// sideBySide sets cells beside one another with pad above and below: in one
// strip, or line by line if they are high.
func (s *setter) sideBySide(cells []cell, pad Point) []strip {
	var whole Point
	count := 0
	for _, c := range cells {
		whole = max(whole, height(c.lines))
		count = max(count, len(c.lines))
	}
	if count == 0 {
		return nil
	}
	base := s.align(cells)
	counts := []int{count}
	if whole > splitAbove {
		counts = groups(count)
	}
	var out []strip
	from := 0
	for i, n := range counts {
		var st strip
		for _, c := range cells {
			var top Point
			if i == 0 {
				top = pad + c.down
			}
			st.items = append(st.items, c.put(s.press, from, from+n, top)...)
			st.height = max(st.height, top+height(c.lines[min(from, len(c.lines)):min(from+n, len(c.lines))]))
		}
		from += n
		out = append(out, st)
	}
	out[0].base = pad + base
	out[len(out)-1].height += pad
	return out
}

// align lowers cells so that their first lines stand on one baseline, and
// returns it.
func (s *setter) align(cells []cell) Point {
	var base Point
	for _, c := range cells {
		base = max(base, s.firstBase(c.lines))
	}
	for i := range cells {
		if len(cells[i].lines) > 0 {
			cells[i].down = base - s.firstBase(cells[i].lines)
		}
	}
	return base
}

// keepTogether marks all strips but the last to stay with the next.
func keepTogether(strips []strip) []strip {
	for i := range strips[:max(0, len(strips)-1)] {
		strips[i].keepNext = true
	}
	return strips
}
