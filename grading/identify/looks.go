package identify

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// A rival can be left out by its look alone: a blue transparent stone is no
// malachite. Looks say nothing of the opinion itself, since they vary, and they
// are weighed with care: a material is left out only if the table knows few
// colours of it and none is the stone's or next to it.

// looksOtherwise leaves out a rival that is never met in the stone's
// transparency or colour.
func looksOtherwise(s *stone.Stone, hue string, m *gem.Material) bool {
	if s.Appearance.Transparency == "transparent" && len(m.Looks) > 0 && !slices.Contains(m.Looks, "transparent") {
		return true
	}
	return hue != "" && otherColour(hue, m)
}

// noEdge leaves out a metallic opaque rival, of which the table has no index
// because a refractometer shows no edge of it, where an edge was read.
func noEdge(v *reading.Values, m *gem.Material) bool {
	return m.Optic == gem.Opaque && !m.Low.Known() && slices.ContainsFunc(v.Index, func(x reading.IndexValue) bool {
		return x.Edges > 0 && !x.Reflected && x.Suspect == "" && x.Test.Header().SetAside == ""
	})
}

// onlyOpaque reports whether a material is never met but opaque.
func onlyOpaque(m *gem.Material) bool { return len(m.Looks) == 1 && m.Looks[0] == "opaque" }

// lightPasses reports whether the file shows that light passes the stone.
func lightPasses(s *stone.Stone) bool {
	if t := s.Appearance.Transparency; t != "" {
		return t != "opaque"
	}
	return slices.ContainsFunc(s.Tests, func(a stone.AnyTest) bool {
		switch t := a.Test.(type) {
		case *stone.Polariscope:
			return t.SetAside == "" && (t.Sees == "blinks" || t.Figure != "" && t.Figure != "none seen")
		case *stone.Dichroscope:
			return t.SetAside == "" && len(t.Colours.Items) > 1
		}
		return false
	})
}

// mostHues is how many hues a material may have and still be told by its
// colour (common practice, from memory).
const mostHues = 3

// otherColour reports whether a material of few colours has none near the hue.
func otherColour(hue string, m *gem.Material) bool {
	ownColour := m.Class == "mineral" || m.Class == "rock" || m.Class == "glass" && m.Growth == gem.Natural
	if hue == "black" || !ownColour {
		return false
	}
	hues := map[string]bool{}
	for _, c := range m.Colours {
		h := hueOf(c)
		if h == "" {
			return false // any, many, dyed: no colour of its own
		}
		if h == "black" {
			continue // as good as no hue: any dark stone may look black
		}
		hues[h] = true
	}
	if len(hues) == 0 || len(hues) > mostHues || hues[hue] {
		return false
	}
	for _, next := range neighbours(hue) {
		if hues[next] {
			return false
		}
	}
	return true
}

// hueOf is the hue of a colour word, by its last word: "purplish red" is red.
// It is "" for a word that names no hue.
func hueOf(colour string) string {
	words := strings.FieldsFunc(strings.ToLower(colour), func(r rune) bool { return r == ' ' || r == '-' || r == ',' })
	if len(words) == 0 {
		return ""
	}
	switch w := words[len(words)-1]; w {
	case "red", "pink", "orange", "yellow", "green", "blue", "violet", "purple", "brown", "black":
		return w
	case "golden", "gold":
		return "yellow"
	case "colourless", "white", "grey", "cream":
		return "colourless"
	}
	return ""
}

// neighbours are the hues that pass into a hue without a clear line.
func neighbours(hue string) []string {
	switch hue {
	case "red":
		return []string{"pink", "orange", "purple", "brown"}
	case "pink":
		return []string{"red", "purple", "orange", "violet"}
	case "orange":
		return []string{"red", "yellow", "brown", "pink"}
	case "yellow":
		return []string{"orange", "green", "brown", "colourless"}
	case "green":
		return []string{"yellow", "blue", "brown"}
	case "blue":
		return []string{"green", "violet"}
	case "violet":
		return []string{"blue", "purple", "pink"}
	case "purple":
		return []string{"violet", "red", "pink"}
	case "brown":
		return []string{"red", "orange", "yellow", "green"}
	case "colourless":
		return []string{"yellow"}
	}
	return nil
}
