package weight

import "stonewrit/grading/phrase"

// figures are the inputs of a solid: what was measured, and the usual figures
// in place of what was not.
type figures struct {
	in                                     []input
	length, width, end, table, star, lower int // places in in
	culet, bulge, shape                    int
	parts                                  [3]part // crown, girdle, pavilion
	total                                  part
	assumed                                []string // what was not measured
}

func (f *figures) put(name string, m Measure) int {
	f.in = append(f.in, input{name, m})
	return len(f.in) - 1
}

// usual puts a measured figure, or the usual one in its place.
func (f *figures) usual(name string, m, instead Measure) int {
	if m.Given() {
		return f.put(name, withU(m))
	}
	if instead.U > 0 {
		f.assumed = append(f.assumed, name)
	}
	return f.put(name, instead)
}

// at reads a place.
func at(i int) func(x []float64) float64 { return func(x []float64) float64 { return x[i] } }

// reference is the length that per cents are of.
func (f *figures) reference(x []float64, shape string) float64 {
	if shape == "round" {
		return (x[f.length] + x[f.width]) / 2
	}
	return x[f.width]
}

// figuresOf gathers the inputs.
func (e *Estimator) figuresOf(d Dimensions, m makeRow) *figures {
	f := &figures{}
	f.length = f.put("length", d.Length)
	f.width = f.put("width", d.Width)
	f.end = f.put("narrow width", d.NarrowWidth)
	f.table = f.usual("table", d.Table, m.usualTable)
	f.star = f.usual("star", d.Star, m.usualStar)
	f.lower = f.usual("lower halves", d.LowerHalves, m.usualLower)
	f.culet = f.put("culet", d.Culet)
	f.crown(d, m)
	f.girdle(e.girdle(d), m)
	f.pavilion(d, m)
	f.depth(d)
	f.bulge = f.put("bulge", e.bulge(d))
	if m.crown == styleDome || m.pavilion == styleFlat {
		f.in[f.bulge].Measure = Measure{}
	}
	f.shape = f.put("shape", Measure{1, m.spread})
	return f
}

func (f *figures) crown(d Dimensions, m makeRow) {
	p := &f.parts[0]
	if m.usualCrown.U > 0 {
		p.add(m.usualCrown.U, at(f.put("usual crown", m.usualCrown)))
	} else {
		p.add(1e-6, func([]float64) float64 { return m.usualCrown.Value })
	}
	if d.CrownHeight.Given() {
		h := withU(d.CrownHeight)
		p.add(h.U, at(f.put("crown height", h)))
	}
	if d.CrownAngle.Given() {
		a := withU(d.CrownAngle)
		i, t := f.put("crown angle", a), f.table
		height := func(x []float64) float64 { return crownFromAngle(x[t], x[i]) }
		made, _ := propagate([]input{f.in[t], f.in[i]}, func(x []float64) float64 { return crownFromAngle(x[0], x[1]) })
		p.add(made.U, height)
	}
	if len(p.values) == 1 {
		f.assumed = append(f.assumed, "crown")
	}
}

func (f *figures) girdle(g Measure, m makeRow) {
	if m.crown == styleDome || m.crown == styleFacetDome {
		g = Measure{0, 1e-6} // a dome starts at its base
	}
	f.parts[1].add(max(g.U, 1e-6), at(f.put("girdle", g)))
}

func (f *figures) pavilion(d Dimensions, m makeRow) {
	p := &f.parts[2]
	if m.pavilion == styleFlat {
		p.add(1e-6, func([]float64) float64 { return 0 })
		return
	}
	p.add(m.usualPavilion.U, at(f.put("usual pavilion", m.usualPavilion)))
	if d.PavilionDepth.Given() {
		h := withU(d.PavilionDepth)
		p.add(h.U, at(f.put("pavilion depth", h)))
	}
	if d.PavilionAngle.Given() {
		a := withU(d.PavilionAngle)
		i, c := f.put("pavilion angle", a), f.culet
		made, _ := propagate([]input{f.in[c], f.in[i]}, func(x []float64) float64 { return pavilionFromAngle(x[0], x[1]) })
		p.add(made.U, func(x []float64) float64 { return pavilionFromAngle(x[c], x[i]) })
	}
	if len(p.values) == 1 {
		f.assumed = append(f.assumed, "pavilion")
	}
}

// depth adds the figures for the sum of the parts.
func (f *figures) depth(d Dimensions) {
	if d.Depth.Given() {
		i := f.put("depth", d.Depth)
		ref := Measure{d.reference(), d.Width.U}
		r, _ := propagate([]input{{"", d.Depth}, {"", ref}}, func(x []float64) float64 { return 100 * x[0] / x[1] })
		shape := d.Shape
		f.total.add(max(r.U, 1e-6), func(x []float64) float64 { return 100 * x[i] / f.reference(x, shape) })
	}
	if d.TotalDepth.Given() {
		t := withU(d.TotalDepth)
		f.total.add(t.U, at(f.put("total depth", t)))
	}
}

