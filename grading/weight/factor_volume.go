package weight

import (
	"fmt"
	"math"

	"stonewrit/grading/phrase"
)

// byFactor gives the volume by the shape factor, with its uncertainty.
func (e *Estimator) byFactor(d Dimensions) (Candidate, error) {
	d = d.withDepth()
	rows, err := e.factorFor(d)
	if err != nil {
		return Candidate{}, err
	}
	f := step(rows, d.ratio())
	spread, note := f.widened(d)
	volume, budget := e.factorModel(d, f, spread).measure()
	c := Candidate{Method: ByFactor, Basis: f.basis(), Source: f.source, Volume: volume, Budget: budget}
	if note != "" {
		c.Warnings = append(c.Warnings, note)
	}
	return c, nil
}

// factorModel is the volume as factor x lengths, corrected for girdle and
// bulge, times the spread of the shape.
func (e *Estimator) factorModel(d Dimensions, f factorRow, spread float64) model {
	in, lengths := factorLengths(f.form, d)
	shape := len(in)
	in = append(in, input{"shape", Measure{1, spread}})
	if !f.girdle {
		return model{in, func(x []float64) float64 {
			body, _, _ := lengths(x)
			return perCarat * f.factor * body * x[shape]
		}}
	}
	girdle, bulge := shape+1, shape+2
	in = append(in, input{"girdle", e.girdle(d)}, input{"bulge", e.bulge(d)})
	share := girdleShare(f, d)
	return model{in, func(x []float64) float64 {
		body, across, deep := lengths(x)
		depth := deep / across
		edge := share / 100 * (x[girdle]/depth - usualGirdle/f.within(depth))
		return perCarat * f.factor * body * (1 + edge) * (1 + x[bulge]) * x[shape]
	}}
}

// factorLengths gives the lengths that enter a form, and a function that turns
// their values into the product of the form, the length that per cents are of,
// and the depth.
func factorLengths(form string, d Dimensions) ([]input, func(x []float64) (body, across, deep float64)) {
	if form == formCube {
		return cubeLengths(d)
	}
	if form == formLWD {
		in := []input{{"length", d.Length}, {"width", d.Width}, {"depth", d.Depth}}
		if d.NarrowWidth.Given() {
			w := d.NarrowWidth
			in[1].Measure = Measure{(d.Width.Value + w.Value) / 2, math.Hypot(d.Width.U, w.U) / 2}
		}
		return in, func(x []float64) (float64, float64, float64) { return x[0] * x[1] * x[2], x[1], x[2] }
	}
	if !d.Width.Given() {
		in := []input{{"diameter", d.Length}, {"depth", d.Depth}}
		return in, func(x []float64) (float64, float64, float64) { return x[0] * x[0] * x[1], x[0], x[1] }
	}
	in := []input{{"length", d.Length}, {"width", d.Width}, {"depth", d.Depth}}
	return in, func(x []float64) (float64, float64, float64) {
		m := (x[0] + x[1]) / 2
		return m * m * x[2], m, x[2]
	}
}

// cubeLengths takes the diameter alone, or the geometric mean of as many
// diameters as were measured: pi/6 of their product is an ellipsoid.
func cubeLengths(d Dimensions) ([]input, func(x []float64) (body, across, deep float64)) {
	in := []input{{"length", d.Length}}
	if d.Width.Given() {
		in = append(in, input{"width", d.Width})
	}
	if d.Depth.Given() {
		in = append(in, input{"depth", d.Depth})
	}
	n := len(in)
	return in, func(x []float64) (float64, float64, float64) {
		p := 1.0
		for _, v := range x[:n] {
			p *= v
		}
		p = math.Pow(p, 3/float64(n))
		return p, math.Cbrt(p), math.Cbrt(p)
	}
}

// within is the depth over width that is nearest to the given one among those
// that the factor is meant for.
func (f factorRow) within(depth float64) float64 {
	if f.high == 0 {
		return depth
	}
	return min(f.high, max(f.low, depth))
}

// usualDepth is the depth over width that the factor is meant for.
func (f factorRow) usualDepth() float64 {
	if f.high == 0 {
		return 0.6
	}
	return (f.low + f.high) / 2
}

// girdleShare is by what share the volume grows when the girdle grows by the
// depth of the stone, at the same total depth. A volume is girdle x area plus
// (depth - girdle) x area x fill, fill being how much of its prism crown and
// pavilion take up. With the fill of the whole stone known from its factor:
//
//	share = (1 - fill of crown and pavilion) / fill of the whole
//
// The same term corrects stones shallower or deeper than the factor is meant
// for, in which the girdle weighs more or less in proportion.
func girdleShare(f factorRow, d Dimensions) float64 {
	area := outlineArea(f.shape, d.ratio(), 1, 0) / d.ratio()
	if area == 0 {
		area = 0.75 // hearts, by area of the usual drawing
	}
	whole := perCarat * f.factor / area
	if f.form == formMean {
		r := d.ratio()
		whole *= (r + 1) * (r + 1) / (4 * r)
	}
	g := usualGirdle / 100 / f.usualDepth()
	fill := (whole - g) / (1 - g)
	return (1 - fill) / whole
}

// widened is the spread of the factor for this stone: half of what the depth
// lies outside the usual range, in proportion to it, is added, since nobody
// proved the factor there.
func (f factorRow) widened(d Dimensions) (float64, phrase.Line) {
	ref := d.reference()
	if f.high == 0 || !d.Depth.Given() || ref == 0 {
		return f.spread, ""
	}
	depth := d.Depth.Value / ref
	switch {
	case depth < f.low:
		return f.spread + (f.low-depth)/f.low/2, phrase.Say(
			"depth is %.0f %% of the width, shallower than the %.0f to %.0f %% that the factor is meant for; its spread is widened",
			100*depth, 100*f.low, 100*f.high)
	case depth > f.high:
		return f.spread + (depth-f.high)/f.high/2, phrase.Say(
			"depth is %.0f %% of the width, deeper than the %.0f to %.0f %% that the factor is meant for; its spread is widened",
			100*depth, 100*f.low, 100*f.high)
	}
	return f.spread, ""
}

// basis says in words what was multiplied.
func (f factorRow) basis() phrase.Line {
	of := map[string]phrase.Line{
		formLWD: "length x width x depth", formSquare: "diameter squared x depth",
		formMean: "mean diameter squared x depth", formCube: "diameter cubed",
	}[f.form]
	kind := phrase.Say("%[1]s %[2]s", phrase.Word(f.shape), phrase.Word(f.cut))
	if f.shape == f.cut {
		kind = phrase.Say("%s", phrase.Word(f.shape))
	}
	if f.asDiamond {
		kind = phrase.Say("%s, cut as diamond", kind)
	}
	return phrase.Say("%s x %s (%s)", trimFactor(f.factor), of, kind)
}

// trimFactor prints a factor with four decimals, or more where it has them.
func trimFactor(f float64) phrase.Figure {
	if math.Abs(f*1e4-math.Round(f*1e4)) < 1e-6 {
		return phrase.Figure(fmt.Sprintf("%.4f", f))
	}
	return phrase.Figure(fmt.Sprintf("%.6f", f))
}
