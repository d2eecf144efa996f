package weight

import "math"

// A Measure is a value with its standard uncertainty (k = 1), both in the same
// unit. The zero Measure means "not measured".
type Measure struct {
	Value, U float64
}

// Given tells whether the measure holds a usable figure.
func (m Measure) Given() bool { return m.Value > 0 && !math.IsInf(m.Value, 1) }

// Low is the lower end of the interval that holds the truth 95 times in 100,
// never below zero. It takes k = 2.
func (m Measure) Low() float64 { return max(0, m.Value-coverage*m.U) }

// High is the upper end of the interval that Low begins.
func (m Measure) High() float64 { return m.Value + coverage*m.U }

// Dimensions are the measured figures of one stone (of one of Count like
// stones). Lengths are in millimetres, angles in degrees. Per cents are of the
// mean girdle diameter for a round stone and of the width for every other.
//
// Shape, Cut, Girdle and Bulge take the words of the stone file; "" is not
// recorded. Only Shape, Cut and the lengths are needed; a round stone has its
// greatest diameter as Length and its least as Width, and one diameter alone
// goes into Length. A bead may have Length alone.
type Dimensions struct {
	Shape, Cut string
	// AsDiamond says that the stone is cut as diamonds are, to closer limits
	// than coloured stones: narrower spreads and the fitted solid then apply.
	AsDiamond bool

	Length, Width, Depth Measure
	NarrowWidth          Measure // narrow end of a tapered baguette, Width being the broad one

	Table         Measure // per cent
	CrownAngle    Measure // degrees, at the mains; length sides of a step cut
	CrownHeight   Measure // per cent
	PavilionAngle Measure // degrees
	PavilionDepth Measure // per cent
	GirdlePercent Measure // per cent, at the mains
	TotalDepth    Measure // per cent
	Star          Measure // per cent, length of the star facets
	LowerHalves   Measure // per cent, length of the lower halves
	Culet         Measure // per cent

	Girdle string // extremely thin, very thin, thin, medium, slightly thick, thick, very thick, extremely thick
	Bulge  string // none, slight, moderate, strong

	Count int // like stones measured together; 0 is 1
}

// DimensionU is the standard uncertainty of a length, in millimetres, read
// from a gauge with the given readability: readability / sqrt 3, at least
// 0.01 mm for a loose stone, 0.05 mm in a setting and 0.15 mm where the setting
// hides the dimension. Common practice, no source.
func DimensionU(readability float64, inSetting, hidden bool) float64 {
	least := 0.01
	switch {
	case hidden:
		least = 0.15
	case inSetting:
		least = 0.05
	}
	return max(least, readability/math.Sqrt(3))
}

// meanDiameter is the mean of length and width; of the length alone when no
// width was taken.
func (d Dimensions) meanDiameter() float64 {
	if !d.Width.Given() {
		return d.Length.Value
	}
	return (d.Length.Value + d.Width.Value) / 2
}

// reference is the length that per cents are of.
func (d Dimensions) reference() float64 {
	if d.Shape == "round" || !d.Width.Given() {
		return d.meanDiameter()
	}
	return d.Width.Value
}

// withDepth fills in a depth that was given as a per cent only.
func (d Dimensions) withDepth() Dimensions {
	if ref := d.reference(); !d.Depth.Given() && d.TotalDepth.Given() && ref > 0 {
		d.Depth = product(Measure{ref, d.Length.U}, withU(d.TotalDepth))
		d.Depth = Measure{d.Depth.Value / 100, d.Depth.U / 100}
	}
	return d
}

// ratio is length over width, at least 1.
func (d Dimensions) ratio() float64 {
	if !d.Width.Given() || d.Shape == "round" {
		return 1
	}
	w := d.Width.Value
	if d.NarrowWidth.Given() {
		w = (w + d.NarrowWidth.Value) / 2
	}
	return max(1, d.Length.Value/w)
}

// count is the number of stones, at least one.
func (d Dimensions) count() float64 { return float64(max(1, d.Count)) }
