package main

import "math"

// light is the studio seen from the stone in direction d: a bright ring of lamps
// around a dim zenith, where the onlooker's head is, a stronger lamp at the upper
// left, and a pale table below whose brightness is given.
func light(d vec, below float64) vec {
	if d.z < 0 {
		return vec{0.98, 0.99, 1}.times(below * (0.75 + 0.25*-d.z))
	}
	around := math.Atan2(d.y, d.x)
	rise := math.Asin(clamp(d.z, -1, 1))
	ring := step(0.02, 0.4, rise) * (1 - 0.85*step(1.22, 1.46, rise))
	lamps := 0.22 + 0.95*step(-0.25, 0.6, math.Sin(5*around+0.6)*math.Cos(2.6*rise+around))
	key := math.Pow(math.Max(0, d.dot(lampAt())), 14)
	fill := math.Pow(math.Max(0, d.dot(vec{0.75, -0.28, 0.60})), 20)
	return vec{1, 1, 0.99}.times(0.10 + 1.15*ring*lamps + 2.6*key + 1.2*fill)
}

// display turns linear light into a display value from 0 to 255, with a soft
// shoulder for highlights and the sRGB curve (IEC 61966-2-1).
func display(v float64) uint8 {
	if v > 0.6 {
		v = 0.6 + 0.4*(1-math.Exp(-(v-0.6)/0.4))
	}
	v = clamp(v, 0, 1)
	if v <= 0.0031308 {
		v *= 12.92
	} else {
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * v))
}
