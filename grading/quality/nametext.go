package quality

import (
	"strconv"
	"strings"
)

// String is the name as a noun phrase without article, with every treatment
// beside it: "ruby (natural corundum), heated".
func (n Name) String() string {
	text := n.head()
	if len(n.Inside) > 0 {
		text += " (" + strings.Join(n.Inside, ", ") + ")"
	}
	return strings.Join(append([]string{text}, n.tail()...), ", ")
}

// plain is the name without parentheses, to stand inside those of another.
func (n Name) plain() string {
	parts := append([]string{n.head()}, n.Inside...)
	return strings.Join(append(parts, n.tail()...), ", ")
}

// head is what may not be torn apart.
func (n Name) head() string {
	var words []string
	if n.Treated {
		words = append(words, "treated")
	}
	noun := n.Noun
	if n.Many {
		noun = plural(noun)
	}
	for _, w := range []string{n.Water, n.Qualifier, noun} {
		if w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, " ")
}

func (n Name) tail() []string {
	var tail []string
	if n.Variety != "" {
		tail = append(tail, "variety "+n.Variety)
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

func number(n int) string { return strconv.Itoa(n) }

func plainGrams(g float64) string { return strconv.FormatFloat(g, 'f', 4, 64) + " g" }
