package reading

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
)

// State of an instrument's check on the day of the test.
type State string

// Only a valid check corrects a reading.
const (
	CheckValid   State = "valid"
	CheckNone    State = "none"
	CheckOverdue State = "overdue"
	CheckFailed  State = "failed"
)

// Check is what the last check on or before the day says of an instrument.
type Check struct {
	State      State
	Date, Due  stone.Date
	Reference  phrase.Line
	Offset     float64 // reading minus known value: index, nm
	U          float64 // of the offset; relative for a factor
	Factor     float64 // of a balance: reading over known value; 1 if none
	Known      float64 // known value at which it was checked
	Instrument string
}

// Words is how the check is told in a line.
func (c Check) Words() phrase.Line {
	switch c.State {
	case CheckValid:
		return phrase.Say("checked %s with %s", c.Date, c.Reference)
	case CheckOverdue:
		return phrase.Say("last check %s, due again by %s", c.Date, c.Due)
	case CheckFailed:
		return phrase.Say("check of %s with %s failed", c.Date, c.Reference)
	}
	return "no check on record"
}

// last finds the last check on or before the day and whether it still holds.
func (b Bench) last(id string, defaultDays float64) (stone.Instrument, *stone.Check, Check) {
	in, ok := b.Instruments[id]
	found := Check{State: CheckNone, Factor: 1, Instrument: id}
	if !ok {
		return in, nil, found
	}
	var last *stone.Check
	for i, c := range in.Checks {
		if !c.Date.After(b.On) && (last == nil || c.Date.After(last.Date.Time)) {
			last = &in.Checks[i]
		}
	}
	if last == nil {
		return in, nil, found
	}
	days := defaultDays
	if in.CheckEvery.Given() {
		days = in.CheckEvery.Float()
	}
	found.Date, found.Reference = last.Date, ReferenceName(last.Reference)
	found.Due = stone.Date{Time: last.Date.Add(time.Duration(days) * 24 * time.Hour)}
	found.State = CheckValid
	switch {
	case last.Result == "failed":
		found.State = CheckFailed
	case b.On.After(found.Due.Time):
		found.State = CheckOverdue
	}
	return in, last, found
}

// ReferenceName is the name of a reference as a line.
func ReferenceName(name string) phrase.Line { return phrase.Say("%s", phrase.Word(name)) }

// indexCheck is the check of a refractometer or digital instrument at an index
// near at. With two references the offset is taken from the line between them.
func (b Bench) indexCheck(id string, at float64, digital bool, defaultDays string) Check {
	in, last, c := b.last(id, b.Figures[defaultDays])
	if c.State != CheckValid {
		return c
	}
	points := b.checkPoints(in, last, digital, defaultDays)
	if len(points) == 0 {
		if last.Result != "passed" {
			c.State = CheckNone
		}
		return c
	}
	for _, p := range points {
		if math.Abs(p.offset) > max(b.Figures["index check fails"], 2*p.u) {
			c.State, c.Date, c.Reference = CheckFailed, p.date, p.reference
			return c
		}
	}
	c.along(points, at)
	return c
}

// checkPoint is one reference stone's part of a check.
type checkPoint struct {
	reference        phrase.Line
	date             stone.Date
	known, offset, u float64
}

// checkPoints are the last readings of each reference stone that still hold,
// by known value.
func (b Bench) checkPoints(in stone.Instrument, last *stone.Check, digital bool, defaultDays string) []checkPoint {
	days := b.Figures[defaultDays]
	if in.CheckEvery.Given() {
		days = in.CheckEvery.Float()
	}
	newest := map[string]stone.Check{}
	for _, k := range in.Checks {
		age := b.On.Sub(k.Date.Time).Hours() / 24
		if age < 0 || age > days || k.Date.Before(newest[k.Reference].Date.Time) {
			continue
		}
		newest[k.Reference] = k
	}
	var points []checkPoint
	for _, name := range slices.Sorted(maps.Keys(newest)) {
		k := newest[name]
		offset, known, n := b.indexOffset(&k)
		if n == 0 {
			continue
		}
		u := b.Figures["index facet sodium"]
		switch {
		case digital:
			u = b.Figures["index digital"]
		case k.Light == "white":
			u = b.Figures["index facet white"]
		}
		points = append(points, checkPoint{ReferenceName(k.Reference), k.Date, known, offset, u / math.Sqrt(float64(n))})
	}
	slices.SortStableFunc(points, func(a, b checkPoint) int { return cmp.Compare(a.known, b.known) })
	return points
}

