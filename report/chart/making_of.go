package chart

import "stonewrit/grading/weight"

// MakingOf finds what can be drawn of a cut: its solid, or the outline by a
// solid of another cut of the same shape.
func MakingOf(e *weight.Estimator, d weight.Dimensions) Making {
	m := Making{Dimensions: d}
	if body, err := e.Body(d); err == nil {
		m.Body = &body
		return m
	}
	for _, cut := range []string{"brilliant", "step", "mixed", "cabochon"} {
		as := weight.Dimensions{Shape: d.Shape, Cut: cut, Length: d.Length, Width: d.Width, NarrowWidth: d.NarrowWidth}
		if !as.Width.Given() {
			as.Width = as.Length
		}
		as.Depth = weight.Measure{Value: as.Width.Value * 0.6, U: as.Width.U} // any depth does: the rim is used alone
		if body, err := e.Body(as); err == nil {
			m.Rim = &body
			return m
		}
	}
	return m
}
