package weight

// Areas works out volumes of one make for many proportions. A crown or a
// pavilion is stretched along the axis with its height, so its volume is height
// times a number that table, outline and facet lengths settle; these numbers
// are kept, since building a body takes far longer than a multiplication.
type areas struct {
	m         makeRow
	crowns    map[proportions]float64
	pavilions map[proportions]float64
	err       error // the first failure
}

func newAreas(m makeRow) *areas {
	return &areas{m: m, crowns: map[proportions]float64{}, pavilions: map[proportions]float64{}}
}

// volume is the volume of the cut in mm3: girdle x area of the outline + crown
// + pavilion.
func (a *areas) volume(p proportions) float64 {
	f, err := a.m.frame(p)
	if err != nil {
		a.err = err
		return 0
	}
	area := f.o.area()
	c, v := a.m.unit(p), a.m.unit(p)
	c.lower, c.culet = 0, 0
	v.table, v.star = 0, 0
	return area * (p.girdle + p.crown*a.fill(a.crowns, c, a.m.crownArea) + p.pavilion*a.fill(a.pavilions, v, a.m.pavilionArea))
}

// fill is the share of its prism that a crown or pavilion takes up.
func (a *areas) fill(kept map[proportions]float64, p proportions, build func(proportions) (float64, error)) float64 {
	if k, ok := kept[p]; ok {
		return k
	}
	k, err := build(p)
	if err == nil {
		var f frame
		if f, err = a.m.frame(p); err == nil {
			k /= f.o.area()
		}
	}
	if err != nil {
		a.err = err
	}
	kept[p] = k
	return k
}

// unit reduces proportions to what the fill depends on: a stone 1 mm wide
// without heights. Outlines that a stretching turns into one another have the
// same fill, unless their steps are parallel.
func (m makeRow) unit(p proportions) proportions {
	u := proportions{length: p.length / p.width, width: 1, end: p.end / p.width, reference: p.reference / p.width,
		table: p.table, star: p.star, lower: p.lower, culet: p.culet}
	switch m.shape {
	case "round", "oval", "cushion", "half moon", "curved triangle":
		u.length, u.reference = 1, 1
	}
	return u
}
