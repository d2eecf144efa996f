package weight

import (
	"math"

	"stonewrit/grading/phrase"
)

// crown: table, crown angle and crown height are three views of two numbers.
func (e *Estimator) crown(s stone) (Finding, bool) {
	if !s.Table.Given() || !s.CrownAngle.Given() || !s.CrownHeight.Given() {
		return Finding{}, false
	}
	made, _ := propagate([]input{{"", withU(s.Table)}, {"", withU(s.CrownAngle)}},
		func(x []float64) float64 { return crownFromAngle(x[0], x[1]) })
	if e.together(made, withU(s.CrownHeight)) {
		return Finding{}, false
	}
	return Finding{"crown_height", PercentsAgainst, phrase.Say("table %s and crown angle %s make a crown height of %.1f %%, not %s",
		pc(s.Table), degree(s.CrownAngle), made.Value, pc(s.CrownHeight))}, true
}

// pavilion: angle and depth are two views of one number.
func (e *Estimator) pavilion(s stone) (Finding, bool) {
	if !s.PavilionAngle.Given() || !s.PavilionDepth.Given() {
		return Finding{}, false
	}
	made, _ := propagate([]input{{"", s.Culet}, {"", withU(s.PavilionAngle)}},
		func(x []float64) float64 { return pavilionFromAngle(x[0], x[1]) })
	if e.together(made, withU(s.PavilionDepth)) {
		return Finding{}, false
	}
	return Finding{"pavilion_depth", PercentsAgainst, phrase.Say("pavilion angle %s makes a pavilion depth of %.1f %%, not %s",
		degree(s.PavilionAngle), made.Value, pc(s.PavilionDepth))}, true
}

// sum: crown, girdle and pavilion make the total depth.
func (e *Estimator) sum(s stone) (Finding, bool) {
	crown, pavilion := s.crownShare(), s.pavilionShare()
	total := s.TotalDepth
	if s.Depth.Given() {
		total = s.depthPercent()
	}
	if !crown.Given() || !pavilion.Given() || !total.Given() {
		return Finding{}, false
	}
	g := e.girdle(s.Dimensions)
	made := Measure{crown.Value + g.Value + pavilion.Value, math.Sqrt(crown.U*crown.U + g.U*g.U + pavilion.U*pavilion.U)}
	if e.together(made, total) {
		return Finding{}, false
	}
	return Finding{"depth", PercentsAgainst, phrase.Say("crown %.1f %%, girdle %.1f %% and pavilion %.1f %% make a total depth of %.1f %%, not %.1f %%",
		crown.Value, g.Value, pavilion.Value, made.Value, total.Value)}, true
}

// crownShare is the crown height from whichever figure tells it.
func (s stone) crownShare() Measure {
	if s.CrownHeight.Given() || !s.CrownAngle.Given() || !s.Table.Given() {
		if s.CrownHeight.Given() {
			return withU(s.CrownHeight)
		}
		return Measure{}
	}
	m, _ := propagate([]input{{"", withU(s.Table)}, {"", withU(s.CrownAngle)}},
		func(x []float64) float64 { return crownFromAngle(x[0], x[1]) })
	return m
}

// pavilionShare is the pavilion depth from whichever figure tells it.
func (s stone) pavilionShare() Measure {
	if s.PavilionDepth.Given() {
		return withU(s.PavilionDepth)
	}
	if !s.PavilionAngle.Given() {
		return Measure{}
	}
	m, _ := propagate([]input{{"", s.Culet}, {"", withU(s.PavilionAngle)}},
		func(x []float64) float64 { return pavilionFromAngle(x[0], x[1]) })
	return m
}

// together tells whether two figures for one height agree.
func (e *Estimator) together(a, b Measure) bool {
	return math.Abs(a.Value-b.Value) <= e.limits["proportion"].high*math.Hypot(a.U, b.U)
}

// weight: the recorded weight lies near the estimate.
func (e *Estimator) weight(s stone) (Finding, bool) {
	if !s.carats.Given() || s.gravity.Low <= 0 {
		return Finding{}, false
	}
	c, err := e.byFittedSolid(s.Dimensions)
	if err != nil {
		if c, err = e.byFactor(s.Dimensions); err != nil {
			return Finding{}, false
		}
	}
	est := Carats(c.Volume, rectangular(s.gravity.Low, s.gravity.High))
	u := math.Hypot(est.U, s.carats.U)
	if math.Abs(est.Value-s.carats.Value) <= e.limits["weight"].high*u {
		return Finding{}, false
	}
	return Finding{"weight", WeightAgainst, phrase.Say("weight %.2f ct, but the dimensions make %.2f ct with a standard uncertainty of %.2f ct",
		s.carats.Value, est.Value, u)}, true
}

// ranges: no figure is impossible by itself.
func (e *Estimator) ranges(s stone) []Finding {
	var out []Finding
	for _, f := range s.proportions() {
		l := e.limits[f.name]
		if !f.Given() || l.holds(f.Value) {
			continue
		}
		slip, message := OutOfShape, phrase.Say("%.4g is outside %g to %g", f.Value, l.low, l.high)
		for _, by := range []float64{10, 0.1} {
			if l.holds(f.Value * by) {
				slip, message = DecimalShift, phrase.Say("%.4g is outside %g to %g; %.4g?", f.Value, l.low, l.high, f.Value*by)
			}
		}
		out = append(out, Finding{f.name, slip, message})
	}
	return out
}

// proportions lists the figures that are not lengths, by their keys.
func (d Dimensions) proportions() []input {
	return []input{
		{"table", d.Table}, {"crown_angle", d.CrownAngle}, {"crown_height", d.CrownHeight},
		{"pavilion_angle", d.PavilionAngle}, {"pavilion_depth", d.PavilionDepth}, {"girdle", d.GirdlePercent},
		{"total_depth", d.TotalDepth}, {"star", d.Star}, {"lower_halves", d.LowerHalves}, {"culet", d.Culet},
	}
}
