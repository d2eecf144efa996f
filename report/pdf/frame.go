package pdf

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"stonewrit/report"
)

// frame sets what stands around the text: the letterhead of page one, the head
// of the others, and the foot.
type frame struct {
	*setter
	width, height Point

	first, next       []Placed // heads of page one and of the others
	firstEnd, nextEnd Point    // where they end
	footTop           Point
}

// words returns the layout's own words, in English where the document has none.
func (s *setter) words() report.Words {
	w := s.doc.Words
	def := func(field *string, english string) {
		if *field == "" {
			*field = english
		}
	}
	def(&w.PageOf, "page {page} of {pages}")
	def(&w.Draft, "DRAFT")
	def(&w.DraftNote, "a proof without a number; not issued, not to be relied on")
	def(&w.Unnumbered, "no number")
	def(&w.Continued, "continued")
	return w
}

func newFrame(s *setter) *frame {
	f := &frame{setter: s}
	f.width, f.height = s.doc.Paper.Size()
	top := f.top
	var draft []Placed
	if s.doc.Draft {
		draft, top = f.draft(top)
	}
	f.first, f.firstEnd = f.letterhead(top)
	f.next, f.nextEnd = f.head(top)
	f.first, f.next = append(f.first, draft...), append(f.next, draft...)
	f.footTop = f.height - f.bottom - max(f.footLeast, height(f.endLines()), height(f.titleLines()), height(f.countLines(999, 999)))
	return f
}

// area returns where the text of a page may stand.
func (f *frame) area(page int) area {
	top := f.nextEnd
	if page == 0 {
		top = f.firstEnd
	}
	return area{top: top + f.afterHead, bottom: f.footTop - f.aboveFoot, apart: f.betweenSec}
}

// draft sets the word for a draft at the top of a page, large and above
// everything, where it hides nothing.
func (f *frame) draft(top Point) ([]Placed, Point) {
	w := f.words()
	word := inked(f.press.lines(report.Strong(w.Draft), sizeLarge, f.main), InkAccent)
	items := f.press.place(word, f.mainLeft(), top)
	note := f.press.lines(report.Quiet(w.DraftNote), sizeSmall, f.main)
	beside := f.mainLeft()
	for _, l := range word {
		beside = max(beside, f.mainLeft()+l.width+8)
	}
	if len(word) == 1 && len(note) == 1 && beside+note[0].width <= f.mainLeft()+f.main { // on one line
		down := f.firstBase(word) - f.firstBase(note)
		return append(items, f.press.place(note, beside, top+down)...), top + height(word) + f.afterDraft
	}
	top += height(word)
	items = append(items, f.press.place(note, f.mainLeft(), top)...)
	return items, top + height(note) + f.afterDraft
}

func (f *frame) number() string {
	if f.doc.Number == "" {
		return f.words().Unnumbered
	}
	return f.doc.Number
}

// letterhead sets the practice, and below a line what the document is, its
// number and its date.
func (f *frame) letterhead(top Point) ([]Placed, Point) {
	pr := f.doc.Practice
	name := inked(f.press.lines(report.Plain(pr.Name), sizeLarge, f.main), InkAccent)
	items := f.press.place(name, f.mainLeft(), top)
	y := top + height(name)
	paragraphs := [][]string{pr.Address, pr.Contact}
	if f.doc.Short {
		paragraphs = [][]string{slices.Concat(pr.Address, pr.Contact)}
	}
	for _, lines := range paragraphs {
		text := report.Quiet(strings.Join(lines, " · "))
		set := f.press.lines(text, sizeSmall, f.main)
		items = append(items, f.press.place(set, f.mainLeft(), y)...)
		y += height(set)
	}
	if pr.Logo != nil {
		if px, err := pixels(pr.Logo); err == nil {
			w, h := px.fit(f.margin-10, max(44, y-top))
			items = append(items, Picture{Image: pr.Logo, Box: Rect{f.edge, top + 2, w, h}})
			y = max(y, top+2+h)
		}
	}
	left, wide := f.column(true)
	y += f.aboveTitle
	items = append(items, rule(left, y, wide, ruleThick, InkAccent))
	y += f.aboveTitle * 2 / 3
	title := f.press.lines(report.Strong(f.doc.Title), sizeBody, f.margin)
	items = append(items, f.press.place(title, f.edge, y)...)
	low := f.twoEnds(&items, report.Plain(f.number()), report.Plain(f.doc.DateText), sizeBody, f.mainLeft(), f.main, y)
	return items, max(y+height(title), low)
}

