package main

import "math"

// smooth is a body without facets: half an ellipsoid above, another below. Paint
// gives the light from a place on it, relative to its middle.
type smooth struct {
	middle       vec
	a, b         float64 // half length along x, half width along y
	above, below float64 // height above and depth below the girdle
	paint        func(at, n, ahead vec) vec
}

func ball(middle vec, radius float64, paint func(at, n, ahead vec) vec) *smooth {
	return &smooth{middle, radius, radius, radius, radius, paint}
}

func (s *smooth) hit(o, d vec) (float64, vec, bool) {
	o = o.sub(s.middle)
	best := math.Inf(1)
	var at, n vec
	for _, half := range []float64{s.above, -s.below} {
		c := math.Abs(half)
		far, ok := ellipsoid(o, d, vec{s.a, s.b, c})
		if p := o.add(d.times(far)); ok && p.z*half >= 0 && far < best {
			best, at = far, p
			n = vec{p.x / (s.a * s.a), p.y / (s.b * s.b), p.z / (c * c)}.unit()
		}
	}
	if math.IsInf(best, 1) {
		return 0, vec{}, false
	}
	return best, s.paint(at, n, d), true
}

// ellipsoid is how far along the ray the ellipsoid of these half axes begins.
func ellipsoid(o, d, axes vec) (float64, bool) {
	shrunk := func(v vec) vec { return vec{v.x / axes.x, v.y / axes.y, v.z / axes.z} }
	o, d = shrunk(o), shrunk(d)
	half, c := o.dot(d), o.dot(o)-1
	root := half*half - d.dot(d)*c
	if root < 0 {
		return 0, false
	}
	return (-half - math.Sqrt(root)) / d.dot(d), true
}

// polish is the lamps' reflection in a smooth surface of a gem.
func polish(n, ahead vec, share float64) vec {
	r := ahead.mirrored(n)
	fresnel := share + (1-share)*math.Pow(1-math.Abs(n.dot(ahead)), 5)
	window := math.Pow(math.Max(0, r.dot(lampAt())), 90)
	return light(r, 0.12).times(0.6 * fresnel).add(vec{1, 1, 1}.times(1.1 * window))
}

// lampAt is the direction of the strongest lamp.
func lampAt() vec { return vec{-0.52, 0.50, 0.69}.unit() }

// lit is how much light falls on a dull surface that looks along n: from the
// lamp, and some from the room in front.
func lit(n vec) float64 {
	return 0.5 + 0.5*n.dot(lampAt()) + 0.22*math.Max(0, n.dot(vec{0.3, -0.8, 0.5}))
}

// starred paints a star of six rays that cross on top of the dome: needles lie
// along three directions, and each sends a line of light across them.
func starred(body vec, reach float64) func(at, n, ahead vec) vec {
	return func(at, n, ahead vec) vec {
		u, v := (at.x+0.05*reach)/reach, (at.y-0.07*reach)/reach
		r := math.Hypot(u, v)
		star := 0.5*hill(r, 0.10) + 0.22*hill(r, 0.55)
		for i := range 3 {
			s, c := math.Sincos(float64(i)*math.Pi/3 + 0.22)
			star += 0.8 * hill(u*s-v*c, 0.018+0.05*r) * math.Exp(-1.7*r) * step(-0.1, 0.35, n.z)
		}
		inside := body.times(0.30 + 0.75*lit(n) + 0.25*step(0.3, 1, r))
		return inside.mix(vec{1, 0.86, 0.92}, clamp(star, 0, 0.92)).add(polish(n, ahead, 0.07))
	}
}

// pearly paints a pearl: a soft body, rose towards its edge, one window in it.
func pearly(body vec) func(at, n, ahead vec) vec {
	return func(at, n, ahead vec) vec {
		facing := -n.dot(ahead)
		c := body.times(0.34 + 0.48*math.Pow(lit(n), 1.6) + 0.16*step(0.4, -0.7, n.z))
		c = c.filter(vec{1, 1, 1}.mix(vec{1.03, 0.94, 0.93}, step(0.95, 0.55, facing)))
		c = c.filter(vec{1, 1, 1}.mix(vec{0.72, 0.74, 0.70}, step(0.50, 0.0, facing)))
		r := ahead.mirrored(n)
		glow := 0.22*math.Pow(math.Max(0, r.dot(lampAt())), 5) + 0.6*step(0.94, 0.99, r.dot(lampAt())) +
			0.06*step(0.86, 0.97, r.dot(vec{0.75, -0.28, 0.60})) // the lamps, as a window and a glow
		return c.add(vec{1, 0.99, 0.97}.times(glow))
	}
}

func cloth(_, n, _ vec) vec { return vec{0.8, 0.77, 0.7}.times(0.25 + 0.6*lit(n)) }
