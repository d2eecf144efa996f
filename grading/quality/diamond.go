package quality

import (
	"errors"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
)

func (g *Grader) readDiamondScales() error {
	return errors.Join(
		readScale("diamond_colour.csv", &g.diamondColour),
		readScale("diamond_clarity.csv", &g.diamondClarity),
		readScale("fluorescence.csv", &g.fluorescence),
	)
}

// ParseDiamondColour reads a colour from D to Z, or a range such as "F to H".
// Words such as fancy yellow are no grade of this scale.
func (g *Grader) ParseDiamondColour(text string) (Grades, error) { return g.diamondColour.parse(text) }

// ParseDiamondClarity reads a clarity from FL to I3, or a range. "loupe clean"
// is read as IF, P1 to P3 as I1 to I3, and kept as written. VVS, VS and SI alone
// are the ranges of their two halves.
func (g *Grader) ParseDiamondClarity(text string) (Grades, error) {
	whole := strings.ToUpper(strings.TrimSpace(text))
	best, okBest := g.diamondClarity.grade(whole + "1")
	worst, okWorst := g.diamondClarity.grade(whole + "2")
	if okBest && okWorst && g.diamondClarity[best.rank].split {
		return Grades{best, worst}, nil
	}
	return g.diamondClarity.parse(text)
}

// ColourWords are the words of the IDC Rules, 3.1.1.2, for a colour: "rare
// white" for G, "rare white + to white" for F to H.
func (g *Grader) ColourWords(c Grades) string {
	best, worst := g.diamondColour[c.Best.rank].words, g.diamondColour[c.Worst.rank].words
	if best == worst {
		return best
	}
	return best + " to " + worst
}

// BetweenMasters is the colour of a stone that lies between two neighbouring
// master stones: a master marks the lower limit of its grade, so the stone has
// the lower of the two (IDC Rules, 3.1.1.3-3.1.1.4). ok is false for masters that
// are not neighbours on the scale.
func (g *Grader) BetweenMasters(one, other string) (grade string, ok bool) {
	a, okA := g.diamondColour.grade(one)
	b, okB := g.diamondColour.grade(other)
	if !okA || !okB || a.rank-b.rank != 1 && b.rank-a.rank != 1 {
		return "", false
	}
	return g.diamondColour[max(a.rank, b.rank)].name, true
}

// A Fluorescence is a diamond's fluorescence as a grade, or of several stones a
// range: against reference stones under long wave, with its colour. It is
// another list than that of the ultraviolet test and is never taken from there.
type Fluorescence struct {
	Grades
	Colour string // "" for none
}

// ParseFluorescence reads "none", a strength with a colour, "medium blue", or a
// range with one, "none to weak blue".
func (g *Grader) ParseFluorescence(text string) (Fluorescence, error) {
	words := strings.Fields(text)
	for n := len(words); n > 0; n-- {
		grades, err := g.fluorescence.parse(strings.Join(words[:n], " "))
		if err != nil {
			continue
		}
		f := Fluorescence{grades, strings.Join(words[n:], " ")}
		if f.Worst.rank == 0 && f.Colour != "" {
			return Fluorescence{}, unread("%q: none has no colour", text)
		}
		return f, nil
	}
	return Fluorescence{}, unread("%q begins with none of %s", text, phrase.Commas(phrase.Words(g.fluorescence.names())...))
}

// DiamondClarities are the clarity grades, the best first.
func (g *Grader) DiamondClarities() []string { return g.diamondClarity.names() }

// DiamondColours are the colour grades, the best first.
func (g *Grader) DiamondColours() []string { return g.diamondColour.names() }

// Fluorescences are the strengths, none first.
func (g *Grader) Fluorescences() []string { return g.fluorescence.names() }

func (s scale) names() []string {
	var names []string
	for _, t := range s {
		names = append(names, t.name)
	}
	return names
}

// splits reports whether a clarity uses halves of a grade: VS1, not VS.
func (g *Grader) splits(c Grades) bool {
	return slices.ContainsFunc(g.diamondClarity[c.Best.rank:c.Worst.rank+1], func(t step) bool { return t.split })
}
