package quality

import (
	"strconv"
	"strings"

	"stonewrit/grading/phrase"
)

// Line is the name as a noun phrase without article, with every treatment
// beside it: "ruby (natural corundum), heated".
func (n Name) Line() phrase.Line {
	name := n.head()
	if len(n.Inside) > 0 {
		name = phrase.Say("%s (%s)", name, phrase.Commas(n.Inside...))
	}
	return phrase.Commas(append([]phrase.Line{name}, n.tail()...)...)
}

// String is the name in English.
func (n Name) String() string { return n.Line().String() }

// plain is the name without parentheses, to stand inside those of another.
func (n Name) plain() phrase.Line {
	parts := append([]phrase.Line{n.head()}, n.Inside...)
	return phrase.Commas(append(parts, n.tail()...)...)
}

// head is what may not be torn apart.
func (n Name) head() phrase.Line {
	noun := named(n.Noun)
	if n.Many {
		noun = named(plural(n.Noun))
	}
	head := Qualified(n.Water, Qualified(n.Qualifier, noun))
	if n.Treated {
		head = phrase.Say("treated %s", head)
	}
	return head
}

// named is a name of the tables as a line.
func named(name string) phrase.Line { return phrase.Say("%s", phrase.Word(name)) }

// Qualified puts a word of origin or make before a name, "natural" before
// "ruby"; a word that is no such adds nothing.
func Qualified(word string, name phrase.Line) phrase.Line {
	if form, ok := qualifying()[word]; ok {
		return phrase.Say(form, name)
	}
	return name
}

// qualifying are the forms by their words: one for each, since other languages
// put the word elsewhere or bend it.
func qualifying() map[string]phrase.Line {
	return map[string]phrase.Line{
		natural:                           "natural %s",
		laboratoryGrown:                   "laboratory-grown %s",
		cultured:                          "cultured %s",
		"artificial":                      "artificial %s",
		imitation:                         "imitation %s",
		composite:                         "composite %s",
		composite + " " + laboratoryGrown: "composite laboratory-grown %s",
		assembled:                         "assembled %s",
		reconstructed:                     "reconstructed %s",
		naturalOrGrown:                    "natural or laboratory-grown %s",
		naturalOrCultured:                 "natural or cultured %s",
		"saltwater":                       "saltwater %s",
		"freshwater":                      "freshwater %s",
	}
}

func (n Name) tail() []phrase.Line {
	var tail []phrase.Line
	if n.Variety != "" {
		tail = append(tail, phrase.Say("variety %s", phrase.Word(n.Variety)))
	}
	tail = append(append(tail, n.Beside...), n.Also...)
	if n.Open {
		tail = append(tail, "growth not determined")
	}
	return tail
}

// plural is the plural of a name of the trade. A name that says what it is of
// or made in takes it in the middle; names in z and ceramic kinds stay.
func plural(noun string) string {
	for _, of := range []string{" in ", " or ", ", "} {
		if head, rest, ok := strings.Cut(noun, of); ok {
			return plural(head) + of + rest
		}
	}
	last := noun[len(noun)-1:]
	switch {
	case strings.HasSuffix(noun, "quartz"), strings.HasSuffix(noun, "glass"), last == "x", last == "s":
		return noun
	case last == "z" || strings.HasSuffix(noun, "ch"):
		return noun + "es"
	case last == "y" && len(noun) > 1 && !strings.ContainsAny(noun[len(noun)-2:len(noun)-1], "aeiou"):
		return noun[:len(noun)-1] + "ies"
	}
	return noun + "s"
}

func inGrams(g float64) phrase.Figure {
	return phrase.Figure(strconv.FormatFloat(g, 'f', 4, 64) + " g")
}
