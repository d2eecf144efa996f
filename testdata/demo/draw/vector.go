package main

import "math"

// vec is a place or direction in millimetres (x right, y away, z up), or a
// colour as linear light (red, green, blue).
type vec struct{ x, y, z float64 }

func (a vec) add(b vec) vec            { return vec{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vec) sub(b vec) vec            { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) times(f float64) vec      { return vec{a.x * f, a.y * f, a.z * f} }
func (a vec) filter(b vec) vec         { return vec{a.x * b.x, a.y * b.y, a.z * b.z} }
func (a vec) dot(b vec) float64        { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) length() float64          { return math.Sqrt(a.dot(a)) }
func (a vec) unit() vec                { return a.times(1 / a.length()) }
func (a vec) mix(b vec, f float64) vec { return a.times(1 - f).add(b.times(f)) }

// mirrored is direction a after reflection at a surface with normal n.
func (a vec) mirrored(n vec) vec { return a.sub(n.times(2 * a.dot(n))) }

// aboutY turns a around the y axis.
func (a vec) aboutY(angle float64) vec {
	s, c := math.Sincos(angle)
	return vec{c*a.x + s*a.z, a.y, c*a.z - s*a.x}
}

func clamp(v, low, high float64) float64 { return math.Max(low, math.Min(high, v)) }

// step rises smoothly from 0 at a to 1 at b.
func step(a, b, v float64) float64 {
	t := clamp((v-a)/(b-a), 0, 1)
	return t * t * (3 - 2*t)
}

func hill(v, width float64) float64 { return math.Exp(-v * v / (width * width)) }
