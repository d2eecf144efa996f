package quality

import (
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
)

// A Name is what a stone may be called, in its parts. Qualifier stands directly
// before Noun, in the same prominence (16 CFR 23.20(b), 23.25(b)); what stands
// in Beside may not be parted from the name either.
type Name struct {
	Treated   bool   // "treated" leads the name: diamonds (ISO 18323, 2.3)
	Water     string // of pearls
	Qualifier string // natural, laboratory-grown, cultured, imitation, composite, assembled, reconstructed; "" for none
	Noun      string
	Inside    []phrase.Line // in parentheses behind it: species, method, layers, what an imitation is made of
	Variety   string        // told behind the species where the growth is open
	Open      bool          // the growth is not determined
	Beside    []phrase.Line // treatments of specific disclosure, with amount and place
	Also      []phrase.Line // treatments of general disclosure
	Notice    Notice
	Many      bool
}

// A Notice is a sentence that has to go with a name.
type Notice string

// CompositeNotice: the product has not the properties of the stone it is named
// after and needs special care (16 CFR 23.25(d)(3), (e), from memory).
const CompositeNotice Notice = "composite"

// Words that say how a stone came to be.
const (
	natural         = "natural"
	laboratoryGrown = "laboratory-grown"
	cultured        = "cultured"
	imitation       = "imitation"
	composite       = "composite"
	assembled       = "assembled"
	reconstructed   = "reconstructed"

	naturalOrGrown    = "natural or laboratory-grown"
	naturalOrCultured = "natural or cultured"
)

// Name is what a stone may be called by the stricter of 16 CFR 23 and ISO 18323
// with the books of CIBJO. It names the growth of the opinion; whether the tests
// support it is the document's to say, and Subject.WithoutGrowth leaves it open.
func (g *Grader) Name(s Subject) Name {
	n := g.nameOfMatter(g.settled(s))
	n.Many = s.Many
	return n
}

func (g *Grader) nameOfMatter(s Subject) Name {
	if s.Imitates != "" {
		return g.imitationName(s)
	}
	if made, ok := g.imitationOf(s); ok {
		return made
	}
	n := g.grownName(s)
	g.nameTreatments(&n, s)
	return n
}

// grownName is the name by growth, without the treatments.
func (g *Grader) grownName(s Subject) Name {
	switch {
	case s.Growth == gem.Composite || len(s.Layers) > 0:
		return g.assembledName(s)
	case g.is(s, "pearl"):
		return g.pearlName(s)
	case s.Growth == gem.LaboratoryGrown:
		return g.grownInLaboratory(s)
	case s.Growth == gem.Artificial:
		return Name{Noun: s.noun(), Inside: []phrase.Line{"artificial product"}}
	case s.Growth == gem.Natural:
		return g.mined(s)
	}
	return g.openName(s)
}

// noun is the narrowest name. "precious", as in precious opal, is for natural
// stones alone (16 CFR 23.27).
func (s Subject) noun() string {
	switch m := s.narrow(); {
	case m != nil && s.Growth != gem.Natural:
		return strings.TrimPrefix(m.Name, "precious ")
	case m != nil:
		return m.Name
	case s.Written != "":
		return s.Written
	}
	return "stone of undetermined material"
}

// apart reports whether the variety's name does not tell the species.
func (s Subject) apart() bool {
	return s.Variety != nil && s.Species != nil && s.Variety != s.Species && !strings.Contains(s.Variety.Name, s.Species.Name)
}

// mined names what nature made: a bare variety name is for that alone (16 CFR
// 23.25(a)), "natural diamond" is never bare (ISO 18323, 2.2 note).
func (g *Grader) mined(s Subject) Name {
	if s.apart() {
		return Name{Noun: s.noun(), Inside: append([]phrase.Line{Qualified(natural, named(s.Species.Name))}, g.shortOfDiamond(s)...)}
	}
	return Name{Qualifier: natural, Noun: s.noun(), Inside: g.shortOfDiamond(s)}
}

// shortOfDiamond is what 16 CFR 23.12(c) asks for beside the word diamond where
// the stone has fewer polished facets than 23.12(b): their number, or the shape.
func (g *Grader) shortOfDiamond(s Subject) []phrase.Line {
	unfaceted := []string{"rose", "double rose", "briolette", "cabochon", "double cabochon", "flat cabochon", "bead", "tablet", "carved", "rough"}
	switch {
	case !g.is(s, "diamond"):
		return nil
	case s.Facets > 0 && s.Facets < int(g.limit("diamond facets")):
		return []phrase.Line{phrase.Say("%d facets", s.Facets)}
	case s.Facets == 0 && slices.Contains(unfaceted, s.Cut):
		return []phrase.Line{named(s.Cut)}
	}
	return nil
}

func (g *Grader) grownInLaboratory(s Subject) Name {
	n := Name{Qualifier: laboratoryGrown, Noun: s.noun()}
	if s.apart() {
		n.Inside = append(n.Inside, Qualified(laboratoryGrown, named(s.Species.Name)))
	}
	n.Inside = append(append(n.Inside, method(s.Method)), g.shortOfDiamond(s)...)
	return n
}

func method(word string) phrase.Line {
	switch {
	case unset(word):
		return "method not determined"
	case word == "bead nucleus":
		return "with bead nucleus"
	}
	return named(word)
}

