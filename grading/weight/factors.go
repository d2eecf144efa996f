package weight

import (
	"errors"
	"slices"

	"stonewrit/grading/phrase"
)

// ErrNoFactor says that the table has no factor for a shape and cut. The
// message names what it has that comes nearest.
var ErrNoFactor = errors.New("no shape factor")

// The forms of a factor: which lengths it is multiplied by.
const (
	formLWD    = "LWD"    // length x width x depth
	formSquare = "d2D"    // mean diameter squared x depth
	formMean   = "mean2D" // mean of length and width, squared, x depth
	formCube   = "d3"     // mean diameter cubed; no depth needed
)

// usualGirdle is the girdle, in per cent, that the trade's factors are for.
const usualGirdle = 2.5

// A factorRow is a factor for one outline and cut at one ratio of length to
// width. Rows that differ in ratio alone are steps of one factor.
type factorRow struct {
	shape, cut string
	asDiamond  bool
	form       string
	ratio      float64
	factor     float64 // carat per mm3 and specific gravity
	spread     float64 // relative standard uncertainty
	low, high  float64 // usual depth over width; both 0 where it plays no part
	girdle     bool    // has a girdle that adds weight
	source     string
	note       string
}

func readFactors(src []byte) ([]factorRow, error) {
	var rows []factorRow
	err := eachRow("factors.csv", src, func(r *record) {
		row := factorRow{
			shape: r.text("shape"), cut: r.text("cut"), form: r.text("form"),
			asDiamond: r.text("population") == "diamond",
			ratio:     r.number("ratio", 1, 6),
			factor:    r.number("factor", 0.0005, 0.005),
			spread:    r.number("spread", 0.001, 0.2),
			low:       r.number("depth_low", 0, 2), high: r.number("depth_high", 0, 2),
			girdle: r.text("girdle") == "yes", source: r.text("source"), note: r.text("note"),
		}
		if row.low > row.high {
			r.fail("depth_low", "above depth_high")
		}
		if !slices.Contains([]string{formLWD, formSquare, formMean, formCube}, row.form) {
			r.fail("form", "unknown")
		}
		rows = append(rows, row)
	})
	return rows, err
}

// usable tells whether the dimensions that the form needs were measured.
func (f factorRow) usable(d Dimensions) bool {
	switch f.form {
	case formCube:
		return d.Length.Given()
	case formSquare:
		return d.Length.Given() && d.Depth.Given()
	}
	return d.Length.Given() && d.Width.Given() && d.Depth.Given()
}

// factorFor finds the steps of the factor for the stone, in order of ratio. The
// factor of diamonds goes before the common one if the stone is cut as one, and
// one that uses the depth before one that does not.
func (e *Estimator) factorFor(d Dimensions) ([]factorRow, error) {
	var found []factorRow
	for _, diamond := range []bool{true, false} {
		if diamond && !d.AsDiamond {
			continue
		}
		for i := range e.factors {
			f := &e.factors[i]
			if f.shape != d.Shape || f.cut != d.Cut || f.asDiamond != diamond || !f.usable(d) {
				continue
			}
			if len(found) > 0 && (f.form != found[0].form || f.asDiamond != found[0].asDiamond) {
				continue
			}
			found = append(found, *f)
		}
	}
	if len(found) > 0 {
		return found, nil
	}
	if e.hasFactor(d.Shape, d.Cut) {
		return nil, unable(ErrNoFactor, "no shape factor for %s %s without %s", phrase.Word(d.Shape), phrase.Word(d.Cut), missing(d))
	}
	return nil, unable(ErrNoFactor, "no shape factor for %s %s; the table has %s",
		phrase.Word(d.Shape), phrase.Word(d.Cut), phrase.Commas(e.nearest(d)...))
}

func (e *Estimator) hasFactor(shape, cut string) bool {
	return slices.ContainsFunc(e.factors, func(f factorRow) bool { return f.shape == shape && f.cut == cut })
}

// missing names the lengths that were not measured.
func missing(d Dimensions) phrase.Line {
	var out []string
	for _, m := range []input{{"length", d.Length}, {"width", d.Width}, {"depth", d.Depth}} {
		if !m.Given() {
			out = append(out, m.name)
		}
	}
	return phrase.And(phrase.Words(out)...)
}

// nearest lists what the table has for the same shape, or else for the same
// cut, or else the shapes it knows.
func (e *Estimator) nearest(d Dimensions) []phrase.Line {
	both := func(f factorRow) phrase.Line {
		return phrase.Say("%[1]s %[2]s", phrase.Word(f.shape), phrase.Word(f.cut))
	}
	for _, near := range []func(f factorRow) (phrase.Line, bool){
		func(f factorRow) (phrase.Line, bool) { return both(f), f.shape == d.Shape },
		func(f factorRow) (phrase.Line, bool) { return both(f), f.cut == d.Cut },
		func(f factorRow) (phrase.Line, bool) { return phrase.Say("%s", phrase.Word(f.shape)), true },
	} {
		var out []phrase.Line
		for _, f := range e.factors {
			if name, ok := near(f); ok && !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
		if len(out) > 0 {
			return out
		}
	}
	return nil
}

// Combinations lists every shape and cut that has a factor, in the order of the
// table.
func (e *Estimator) Combinations() [][2]string {
	var out [][2]string
	for _, f := range e.factors {
		if c := [2]string{f.shape, f.cut}; !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}

// step interpolates the factor and its spread at a ratio between the steps. It
// stays level beyond the first and last.
func step(rows []factorRow, ratio float64) factorRow {
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		if ratio < a.ratio || ratio > b.ratio {
			continue
		}
		t := (ratio - a.ratio) / (b.ratio - a.ratio)
		a.factor += t * (b.factor - a.factor)
		a.spread += t * (b.spread - a.spread)
		return a
	}
	if ratio <= rows[0].ratio {
		return rows[0]
	}
	return rows[len(rows)-1]
}
