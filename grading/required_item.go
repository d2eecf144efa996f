package grading

import (
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// itemRows are asked of a stone: that it can be known again, its condition, its
// quality, and what is left open.
func itemRows() []requirement {
	return []requirement{
		{id: "item-unambiguous", path: "stone", lacks: func(m *matter) bool { return marksOf(m.stone.Stone) < 2 },
			needed: "the item must be told from any other: two at least of weight, dimensions, inscription, photograph, features", hint: "add photos: or size:"},
		{id: "item-layman", path: "quality.description", lacks: func(m *matter) bool { return m.stone.Stone.Quality.Words == "" },
			needed: "the document should describe the stone in words by which anybody knows it again", hint: "quality: {description: \"oval red stone; a fine line across one end\"}"},
		{id: "condition", path: "quality.condition", lacks: func(m *matter) bool { return m.stone.Stone.Quality.Condition == "" },
			needed: "the document needs the condition of the item", hint: "quality: {condition: \"no wear or damage seen\"}"},
		{id: "natural-or-not", path: "opinion.growth", lacks: func(m *matter) bool { return m.stone.Stone.Opinion.Growth == "" },
			needed: "the document needs the growth, or undetermined", hint: "growth: undetermined"},
		{id: "treat-status", path: "opinion.treatments", lacks: func(m *matter) bool {
			o := m.stone.Stone.Opinion
			return o.Treatments.Given && len(o.Treatments.Items) == 0 && !magnified(m.stone.Stone) && o.Basis != "stated"
		}, needed: "none seen was written, and the stone was not examined under magnification", hint: "leave treatments out for not examined, or record a magnification test"},
		{id: "tests-done", path: "tests", lacks: func(m *matter) bool { return m.stone.Stone.Opinion.Basis != "stated" && !tested(m.stone.Stone) },
			needed: "the document needs the tests that its conclusions rest on", hint: "record the tests, or write basis: stated"},
		{id: "lab-same-properties", path: "opinion.growth", lacks: func(m *matter) bool {
			o := m.stone.Stone.Opinion
			return o.Growth == "laboratory-grown" && o.Basis != "stated" && !tested(m.stone.Stone)
		}, needed: "a laboratory-grown stone must be shown to have the properties of the stone it is named after", hint: "record the tests that show them"},
	}
}

// marksOf counts what tells the item from any other.
func marksOf(s *stone.Stone) int {
	n := 0
	for _, has := range []bool{
		s.Weight.Measured.Given() || s.Weight.Stated.Given(), s.Size.Given(), s.Inscription.Text != "", len(s.Photos) > 0, magnified(s),
	} {
		if has {
			n++
		}
	}
	return n
}

func magnified(s *stone.Stone) bool {
	_, ok := counted[*stone.Magnification](s)
	return ok
}

// tested reports whether any test counts.
func tested(s *stone.Stone) bool {
	_, ok := counted[stone.Test](s)
	return ok
}

// counted is the first test of a kind that is not set aside.
func counted[T stone.Test](s *stone.Stone) (test T, ok bool) {
	for _, a := range s.Tests {
		if found, is := a.Test.(T); is && a.Header().SetAside == "" {
			return found, true
		}
	}
	return test, false
}

func listed(words []string) phrase.Line { return phrase.And(phrase.Texts(words)...) }
