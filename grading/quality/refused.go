package quality

import (
	"fmt"
	"slices"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
)

// A Refusal is a word or phrase that must not stand in the text about a stone.
type Refusal struct {
	Word   string      // as found, in small letters and without hyphens; a figure as written
	Proper phrase.Line // what to write instead, or what to do
	Clause phrase.Line // where the rule stands
	// Statement is the requirement that the word offends, of the list of what a
	// report must show.
	Statement string
	Advice    bool // better avoided: a warning, no more
}

// Cleanness says what an examination at ten times with a corrected magnifier
// has shown.
type Cleanness string

// The degrees of cleanness. CleanInside allows marks at the surface.
const (
	NotMagnified Cleanness = "not magnified"
	Included     Cleanness = "included"
	CleanInside  Cleanness = "clean inside"
	Clean        Cleanness = "clean"
)

// A Context is what must be known of a stone to judge the words about it.
type Context struct {
	Subject
	Clean   Cleanness
	Largest float64 // greatest size of pearls in mm, 0 for not known
}

// Refused scans a text about one stone, written by a person or composed, for
// words that its kind may not carry, for names without the qualifier they need,
// for misleading trade names and for wrongly worded weights. Each word is told
// once.
func (g *Grader) Refused(text string, c Context) []Refusal {
	words := tokens(text)
	c.Subject = g.settled(c.Subject)
	found := g.barred(words, c)
	found = append(found, g.bareNames(words, c.Subject)...)
	found = append(found, g.facetless(words, c.Subject)...)
	found = append(found, g.misnomers(words)...)
	found = append(found, g.weightWords(text)...)
	return once(found)
}

// once keeps the first refusal of each word.
func once(list []Refusal) []Refusal {
	var kept []Refusal
	for _, r := range list {
		if !slices.ContainsFunc(kept, func(k Refusal) bool { return k.Word == r.Word }) {
			kept = append(kept, r)
		}
	}
	return kept
}

// tokens are the words of a text in small letters; hyphens part words, and what
// is neither letter nor digit stands for a pause, an empty token.
func tokens(text string) []string {
	var list []string
	var word strings.Builder
	flush := func() {
		if word.Len() > 0 {
			list = append(list, word.String())
			word.Reset()
		}
	}
	for _, r := range strings.ToLower(text) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '\'' || r > 0x7f && r != '\u2019' && r != '\u00a0':
			word.WriteRune(r)
		case r == '-' || r == ' ' || r == '\u00a0' || r == '\n' || r == '\t':
			flush()
		default:
			flush()
			list = append(list, "")
		}
	}
	flush()
	return list
}

// at reports whether a phrase stands at place i of words.
func at(words, phrase []string, i int) bool {
	return i >= 0 && i+len(phrase) <= len(words) && slices.Equal(words[i:i+len(phrase)], phrase)
}

// inside reports whether the n words at place i lie within one of the phrases.
func inside(words []string, i, n int, phrases [][]string) bool {
	for _, p := range phrases {
		for start := i + n - len(p); start <= i; start++ {
			if at(words, p, start) {
				return true
			}
		}
	}
	return false
}

// A barredWord is a row of words.csv.
type barredWord struct {
	phrase []string
	of     string // any, diamond, pearl, stone
	when   string
	unless [][]string
	Refusal
}

func (g *Grader) barred(words []string, c Context) []Refusal {
	var found []Refusal
	for _, b := range g.words {
		if !g.concerns(b.of, c.Subject) || !g.holds(b.when, c) {
			continue
		}
		for i := range words {
			if at(words, b.phrase, i) && !inside(words, i, len(b.phrase), b.unless) {
				found = append(found, b.Refusal)
				break
			}
		}
	}
	return found
}

func (g *Grader) concerns(of string, s Subject) bool {
	called := func(name string) bool { return g.is(s, name) || strings.EqualFold(s.Imitates, name) }
	switch of {
	case "diamond", "pearl":
		return called(of)
	case "stone":
		return !called("pearl")
	}
	return true
}

