package desk

import (
	"maps"
	"slices"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// suggestionList is a list of words that free texts are chosen from, under the
// name by which fields ask for it.
type suggestionList struct {
	ID    string
	Words []string
}

// makeLists are the words that free texts are chosen from: names of the table, and
// what the records suggest.
func makeLists(gems *gem.Table) []suggestionList {
	var materials, features, treatments []string
	for _, m := range gems.Materials() {
		materials = append(materials, m.Name)
	}
	for _, f := range gems.Features() {
		features = append(features, f.Term)
	}
	for _, t := range gems.Treatments() {
		treatments = append(treatments, t.Name)
	}
	slices.Sort(materials)
	kinds := append([]string{"balance", "scales in ct", "gauge", "lamp", "loupe", "microscope", "thermal probe", "heavy liquids"}, stone.TestKinds()...)
	list := []suggestionList{
		{"list-materials", materials}, {"list-features", features}, {"list-treatments", treatments}, {"list-kinds", kinds}, {"list-lights", []string{"sodium", "white", "daylight", "incandescent", "D65", "fibre optic"}}, {"list-currencies", []string{"EUR", "USD", "GBP", "CHF", "JPY"}},
	}
	seen := map[string]bool{}
	add := func(specs []form.Spec) {
		for _, words := range suggested(specs) {
			id := "words-" + strings.ReplaceAll(strings.Join(words, "_"), " ", "_")
			if !seen[id] {
				seen[id] = true
				list = append(list, suggestionList{id, words})
			}
		}
	}
	add(form.StoneSpecs())
	kindsOf := form.TestSpecs(gems)
	for _, kind := range slices.Sorted(maps.Keys(kindsOf)) {
		add(kindsOf[kind])
	}
	return list
}

// suggested finds the fields that suggest words.
func suggested(specs []form.Spec) [][]string {
	var list [][]string
	for _, s := range specs {
		if (s.Shape == form.Glow || s.Shape == form.Line) && len(s.Words) > 0 {
			list = append(list, s.Words)
		}
		list = append(list, suggested(s.Fields)...)
	}
	return list
}
