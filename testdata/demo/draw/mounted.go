package main

import "math"

// emeraldRing is a step cut in four claws on a yellow ring.
func emeraldRing() []thing {
	const length, width, depth = 5.4, 7.6, 3.6 // across and along the finger
	stone := &gem{
		body:  stepped().build(octagon(length, width, 1.5), length, depth),
		reach: width, index: 1.58, loss: absorbing(vec{0.04, 0.50, 0.20}, 2*depth), below: 0.45,
	}
	middle := vec{0, 0, -12.9}
	ring := &metal{middle: vec{0, 0, -11}, reach: 13.5, tint: gold()}
	ring.distance = func(p vec) float64 {
		d := hoop(p, middle, 9.4, 0.75, 1.3-0.03*math.Max(0, -p.z-8), 0.5)
		q := vec{math.Abs(p.x), math.Abs(p.y), p.z} // the setting has two planes of symmetry
		claw := math.Min(rod(q, vec{1.0, 1.5, -2.9}, vec{2.45, 3.55, 0.15}, 0.40), rod(q, vec{2.45, 3.55, 0.15}, vec{2.0, 3.1, 0.85}, 0.36))
		rail := math.Min(rod(q, vec{1.8, 0, -1.25}, vec{1.8, 2.6, -1.25}, 0.3), rod(q, vec{0, 2.6, -1.25}, vec{1.8, 2.6, -1.25}, 0.3))
		return merged(merged(d, claw, 0.5), rail, 0.25)
	}
	return []thing{stone, ring}
}

// diamondRow is twelve small brilliants in a row on a white ring, each held by
// grains on both sides.
func diamondRow() []thing {
	const count, across, radius = 12, 1.42, 9.9
	const each = 1.54 / radius // angle from stone to stone
	middle := vec{0, 0, -radius}
	cut := brilliant().build(oval(across, across), across, 0.87)
	var things []thing
	for i := range count {
		angle := (float64(i) - (count-1)/2.0) * each
		at := middle.add(vec{0, 0, radius + 0.06}.aboutY(angle))
		things = append(things, &gem{
			body: cut.moved(angle, at), middle: at, reach: across,
			index: 2.417, fire: 0.044, loss: absorbing(vec{0.97, 0.97, 0.96}, 2), below: 0.3,
		})
	}
	ring := &metal{middle: middle, reach: 10.6, tint: whiteGold()}
	ring.distance = func(p vec) float64 {
		d := hoop(p, middle, radius-0.75, 0.75, 1.22-0.02*math.Max(0, -p.z-8), 0.25)
		// Grains stand between stones: look at the nearest pair only.
		angle := math.Atan2(p.x, p.z+radius)
		slot := clamp(math.Round(angle/each), -count/2, count/2)
		q := p.sub(middle).aboutY(-slot * each)
		grains := vec{q.x, math.Abs(q.y) - 0.62, q.z - radius - 0.06}.length() - 0.2
		return merged(d, grains, 0.08)
	}
	return append(things, ring)
}

// aquamarineRing is an oval in four claws between three small brilliants on each
// shoulder of a yellow ring.
func aquamarineRing() []thing {
	const length, width, depth = 7.5, 9.5, 4.7 // across and along the finger
	const across, radius, each = 2.0, 9.9, 0.235
	stone := &gem{
		body:  mixed().build(oval(length, width), length, depth),
		reach: width, index: 1.58, loss: absorbing(vec{0.55, 0.86, 0.93}, 2*depth), below: 0.5,
	}
	middle := vec{0, 0, -13.6}
	cut := brilliant().build(oval(across, across), across, 1.2)
	things := []thing{stone}
	for _, i := range []float64{-3, -2, -1, 1, 2, 3} {
		angle := i*each + math.Copysign(0.27, i)
		at := middle.add(vec{0, 0, radius + 0.35}.aboutY(angle))
		things = append(things, &gem{
			body: cut.moved(angle, at), middle: at, reach: across,
			index: 2.417, fire: 0.044, loss: absorbing(vec{0.97, 0.97, 0.96}, 2), below: 0.3,
		})
	}
	ring := &metal{middle: vec{0, 0, -11.5}, reach: 14.5, tint: gold()}
	ring.distance = func(p vec) float64 {
		d := hoop(p, middle, radius-0.65, 0.85, 1.35-0.03*math.Max(0, -p.z-9), 0.35)
		q := vec{math.Abs(p.x), math.Abs(p.y), p.z} // the setting has two planes of symmetry
		claw := math.Min(rod(q, vec{1.1, 1.7, -4.0}, vec{2.85, 3.55, 0.2}, 0.42), rod(q, vec{2.85, 3.55, 0.2}, vec{2.35, 3.0, 1.0}, 0.38))
		rail := math.Min(rod(q, vec{2.0, 0, -1.9}, vec{2.0, 2.7, -1.9}, 0.32), rod(q, vec{0, 2.7, -1.9}, vec{2.0, 2.7, -1.9}, 0.32))
		return merged(merged(d, claw, 0.5), rail, 0.25)
	}
	return append(things, ring)
}

// strand is a string of cultured pearls laid in a loop, with its clasp.
func strand() []thing {
	const count, half, high = 61, 82.0, 60.0
	loop := func(a float64) vec {
		return vec{half * math.Cos(a), high * math.Sin(a) * (1 + 0.10*math.Cos(a)), 0}
	}
	angle := -math.Pi/2 + 0.1
	var things []thing
	for i := range count {
		radius := pearlRadius(i, count)
		at := loop(angle)
		things = append(things, pearl(at, radius, i))
		for gap := 0.0; gap < radius+pearlRadius(i+1, count)+0.25; angle += 1e-4 {
			gap = loop(angle).sub(at).length()
		}
		things = append(things, ball(at.mix(loop(angle), 0.5), 0.7, cloth))
	}
	from, to := loop(angle-0.01), loop(-math.Pi/2+0.07)
	clasp := &metal{middle: from.mix(to, 0.5), reach: 9, tint: gold()}
	clasp.distance = func(p vec) float64 {
		way := p.sub(from).dot(to.sub(from).unit())
		return rod(p, from, to, 1.9+0.12*math.Cos(way*4)) * 0.8
	}
	return append(things, clasp)
}

// pearlRow is part of the strand, large.
func pearlRow() []thing {
	var things []thing
	x := -24.0
	for i := range 8 {
		radius := pearlRadius(28+i, 61)
		x += radius
		things = append(things, pearl(vec{x, 0.8 * math.Sin(float64(i)), radius}, radius, i))
		x += radius + 0.12
		things = append(things, ball(vec{x, 0.4 * math.Sin(float64(i)), radius}, 0.55, cloth))
		x += 0.13
	}
	return things
}

// pearlRadius grows from 3.25 mm at the clasp to 3.5 mm in the middle.
func pearlRadius(i, count int) float64 {
	return 3.25 + 0.25*math.Sin(math.Pi*float64(i)/float64(count))
}

// pearl differs a little in colour and shape from the next.
func pearl(at vec, radius float64, i int) *smooth {
	g := grain{uint32(i), 7, 7, 7}
	body := vec{1.0, 0.93, 0.84}.mix(vec{0.98, 0.93, 0.88}, g.chance(1)).times(0.97 + 0.05*g.chance(2))
	b := ball(at, radius, pearly(body))
	b.b *= 0.975 + 0.02*g.chance(3)
	return b
}
