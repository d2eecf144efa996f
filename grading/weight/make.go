package weight

// A style is how one side of the girdle is cut.
type style string

// The styles of a make.
const (
	styleBrilliant style = "brilliant"
	styleSingle    style = "single" // mains alone
	styleStep      style = "step"
	styleFacetDome style = "faceted dome"
	styleDome      style = "dome"
	styleFlat      style = "flat"
	styleCone      style = "cone"
)

// A makeRow says how an outline and cut is usually made: styles, and usual
// proportions with the standard deviation they have in the trade. Per cents
// are of the width, of the diameter for a round stone.
type makeRow struct {
	shape, cut      string
	asDiamond       bool
	crown, pavilion style
	tiers           int
	crownCurve      float64 // steepening of a stepped crown
	pavilionCurve   float64
	usualTable      Measure
	usualCrown      Measure // height
	usualPavilion   Measure // depth
	usualStar       Measure // length of the stars
	usualLower      Measure // length of the lower halves
	spread          float64 // relative standard uncertainty of the body with all figures known
	source, note    string
}

func readMakes(src []byte) ([]makeRow, error) {
	var rows []makeRow
	err := eachRow("makes.csv", src, func(r *record) {
		pair := func(name string, low, high float64) Measure {
			return Measure{r.number(name, low, high), r.number(name+"_u", 0, 30)}
		}
		rows = append(rows, makeRow{
			shape: r.text("shape"), cut: r.text("cut"), asDiamond: r.text("population") == "diamond",
			crown: style(r.text("crown_style")), pavilion: style(r.text("pavilion_style")),
			tiers:         int(r.number("tiers", 0, 9)),
			crownCurve:    r.number("crown_curve", 0, 1),
			pavilionCurve: r.number("pavilion_curve", 0, 1),
			usualTable:    pair("table", 0, 95),
			usualCrown:    pair("crown", 0, 120),
			usualPavilion: pair("pavilion", 0, 200),
			usualStar:     pair("star", 0, 90), usualLower: pair("lower", 0, 95),
			spread: r.number("spread", 0.001, 0.2),
			source: r.text("source"), note: r.text("note"),
		})
	})
	return rows, err
}

// makeFor finds how the stone is made; diamonds have rows of their own where
// they are made otherwise.
func (e *Estimator) makeFor(d Dimensions) (makeRow, bool) {
	var found *makeRow
	for i := range e.makes {
		m := &e.makes[i]
		if m.shape != d.Shape || m.cut != d.Cut || (m.asDiamond && !d.AsDiamond) {
			continue
		}
		if found == nil || m.asDiamond {
			found = m
		}
	}
	if found == nil {
		return makeRow{}, false
	}
	return *found, true
}

// crownFacets are the facets above the girdle.
func (m makeRow) crownFacets(f *frame, p proportions) []rise {
	switch m.crown {
	case styleBrilliant, styleSingle:
		return brilliantCrown(f, p, m.crown == styleBrilliant)
	case styleStep:
		out := m.steps(f, p, "crown", steepening(m.crownCurve), 1-p.table, p.crown)
		return append(out, level("table", p.crown))
	case styleFacetDome:
		return m.steps(f, p, "crown", domed, 1, p.crown)
	case styleDome:
		return tangents(f, "dome", p.crown)
	}
	return []rise{level("top", p.crown)}
}

// pavilionFacets are the facets below the girdle.
func (m makeRow) pavilionFacets(f *frame, p proportions) []rise {
	switch m.pavilion {
	case styleBrilliant, styleSingle:
		return brilliantPavilion(f, p, m.pavilion == styleBrilliant)
	case styleStep:
		out := m.steps(f, p, "pavilion", steepening(m.pavilionCurve), 1-p.culet, p.pavilion)
		if p.culet > 0 {
			out = append(out, level("culet", p.pavilion))
		}
		return out
	case styleFacetDome:
		return m.steps(f, p, "pavilion", domed, 1, p.pavilion)
	case styleDome:
		return tangents(f, "base", p.pavilion)
	}
	return []rise{level("back", 0)}
}
