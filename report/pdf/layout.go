package pdf

import "stonewrit/report"

// Layout lays the document out. The same document gives the same pages. It
// returns the error of Check if that has one.
func (p *Press) Layout(doc report.Document) ([]Page, error) {
	if err := p.Check(doc); err != nil {
		return nil, err
	}
	s := p.setter(&doc)
	f := newFrame(s)
	pg := paginator{setter: s, area: f.area}
	return f.finish(pg.run(s.strips())), nil
}

func (p *Press) setter(doc *report.Document) *setter {
	width, _ := doc.Paper.Size()
	t := p.typeface
	t.grid = gridOf(doc.Short)
	return &setter{press: &t, grid: t.grid, doc: doc, main: width - t.mainLeft() - t.edge}
}
