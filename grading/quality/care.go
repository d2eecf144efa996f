package quality

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// A Danger is something that may harm a stone in use, in cleaning or at the
// jeweller's bench.
type Danger int

// The dangers, in the order told to people.
const (
	Ultrasonic Danger = iota
	Steam
	Heat
	Solvents
	Light
	Knocks
	Torch
	dangers
)

// Dangers lists them in the order told to people.
func Dangers() []Danger {
	return []Danger{Ultrasonic, Steam, Heat, Solvents, Light, Knocks, Torch}
}

// String is the danger as the tables and a stone's care name it.
func (d Danger) String() string {
	return [dangers]string{"ultrasonic", "steam", "heat", "solvents", "light", "knocks", "torch"}[d]
}

// A Word says whether a stone may meet a danger: yes, with care, or no. Empty is
// no answer, and adds nothing.
type Word string

// The words from the mildest to the strictest.
const (
	Yes     Word = "yes"
	Careful Word = "care"
	No      Word = "no"
)

// stricter is the stricter of two words.
func (w Word) stricter(v Word) Word {
	order := []Word{"", Yes, Careful, No}
	return order[max(slices.Index(order, w), slices.Index(order, v))]
}

// Care is a word for each danger.
type Care [dangers]Word

// An Advice is how a stone is to be cared for: the strictest word of all that
// is known of it.
type Advice struct {
	Words   Care
	Because [dangers][]string // what asks for the word: a material, a treatment, "fissures"
	Notes   []string          // of the material, from the gem table
	Special []string          // of the treatments named, sentences from the gem table
	Unknown bool              // the gem table has no row, so that every word is no
}

// CareOf is the care of a stone by its material, the treatments named, those
// that are customary for the material and cannot be ruled out, and fissures
// seen. Where nothing is known of the material the answer is no.
func (g *Grader) CareOf(s Subject, fissures bool) Advice {
	var a Advice
	g.careOfMatter(&a, s)
	for _, t := range s.Treatments {
		a.add(t.Name, g.treatmentRowOf(t.Treatment).care)
		if t.Care != "" && !slices.Contains(a.Special, t.Care) {
			a.Special = append(a.Special, t.Care)
		}
	}
	for _, c := range g.Customary(s) {
		if c.Frequency != gem.Sometimes {
			a.add("customary: "+c.Treatment.Name, g.treatmentRowOf(c.Treatment).care)
		}
	}
	if fissures {
		a.add("fissures", g.conditions["fissures"])
	}
	return a
}

func (g *Grader) careOfMatter(a *Advice, s Subject) {
	if len(s.Layers) > 0 || s.Growth == gem.Composite {
		a.add("the join", g.conditions["join"])
	}
	for _, l := range s.Layers {
		g.careOfMaterial(a, l.Material)
	}
	if len(s.Layers) == 0 {
		g.careOfMaterial(a, s.Species)
		g.careOfMaterial(a, s.Variety)
	}
	if a.Words == (Care{}) || a.Words[Ultrasonic] == "" {
		a.Unknown = true
		a.add("unknown material", g.conditions["unknown"])
	}
}

func (g *Grader) careOfMaterial(a *Advice, m *gem.Material) {
	if m == nil || m.Care == (gem.Care{}) {
		return
	}
	c := m.Care
	words := Care{Ultrasonic: Word(c.Ultrasonic), Steam: Word(c.Steam), Heat: Word(c.Heat), Solvents: Word(c.Solvents), Light: Word(c.Light), Knocks: Word(c.Knocks)}
	words[Torch] = words[Heat].stricter(Careful) // a torch is heat, and sudden
	a.add(m.Name, words)
	if c.Note != "" && !slices.Contains(a.Notes, c.Note) {
		a.Notes = append(a.Notes, c.Note)
	}
}

// add takes what is stricter of the words, and notes who asks for it.
func (a *Advice) add(because string, words Care) {
	for _, d := range Dangers() {
		w, was := words[d], a.Words[d]
		switch {
		case w == "":
		case w == was:
			a.Because[d] = append(a.Because[d], because)
		case w.stricter(was) == w:
			a.Words[d], a.Because[d] = w, []string{because}
		}
	}
}

// With lists the dangers that have the word, in the order told to people.
func (a Advice) With(w Word) []Danger {
	var list []Danger
	for _, d := range Dangers() {
		if a.Words[d] == w {
			list = append(list, d)
		}
	}
	return list
}

// Fissured reports whether a recorded test shows open or filled fissures.
func (g *Grader) Fissured(s *stone.Stone) bool {
	return slices.ContainsFunc(g.seen(s), func(term string) bool { return slices.Contains(g.fissures, term) })
}

// seen are the features that magnification and other looking showed, by their
// proper terms; tests set aside do not count.
func (g *Grader) seen(s *stone.Stone) []string {
	var terms []string
	for _, t := range s.Tests {
		var sees []string
		switch test := t.Test.(type) {
		case *stone.Magnification:
			sees = test.Sees.Items
		case *stone.Features:
			sees = test.Sees.Items
		}
		if t.Test == nil || t.Header().SetAside != "" {
			continue
		}
		for _, word := range sees {
			if f, err := g.gems.Feature(word); err == nil {
				terms = append(terms, f.Term)
			}
		}
	}
	return terms
}

// readCare reads what holds for a condition whatever the material, and the
// features that count as fissures.
func (g *Grader) readCare() error {
	g.conditions = map[string]Care{}
	if err := each("care.csv", func(r *row) {
		var c Care
		for _, d := range Dangers() {
			c[d] = Word(r.word(d.String(), "", "yes", "care", "no"))
		}
		g.conditions[r.word("condition", "fissures", "join", "unknown")] = c
	}, "condition", "ultrasonic", "steam", "heat", "solvents", "light", "knocks", "torch"); err != nil {
		return err
	}
	return each("fissures.csv", func(r *row) {
		f, err := g.gems.Feature(r.text("term"))
		if err != nil || f.Term != r.text("term") {
			r.fail("term", "is not a proper term of the features table")
			return
		}
		g.fissures = append(g.fissures, f.Term)
	}, "term")
}
