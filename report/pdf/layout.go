package pdf

import "stonewrit/report"

// Layout lays the document out: a short form on the widest of its grids that
// keeps it to one page. The same document gives the same pages. It
// returns the error of Check if that has one.
func (p *Press) Layout(doc report.Document) ([]Page, error) {
	if err := p.Check(doc); err != nil {
		return nil, err
	}
	grids := gridsOf(doc.Short)
	var first []Page
	for i, g := range grids {
		s := p.setter(&doc, g)
		f := newFrame(s)
		pg := paginator{setter: s, area: f.area}
		pages := f.finish(pg.run(s.strips()))
		if len(pages) == 1 || len(grids) == 1 {
			return pages, nil
		}
		if i == 0 {
			first = pages
		}
	}
	return first, nil // what takes two pages at all need not be crowded
}

func (p *Press) setter(doc *report.Document, g grid) *setter {
	width, _ := doc.Paper.Size()
	t := p.typeface
	t.grid = g
	return &setter{press: &t, grid: t.grid, doc: doc, main: width - t.mainLeft() - t.edge}
}
