package grading

import (
	"fmt"
	"math"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quality"
	"stonewrit/grading/stone"
)

// measureRows are asked of weight and dimensions.
func measureRows() []requirement {
	return []requirement{
		{id: "ct-estimated", path: "size", lacks: func(m *matter) bool {
			w := m.stone.Weight
			return w.Measured == 0 && w.Estimate == nil && !m.stone.Stone.Weight.Stated.Given()
		}, needed: "the document needs a weight, measured, estimated from dimensions or stated", hint: "weight: {measured: …} or size: with length, width and depth"},
		{id: "dims", path: "size", lacks: func(m *matter) bool {
			p := m.stone.Stone.Quality.Pearl
			return !m.stone.Stone.Size.Given() && (p == nil || !p.Sizes.Given)
		}, needed: "the document needs the dimensions of the stone", hint: "size: {shape: oval, length: 8.00 mm, width: 6.20 mm, depth: 3.75 mm}"},
		{id: "mass-error", path: "weight.stated", lacks: func(m *matter) bool {
			w := m.stone.Stone.Weight
			return w.Stated.Given() && w.Measured.Given() && math.Abs(w.Stated.Float()-w.Measured.Float()) > m.limit("weighings apart")
		}, needed: "the stated weight lies far from the weight measured here", hint: "weigh again; is the paper that of this stone?"},
		{id: "external-results", path: "weight", lacks: func(m *matter) bool {
			w := m.stone.Stone.Weight
			return w.Stated.Given() && w.By == ""
		}, needed: "the stated weight needs who states it", hint: "weight: {stated: 1.01 ct, by: \"stamp in the shank\"}"},
	}
}

// testRows are asked of how the tests were made.
func testRows() []requirement {
	return []requirement{
		{id: "test-conditions", each: conditions},
		{id: "sg-temp", each: func(m *matter) []lack {
			return eachTest(m, func(t stone.Test) (key string, needed, hint phrase.Line) {
				g, ok := t.(*stone.Gravity)
				if ok && g.Method == "hydrostatic" && g.InWater.Given && !g.Water.Given() && g.Bath == nil {
					return "water", "the specific gravity needs the temperature of the water", "water: 21.5 C"
				}
				return
			})
		}},
		{id: "ri-limits", each: func(m *matter) []lack {
			return eachTest(m, func(t stone.Test) (key string, needed, hint phrase.Line) {
				r, ok := t.(*stone.Refractometer)
				if ok && !r.Liquid.Given() && (m.bench == nil || !m.bench.Instruments[r.Instrument].Limit.Given()) {
					return "instrument", "the index needs the limit of the contact liquid, above which nothing is read", "limit: 1.80 under the refractometer in bench.yaml, or liquid: 1.80 here"
				}
				return
			})
		}},
		{id: "rec-repeat", each: func(m *matter) []lack {
			return eachTest(m, func(t stone.Test) (key string, needed, hint phrase.Line) {
				if h := t.Header(); h.Instrument == "" && byInstrument(t) {
					return "instrument", phrase.Say("the %s test needs the instrument it was made with", phrase.Word(h.Kind)), "instrument: one of bench.yaml"
				}
				return
			})
		}},
		{id: "rec-repeat", path: "weight.instrument", lacks: func(m *matter) bool {
			w := m.stone.Stone.Weight
			return w.Measured.Given() && w.Instrument == ""
		}, needed: "the weight needs the balance it was taken with", hint: "weight: {measured: 1.520 ct, instrument: balance-1}"},
		{id: "rec-repeat", path: "size.instrument", lacks: func(m *matter) bool {
			z := m.stone.Stone.Size
			return z.Given() && z.Instrument == "" && m.stone.Stone.Opinion.Basis != "stated"
		}, needed: "the dimensions need the gauge they were taken with", hint: "size: {…, instrument: gauge-1}"},
		{id: "uv-eyes", path: "tests", lacks: func(m *matter) bool {
			_, lit := counted[*stone.Ultraviolet](m.stone.Stone)
			return lit && (m.bench == nil || !m.bench.Safety.Eyes)
		}, needed: "an ultraviolet lamp was used, and the bench does not say that eyes are protected", hint: "write safety: {eye protection: true} in bench.yaml when it is so"},
		{id: "scratch", each: func(m *matter) []lack {
			return eachTest(m, func(t stone.Test) (key string, needed, hint phrase.Line) {
				if h, ok := t.(*stone.Hardness); ok && h.Consent == "" {
					return "consent", "a scratch stays on the stone, and nobody is named who agreed to it", "consent: \"client's letter of 2026-10-12\", or that it is an old mark"
				}
				return
			})
		}},
		{id: "acetone", each: wipes},
	}
}

// eachTest asks every test that counts.
func eachTest(m *matter, ask func(t stone.Test) (key string, needed, hint phrase.Line)) []lack {
	var list []lack
	for i, a := range m.stone.Stone.Tests {
		if a.Test == nil || a.Header().SetAside != "" {
			continue
		}
		if key, needed, hint := ask(a.Test); needed != "" {
			list = append(list, lack{fmt.Sprintf("tests[%d].%s", i, key), needed, hint})
		}
	}
	return list
}

// byInstrument reports whether the result of a test hangs on the instrument that
// made it: not one by hand or eye, and not by somebody else.
func byInstrument(t stone.Test) bool {
	switch t := t.(type) {
	case *stone.Refractometer, *stone.Digital, *stone.Spectroscope, *stone.Ultraviolet, *stone.Thermal, *stone.Electrical, *stone.Screening,
		*stone.Radioactivity, *stone.OwnSpectrum:
		return true
	case *stone.Gravity:
		return t.Method != "value"
	}
	return false
}

// conditions tells what a result depends on and nobody wrote down.
func conditions(m *matter) []lack {
	return eachTest(m, func(t stone.Test) (key string, needed, hint phrase.Line) {
		if r, ok := t.(*stone.Refractometer); ok && r.Light == "" {
			return "light", "the index needs the light it was read in", "light: sodium, or white"
		}
		return
	})
}

// wipes finds stones that were cleaned with what spoils them.
func wipes(m *matter) []lack {
	p := m.stone.Stone.Prepared
	if p == nil {
		return nil
	}
	care := m.Quality.CareOf(m.Quality.SubjectOf(m.stone.Stone), m.Quality.Fissured(m.stone.Stone))
	var list []lack
	for i, with := range p.By.Items {
		word := strings.ToLower(with)
		if care.Words[quality.Solvents] == quality.No && (strings.Contains(word, "acetone") || strings.Contains(word, "solvent")) {
			list = append(list, lack{fmt.Sprintf("prepared.by[%d]", i), phrase.Say("%s was used on a stone that solvents spoil", with), "say under quality: {condition: …} what came of it, and mend the list if it is a slip"})
		}
	}
	return list
}