// pearlName says natural or cultured directly before pearl, and the water (16
// CFR 23.20; CIBJO Pearl Book 4.2).
func (g *Grader) pearlName(s Subject) Name {
	n := Name{Noun: s.noun(), Water: s.Water}
	for _, water := range []string{"saltwater", "freshwater"} {
		if rest, ok := strings.CutPrefix(n.Noun, water+" "); ok {
			n.Noun, n.Water = rest, water
		}
	}
	switch s.Growth {
	case gem.Natural:
		n.Qualifier = natural
	case gem.Cultured:
		n.Qualifier, n.Inside = cultured, []phrase.Line{method(s.Method)}
	default:
		n.Qualifier, n.Open = naturalOrCultured, true
	}
	if unset(n.Water) {
		n.Water, n.Inside = "", append(n.Inside, "water not determined")
	}
	return n
}

// openName names species and variety and says that the growth is open.
func (g *Grader) openName(s Subject) Name {
	if g.is(s, "diamond") {
		return Name{Qualifier: naturalOrGrown, Noun: s.noun(), Inside: g.shortOfDiamond(s), Open: true}
	}
	n := Name{Noun: s.noun(), Open: true}
	if s.apart() {
		n.Noun, n.Variety = s.Species.Name, s.Variety.Name
	}
	return n
}

// assembledName names every layer and says assembled (CIBJO Gemstone Book 2018,
// 3.2.1).
func (g *Grader) assembledName(s Subject) Name {
	n := Name{Qualifier: assembled, Noun: s.noun()}
	stones := 0
	for _, l := range s.Layers {
		n.Inside = append(n.Inside, phrase.Say("%s %s", phrase.Word(l.Part), g.layerName(l)))
		if l.Part != "join" && l.Part != "coating" {
			stones++
		}
	}
	switch stones {
	case 0:
	case 2:
		n.Noun = "doublet"
	case 3:
		n.Noun = "triplet"
	default:
		n.Noun = composite
	}
	return n
}

// layerName leaves the growth of a layer open where grown material of it is
// met: the file does not tell it.
func (g *Grader) layerName(l Layer) phrase.Line {
	switch m := l.Material; {
	case m == nil:
		return named(l.Written)
	case m.Growth == gem.LaboratoryGrown:
		return g.Name(Subject{Species: g.gems.SpeciesOf(m), Growth: m.Growth, Method: m.Method}).plain()
	case m.Growth == gem.Natural && g.gems.SpeciesOf(m).GrownMet == "yes":
		return phrase.Say("%s of undetermined growth", phrase.Word(m.Name))
	default:
		return named(m.Name)
	}
}

// imitationName puts imitation directly before what the stone poses as, and
// says what it is (16 CFR 23.25(b)).
func (g *Grader) imitationName(s Subject) Name {
	inner := s
	inner.Imitates, inner.Many = "", false
	made := g.nameOfMatter(inner)
	what := made.plain()
	if made.Qualifier == imitation { // a row that is an imitation of something by its name
		what = phrase.Commas(made.Inside...)
	}
	return Name{Qualifier: imitation, Noun: s.Imitates, Inside: []phrase.Line{what}, Notice: made.Notice}
}

// imitationOf reads material whose name says what it imitates: "glass imitation
// of pearl" is an imitation pearl of glass.
func (g *Grader) imitationOf(s Subject) (Name, bool) {
	if of, what, ok := strings.Cut(s.noun(), " imitation of "); ok {
		n := Name{Qualifier: imitation, Noun: what, Inside: []phrase.Line{named(of)}}
		g.nameTreatments(&n, s)
		return n, true
	}
	return Name{}, false
}

// nameTreatments puts the treatments beside the name, those told by others as
// well: what is known of them is to be disclosed.
func (g *Grader) nameTreatments(n *Name, s Subject) {
	for _, t := range s.Treatments {
		naming := g.naming(t.Treatment)
		switch {
		case naming.kind == composite && n.Qualifier != assembled:
			n.bind(naming.binder)
		case naming.kind == reconstructed && n.Qualifier != assembled:
			n.rebuild(s)
		case t.Disclosure == "specific":
			n.Beside = append(n.Beside, t.words())
		default:
			n.Also = append(n.Also, t.words())
		}
	}
	n.Treated = g.is(s, "diamond") && len(n.Beside)+len(n.Also) > 0
}

// bind makes the name that of gem material held together by a filler: it is
// neither the bare name nor "treated" (16 CFR 23.25(d)(1)-(2)).
func (n *Name) bind(binder string) {
	was := n.Qualifier
	n.Qualifier, n.Notice = composite, CompositeNotice
	if was == laboratoryGrown {
		n.Qualifier += " " + laboratoryGrown
	}
	if n.Variety != "" {
		n.Noun, n.Variety = n.Variety, ""
	}
	n.Inside, n.Open = []phrase.Line{phrase.Say("held together by %s", phrase.Word(binder))}, false
}

// rebuild makes the name that of pieces or powder pressed or bound together.
func (n *Name) rebuild(s Subject) {
	n.Qualifier, n.Noun, n.Variety, n.Open = reconstructed, s.noun(), "", false
	n.Inside, n.Notice = nil, CompositeNotice
}

// words are the treatment with amount and place: "oil in few fissures".
func (t Treated) words() phrase.Line {
	words := named(t.Name)
	switch {
	case t.Amount == "few":
		words = phrase.Say("%s in few fissures", words)
	case t.Amount == "several":
		words = phrase.Say("%s in several fissures", words)
	case t.Amount == "most":
		words = phrase.Say("%s in most fissures", words)
	case t.Where != "":
		words = phrase.Say("%s (%s)", words, t.Where)
	}
	if t.Told {
		words = phrase.Say("%s, as told", words)
	}
	return words
}
