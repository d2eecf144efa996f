package weight

import "math"

// outlineArea is the area in mm2 that the curve of an outline encloses; its
// arguments are those of newOutline. Closed forms of plane geometry. It is 0
// for a shape that has no outline.
func outlineArea(shape string, length, width, end float64) float64 {
	a, b := length/2, width/2
	switch shape {
	case "round", "oval", "bead", "half moon":
		// A half moon is half of an ellipse that is twice as wide.
		return math.Pi * a * b
	case "cushion":
		return superellipseArea(a, b, cushionPower)
	case "pear", "drop":
		head, tail := pearEnds(a, b)
		return math.Pi/2*head*b + 2*arcArea(tail, b)
	case "marquise":
		return 4 * arcArea(a, b)
	case "curved triangle":
		// Constant width 1 encloses (pi - sqrt 3)/2.
		return (math.Pi - math.Sqrt(3)) * 2 * a * b
	case "tapered baguette":
		return length * (width + narrow(width, end)) / 2
	}
	return straight(shape, a, b).area()
}

// superellipseArea is the area that |x/a|^p + |y/b|^p = 1 encloses.
func superellipseArea(a, b, p float64) float64 {
	g := math.Gamma(1 + 1/p)
	return 4 * a * b * g * g / math.Gamma(1+2/p)
}

// arcArea is the area under the arc that arcHeight describes, from its height b
// down to the axis at reach: a sector of the circle less a triangle, or a
// quarter of an ellipse.
func arcArea(reach, b float64) float64 {
	if reach <= b {
		return math.Pi / 4 * reach * b
	}
	r := arcRadius(reach, b)
	return (r*r*math.Asin(reach/r) - reach*(r-b)) / 2
}