// holds answers the column when of words.csv.
func (g *Grader) holds(when string, c Context) bool {
	notNatural := c.Growth != gem.Natural || c.Imitates != ""
	_, poses := g.imitationOf(c.Subject)
	switch when {
	case "always":
		return true
	case "made":
		return c.Growth != "" && c.Growth != gem.Natural
	case "not natural":
		return notNatural
	case "grown":
		return c.Growth == gem.LaboratoryGrown && c.Imitates == ""
	case "imitation":
		return c.Imitates != "" || poses || c.Growth == gem.Artificial
	case "flawed":
		return c.Clean != Clean
	case "flawed inside":
		return c.Clean != Clean && c.Clean != CleanInside
	case "not natural saltwater":
		return notNatural || c.Water != "saltwater"
	case "fewer facets":
		return c.Facets > 0 && c.Facets < int(1+g.limit("brilliant crown")+g.limit("brilliant pavilion"))
	case "large":
		return c.Largest > g.limit("seed pearl")
	}
	return false
}

// misnomers finds trade names of two or three words that say what a stone is
// not.
func (g *Grader) misnomers(words []string) []Refusal {
	var found []Refusal
	for n := 2; n <= 3; n++ {
		for i := 0; i+n <= len(words); i++ {
			if slices.Contains(words[i:i+n], "") {
				continue
			}
			name := strings.Join(words[i:i+n], " ")
			if wrong, ok := g.gems.Misnomer(name); ok {
				found = append(found, Refusal{name, named(wrong.Proper), phrase.Say("16 CFR 23.26: %s", phrase.Line(wrong.Reason)), "varietal", false})
			}
		}
	}
	return found
}

func (g *Grader) readWords() error {
	err := each("words.csv", func(r *row) {
		b := barredWord{phrase: tokens(r.text("word")), of: r.word("of", "any", "diamond", "pearl", "stone")}
		b.when = r.word("when", "always", "made", "not natural", "grown", "imitation", "flawed", "flawed inside", "not natural saltwater", "large", "fewer facets")
		for _, u := range r.list("unless") {
			whole := tokens(u)
			if !holdsPhrase(whole, b.phrase) {
				r.fail("unless", fmt.Sprintf("%q does not hold the word", u))
			}
			b.unless = append(b.unless, whole)
		}
		b.Refusal = Refusal{r.text("word"), phrase.Line(r.text("proper")), phrase.Line(clause(r.text("source"))), r.text("requirement"), r.word("advice", "yes", "no") == "yes"}
		if len(b.phrase) == 0 || b.Proper == "" {
			r.fail("proper", "word and proper are needed")
		}
		g.words = append(g.words, b)
	}, "word", "of", "when", "unless", "advice", "proper", "requirement")
	if err != nil {
		return err
	}
	return each("neighbours.csv", func(r *row) {
		word := tokens(r.text("word"))
		if r.word("side", "before", "after") == "before" {
			g.before = append(g.before, word)
		} else {
			g.after = append(g.after, word)
		}
	}, "side", "word")
}

// clause turns the ids of SOURCES.md into what a reader knows them by.
func clause(source string) string {
	return strings.NewReplacer("FTC ", "16 CFR ", "ISO-18323 ", "ISO 18323, ").Replace(source)
}

func holdsPhrase(words, phrase []string) bool {
	for i := range words {
		if at(words, phrase, i) {
			return true
		}
	}
	return false
}

// noteGemWords remembers the last words of the names of gems.
func (g *Grader) noteGemWords() {
	g.gemWords = map[string]bool{}
	for _, m := range g.gems.Materials() {
		for _, name := range append([]string{m.Name}, m.Synonyms...) {
			if words := tokens(name); len(words) > 0 {
				g.gemWords[words[len(words)-1]] = true
			}
		}
	}
}
