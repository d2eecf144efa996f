package weight

// Areas works out volumes of one make for many proportions. A crown or a
// pavilion is stretched along the axis with its height, so its volume is height
// times a number that table, outline and facet lengths settle; these numbers
// are kept, since building a body takes far longer than a multiplication.
type areas struct {
	m    makeRow
	kept map[proportions][2]float64
	err  error
}

func newAreas(m makeRow) *areas { return &areas{m: m, kept: map[proportions][2]float64{}} }

// volume is the volume of the cut in mm3: girdle x area of the outline + crown
// + pavilion. The first failure stays in err.
func (a *areas) volume(p proportions) float64 {
	key := p
	key.crown, key.girdle, key.pavilion = 0, 0, 0
	k, ok := a.kept[key]
	if !ok {
		k = a.build(p)
		a.kept[key] = k
	}
	f, err := a.m.frame(p)
	if err != nil {
		a.err = err
		return 0
	}
	return k[0]*p.crown + f.o.area()*p.girdle + k[1]*p.pavilion
}

func (a *areas) build(p proportions) [2]float64 {
	crown, err := a.m.crownArea(p)
	if err != nil {
		a.err = err
	}
	pavilion, err := a.m.pavilionArea(p)
	if err != nil {
		a.err = err
	}
	return [2]float64{crown, pavilion}
}
