package weight

import "math"

// ellipsoidZone is the volume in mm3 of the part of an ellipsoid with half
// axes a, b and c that lies between the planes z = from and z = to, z being
// measured from its middle along c. Closed form: the section at z has the area
// pi a b (1 - z2/c2).
func ellipsoidZone(a, b, c, from, to float64) float64 {
	from, to = max(-c, from), min(c, to)
	if from >= to {
		return 0
	}
	whole := func(z float64) float64 { return z - z*z*z/(3*c*c) }
	return math.Pi * a * b * (whole(to) - whole(from))
}

// coneFrustum is the volume in mm3 of an elliptic cone of half axes a and b at
// its base, cut off at the height h where it has shrunk to the share top.
func coneFrustum(a, b, h, top float64) float64 {
	return math.Pi * a * b * h * (1 + top + top*top) / 3
}

// domeArea is the volume of a dome over its height: two thirds of the area
// of the outline, whatever it is, when the level sections shrink as those of
// half an ellipsoid do.
func domeArea(o outline) float64 { return o.area() * ellipsoidZone(1, 1, 1, 0, 1) / math.Pi }

// dropVolume is a drop of given length, width and depth: a cone on half an
// ellipsoid that is as long as half the width.
func dropVolume(length, width, depth float64) float64 {
	head := min(width/2, length)
	a, b := width/2, depth/2
	return ellipsoidZone(a, b, head, 0, head) + coneFrustum(a, b, length-head, 0)
}

// Domes are drawn with so many planes up and around.
const (
	domeRows    = 6
	domeColumns = 32
)

// tangents are planes that touch half an ellipsoid of the given height on the
// outline; they serve to draw it.
func tangents(f frame, name string, height, edge, up float64) []halfSpace {
	out := []halfSpace{horizontal(name, edge+up*height, up)}
	for i := range domeRows {
		rise, run := math.Sincos(math.Pi / 2 * (float64(i) + 0.5) / domeRows)
		for k := range domeColumns {
			phi := 2 * math.Pi * float64(k) / domeColumns
			// run x radius + rise x z / height = 1
			slope := height * run / rise
			out = append(out, f.plane(name, phi, slope, height/rise+up*edge, up))
		}
	}
	return out
}
