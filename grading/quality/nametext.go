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
	head := qualified(n.Water, qualified(n.Qualifier, noun))
	if n.Treated {
		head = phrase.Say("treated %s", head)
	}
	return head
}

// named is a name of the tables as a line.
func named(name string) phrase.Line { return phrase.Say("%s", phrase.Word(name)) }

// qualified puts one of the words of a Name before a name; "" adds nothing. Each
// has a form of its own, since other languages put it elsewhere or bend it.
func qualified(word string, name phrase.Line) phrase.Line {
	switch word {
	case "":
		return name
	case natural:
		return phrase.Say("natural %s", name)
	case laboratoryGrown:
		return phrase.Say("laboratory-grown %s", name)
	case cultured:
		return phrase.Say("cultured %s", name)
	case imitation:
		return phrase.Say("imitation %s", name)
	case composite:
		return phrase.Say("composite %s", name)
	case composite + " " + laboratoryGrown:
		return phrase.Say("composite laboratory-grown %s", name)
	case assembled:
		return phrase.Say("assembled %s", name)
	case reconstructed:
		return phrase.Say("reconstructed %s", name)
	case naturalOrGrown:
		return phrase.Say("natural or laboratory-grown %s", name)
	case naturalOrCultured:
		return phrase.Say("natural or cultured %s", name)
	case "saltwater":
		return phrase.Say("saltwater %s", name)
	case "freshwater":
		return phrase.Say("freshwater %s", name)
	}
	return phrase.Say("%s %s", phrase.Word(word), name)
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
