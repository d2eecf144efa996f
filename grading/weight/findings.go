package weight

import "stonewrit/grading/phrase"

// A Slip is the kind of mistake that explains a contradiction best.
type Slip string

// The slips, by the words that are printed.
const (
	Missing         Slip = "not measured"
	Swapped         Slip = "two dimensions swapped"
	HalfOrDouble    Slip = "radius taken for diameter, or the other way round"
	WrongRow        Slip = "figure of another row"
	DecimalShift    Slip = "decimal point shifted"
	DigitSlip       Slip = "digit misread"
	PercentAgainst  Slip = "per cent contradicts the millimetres"
	PercentsAgainst Slip = "proportions contradict one another"
	OutOfShape      Slip = "dimension does not fit the shape"
	WeightAgainst   Slip = "weight does not fit the dimensions"
)

// A Finding is one contradiction among the figures of a stone.
type Finding struct {
	// Dimension is the key of the stone file: diameter, length, width, depth, total_depth,
	// table, crown_angle, crown_height, pavilion_angle, pavilion_depth ... or weight.
	Dimension string
	Slip      Slip
	Message   phrase.Line // what does not fit, with both figures, and what would
}

// A limit bounds a figure.
type limit struct{ low, high float64 }

func (l limit) holds(v float64) bool { return l.low <= v && v <= l.high }

func readLimits(src []byte) (map[string]limit, error) {
	out := map[string]limit{}
	err := eachRow("limits.csv", src, func(r *record) {
		l := limit{r.number("low", 0, 200), r.number("high", 0, 200)}
		if l.low > l.high {
			r.fail("low", "above high")
		}
		out[r.text("name")] = l
	})
	return out, err
}
