package pdf

import "stonewrit/report"

// area is the part of a page between head and foot.
type area struct {
	top, bottom Point
	apart       Point // least white below what stands in the margin column
}

// cursor is where the next strip goes.
type cursor struct {
	y     Point // below the last strip
	aside Point // below what stands in the margin column
	fresh bool  // nothing on the page yet
}

// put returns the top of the strip, the cursor after it, and whether it fits.
func (c cursor) put(st strip, a area) (top Point, next cursor, fits bool) {
	top = c.y
	if !c.fresh {
		top += st.before
	}
	if (len(st.aside) > 0 || st.wide || st.starts) && c.aside > 0 {
		top = max(top, c.aside+max(st.before, a.apart))
	}
	next = cursor{y: top + st.height, aside: c.aside}
	if len(st.aside) > 0 {
		next.aside = top + st.tall
	}
	return top, next, max(next.y, next.aside) <= a.bottom+0.01
}

// paginator stacks strips on pages.
type paginator struct {
	setter *setter
	area   func(page int) area // page counts from 0

	pages []Page
	at    cursor
}

func (p *paginator) open() {
	p.pages = append(p.pages, Page{})
	p.at = cursor{y: p.here().top, fresh: true}
}

func (p *paginator) here() area  { return p.area(len(p.pages) - 1) }
func (p *paginator) page() *Page { return &p.pages[len(p.pages)-1] }

// run places all strips. Strips that must stay together move to a new page
// together, unless no page would hold them.
func (p *paginator) run(strips []strip) []Page {
	p.open()
	for len(strips) > 0 {
		n := 1
		for n < len(strips) && strips[n-1].keepNext {
			n++
		}
		if !p.fits(strips[:n]) && (!p.at.fresh || p.roomierNext()) {
			p.open()
		}
		for _, st := range strips[:n] {
			p.place(st)
		}
		strips = strips[n:]
	}
	return p.pages
}

// roomierNext reports whether the next page has more room than this one: below
// a high letterhead a large drawing may not fit that fits any other page.
func (p *paginator) roomierNext() bool {
	here, next := p.here(), p.area(len(p.pages))
	return next.bottom-next.top > here.bottom-here.top+1
}

func (p *paginator) fits(chain []strip) bool {
	at := p.at
	for _, st := range chain {
		_, next, ok := at.put(st, p.here())
		if !ok {
			return false
		}
		at = next
	}
	return true
}

func (p *paginator) place(st strip) {
	if _, _, ok := p.at.put(st, p.here()); !ok && !p.at.fresh {
		p.open()
	}
	opens := p.at.fresh
	if opens && !st.starts {
		p.resume(st)
	}
	fresh := p.at.fresh
	top, next, _ := p.at.put(st, p.here())
	page := p.page()
	if st.starts {
		name := p.setter.doc.Sections[st.section].Name
		page.Sections = append(page.Sections, SectionStart{Name: name, Y: round(top)})
		if !fresh {
			left, width := p.setter.column(true)
			page.Items = append(page.Items, rule(left, round(top-p.setter.betweenSec), width, ruleThin, InkPale))
		}
	}
	if !opens {
		page.Items = append(page.Items, moveAll(st.over, 0, top)...)
	}
	page.Items = append(page.Items, moveAll(st.items, 0, top)...)
	page.Items = append(page.Items, moveAll(st.aside, 0, top)...)
	p.at = next
}

// resume sets, at the top of a new page, the name of the section that goes on
// there, and the table head that the strip asks for. The name stands in the
// margin, or above a table that takes the margin.
func (p *paginator) resume(st strip) {
	name := p.setter.doc.Sections[st.section].Name
	more := report.Quiet(p.setter.words().Continued)
	set := p.setter.press
	tall := height(set.lines(report.Plain(name), sizeBody, p.setter.margin))
	switch {
	case tall == 0 || tall > longName || len(st.aside) > 0:
	case st.wide:
		_, width := p.setter.column(true)
		label := set.lines(report.Plain(name+"  ").Then(more), sizeBody, width)
		p.set(set.place(inked(label, InkGrey), p.setter.edge, p.at.y))
		p.at.y += height(label) + p.setter.between/2
	default:
		first := st
		if len(st.repeat) > 0 {
			first = st.repeat[0]
		}
		top := p.at.y + max(0, first.base-set.baseline(sizeBody, p.setter.leading(sizeBody)))
		label := set.lines(report.Plain(name+"\n").Then(more), sizeBody, p.setter.margin)
		p.set(set.place(inked(label, InkGrey), p.setter.edge, top))
		p.at.aside = top + height(label)
	}
	for _, head := range st.repeat {
		p.set(moveAll(head.items, 0, p.at.y))
		p.at.y += head.height
		p.at.fresh = false
	}
}

// set puts placed items on the page.
func (p *paginator) set(items []Placed) {
	p.page().Items = append(p.page().Items, moveAll(items, 0, 0)...)
}