// along sets the offset at an index: that of the only point, or on the line
// between the two points about it, the nearest ones where it lies outside.
func (c *Check) along(points []checkPoint, at float64) {
	nearest := points[0]
	for _, p := range points {
		if math.Abs(p.known-at) < math.Abs(nearest.known-at) {
			nearest = p
		}
	}
	c.Known, c.Offset, c.U = nearest.known, nearest.offset, nearest.u
	c.Reference, c.Date = nearest.reference, nearest.date
	for i := 0; i+1 < len(points); i++ {
		low, high := points[i], points[i+1]
		if at < low.known || at > high.known || high.known == low.known {
			continue
		}
		share := (at - low.known) / (high.known - low.known)
		c.Offset = low.offset + share*(high.offset-low.offset)
		c.U = rootSum((1-share)*low.u, share*high.u)
		c.Reference = phrase.And(low.reference, high.reference)
	}
}

// indexOffset is the mean of reading minus known value over the edges read.
func (b Bench) indexOffset(c *stone.Check) (offset, known float64, n int) {
	low, high, ok := b.Reference(c.Reference)
	if !ok && c.Known.Pure.Given() {
		low, ok = c.Known.Pure.Float(), true
		high = low
	}
	if !ok {
		return 0, 0, 0
	}
	for _, turn := range turnsOf(c) {
		for i, e := range turn {
			k := low
			if i == 1 || len(turn) == 1 && math.Abs(e-high) < math.Abs(e-low) {
				k = high
			}
			offset += e - k
			n++
		}
	}
	if n > 0 {
		offset /= float64(n)
	}
	return offset, (low + high) / 2, n
}

func turnsOf(c *stone.Check) [][]float64 {
	var turns [][]float64
	for _, t := range c.Readings.Items {
		var edges []float64
		for _, e := range t.Seen {
			edges = append(edges, e.Float())
		}
		turns = append(turns, edges)
	}
	if c.Reading.Pure.Given() {
		turns = append(turns, []float64{c.Reading.Pure.Float()})
	}
	return turns
}

// balanceCheck is the check of a balance: a factor, the zero being tared.
func (b Bench) balanceCheck(id string) (readability float64, c Check) {
	in, last, c := b.last(id, b.Figures["days balance"])
	readability = b.Figures["mass readability"]
	if in.Readability.Mass.Given() {
		readability = in.Readability.Mass.Grams
	}
	if c.State != CheckValid {
		return readability, c
	}
	known := massIn(last.Reference)
	if last.Known.Mass.Given() {
		known = last.Known.Mass.Grams
	}
	if known == 0 || !last.Reading.Mass.Given() {
		if last.Result != "passed" {
			c.State = CheckNone
		}
		return readability, c
	}
	c.Known = known
	c.Factor = last.Reading.Mass.Grams / known
	c.U = readability / math.Sqrt(12) / known
	if math.Abs(last.Reading.Mass.Grams-known) > b.Figures["balance check steps"]*readability*(1+1e-9) {
		c.State, c.Factor = CheckFailed, 1
	}
	return readability, c
}

// massIn reads the mass off a reference such as "5 g mass".
func massIn(reference string) float64 {
	var v float64
	var unit string
	if _, err := fmt.Sscanf(reference, "%g %s", &v, &unit); err != nil {
		return 0
	}
	switch unit {
	case "g":
		return v
	case "ct":
		return float64(quantity.Carat(v).Grams())
	}
	return 0
}