// proportionsAt turns the inputs into the lengths that the cut is built from.
func (f *figures) proportionsAt(x []float64, shape string) proportions {
	ref := f.reference(x, shape)
	h := reconcile(f.parts, f.total, x)
	share := func(i int) float64 { return min(0.95, x[i]/100) }
	return proportions{
		length: x[f.length], width: x[f.width], end: x[f.end], reference: ref,
		table: share(f.table), star: share(f.star), lower: share(f.lower), culet: share(f.culet),
		crown: ref * h[0] / 100, girdle: ref * h[1] / 100, pavilion: ref * h[2] / 100,
	}
}

// solidFigures finds the make of the stone and its figures, or says why it
// cannot be built.
func (e *Estimator) solidFigures(d Dimensions) (makeRow, *figures, error) {
	if !d.Width.Given() && (d.Shape == "round" || d.Shape == "bead") {
		d.Width = d.Length
	}
	if !d.Depth.Given() && (d.Shape == "bead" || d.Cut == "bead") {
		d.Depth = d.Width
	}
	m, ok := e.makeFor(d)
	switch {
	case !ok:
		return m, nil, undescribed(d)
	case !d.Length.Given() || !d.Width.Given():
		return m, nil, unable(ErrDimensions, "not enough dimensions: length and width are needed")
	case !d.Depth.Given() && !d.TotalDepth.Given() && !(d.measuredCrown() && d.measuredPavilion()):
		return m, nil, unable(ErrDimensions, "not enough dimensions: depth, or crown and pavilion, are needed")
	}
	return m, e.figuresOf(d, m), nil
}

func undescribed(d Dimensions) error {
	return unable(ErrSolid, "proportions do not make a solid: none is described for %s %s", phrase.Word(d.Shape), phrase.Word(d.Cut))
}

func (d Dimensions) measuredCrown() bool { return d.CrownHeight.Given() || d.CrownAngle.Given() }
func (d Dimensions) measuredPavilion() bool {
	return d.PavilionDepth.Given() || d.PavilionAngle.Given()
}

// bySolid gives the volume of the cut built as a body.
func (e *Estimator) bySolid(d Dimensions) (Candidate, error) {
	if d.Shape == "drop" && (d.Cut == "briolette" || d.Cut == "bead") {
		return e.byDrop(d)
	}
	m, f, err := e.solidFigures(d)
	if err != nil {
		return Candidate{}, err
	}
	areas := newAreas(m)
	volume, budget := f.model(d.Shape, areas).measure()
	if areas.err != nil {
		return Candidate{}, areas.err
	}
	return Candidate{
		Method: BySolid, Basis: f.describe(m), Source: m.source, Volume: volume, Budget: budget,
	}, nil
}

// model is the volume of the body, times what bulge and spread of the make do.
func (f *figures) model(shape string, a *areas) model {
	return model{f.in, func(x []float64) float64 {
		return a.volume(f.proportionsAt(x, shape)) * (1 + x[f.bulge]) * x[f.shape]
	}}
}

// describe says what was built and which figures were not measured.
func (f *figures) describe(m makeRow) phrase.Line {
	x := make([]float64, len(f.in))
	for i, q := range f.in {
		x[i] = q.Value
	}
	h := reconcile(f.parts, f.total, x)
	said := phrase.Say("%s built from crown %.1f %%, girdle %.1f %%, pavilion %.1f %%", m.words(), h[0], h[1], h[2])
	if x[f.table] > 0 {
		said = phrase.Say("%s built from table %.1f %%, crown %.1f %%, girdle %.1f %%, pavilion %.1f %%", m.words(), x[f.table], h[0], h[1], h[2])
	}
	if len(f.assumed) > 0 {
		said = phrase.Say("%s; usual figures for %s", said, phrase.Commas(phrase.Words(f.assumed)...))
	}
	return said
}

// words are the shape and cut of a row.
func (m makeRow) words() phrase.Line {
	if m.shape == m.cut {
		return phrase.Say("%s", phrase.Word(m.shape))
	}
	return phrase.Say("%[1]s %[2]s", phrase.Word(m.shape), phrase.Word(m.cut))
}

// byDrop is the body of a briolette or a drop-shaped pearl.
func (e *Estimator) byDrop(d Dimensions) (Candidate, error) {
	if !d.Width.Given() {
		return Candidate{}, unable(ErrDimensions, "not enough dimensions: length and width are needed")
	}
	if !d.Depth.Given() {
		d.Depth = d.Width
	}
	m, ok := e.makeFor(d)
	if !ok {
		return Candidate{}, undescribed(d)
	}
	in := []input{{"length", d.Length}, {"width", d.Width}, {"depth", d.Depth}, {"shape", Measure{1, m.spread}}}
	volume, budget := propagate(in, func(x []float64) float64 { return x[3] * dropVolume(x[0], x[1], x[2]) })
	return Candidate{
		Method: BySolid, Basis: phrase.Say("%s built as a cone on half an ellipsoid", m.words()),
		Source: m.source, Volume: volume, Budget: budget,
	}, nil
}
