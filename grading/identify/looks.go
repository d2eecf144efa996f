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
func looksOtherwise(s *stone.Stone, hues []string, m *gem.Material) bool {
	switch t := s.Appearance.Transparency; {
	case t == "transparent" && len(m.Looks) > 0 && !slices.Contains(m.Looks, t):
		return true
	case t == "opaque" && len(m.Looks) == 1 && m.Looks[0] == "transparent":
		return true
	}
	return len(hues) > 0 && otherColour(hues, m)
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
const mostHues = 5

// otherColour reports whether a material of few colours has none of the hues of
// the stone or next to them.
func otherColour(hues []string, m *gem.Material) bool {
	ownColour := m.Class == "mineral" || m.Class == "rock" || m.Class == "organic" || m.Class == "glass" && m.Growth == gem.Natural
	if !ownColour || slices.Contains(hues, "black") {
		return false
	}
	own := map[string]bool{}
	for _, c := range m.Colours {
		h := hueOf(c)
		if h == "" {
			return false // any, many, dyed: no colour of its own
		}
		if h != "black" { // as good as no hue: any dark stone may look black
			own[h] = true
		}
	}
	if len(own) == 0 || len(own) > mostHues {
		return false
	}
	return !slices.ContainsFunc(hues, func(h string) bool {
		return own[h] || slices.ContainsFunc(neighbours(h), func(n string) bool { return own[n] })
	})
}

// huesOf are the hues that a colour names: "yellowish green" is green and yellow.
func huesOf(colour string) []string {
	var hues []string
	for _, w := range strings.FieldsFunc(strings.ToLower(colour), func(r rune) bool { return r == ' ' || r == '-' || r == ',' }) {
		for _, h := range []string{w, strings.TrimSuffix(w, "ish"), strings.TrimSuffix(w, "y"), doubled(w)} {
			if hue := hueOf(h); hue != "" && !slices.Contains(hues, hue) {
				hues = append(hues, hue)
			}
		}
	}
	return hues
}

// doubled undoes the doubled letter of "reddish".
func doubled(w string) string { return strings.TrimSuffix(w, "dish") }

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

// neighbours are the hues that pass into a hue so closely that one name is
// often used for the other.
func neighbours(hue string) []string {
	return map[string][]string{
		"red":    {"pink"},
		"pink":   {"red", "purple"},
		"orange": {"brown"},
		"brown":  {"orange", "yellow"},
		"blue":   {"violet"},
		"violet": {"blue", "purple"},
		"purple": {"violet", "pink"},
	}[hue]
}
