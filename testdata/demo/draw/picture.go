package main

import (
	"image"
	"image/color"
	"math"
	"sync"

	"github.com/disintegration/imaging"
)

// Pictures are drawn larger and reduced, which smooths their edges.
const (
	pageWide, pageHigh = 1200, 900
	finer              = 3
)

// thing is what a ray may hit: how far along the ray, and what light comes back.
type thing interface {
	hit(o, d vec) (far float64, colour vec, ok bool)
}

// view looks at the origin along ahead, with up and right in the picture.
type view struct {
	ahead, up, right vec
	shift            float64 // of the picture upwards, in millimetres
}

func fromAbove() view {
	return view{ahead: vec{0, 0, -1}, up: vec{0, 1, 0}, right: vec{1, 0, 0}}
}

// fromSide looks along y, from a little above.
func fromSide(shift float64) view {
	s, c := math.Sincos(9 * math.Pi / 180)
	return view{ahead: vec{0, c, -s}, up: vec{0, s, c}, right: vec{1, 0, 0}, shift: shift}
}

// shadow says where the things' shadow falls, in millimetres of the picture, and
// how soft it is. What is seen from the side stands on its shadow instead: half
// as deep as foot, and fading with height above the ground.
type shadow struct {
	right, down, soft float64
	foot, fades       float64
}

// render makes the picture of things at so many millimetres a pixel.
func render(things []thing, v view, scale float64, s shadow) *image.NRGBA {
	layer := imaging.Resize(rays(things, v, scale/finer), pageWide, pageHigh, imaging.Box)
	page := ground()
	page = overlay(page, cast(layer, s, scale))
	return overlay(page, layer)
}

// rays asks for every fine pixel what is to be seen there; both processors share
// the rows.
func rays(things []thing, v view, scale float64) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, pageWide*finer, pageHigh*finer))
	rows := make(chan int)
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			for y := range rows {
				for x := range m.Rect.Dx() {
					right := (float64(x) + 0.5 - float64(m.Rect.Dx())/2) * scale
					up := (float64(m.Rect.Dy())/2-float64(y)-0.5)*scale - v.shift
					o := v.right.times(right).add(v.up.times(up)).sub(v.ahead.times(100))
					if c, ok := nearest(things, o, v.ahead); ok {
						m.SetNRGBA(x, y, color.NRGBA{display(c.x), display(c.y), display(c.z), 255})
					}
				}
			}
		})
	}
	for y := range m.Rect.Dy() {
		rows <- y
	}
	close(rows)
	all.Wait()
	return m
}

func nearest(things []thing, o, d vec) (colour vec, found bool) {
	best := math.Inf(1)
	for _, t := range things {
		if far, c, ok := t.hit(o, d); ok && far < best {
			best, colour, found = far, c, true
		}
	}
	return colour, found
}

// ground is a neutral light sheet, a little darker towards its edges.
func ground() *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, pageWide, pageHigh))
	for y := range pageHigh {
		for x := range pageWide {
			r := math.Hypot(float64(x)-0.46*pageWide, float64(y)-0.42*pageHigh) / pageWide
			v := 238 - 30*r*r/0.36 + grain{uint32(x), uint32(y), 0, 0}.chance(0) // scattered, lest the fall of light shows steps
			m.SetNRGBA(x, y, color.NRGBA{uint8(v), uint8(v), uint8(v - 2), 255})
		}
	}
	return m
}

// cast is the soft shadow of what is opaque in layer.
func cast(layer *image.NRGBA, s shadow, scale float64) *image.NRGBA {
	dark := image.NewNRGBA(layer.Rect)
	if s.foot > 0 {
		castAtFoot(dark, layer, s, scale)
	} else {
		right, down := int(s.right/scale), int(s.down/scale)
		for y := max(0, down); y < pageHigh; y++ {
			for x := max(0, right); x < pageWide; x++ {
				alpha := layer.Pix[layer.PixOffset(x-right, y-down)+3]
				dark.Pix[dark.PixOffset(x, y)+3] = uint8(float64(alpha) * darkest)
			}
		}
	}
	return imaging.Blur(dark, s.soft/scale)
}

const darkest = 0.42

// castAtFoot lays a strip of shadow under what stands on the ground: darkest
// where it touches, paler the higher it stands.
func castAtFoot(dark, layer *image.NRGBA, s shadow, scale float64) {
	foot, first, last := 0, pageWide, 0
	bottoms := make([]int, pageWide)
	for x := range bottoms {
		bottoms[x] = bottom(layer, x)
		foot = max(foot, bottoms[x])
		if bottoms[x] > 0 {
			first, last = min(first, x), x
		}
	}
	middle, half := float64(first+last)/2, float64(last-first)/2
	for x := first; x <= last; x++ {
		away := (float64(x) - middle) / half
		high := s.foot / scale * math.Sqrt(math.Max(0, 1-away*away))
		alpha := darkest * math.Exp(-float64(foot-bottoms[x])*scale/s.fades)
		for y := foot - int(1.5*high); y < min(pageHigh, foot+int(0.5*high)); y++ {
			dark.Pix[dark.PixOffset(x, y)+3] = uint8(255 * alpha)
		}
	}
}

// bottom is the lowest row in which column x is not empty, or 0.
func bottom(layer *image.NRGBA, x int) int {
	for y := pageHigh - 1; y > 0; y-- {
		if layer.NRGBAAt(x, y).A > 0 {
			return y
		}
	}
	return 0
}

func overlay(under, over *image.NRGBA) *image.NRGBA {
	return imaging.Overlay(under, over, image.Point{}, 1)
}
