package main

import "math"

// opaline paints play of colour: space is divided into grains around scattered
// seeds, each with its own stack of layers, so each flashes in its own colour.
func opaline(size float64) func(at, n, ahead vec) vec {
	milk := vec{0.72, 0.76, 0.80}
	return func(at, n, ahead vec) vec {
		c := milk.times(0.36 + 0.56*lit(n))
		for layer, weight := range []float64{0.75, 0.8, 0.85} {
			grain, margin := grainAt(at.times((1+0.8*float64(layer))/size), uint32(layer))
			flash := step(0.35, 0.85, grain.chance(1)) * step(0, 0.3, margin)
			stripes := 0.8 + 0.2*math.Sin(at.dot(grain.direction())*26/size)
			c = c.mix(grain.hue().times(0.45+0.6*lit(n)), flash*weight*stripes)
		}
		return c.add(polish(n, ahead, 0.05))
	}
}

// grain is named by the cell of space in which its seed lies.
type grain struct{ x, y, z, layer uint32 }

// chance is a number from 0 to 1 that depends on the grain and on which alone
// (integer mixing, from memory: the finisher of a common hash).
func (g grain) chance(which uint32) float64 {
	h := g.x*0x9e3779b1 ^ g.y*0x85ebca77 ^ g.z*0xc2b2ae3d ^ g.layer*0x27d4eb2f ^ which*0x165667b1
	for range 2 {
		h ^= h >> 16
		h *= 0x7feb352d
		h ^= h >> 15
		h *= 0x846ca68b
	}
	return float64(h^h>>16) / math.MaxUint32
}

func (g grain) direction() vec {
	return vec{g.chance(5) - 0.5, g.chance(6) - 0.5, g.chance(7) - 0.5}.unit()
}

// hue runs from blue over green, most often, to orange and red.
func (g grain) hue() vec {
	hues := []vec{{0.10, 0.25, 0.95}, {0.05, 0.60, 0.85}, {0.05, 0.80, 0.35}, {0.35, 0.90, 0.15}, {1, 0.55, 0.08}, {1, 0.16, 0.08}}
	at := g.chance(8) * float64(len(hues)-1)
	i := min(int(at), len(hues)-2)
	return hues[i].mix(hues[i+1], at-float64(i))
}

// grainAt finds the grain around a place and how far its border is.
func grainAt(p vec, layer uint32) (near grain, margin float64) {
	first, second := math.Inf(1), math.Inf(1)
	fx, fy, fz := math.Floor(p.x), math.Floor(p.y), math.Floor(p.z)
	for i := range 27 {
		x, y, z := fx+float64(i%3-1), fy+float64(i/3%3-1), fz+float64(i/9-1)
		g := grain{uint32(int32(x)), uint32(int32(y)), uint32(int32(z)), layer}
		d := vec{x + g.chance(2), y + g.chance(3), z + g.chance(4)}.sub(p).length()
		switch {
		case d < first:
			near, first, second = g, d, first
		case d < second:
			second = d
		}
	}
	return near, second - first
}
