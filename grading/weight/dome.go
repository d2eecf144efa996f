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

// domeFill is the volume of a dome over that of its prism: two thirds,
// whatever the outline, when the level sections shrink as those of half an
// ellipsoid do.
func domeFill() float64 { return ellipsoidZone(1, 1, 1, 0, 1) / math.Pi }

// dropVolume is a drop of given length, width and depth: a cone on half an
// ellipsoid that is as long as half the width.
func dropVolume(length, width, depth float64) float64 {
	head := min(width/2, length)
	a, b := width/2, depth/2
	return ellipsoidZone(a, b, head, 0, head) + coneFrustum(a, b, length-head, 0)
}

// domeRows is the number of planes that a dome is drawn with from its base to
// its top.
const domeRows = 6

// tangents are planes that touch half an ellipsoid of the given height on the
// outline; they serve to draw it.
func tangents(f *frame, name string, height float64) []rise {
	out := []rise{level(name, height)}
	for i := range domeRows {
		up, run := math.Sincos(math.Pi / 2 * (float64(i) + 0.5) / domeRows)
		for way := range waysAround {
			// run x radius + up x z / height = 1
			out = append(out, f.facet(name, way, height/up, height*run/up))
		}
	}
	return out
}
