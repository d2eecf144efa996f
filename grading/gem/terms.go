package gem

import (
	"cmp"
	"slices"
	"strings"
)

// terms is a vocabulary: its entries in the order of the sheet, each findable
// by its proper term and by its synonyms.
type terms[T any] struct {
	entries []*T
	byName  map[string]*T // terms and synonyms by termKey
	proper  []string      // the proper term of each entry
	keys    []key         // of terms and synonyms in the order of the sheet
}

type key struct{ folded, proper string }

// add enters an entry; a word that is taken is noted as a mistake of the row.
func (v *terms[T]) add(r row, entry *T, proper string, synonyms []string) {
	if v.byName == nil {
		v.byName = map[string]*T{}
	}
	v.entries = append(v.entries, entry)
	v.proper = append(v.proper, proper)
	for _, word := range append([]string{proper}, synonyms...) {
		folded := termKey(word)
		if other := v.byName[folded]; other != nil {
			if other != entry || word == proper {
				r.fail("synonyms", "%q is taken", word)
			}
			continue // a plural of its own
		}
		v.byName[folded] = entry
		v.keys = append(v.keys, key{folded, proper})
	}
}

// find returns the entry of that term or synonym; case, spaces, hyphens,
// accents, plural, articles and American spelling do not matter.
func (v *terms[T]) find(word string) (*T, bool) { return v.findWords(wordsOf(word)) }

func (v *terms[T]) findWords(words []string) (*T, bool) {
	entry, ok := v.byName[strings.Join(words, "")]
	return entry, ok
}

// nearest returns at most three proper terms: first those that begin with the
// whole word, then those that hold it, then those that differ from it by at
// most a third of their letters.
func (v *terms[T]) nearest(word string) []string {
	type candidate struct {
		proper   string
		distance int
	}
	sought := termKey(word)
	var near []candidate
	for _, k := range v.keys {
		d, close := nearness(sought, k.folded)
		switch {
		case len(sought) > 3 && strings.HasPrefix(k.folded, sought):
			near = append(near, candidate{k.proper, -1})
		case len(sought) > 3 && strings.Contains(k.folded, sought):
			near = append(near, candidate{k.proper, 0})
		case close:
			near = append(near, candidate{k.proper, d})
		}
	}
	slices.SortStableFunc(near, func(a, b candidate) int { return cmp.Compare(a.distance, b.distance) })
	var found []string
	for _, c := range near {
		if len(found) < 3 && !slices.Contains(found, c.proper) {
			found = append(found, c.proper)
		}
	}
	return found
}
