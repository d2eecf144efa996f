package chart

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"stonewrit/report"
)

// sight is a view on the paper: the place of its origin and the size of a
// millimetre.
type sight struct {
	x, y pt
	k    pt
}

func (s sight) at(p r2.Vec) xy { return xy{X: s.x + s.k*pt(p.X), Y: s.y - s.k*pt(p.Y)} }

func (s sight) all(places []r2.Vec) []xy {
	out := make([]xy, len(places))
	for i, p := range places {
		out[i] = s.at(p)
	}
	return out
}

// Room on the paper.
const (
	mostHigh     pt = 150 // of a view
	aloneHigh    pt = 110 // of an outline without a profile
	away         pt = 15  // from a view to a dimension line
	betweenViews pt = 22
	arcRadius    pt = 21
	axisOut      pt = 5 // of a middle line, out of a view
	slim         pt = 4 // beside a view where nothing is written
)

// enlargements are the scales that are used, from the largest: paper to stone
// (common practice of workshop drawings, from memory).
func enlargements() [][2]int {
	return [][2]int{
		{100, 1}, {50, 1}, {40, 1}, {30, 1}, {25, 1}, {20, 1}, {15, 1}, {12, 1}, {10, 1}, {8, 1}, {6, 1}, {5, 1}, {4, 1}, {3, 1}, {2, 1},
		{1, 1}, {1, 2}, {1, 5}, {1, 10}, {1, 20},
	}
}

// rooms are what the views need beside themselves.
type rooms struct{ profileLeft, profileRight, between, planRight pt }

func (c *makingChart) rooms() rooms {
	var r rooms
	r.planRight = slim
	if c.lengthDrawn() {
		r.planRight = away + overshoot
		if !c.standing(c.k*pt(c.long), c.diameter(c.long)) {
			r.planRight = 4 + 4 + c.width(c.diameter(c.long))
		}
	}
	half := c.k * pt(c.wide) / 2
	r.planRight = max(r.planRight, c.width(c.Words.FaceUp)/2-half)
	if c.side == nil {
		return r
	}
	r.profileLeft = max(c.depthRoom(), c.width(c.Words.Profile)/2-half)
	r.profileRight = slim
	if a, ok := c.angle(); ok {
		r.profileRight = arcRadius + 5 + c.width(c.degrees(a.measured))
	}
	r.between = max(betweenViews, (c.width(c.Words.Profile)+c.width(c.Words.FaceUp))/2+8-2*half-r.profileRight)
	return r
}

// fit chooses the largest scale with which all finds room.
func (c *makingChart) fit() rooms {
	views, high, most := 1.0, c.long, aloneHigh
	if c.side != nil {
		low, top := extents(c.side)
		views, high, most = 2, max(c.long, top.Y-low.Y), mostHigh
	}
	var r rooms
	for _, e := range enlargements() {
		c.k = report.Millimetres(float64(e[0]) / float64(e[1]))
		c.scale = fmt.Sprintf("%d\u00a0:\u00a0%d", e[0], e[1])
		r = c.rooms()
		beside := r.profileLeft + r.profileRight + r.between + r.planRight + slim
		if c.k*pt(views*c.wide)+beside <= report.FigureWidth && c.k*pt(high) <= most {
			break
		}
	}
	return r
}

// draw lays the views out: profile at the left, face up at the right, both
// about one level.
func (c *makingChart) draw() {
	r := c.fit()
	half := c.k * pt(c.wide) / 2
	left := slim
	var profile sight
	if c.side != nil {
		low, high := extents(c.side)
		profile = sight{x: r.profileLeft + half, y: c.k * pt(low.Y+high.Y) / 2, k: c.k}
		c.drawProfile(profile)
		left = profile.x + half + r.profileRight + r.between
	}
	plan := sight{x: max(left, c.width(c.Words.FaceUp)/2-half) + half, k: c.k}
	c.drawPlan(plan)
	if c.side != nil {
		low, _ := extents(c.side)
		c.caption(c.Words.Profile, profile.x, profile.at(low).Y+axisOut+ascent+5)
		c.caption(c.Words.FaceUp, plan.x, c.bounds().bottom+ascent+4)
	}
	c.notes()
}

func (c *makingChart) caption(text string, x, y pt) {
	if text != "" {
		c.label(inside(x, c.width(text), report.FigureWidth), y, faded(text), report.AnchorMiddle)
	}
}

// notes says the scale and what dashes mean.
func (c *makingChart) notes() {
	y := c.bounds().bottom + ascent + 5
	text := fill(c.Words.Scale, "scale", c.scale)
	more := []string{}
	if c.dashed {
		more = append(more, c.Words.Assumed)
	}
	if c.side == nil && c.d.Depth.Given() {
		more = append(more, fill(c.Words.NoProfile, "figure", c.mm(c.d.Depth.Value)))
	}
	for _, m := range more {
		if m != "" {
			text += "; " + m
		}
	}
	c.sayBelow(text, y)
}
