package quality

import (
	"maps"
	"slices"
	"strings"

	"stonewrit/grading/stone"
)

// A Colour is the colour of a stone as described: the mean impression face up,
// in the light named.
type Colour struct {
	Notation *Munsell // nil for none, or one that cannot be read
	Worked   ColourName
	Words    string // as written; "" for none
	Light    string
	Zoning   string
	Changes  []ByLight // of stones that change colour, by light
}

// A ByLight is a colour in one light.
type ByLight struct{ Light, Colour string }

// ColourOf is the colour that a stone file gives, with the plain name worked
// out from its notation.
func (g *Grader) ColourOf(s *stone.Stone) Colour {
	q := s.Quality.Colour
	if q == nil {
		return Colour{}
	}
	c := Colour{Words: q.Words, Light: q.Light, Zoning: q.Zoning}
	if m, err := ParseMunsell(q.Munsell); err == nil {
		c.Notation, c.Worked = &m, g.ColourName(m)
	}
	for _, light := range slices.Sorted(maps.Keys(q.Change)) {
		c.Changes = append(c.Changes, ByLight{light, q.Change[light]})
	}
	return c
}

// Name is the words for the colour: those written, else those worked out.
func (c Colour) Name() string {
	if c.Words != "" {
		return c.Words
	}
	return c.Worked.Name
}

// A Visibility says what is seen of what a stone holds.
type Visibility struct{ AtTenTimes, ByEye, Prominent bool }

// ClarityOf reads the clarity in plain words, tied to ten times and to the
// unaided eye; ok is false for other words.
func ClarityOf(words string) (v Visibility, ok bool) {
	switch words {
	case "nothing seen at 10x":
		return Visibility{}, true
	case "visible at 10x":
		return Visibility{AtTenTimes: true}, true
	case "visible to the eye":
		return Visibility{AtTenTimes: true, ByEye: true}, true
	case "prominent":
		return Visibility{true, true, true}, true
	}
	return Visibility{}, false
}

// A Face is how much of the face of a cut stone can be read through and stays
// dark, in tenths. No score is made of them.
type Face struct {
	Window, Extinction       int // tenths, from 0 to 10
	HasWindow, HasExtinction bool
}

// FaceOf gives the areas of a cut, to the nearest tenth.
func FaceOf(c *stone.CutGrade) Face {
	if c == nil {
		return Face{}
	}
	tenths := func(r stone.Ratio) int { return int(r.Float()/10 + 0.5) }
	return Face{tenths(c.Window), tenths(c.Extinction), c.Window.Given(), c.Extinction.Given()}
}

// seesPhenomenon reports whether the appearance names a phenomenon.
func seesPhenomenon(s *stone.Stone, name string) bool {
	return slices.Contains(s.Appearance.Phenomenon.Items, name) || strings.Contains(strings.ToLower(s.Quality.Phenomenon), name)
}
