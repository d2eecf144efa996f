package weight

import "stonewrit/grading/phrase"

// A Body is the cut of a stone as a solid to be drawn, with the lengths that
// it was built from, in millimetres.
type Body struct {
	Solid
	Table                   float64 // across
	Crown, Girdle, Pavilion float64 // heights at the mains
	// Assumed names the figures that were not measured and are usual ones.
	Assumed []string
}

// Body builds the stone. Heights are reconciled with the total depth first, so
// that the drawing has the measured depth. Smooth domes are drawn with tangent
// planes and are a little fuller than the volume that is reckoned with. The
// error is ErrSolid for a shape and cut that no body is described for, or
// ErrDimensions.
func (e *Estimator) Body(d Dimensions) (Body, error) {
	m, f, err := e.solidFigures(d)
	if err != nil {
		return Body{}, err
	}
	if m.crown == styleCone {
		return Body{}, unable(ErrSolid, "proportions do not make a solid: a %s %s is not drawn", phrase.Word(d.Shape), phrase.Word(d.Cut))
	}
	x := make([]float64, len(f.in))
	for i, q := range f.in {
		x[i] = q.Value
	}
	p := f.proportionsAt(x, d.Shape)
	s, err := m.body(p)
	if err != nil {
		return Body{}, err
	}
	return Body{
		Solid: s, Table: p.table * p.reference,
		Crown: p.crown, Girdle: p.girdle, Pavilion: p.pavilion, Assumed: f.assumed,
	}, nil
}
