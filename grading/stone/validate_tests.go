package stone

import (
	"fmt"
	"regexp"
	"slices"
	"stonewrit/grading/phrase"
	"strings"
)

// test refuses a test that lacks what it cannot be read without.
func (v *validator) test(at string, t Test) {
	v.place(at+".place", t.Header().Place)
	switch t := t.(type) {
	case *Refractometer:
		v.lamp(at+".light", t.Light)
		if len(t.Readings.Items) == 0 && !t.Over {
			v.wrong(at, "for example readings: [[1.762, 1.770]], or over the limit: true", "the refractometer test has no readings")
		}
	case *Digital:
		v.some(at, "readings: [1.77]", len(t.Readings.Items))
	case *Gravity:
		v.gravity(at, t)
	case *Polariscope:
		if t.Sees == "" && t.Figure == "" {
			v.wrong(at, "sees: stays dark, blinks, stays light or strain pattern", "the polariscope test says nothing")
		}
	case *Hardness:
		v.hardness(at, t)
	case *Dichroscope:
		if t.Strength == "none" && len(t.Colours.Items) > 1 {
			v.wrong(at+".strength", "", "strength none stands beside %d colours", len(t.Colours.Items))
		}
	case *Magnification:
		v.features(at, t.Sees.Items)
	case *Features:
		v.features(at, t.Sees.Items)
	case *LaboratoryReport:
		v.report(at, t)
	}
}

// lamp refuses a light that a refractometer reading has no uncertainty for.
func (v *validator) lamp(at, light string) {
	words := []string{"sodium", "white"}
	if light != "" && !slices.Contains(words, light) {
		v.wrong(at, didYouMean(light, words), "%q is not one of: %s", light, strings.Join(words, ", "))
	}
}

var stoneOfSeveral = regexp.MustCompile(`^stone [0-9]+ of [0-9]+$`)

// place warns of a place that is none of the usual ones: tests at different
// places are judged apart, so a slip of the pen would set one aside.
func (v *validator) place(at, place string) {
	words := []string{"table", "crown", "pavilion", "girdle", "side", "back"}
	if place == "" || slices.Contains(words, place) || stoneOfSeveral.MatchString(place) {
		return
	}
	v.say(Warning, at, phrase.Say("%q is none of %s, stone 3 of 7: it is judged as a place of its own", place, strings.Join(words, ", ")), didYouMean(place, words))
}

func (v *validator) some(at, example string, n int) {
	if n == 0 {
		v.wrong(at, phrase.Say("for example %s", example), "the test has no readings")
	}
}

func (v *validator) gravity(at string, g *Gravity) {
	switch g.Method {
	case "hydrostatic":
		v.weighing(at, g)
	case "liquid":
		if !g.Liquid.Given() || g.Stone == "" {
			v.wrong(at, "for example liquid: 3.32, stone: sinks", "a liquid test needs liquid, its specific gravity, and stone, what it does")
		}
	case "value":
		if !g.Given.Given() {
			v.wrong(at, "for example value: 4.00 +-0.02", "the value is missing")
		}
	}
}

func (v *validator) weighing(at string, g *Gravity) {
	wet, key := g.InWater, "in_water"
	if g.InLiquid.Given {
		wet, key = g.InLiquid, "in_liquid"
		if g.Bath == nil {
			v.wrong(at, "for example bath: {name: toluene, density: 0.865}", "a weighing in a liquid other than water needs its bath")
		}
	}
	if len(g.InAir.Items) == 0 || len(wet.Items) == 0 {
		v.wrong(at, "for example in_air: 0.3040 g, in_water: 0.2281 g, water: 21.5 C", "a hydrostatic test needs in_air and in_water")
		return
	}
	for i, w := range wet.Items {
		air := g.InAir.Items[min(i, len(g.InAir.Items)-1)]
		if w.Grams >= air.Grams {
			v.wrong(at+"."+key, "the two may be swapped; a stone that floats needs a sinker, write a value then", "%s in the liquid is not less than %s in air", w, air)
		}
	}
}

func (v *validator) hardness(at string, h *Hardness) {
	if len(h.Scratches.Items) == 0 && len(h.ScratchedBy.Items) == 0 {
		v.wrong(at, "for example scratches: [quartz]", "the hardness test says nothing")
	}
	for _, list := range []struct {
		key   string
		names []string
	}{{"scratches", h.Scratches.Items}, {"scratched_by", h.ScratchedBy.Items}} {
		for i, name := range list.names {
			path := fmt.Sprintf("%s.%s[%d]", at, list.key, i)
			if m, ok := mohs(name); ok {
				if m < 1 || m > 10 {
					v.wrong(path, "", "%s is not a Mohs number from 1 to 10", name)
				}
				continue
			}
			v.material(path, name)
		}
	}
}

// features warns of a word that the features table does not have: it is kept
// and printed, and proves nothing.
func (v *validator) features(at string, seen []string) {
	for i, term := range seen {
		if v.full() {
			return
		}
		if _, err := v.table.Feature(term); err != nil {
			var names []string
			for _, f := range v.table.Features() {
				names = append(names, f.Term)
			}
			v.say(Warning, fmt.Sprintf("%s.sees[%d]", at, i), phrase.Say("%q is not a term of the features table: it is printed and proves nothing", term), didYouMean(term, names))
		}
	}
}

func (v *validator) report(at string, r *LaboratoryReport) {
	if r.States == nil {
		return
	}
	v.material(at+".states.species", r.States.Species)
	v.material(at+".states.variety", r.States.Variety)
	v.treatments(at+".states.treatments", r.States.Treatments.Items)
	if strings.TrimSpace(r.States.Words) != "" && r.States.Species == "" {
		v.say(Warning, at+".states", "prose is printed as theirs and proves nothing", "for example states: {species: corundum, growth: natural}")
	}
}
