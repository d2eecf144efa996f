package main

import "math"

// metal is a body given by its distance function: how far a place is from its
// surface, negative inside. A ray is walked along by that distance.
type metal struct {
	distance func(p vec) float64
	middle   vec
	reach    float64
	tint     vec
}

func gold() vec      { return vec{1.06, 0.76, 0.33} }
func whiteGold() vec { return vec{0.84, 0.83, 0.81} }

func (m *metal) hit(o, d vec) (float64, vec, bool) {
	toMiddle := m.middle.sub(o)
	along := toMiddle.dot(d)
	if toMiddle.sub(d.times(along)).length() > m.reach {
		return 0, vec{}, false
	}
	for far := along - m.reach; far < along+m.reach; {
		p := o.add(d.times(far))
		gap := m.distance(p)
		if gap < 0.002 {
			return far, m.shade(p, d), true
		}
		far += 0.9 * gap
	}
	return 0, vec{}, false
}

func (m *metal) shade(p, d vec) vec {
	n := m.normal(p)
	open := 0.35 + 0.65*clamp(m.distance(p.add(n.times(0.5)))/0.5, 0, 1)
	mirror := light(d.mirrored(n), 0.5)
	dull := vec{1, 1, 1}.times(0.18 + 0.75*lit(n))
	return mirror.mix(dull, 0.6).filter(m.tint).times(open)
}

func (m *metal) normal(p vec) vec {
	const e = 1e-3
	return vec{
		m.distance(p.add(vec{e, 0, 0})) - m.distance(p.sub(vec{e, 0, 0})),
		m.distance(p.add(vec{0, e, 0})) - m.distance(p.sub(vec{0, e, 0})),
		m.distance(p.add(vec{0, 0, e})) - m.distance(p.sub(vec{0, 0, e})),
	}.unit()
}

// rod is the distance to a rod with round ends.
func rod(p, from, to vec, radius float64) float64 {
	way := to.sub(from)
	t := clamp(p.sub(from).dot(way)/way.dot(way), 0, 1)
	return p.sub(from).sub(way.times(t)).length() - radius
}

// hoop is the distance to a finger ring around the y axis: radius to the middle
// of its section, the section's half thickness and half width, its rounding.
func hoop(p, middle vec, radius, thick, wide, round float64) float64 {
	p = p.sub(middle)
	q := vec{math.Abs(math.Hypot(p.x, p.z)-radius) - thick + round, math.Abs(p.y) - wide + round, 0}
	out := math.Hypot(math.Max(q.x, 0), math.Max(q.y, 0))
	return out + math.Min(0, math.Max(q.x, q.y)) - round
}

// merged joins two bodies with a fillet of about the given size.
func merged(a, b, fillet float64) float64 {
	h := clamp(0.5+0.5*(b-a)/fillet, 0, 1)
	return b + (a-b)*h - fillet*h*(1-h)
}
