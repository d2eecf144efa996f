package main

import "math"

// gem is a clear faceted stone. Light is followed through it by refraction and
// reflection at its facets (Snell, Fresnel) and loses colour on its way (Beer).
type gem struct {
	body   solid
	middle vec
	reach  float64 // nothing of it is farther from middle
	index  float64
	fire   float64 // difference of index between blue and red light
	loss   vec     // of light, per millimetre
	below  float64 // brightness seen under the stone
}

// absorbing gives the loss for which white light has the colour through left
// after the given way.
func absorbing(through vec, way float64) vec {
	return vec{-math.Log(through.x), -math.Log(through.y), -math.Log(through.z)}.times(1 / way)
}

func (g *gem) hit(o, d vec) (float64, vec, bool) {
	if off := o.sub(g.middle); off.sub(d.times(off.dot(d))).length() > g.reach {
		return 0, vec{}, false
	}
	near, far, n := math.Inf(-1), math.Inf(1), vec{}
	for _, p := range g.body {
		slope, gap := p.n.dot(d), p.d-p.n.dot(o)
		switch t := gap / slope; {
		case slope == 0 && gap < 0:
			return 0, vec{}, false
		case slope < 0 && t > near:
			near, n = t, p.n
		case slope > 0 && t < far:
			far = t
		}
	}
	if near >= far || near < 0 {
		return 0, vec{}, false
	}
	at := o.add(d.times(near))
	surface := light(d.mirrored(n), g.below).times(0.5) // lamps are turned so as not to glare
	if g.fire == 0 {
		return near, g.through(at, d, n, g.index, surface), true
	}
	red := g.through(at, d, n, g.index-g.fire/2, surface)
	green := g.through(at, d, n, g.index, surface)
	blue := g.through(at, d, n, g.index+g.fire/2, surface)
	return near, vec{red.x, green.y, blue.z}, true
}

// through adds up what leaves the stone towards the onlooker at a place.
func (g *gem) through(at, d, n vec, index float64, surface vec) vec {
	inner, share := refract(d, n, 1/index)
	seen := surface.times(share)
	left := vec{1, 1, 1}.times(1 - share)
	for range 14 {
		way, wall := g.leave(at, inner)
		at = at.add(inner.times(way))
		left = left.filter(g.kept(way))
		out, share := refract(inner, wall.times(-1), index)
		if share < 1 {
			seen = seen.add(light(out, g.below).filter(left).times(1 - share))
		}
		left = left.times(share)
		if left.x+left.y+left.z < 0.02 {
			return seen
		}
		inner = inner.mirrored(wall)
	}
	return seen.add(left.times(0.25)) // light still on its way: a middle brightness
}

// kept is the share of each colour that is left after way.
func (g *gem) kept(way float64) vec {
	return vec{math.Exp(-g.loss.x * way), math.Exp(-g.loss.y * way), math.Exp(-g.loss.z * way)}
}

func (g *gem) leave(o, d vec) (way float64, wall vec) {
	way = math.Inf(1)
	for _, p := range g.body {
		if slope := p.n.dot(d); slope > 1e-9 {
			if t := (p.d - p.n.dot(o)) / slope; t < way && t > -1e-6 {
				way, wall = t, p.n
			}
		}
	}
	if math.IsInf(way, 1) {
		return 0, d.times(-1)
	}
	return math.Max(way, 0), wall
}

// refract bends d at a surface whose normal n looks against it, ratio being the
// index in front over the index behind, and gives the share reflected.
func refract(d, n vec, ratio float64) (bent vec, reflected float64) {
	c := -d.dot(n)
	k := 1 - ratio*ratio*(1-c*c)
	if k <= 0 {
		return d, 1
	}
	e := math.Sqrt(k)
	across := (ratio*c - e) / (ratio*c + e)
	along := (c - ratio*e) / (c + ratio*e)
	return d.times(ratio).add(n.times(ratio*c - e)), (across*across + along*along) / 2
}