// head sets number, practice and date over a line.
func (f *frame) head(top Point) ([]Placed, Point) {
	number := f.press.lines(report.Quiet(f.number()), sizeSmall, f.margin+f.gutter-4)
	items := f.press.place(number, f.edge, top)
	low := f.twoEnds(&items, report.Quiet(f.doc.Practice.Name), report.Quiet(f.doc.DateText), sizeSmall, f.mainLeft(), f.main, top)
	low = max(low, top+height(number)) + 5
	left, wide := f.column(true)
	return append(items, rule(left, low, wide, ruleThin, InkPale)), low
}

// twoEnds sets one text at the left and one at the right of a column and
// returns the bottom of the lower. The right one takes what it needs, up to
// two fifths.
func (f *frame) twoEnds(items *[]Placed, left, right report.Text, size, x, width, y Point) Point {
	room := min(f.press.natural(right, size)+0.01, width*0.4)
	rightCell := cell{x: x + width - room, width: room, right: true, lines: f.press.lines(right, size, room)}
	leftCell := cell{x: x, width: width - room - 12, lines: f.press.lines(left, size, width-room-12)}
	for _, c := range []cell{leftCell, rightCell} {
		*items = append(*items, c.put(f.press, 0, len(c.lines), y)...)
	}
	return y + max(height(leftCell.lines), height(rightCell.lines))
}

// pageRoom is the width kept for "page x of y" at the right of the foot.
const pageRoom Point = 84

func (f *frame) endLines() []line {
	return f.press.lines(report.Quiet(f.doc.End), sizeSmall, f.main-pageRoom-12)
}

func (f *frame) titleLines() []line {
	return f.press.lines(report.Quiet(f.doc.Title), sizeSmall, f.margin)
}

// foot sets title and page count below a line, and on the last page the end
// line.
func (f *frame) foot(page, pages int) []Placed {
	left, wide := f.column(true)
	items := []Placed{rule(left, f.footTop, wide, ruleThin, InkPale)}
	y := f.footTop + 5
	items = append(items, f.press.place(f.titleLines(), f.edge, y)...)
	if page == pages-1 {
		items = append(items, f.press.place(f.endLines(), f.mainLeft(), y)...)
	}
	c := cell{x: f.mainLeft() + f.main - pageRoom, width: pageRoom, right: true, lines: f.countLines(page+1, pages)}
	return append(items, c.put(f.press, 0, len(c.lines), y)...)
}

func (f *frame) countLines(page, pages int) []line {
	count := strings.NewReplacer("{page}", strconv.Itoa(page), "{pages}", strconv.Itoa(pages)).Replace(f.words().PageOf)
	return f.press.lines(report.Quiet(count), sizeSmall, pageRoom)
}

// The least height that head and foot must leave for text: some lines below the
// letterhead, and on the other pages the highest drawing with its caption.
const (
	leastFirst Point = 120
	leastNext        = report.FigureHeight + 60
)

// room says whether head and foot leave enough of both kinds of page for text.
func (f *frame) room() error {
	for i, least := range []Point{leastFirst, leastNext} {
		if a := f.area(i); a.bottom-a.top < least {
			return fmt.Errorf("page %d: %w: head and foot leave %.0f pt for text, at least %.0f are needed", i+1, ErrShape, a.bottom-a.top, least)
		}
	}
	return nil
}

// finish puts head and foot on the pages.
func (f *frame) finish(pages []Page) []Page {
	for i := range pages {
		head := f.next
		if i == 0 {
			head = f.first
		}
		items := append(moveAll(head, 0, 0), pages[i].Items...)
		pages[i].Items = append(items, moveAll(f.foot(i, len(pages)), 0, 0)...)
		pages[i].Width, pages[i].Height = f.width, f.height
	}
	return pages
}
