package quality

import (
	"slices"
	"strings"
)

// A centre is the centre of one of the 267 blocks of the ISCC-NBS method of
// designating colours.
type centre struct {
	name    string
	said    string // the name in one spelling
	munsell Munsell
}

// A ColourName is the plain name of a Munsell colour.
type ColourName struct {
	Name string
	// Next is the name whose centre is the second nearest, where it is not much
	// farther: the colour lies near the boundary of the two. Otherwise empty.
	Next string
	// Distance to the nearest centre, in steps of chroma.
	Distance float64
}

// borderline is how many times as far as the nearest centre the second may lie
// and still be told (our own rule: a sixth beyond the middle between the two).
const borderline = 1.4

// ColourName works out the plain name of a colour: that of the nearest centre of
// the ISCC-NBS blocks. The blocks themselves have other boundaries than this
// nearness gives, so a name next to the boundary may be the neighbour's.
func (g *Grader) ColourName(m Munsell) ColourName {
	near := g.nearestColours(m, 2)
	first, second := near[0], near[1]
	n := ColourName{Name: first.name, Distance: m.distance(first.munsell)}
	if m.distance(second.munsell) < borderline*n.Distance {
		n.Next = second.name
	}
	return n
}

// nearestColours are the first n of the centres that a colour may belong to, the
// nearest first. The neutral names hold the colours of least chroma, whatever
// their hue.
func (g *Grader) nearestColours(m Munsell, n int) []centre {
	type apart struct {
		*centre
		by float64
	}
	grey := m.Chroma <= g.limit("neutral chroma")
	if grey {
		m.Chroma = 0
	}
	near := make([]apart, 0, n+1)
	for i := range g.colours {
		c := apart{&g.colours[i], m.distance(g.colours[i].munsell)}
		if c.munsell.Neutral() != grey {
			continue
		}
		at := len(near)
		for at > 0 && near[at-1].by > c.by {
			at--
		}
		if at < n {
			near = slices.Insert(near, at, c)
			near = near[:min(len(near), n)]
		}
	}
	list := make([]centre, len(near))
	for i, c := range near {
		list[i] = *c.centre
	}
	return list
}

// ColourNames are the 267 plain colour names, in alphabetical order.
func (g *Grader) ColourNames() []string {
	var names []string
	for _, c := range g.colours {
		names = append(names, c.name)
	}
	slices.Sort(names)
	return names
}

func (g *Grader) readColours() error {
	return each("iscc_nbs.csv", func(r *row) {
		c := centre{name: r.text("name")}
		c.said = american(c.name)
		m, err := ParseMunsell(r.text("munsell"))
		if err != nil {
			r.fail("munsell", err.Error())
		}
		c.munsell = m
		if slices.ContainsFunc(g.colours, func(b centre) bool { return b.name == c.name }) {
			r.fail("name", "is there twice")
		}
		g.colours = append(g.colours, c)
	}, "name", "munsell", "srgb")
}

// clash is how many of the nearest names the words of a colour may be drawn
// from before they contradict the notation: the name itself and its neighbours
// (our own rule).
const clash = 5

// Clashes reports whether words for a colour contradict its notation. Words that
// are one of the 267 names clash if they are none of the five nearest; other
// words clash if they name a hue and none of the five nearest names does. Words
// without a hue never clash.
func (g *Grader) Clashes(words string, m Munsell) bool {
	said := american(words)
	near := g.nearestColours(m, clash)
	same := func(c centre) bool { return c.said == said }
	if slices.ContainsFunc(near, same) {
		return false
	}
	if slices.ContainsFunc(g.colours, same) {
		return true
	}
	hues := hueWords(said)
	if len(hues) == 0 {
		return false
	}
	return !slices.ContainsFunc(near, func(c centre) bool {
		for _, h := range hueWords(c.said) {
			if slices.Contains(hues, h) {
				return true
			}
		}
		return false
	})
}

// american folds the spelling of colour words to one.
func american(words string) string {
	s := strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(words, "-", " "))), " ")
	return strings.ReplaceAll(s, "grey", "gray")
}

// hueWords are the nouns of hue among the words of a colour; "purplish red" has
// the one noun red.
func hueWords(words string) []string {
	var found []string
	for _, w := range strings.Fields(words) {
		w = strings.Trim(w, ",.;()")
		if slices.Contains([]string{"red", "pink", "orange", "brown", "yellow", "olive", "green", "blue", "violet", "purple", "white", "gray", "black"}, w) {
			found = append(found, w)
		}
	}
	return found
}
