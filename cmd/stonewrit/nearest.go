package main

import (
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
)

// nearest finds the known word that begins with the word, or differs from it by
// the fewest letters, at most by a third of them; "" if none is near.
func nearest(word string, known []string) string {
	word = strings.ToLower(word)
	if word == "" || utf8.RuneCountInString(word) > 60 {
		return ""
	}
	best, least := "", (utf8.RuneCountInString(word)+2)/3+1
	for _, k := range known {
		if d := levenshtein.ComputeDistance(word, strings.ToLower(k)); d < least {
			best, least = k, d
		}
	}
	for _, k := range known {
		if best == "" && len(word) > 1 && strings.HasPrefix(strings.ToLower(k), word) {
			best = k
		}
	}
	return best
}
