package weight

// Areas works out volumes of one make for many proportions. A crown or a
// pavilion is stretched along the axis with its height, so its volume is height
// x area of the outline x a fill, which outline, table and facet lengths
// settle. Most of the figures that uncertainty comes from leave the fill alone,
// so that of the first proportions is kept.
type areas struct {
	m               makeRow
	crown, pavilion kept
	last            *frame
	err             error // the first failure
}

// kept is a fill and what it belongs to.
type kept struct {
	proportions
	fill float64
}

func newAreas(m makeRow) *areas { return &areas{m: m} }

// volume is the volume of the cut in mm3: crown, girdle and pavilion.
func (a *areas) volume(p proportions) float64 {
	c := a.m.unit(p)
	v := c
	c.lower, c.culet = 0, 0
	v.table, v.star = 0, 0
	crown := a.fill(&a.crown, c, a.m.crownFill)
	pavilion := a.fill(&a.pavilion, v, a.m.pavilionFill)
	return outlineArea(a.m.shape, p.length, p.width, p.end) * (p.crown*crown + p.girdle + p.pavilion*pavilion)
}

// fill works out a fill, unless it is the one that is kept.
func (a *areas) fill(first *kept, p proportions, work func(*frame, proportions) float64) float64 {
	if first.proportions == p {
		return first.fill
	}
	f := a.frame(p)
	if f == nil {
		return 0
	}
	k := work(f, p)
	if !(k >= 0) { // below the girdle: stars that would have to slope inward
		a.err = ErrSolid
	}
	if first.width == 0 {
		*first = kept{p, k}
	}
	return k
}

// frame is the frame for proportions; those that follow one another often
// share it.
func (a *areas) frame(p proportions) *frame {
	if f := a.last; f != nil && f.length == p.length && f.width == p.width && f.end == p.end {
		return f
	}
	f, err := a.m.frame(p)
	if err != nil {
		a.err = err
	}
	a.last = f
	return f
}

// unit reduces proportions to what the fill depends on: a stone 1 mm wide with
// heights of 1 mm. Outlines that a stretching turns into one another have the
// same fill, unless their steps are parallel.
func (m makeRow) unit(p proportions) proportions {
	u := proportions{length: p.length / p.width, width: 1, end: p.end / p.width, reference: p.reference / p.width,
		table: p.table, crown: 1, pavilion: 1, star: p.star, lower: p.lower, culet: p.culet}
	switch m.shape {
	case "round", "oval", "cushion", "half moon", "curved triangle",
		"triangle", "kite", "lozenge", "hexagon", "shield":
		u.length, u.reference = 1, 1
	}
	return u
}

// crownFill is the share of its prism, from the girdle edge at the mains to the
// table, that a crown takes up. What the scallops of the girdle dip below that
// edge is taken off, so that crown, girdle and pavilion make the whole.
func (m makeRow) crownFill(f *frame, p proportions) float64 {
	if m.crown == styleDome {
		return domeFill()
	}
	return f.sector.mean(m.crownFacets(f, p)) / p.crown
}

// pavilionFill is the same for the pavilion.
func (m makeRow) pavilionFill(f *frame, p proportions) float64 {
	switch m.pavilion {
	case styleFlat:
		return 0
	case styleDome:
		return domeFill()
	}
	return f.sector.mean(m.pavilionFacets(f, p)) / p.pavilion
}
