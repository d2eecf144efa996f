package gem

import (
	"slices"
	"strings"
	"unicode"
)

// wordsOf cuts a term into words that compare alike however the term was
// written: small letters, British spelling, singular, no articles, "fracture"
// for "fissure". Meaning stays: nothing that tells, doubts or denies goes.
func wordsOf(term string) []string {
	var words []string
	for _, w := range strings.FieldsFunc(term, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsNumber(r) && !unicode.IsMark(r) && r != '\'' && r != '’'
	}) {
		if w = spelling(singular(fold(w))); w != "" && !slices.Contains([]string{"a", "an", "the"}, w) {
			words = append(words, w)
		}
	}
	return words
}

// termKey is the form in which terms are compared.
func termKey(term string) string { return strings.Join(wordsOf(term), "") }

// spelling writes a folded singular word as the sheets do.
func spelling(w string) string {
	switch w {
	case "gray":
		return "grey"
	case "partially":
		return "partly"
	case "luster":
		return "lustre"
	case "center":
		return "centre"
	case "fiber":
		return "fibre"
	case "fissure":
		return "fracture"
	case "hematite":
		return "haematite"
	}
	for _, ways := range []struct{ american, british string }{{"color", "colour"}, {"mold", "mould"}} {
		if rest, ok := strings.CutPrefix(w, ways.american); ok {
			return ways.british + rest
		}
	}
	return w
}

// singular takes the ending of an English plural off a folded word.
func singular(w string) string {
	for _, end := range []struct{ plural, single string }{
		{"ies", "y"}, {"sses", "ss"}, {"shes", "sh"}, {"ches", "ch"}, {"xes", "x"}, {"oes", "o"},
	} {
		if stem, ok := strings.CutSuffix(w, end.plural); ok && len(stem) > 1 {
			return stem + end.single
		}
	}
	for _, end := range []string{"ss", "us", "is"} {
		if strings.HasSuffix(w, end) {
			return w // glass, numerous, axis
		}
	}
	if len(w) > 3 {
		return strings.TrimSuffix(w, "s")
	}
	return w
}

// isBare reports whether a word before a term says only how many or how big,
// and so may be left off. Words of doubt or of degree ("weak", "possible",
// "no") are none: what is seen weakly or not at all shows something else.
func isBare(w string) bool {
	return slices.Contains([]string{
		"small", "tiny", "minute", "large", "big", "fine", "few", "several", "many", "some", "numerous", "multiple", "abundant",
		"scattered", "isolated", "occasional", "single", "typical", "distinct", "obvious", "prominent", "visible",
	}, w)
}
