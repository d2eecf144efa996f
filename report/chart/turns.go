package chart

import (
	"math"
	"slices"
	"strconv"

	"stonewrit/report"
)

// Turns are the edges seen on the refractometer while the stone was turned.
type Turns struct {
	Turns    []Turn
	U        float64 // standard uncertainty of one edge
	Decimals int     // that the extremes are printed with
}

// Turn is one position of the stone. Low and High are equal where one edge was
// seen; zero is none. Over says that an edge lies over the limit.
type Turn struct {
	Low, High float64
	Over      bool
}

// two reports whether two edges were seen.
func (t Turn) two() bool { return t.High > t.Low }

// Sizes of the drawing of the turns, and the span of index it shows at least.
const (
	turnsHigh   pt      = 104
	turnApart   pt      = 34 // at most
	dotRadius   pt      = 1.9
	turnLeast   float64 = 0.006
	mostTurns           = 60
	fewestTurns         = 2
)

// turnsChart is the work on the drawing of the turns.
type turnsChart struct {
	canvas
	in     Turns
	scale  scale // of the index, upwards
	across scale // of the turns
	low    float64
	high   float64
	over   bool
}

// Turns draws index against turn, both edges, with the extremes marked. It
// returns false with fewer than two turns in which an edge was seen.
func (d Drawer) Turns(in Turns) (report.Figure, bool) {
	c := turnsChart{canvas: canvas{Drawer: d}, in: in, low: math.Inf(1), high: math.Inf(-1)}
	c.in.Turns = nil
	for _, t := range in.Turns[:min(len(in.Turns), mostTurns)] {
		c.take(t)
	}
	if len(c.in.Turns) < fewestTurns || math.IsInf(c.low, 0) {
		return report.Figure{}, false
	}
	c.draw()
	alt := fill(d.Words.TurnsAlt, "count", strconv.Itoa(len(c.in.Turns)), "low", c.figureOf(c.low), "high", c.figureOf(c.high))
	return c.figure(report.FigureWidth, d.Words.TurnsCaption, alt), true
}

// take keeps a turn that shows something, its edges in order.
func (c *turnsChart) take(t Turn) {
	if t.High == 0 {
		t.High = t.Low
	}
	seen := t.Low >= lowestIndex && t.High >= t.Low && t.High <= highIndex
	switch {
	case seen:
		c.low, c.high = min(c.low, t.Low), max(c.high, t.High)
	case !t.Over:
		return
	default:
		t.Low, t.High = 0, 0
	}
	c.over = c.over || t.Over
	c.in.Turns = append(c.in.Turns, t)
}

func (c *turnsChart) figureOf(v float64) string { return c.Words.number(v, c.in.Decimals) }

func (c *turnsChart) draw() {
	low, high := c.low, c.high
	pad := max((turnLeast-(high-low))/2, 0.12*(high-low))
	c.scale = scale{low: low - pad, high: high + pad, from: turnsHigh, to: 0}
	left := c.axis()
	n := len(c.in.Turns)
	apart := min(turnApart, (report.FigureWidth-left-c.rightRoom()-20)/pt(n-1))
	c.across = scale{low: 1, high: float64(n), from: left + 16, to: left + 16 + apart*pt(n-1)}
	c.extremes(left, c.across.to+16)
	c.edges()
	c.counting()
	c.headed(c.Words.Turns)
}

// axis draws the ruler of the index, upright, and returns where it stands.
func (c *turnsChart) axis() pt {
	g := graduate(c.scale, 20, 3)
	left := pt(0)
	ticks := g.ticks(c.scale)
	for _, t := range ticks {
		if t.major {
			left = max(left, c.width(c.Words.number(t.at, g.decimals)))
		}
	}
	left += 11
	c.line(left, 0, left, turnsHigh, report.Pen{Width: report.Thin})
	for _, t := range ticks {
		y, long := c.scale.at(t.at), minorTick
		switch {
		case t.major:
			long = majorTick
			if y > ascent/2 && y < turnsHigh-ascent/2 {
				c.label(left-majorTick-3, y, black(c.Words.number(t.at, g.decimals)), report.AnchorEndCentred)
			}
		case t.half:
			long = halfTick
		}
		c.line(left-long, y, left, y, hairline())
	}
	return left
}

func (c *turnsChart) rightRoom() pt {
	return 16 + 20 + max(c.width(c.lowestText()), c.width(c.highestText())) + c.width(c.figureOf(c.high-c.low))
}

// widestWord is the most that the figure of an extreme may take with its word;
// a longer one stands without.
const widestWord pt = 150

func (c *turnsChart) lowestText() string  { return c.extreme(c.Words.Lowest, c.low) }
func (c *turnsChart) highestText() string { return c.extreme(c.Words.Highest, c.high) }

