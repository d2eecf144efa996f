package main

import (
	"slices"

	"stonewrit/cmd/stonewrit/desk"
	"stonewrit/grading"
	"stonewrit/report"
	"stonewrit/report/chart"
	"stonewrit/templates"
)

// evidence draws an examined stone's figures where the kind of document shows
// them.
func (r *reader) evidence(e *grading.Examined, kind string, shop *workshop) ([]report.Figure, error) {
	order, err := shop.wording.Order(kind)
	if err != nil || !slices.Contains(order, "evidence") {
		return nil, err
	}
	wording, err := shop.wording.Language(language(e))
	if err != nil {
		return nil, err
	}
	words, err := desk.DrawingWords(wording)
	if err != nil {
		return nil, err
	}
	return chart.Drawer{Words: words, Width: shop.press.LabelWidth}.Evidence(e, r.tables), nil
}

// language is the language of the practice's documents.
func language(e *grading.Examined) string {
	if e.Bench != nil && e.Bench.Terms.Language != "" {
		return e.Bench.Terms.Language
	}
	return templates.DefaultLanguage
}
