package main

import (
	"maps"
	"slices"
	"stonewrit/grading/phrase"
	"strings"

	"stonewrit/grading/stone"
)

// unwritten tells where the bench file still has the placeholders that start
// puts there. A document with them must not go out.
func (b *benchFile) unwritten() stone.Problems {
	if b == nil || b.bench == nil {
		return nil
	}
	places := []struct{ path, text string }{
		{"practice.name", b.bench.Practice.Name}, {"practice.address", b.bench.Practice.Address},
	}
	for _, id := range slices.Sorted(maps.Keys(b.bench.Examiners)) {
		places = append(places, struct{ path, text string }{"examiners." + id + ".name", b.bench.Examiners[id].Name})
	}
	var list stone.Problems
	for _, at := range places {
		if strings.HasPrefix(at.text, placeholder) {
			where := b.bench.Position(at.path)
			list = append(list, stone.Problem{
				Severity: stone.Missing, Line: 1, Column: 1,
				Message: phrase.Say("%s:%d:%d: %s still says %s", b.file, where.Line, where.Column, at.path, placeholder),
				Hint:    "write your own words there, and check again",
			})
		}
	}
	return list
}