func (c *turnsChart) extreme(words string, v float64) string {
	value := c.Words.valued(v, expand(c.in.U), c.in.Decimals)
	if text := fill(words, "figure", value); c.width(text) <= widestWord {
		return text
	}
	return value
}

// extremes leads from the lowest and the highest edge to their figures at the
// right, with the distance between them.
func (c *turnsChart) extremes(left, right pt) {
	low, high := c.scale.at(c.low), c.scale.at(c.high)
	x := right + 4
	if c.low == c.high {
		c.line(left, low, right, low, guide())
		c.label(x, low, black(c.lowestText()), report.AnchorStartCentred)
		return
	}
	for _, y := range []pt{low, high} {
		c.line(left, y, right+12, y, guide())
	}
	apart := low - high
	lowText, highText := low, high
	if apart < lineHigh+1 {
		lowText, highText = low+(lineHigh+1-apart)/2, high-(lineHigh+1-apart)/2
	}
	c.label(right+15, highText, black(c.highestText()), report.AnchorStartCentred)
	c.label(right+15, lowText, black(c.lowestText()), report.AnchorStartCentred)
	if apart >= 3*lineHigh && slices.ContainsFunc(c.in.Turns, Turn.two) {
		c.upDown(right+7, high, low)
		c.label(right+15, (low+high)/2, black(c.Words.number(c.high-c.low, max(3, c.in.Decimals))), report.AnchorStartCentred)
	}
}

// edges joins the lower and the upper edges from turn to turn and marks each: a
// disc for the lower one, a ring for the upper one, a disc in a ring where one
// edge was seen, an arrow where an edge lies over the limit.
func (c *turnsChart) edges() {
	var low, high []xy
	flush := func() {
		c.path(low, report.Pen{Width: report.Thin})
		c.path(high, report.Pen{Width: report.Thin, Dash: []pt{3, 2}})
		low, high = nil, nil
	}
	for i, t := range c.in.Turns {
		if t.Low == 0 {
			flush()
			continue
		}
		x := c.across.at(float64(i + 1))
		low, high = append(low, xy{X: x, Y: c.scale.at(t.Low)}), append(high, xy{X: x, Y: c.scale.at(t.High)})
	}
	flush()
	for i, t := range c.in.Turns {
		x := c.across.at(float64(i + 1))
		switch {
		case t.Low == 0:
		case t.two():
			c.ring(xy{X: x, Y: c.scale.at(t.High)}, dotRadius)
			c.add(report.Disc(xy{X: x, Y: c.scale.at(t.Low)}, dotRadius))
		default:
			c.ring(xy{X: x, Y: c.scale.at(t.Low)}, dotRadius+1)
			c.add(report.Disc(xy{X: x, Y: c.scale.at(t.Low)}, dotRadius-0.6))
		}
		if t.Over {
			pen := report.Pen{Width: report.Thin}
			c.line(x, 6, x, -3, pen)
			c.add(arrowhead(xy{X: x, Y: -6}, 0, -1, pen))
		}
	}
}

func (c *canvas) path(points []xy, pen report.Pen) {
	if len(points) > 1 {
		c.add(report.Polyline{Points: points, Pen: pen})
	}
}

// ring is an open circle, white inside so that lines end at it.
func (c *canvas) ring(center xy, radius pt) {
	c.add(report.Arc{Center: center, RX: radius, RY: radius, To: 360, Pen: report.Pen{Width: report.Thin}, Fill: report.Fill{Solid: true, Grey: 1}})
}

// counting sets the numbers of the turns below, as many as have room.
func (c *turnsChart) counting() {
	n := len(c.in.Turns)
	apart := pt(0)
	if n > 1 {
		apart = c.across.at(2) - c.across.at(1)
	}
	every := 1
	for _, k := range []int{1, 2, 5, 10, 20} {
		every = k
		if apart*pt(k) >= c.width(strconv.Itoa(n))+4 {
			break
		}
	}
	y := turnsHigh + ascent + 3
	c.line(c.across.from-16, turnsHigh, c.across.to+16, turnsHigh, hairline())
	for i := 1; i <= n; i++ {
		x := c.across.at(float64(i))
		c.line(x, turnsHigh, x, turnsHigh-minorTick, hairline())
		if i == 1 || i%every == 0 && i >= every {
			if i != 1 || every == 1 || apart*pt(every-1) >= c.width("1")+c.width(strconv.Itoa(every))/2+3 {
				c.label(x, y, black(strconv.Itoa(i)), report.AnchorMiddle)
			}
		}
	}
	if c.Words.Turn != "" && c.across.to+20+c.width(c.Words.Turn) <= report.FigureWidth {
		c.label(c.across.to+20, y, faded(c.Words.Turn), report.AnchorStart)
	}
}
