package main

import (
	"slices"
	"testing"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/templates"
)

// TestEveryTableIsTranslated asks each language for what the tables print:
// names, features, treatments, and the sentences of signs, care and cautions.
func TestEveryTableIsTranslated(t *testing.T) {
	tables, err := grading.Load()
	if err != nil {
		t.Fatal(err)
	}
	words := printedOf(tables.Gems)
	if len(words) < 1000 {
		t.Fatalf("only %d words and sentences were found", len(words))
	}
	slices.Sort(words)
	words = slices.Compact(words)
	t.Logf("%d words and sentences of the tables", len(words))
	set, err := templates.Load(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range set.Languages() {
		w, err := set.Language(language)
		if err != nil {
			t.Fatal(err)
		}
		if lacks := w.Lacks(words); language != templates.DefaultLanguage && len(lacks) > 0 {
			t.Errorf("%s lacks %d of %d, such as %q", language, len(lacks), len(words), lacks[:min(len(lacks), 20)])
		}
	}
}

// printedOf lists what documents print of the gem table.
func printedOf(g *gem.Table) []string {
	var list []string
	add := func(said ...string) {
		for _, s := range said {
			if s != "" {
				list = append(list, s)
			}
		}
	}
	for _, m := range g.Materials() {
		add(m.Name, m.Care.Note)
		add(m.Colours...)
		for _, r := range g.Rules(m) {
			add(r.Fact, r.Convention)
		}
	}
	for _, f := range g.Features() {
		add(f.Term)
		for _, m := range g.Materials() {
			for _, s := range g.SignsFor(f, m) {
				add(s.Because)
			}
		}
	}
	for _, t := range g.Treatments() {
		add(t.Name, t.Wording, t.Care, t.Radioactivity)
	}
	for _, test := range gem.Tests() {
		for _, c := range g.CautionsFor(test) {
			add(c.Wording)
		}
	}
	return list
}
