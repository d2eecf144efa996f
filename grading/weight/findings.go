package weight

// A Slip is the kind of mistake that explains a contradiction best.
type Slip string

// The slips, by the words that are printed.
const (
	Missing        Slip = "not measured"
	Swapped        Slip = "length and width swapped"
	HalfOrDouble   Slip = "radius taken for diameter, or the other way round"
	WrongRow       Slip = "figure of another row"
	DecimalShift   Slip = "decimal point shifted"
	DigitSlip      Slip = "digit misread"
	PercentAgainst Slip = "per cents contradict the millimetres"
	PercentsAlone  Slip = "per cents contradict one another"
	OutOfShape     Slip = "dimension does not fit the shape"
	WeightAgainst  Slip = "weight does not fit the dimensions"
)

// A Finding is one contradiction among the figures of a stone.
type Finding struct {
	Dimension string // key of the stone file: "length", "width", "depth", "total_depth", "crown_angle" ...; "weight"
	Slip      Slip
	Message   string // what does not fit, with both figures, and what would
}
