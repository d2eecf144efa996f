package quality

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/phrase"
)

// A Metal is one part of a mounting. Karat and PerMille are separate claims: a
// mark 14 K is 583.3 per mille, a mark 585 is not 14 K by arithmetic.
type Metal struct {
	Name     string      // gold, silver, platinum, palladium; another word is kept
	Colour   string      // of gold: yellow, white, rose; "" for not told
	Karat    float64     // 0 for not marked in karat
	PerMille float64     // 0 for not marked in per mille
	Grams    float64     // 0 for not known
	Plated   string      // the metal of a layer over it, "" for none
	Alloy    phrase.Line // of platinum below 850: its other metals by name and share
}

// fineness is the metal's fineness by either claim.
func (m Metal) fineness() float64 {
	if m.PerMille > 0 {
		return m.PerMille
	}
	return PerMille(m.Karat)
}

// MetalName is what MetalLine says in English.
func (g *Grader) MetalName(m Metal) string { return g.MetalLine(m).String() }

// MetalLine is how a metal is called: the karat directly before gold, the
// number directly before silver unless it is sterling, platinum alone from 950
// per mille (16 CFR 23.3 to 23.6). A layer over it is told (23.7-23.8, from
// memory).
func (g *Grader) MetalLine(m Metal) phrase.Line {
	words := g.metalWords(m)
	if m.Plated != "" {
		words = phrase.Say("%s, %s-plated", words, phrase.Word(m.Plated))
	}
	return words
}

func (g *Grader) metalWords(m Metal) phrase.Line {
	number := phrase.Figure(strconv.FormatFloat(m.fineness(), 'f', -1, 64))
	switch {
	case m.fineness() == 0 && slices.Contains([]string{"gold", "silver", "platinum", "palladium"}, m.Name):
		return phrase.Say("%s of undetermined fineness", phrase.Word(m.Name))
	case m.Name == "gold":
		return g.goldWords(m)
	case m.Name == "silver" && m.PerMille >= g.limit("sterling"):
		return phrase.Say("sterling silver (%s per mille)", number)
	case m.Name == "platinum" && m.PerMille >= g.limit("platinum"):
		return phrase.Say("platinum (%s per mille)", number)
	case m.Name == "platinum" && m.PerMille < g.limit("platinum with number") && m.Alloy != "":
		return phrase.Say("%s platinum, %s", number, m.Alloy)
	case m.Name == "silver":
		return phrase.Say("%s silver", number)
	case m.Name == "platinum":
		return phrase.Say("%s platinum", number)
	case m.Name == "palladium":
		return phrase.Say("%s palladium", number)
	}
	return named(m.Name)
}

func (g *Grader) goldWords(m Metal) phrase.Line {
	karat := m.Karat
	if karat == 0 {
		karat = float64(g.KaratOf(m.PerMille))
	}
	colour, of, mark := phrase.Word(m.Colour), figured(karat), figured(m.PerMille)
	switch {
	case m.PerMille == 0 && colour == "":
		return phrase.Say("%s K gold", of)
	case m.PerMille == 0:
		return phrase.Say("%s %s K gold", colour, of)
	case colour == "":
		return phrase.Say("%s K gold (%s per mille)", of, mark)
	}
	return phrase.Say("%s %s K gold (%s per mille)", colour, of, mark)
}

// MixedMetals names several precious metals by falling mass (16 CFR 23.7-23.8,
// from memory). known is false where a mass is not known, and the order then is
// that given.
func (g *Grader) MixedMetals(parts []Metal) (names []string, known bool) {
	sorted := slices.Clone(parts)
	known = !slices.ContainsFunc(parts, func(m Metal) bool { return m.Grams <= 0 })
	if known {
		slices.SortStableFunc(sorted, func(a, b Metal) int { return cmp.Compare(b.Grams, a.Grams) })
	}
	for _, m := range sorted {
		names = append(names, g.MetalName(m))
	}
	return names, known
}

// NoVermeil are the reasons why a gold layer over silver is no vermeil, none if
// it may be called so: base of sterling silver, gold of at least 10 K, 2.5 um of
// it everywhere as fine gold (16 CFR 23.4(b)).
func (g *Grader) NoVermeil(base Metal, goldKarat, micrometres float64) []phrase.Line {
	var list []phrase.Line
	if base.Name != "silver" || base.PerMille < g.limit("sterling") {
		list = append(list, "the base must be sterling silver")
	}
	if goldKarat < g.limit("vermeil karat") {
		list = append(list, phrase.Say("the gold must be at least %s K", figured(g.limit("vermeil karat"))))
	}
	if micrometres < g.limit("vermeil layer") {
		list = append(list, phrase.Say("the layer must be at least %s um of fine gold everywhere", figured(g.limit("vermeil layer"))))
	}
	return list
}

// A metalWord is a word that claims a fineness.
type metalWord struct {
	phrase []string
	of     string  // the metal it may stand for
	least  float64 // per mille
	clause phrase.Line
}

func (g *Grader) metalClaims() []metalWord {
	return []metalWord{
		{tokens("sterling"), "silver", g.limit("sterling"), "16 CFR 23.5(b)(2)"},
		{tokens("solid silver"), "silver", g.limit("sterling"), "16 CFR 23.5(b)(2)"},
		{tokens("coin silver"), "silver", g.limit("coin silver"), "16 CFR 23.5(b)(3)"},
	}
}

// RefusedMetal scans a text about one metal for words that its fineness may not
// carry, and for its name without the figure that must stand directly before it.
func (g *Grader) RefusedMetal(text string, m Metal) []Refusal {
	words, name := tokens(text), g.MetalLine(m)
	var found []Refusal
	for _, w := range g.metalClaims() {
		if holdsPhrase(words, w.phrase) && (m.Name != w.of || m.PerMille < w.least) {
			found = append(found, Refusal{strings.Join(w.phrase, " "), name, w.clause, "silver-word", false})
		}
	}
	for i, w := range words {
		before := ""
		if i > 0 {
			before = words[i-1]
		}
		plated := m.Plated == w && i+1 < len(words) && words[i+1] == "plated"
		if r, bare := g.bareMetal(m, w, before); bare && !plated {
			r.Word, r.Proper = w, name
			found = append(found, r)
		}
	}
	return once(found)
}

// bareMetal tells whether the metal's own name lacks its figure before it.
func (g *Grader) bareMetal(m Metal, word, before string) (Refusal, bool) {
	if word != m.Name {
		return Refusal{}, false
	}
	switch word {
	case "gold":
		karat := slices.Contains([]string{"k", "kt", "karat"}, before) || karatMark(before)
		return Refusal{Clause: "16 CFR 23.3(b)(2)", Statement: "gold-word"}, !karat
	case "silver":
		told := slices.Contains([]string{"sterling", "solid", "coin"}, before) || isNumber(before)
		return Refusal{Clause: "16 CFR 23.5(b)(1)", Statement: "silver-word"}, !told
	case "platinum":
		return Refusal{Clause: "16 CFR 23.6", Statement: "platinum"}, m.PerMille < g.limit("platinum") && !isNumber(before)
	}
	return Refusal{}, false
}

func isNumber(word string) bool {
	_, err := strconv.ParseFloat(word, 64)
	return err == nil
}

// karatMark reports whether a word is a karat written together: 18k, 14kt.
func karatMark(word string) bool {
	number, ok := strings.CutSuffix(strings.TrimSuffix(word, "t"), "k")
	return ok && isNumber(number)
}
