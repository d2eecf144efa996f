package reading

import (
	"math"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// GravityValue is what one specific gravity test comes to: a value with U
// above 0, or a bound.
type GravityValue struct {
	Test    stone.Test
	V, U    float64 // specific gravity relative to water at 4 C
	Bound   string  // "above" or "below" Liquid; "" for a value
	Liquid  float64 // with U of the liquid in U
	Low     float64 // a stone that moves slowly lies between these; 0 if not
	High    float64
	Weighed bool // found by weighing in a liquid, where a bubble lowers it
	Check   Check
	Void    phrase.Line // why the test cannot be used, or ""
	Notes   []phrase.Line
}

// Gravity reduces one specific gravity test.
func (b Bench) Gravity(t *stone.Gravity) GravityValue {
	switch t.Method {
	case "liquid":
		return b.liquid(t)
	case "value":
		return b.stated(t)
	}
	return b.weighing(t)
}

// stated takes a value that somebody or something else reduced.
func (b Bench) stated(t *stone.Gravity) GravityValue {
	u := t.Given.U
	if u == 0 {
		u = b.Figures["gravity value"]
		if t.Given.Decimals < 2 {
			u = b.Figures["gravity value coarse"]
		}
	}
	return GravityValue{Test: t, V: t.Given.Float(), U: u, Check: Check{State: CheckValid, Factor: 1}}
}

// liquid gives a bound, or for a stone that stays or drifts a value.
func (b Bench) liquid(t *stone.Gravity) GravityValue {
	l, u, slow := t.Liquid.Float(), b.Figures["liquid"], b.Figures["liquid slowly"]
	if t.Liquid.U > 0 {
		u = t.Liquid.U
	}
	v := GravityValue{Test: t, Liquid: l, U: u, Check: Check{State: CheckValid, Factor: 1}}
	switch t.Stone {
	case "suspended":
		v.V = l
	case "sinks slowly":
		v.V, v.U = l+slow/2, rootSum(u, slow/2/math.Sqrt(3))
	case "floats slowly":
		v.V, v.U = l-slow/2, rootSum(u, slow/2/math.Sqrt(3))
	case "sinks":
		v.Bound = "above"
	case "floats":
		v.Bound = "below"
	}
	return v
}

// weighing is Archimedes with the buoyancy of air:
// SG = A/(A-W) (rho_w - rho_a) + rho_a, all in g/cm3.
func (b Bench) weighing(t *stone.Gravity) GravityValue {
	step, c := b.balanceCheck(t.Instrument)
	v := GravityValue{Test: t, Weighed: true, Check: c}
	wetReadings := t.InWater
	if t.InLiquid.Given {
		wetReadings = t.InLiquid
	}
	dry, uDry := b.mass(t.InAir.Items, step, 0, c)
	wet, uWet := b.mass(wetReadings.Items, step, b.Figures["mass in liquid"], c)
	if dry <= wet {
		v.Void = "the mass in the liquid is not below the mass in air"
		return v
	}
	if t.After.Given() && t.After.Grams-dry > 2*step {
		v.Void = phrase.Say("the stone took up liquid: %s in air afterwards", phrase.Figure(t.After.String()))
		return v
	}
	air := b.Figures["air density"]
	if t.Air.Given() {
		air = t.Air.Float()
	}
	bath, uBath := b.bath(t, &v)
	lost := dry - wet
	v.V = dry/lost*(bath-air) + air
	scale := (bath - air) / (lost * lost)
	v.U = rootSum(wet*scale*uDry, dry*scale*uWet, dry/lost*uBath)
	return v
}

// mass is the mean of repeated weighings, in the balance's own grams, since a
// factor common to both weighings leaves the specific gravity as it is.
func (b Bench) mass(list []stone.Mass, step, least float64, c Check) (mean, u float64) {
	var grams []float64
	stated := 0.0
	for _, m := range list {
		grams = append(grams, m.Grams)
		stated = max(stated, m.U)
	}
	mean, scatter := meanOf(grams)
	u = max(step/math.Sqrt(12), least)
	if stated > 0 {
		u = max(stated, least)
	}
	u = rootSum(u, scatter)
	if c.State != CheckValid {
		u = rootSum(u, b.Figures["mass unchecked"]*mean)
	}
	return mean, u
}

// bath is the density of the weighing liquid and its uncertainty.
func (b Bench) bath(t *stone.Gravity, v *GravityValue) (density, u float64) {
	if t.Bath != nil {
		u := t.Bath.Density.U
		if u == 0 {
			u = 0.5 * math.Pow10(-t.Bath.Density.Decimals) / math.Sqrt(3)
		}
		return t.Bath.Density.Float(), u
	}
	celsius, uCelsius := t.Water, b.Figures["water temperature"]
	if !celsius.Given() {
		celsius = t.Temperature
	}
	warmth := celsius.Float()
	switch {
	case !celsius.Given():
		warmth, uCelsius = b.Figures["water not measured"], b.Figures["water not measured u"]
		v.Notes = append(v.Notes, phrase.Say("no temperature of the water is written: %g C taken", warmth))
	case celsius.U > 0:
		uCelsius = celsius.U
	}
	slope := WaterDensity(warmth+0.5) - WaterDensity(warmth-0.5)
	return WaterDensity(warmth), math.Abs(slope) * uCelsius
}

// Weight is the measured weight in carats with the balance's factor taken off,
// and its standard uncertainty.
func (b Bench) Weight(w stone.WeightOf) (carats, u float64, c Check) {
	step, c := b.balanceCheck(w.Instrument)
	if w.Instrument == "" {
		step = math.Pow10(-w.Measured.Decimals) / 5
	}
	carats = w.Measured.Float() / c.Factor
	u = rootSum(step*5/math.Sqrt(12), w.Measured.U, c.U*carats)
	if c.State != CheckValid {
		u = rootSum(u, b.Figures["mass unchecked"]*carats)
	}
	return carats, u, c
}
