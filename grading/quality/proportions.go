package quality

import (
	"stonewrit/grading/stone"
)

// A Proportion is one proportion of a cut stone in per cent of its width, for a
// round stone of its mean girdle diameter (ISO 24016, 8.3.3).
type Proportion struct {
	Name    string // table, crown height, pavilion depth, total depth, length to width
	Percent float64
	Worked  bool // worked out here from millimetres, not stated in the file
}

// Proportions lists the proportions that the file states and those that its
// dimensions give. Whether they agree with one another is told by the package
// that works out the weight.
func Proportions(z stone.Size) []Proportion {
	var list []Proportion
	for _, p := range []struct {
		name string
		r    stone.Ratio
	}{{"table", z.Table}, {"crown height", z.CrownHeight}, {"pavilion depth", z.PavilionDepth}, {"total depth", z.TotalDepth}} {
		if p.r.Given() {
			list = append(list, Proportion{p.name, p.r.Float(), false})
		}
	}
	width, length, depth := middle(z.Width), middle(z.Length), middle(z.Depth)
	if d := middle(z.Diameter); d > 0 {
		width = d
	}
	if width > 0 && depth > 0 && !z.TotalDepth.Given() {
		list = append(list, Proportion{"total depth", 100 * depth / width, true})
	}
	if width > 0 && length > 0 {
		list = append(list, Proportion{"length to width", 100 * length / width, true})
	}
	return list
}

// middle is the mean of the least and the greatest of a list of lengths in mm,
// 0 for none.
func middle(list stone.List[stone.Length]) float64 {
	if len(list.Items) == 0 {
		return 0
	}
	low, high := list.Items[0].Float(), list.Items[0].Float()
	for _, l := range list.Items {
		low, high = min(low, l.Float()), max(high, l.Float())
	}
	return (low + high) / 2
}
