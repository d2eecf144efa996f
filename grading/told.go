package grading

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// told gathers what documents tell of a stone by its opinion.
func (t *Tables) told(s *stone.Stone) Told {
	c := t.Quality.SubjectOf(s)
	return Told{
		Name: t.Quality.Name(c), Colour: t.Quality.ColourOf(s), Care: t.Quality.CareOf(c, t.Quality.Fissured(s)),
		Restricted: t.Quality.Restrictions(c), Safety: t.safetyOf(s),
	}
}

// safetyOf are the cautions of a material for whoever cuts or wears it.
func (t *Tables) safetyOf(s *stone.Stone) []gem.Caution {
	m := t.Quality.SubjectOf(s).Species
	if m == nil {
		return nil
	}
	var list []gem.Caution
	for _, row := range t.safety {
		of, err := t.Gems.Find(row[0])
		if err != nil || !t.Gems.IsWithin(m, of) {
			continue
		}
		for _, test := range gem.Tests() {
			for _, c := range t.Gems.CautionsFor(test) {
				if c.ID == row[1] && !slices.ContainsFunc(list, func(k gem.Caution) bool { return k.ID == c.ID }) {
					list = append(list, c)
				}
			}
		}
	}
	return list
}
