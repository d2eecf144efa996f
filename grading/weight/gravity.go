package weight

import "errors"

// perCarat turns mm3 times specific gravity into carats: a carat is 200 mg, a
// cubic millimetre of specific gravity 1 weighs 1 mg.
const perCarat = 200

// ErrGravity says that a range of specific gravity is empty, turned round or
// outside 0.5 to 25.
var ErrGravity = errors.New("specific gravity outside 0.5 to 25, or low above high")

// A Gravity is a range of specific gravity, both ends included. Inside it
// every value counts as equally likely.
type Gravity struct {
	Low, High float64
}

// hull is the narrowest range that holds all of the given ones: a stone that
// may be several materials has the specific gravity of any.
func hull(ranges []Gravity) (Gravity, error) {
	if len(ranges) == 0 {
		return Gravity{}, ErrGravity
	}
	out := ranges[0]
	for _, g := range ranges {
		if !(g.Low >= 0.5 && g.High <= 25 && g.Low <= g.High) {
			return Gravity{}, ErrGravity
		}
		out.Low, out.High = min(out.Low, g.Low), max(out.High, g.High)
	}
	return out, nil
}

// Carats is the weight of a volume in mm3 at a specific gravity.
func Carats(volume, gravity Measure) Measure {
	m := product(volume, gravity)
	return Measure{m.Value / perCarat, m.U / perCarat}
}

// ImpliedGravity is the specific gravity of a stone of the given volume in mm3
// that weighs so many carats. It is weak evidence: its uncertainty is the
// relative uncertainty of the volume, commonly some per cent.
func ImpliedGravity(volume, carats Measure) Measure {
	if !volume.Given() || !carats.Given() {
		return Measure{}
	}
	inverse := Measure{perCarat / volume.Value, perCarat * volume.U / (volume.Value * volume.Value)}
	return product(inverse, carats)
}
