package main

import (
	"reflect"
	"slices"
	"strings"

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
	words, err := drawingWords(wording)
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

// drawingWords fills each text field of the drawings' words with the sentence of
// its name in small letters.
func drawingWords(w *templates.Wording) (chart.Words, error) {
	var words chart.Words
	v := reflect.ValueOf(&words).Elem()
	for i := range v.NumField() {
		if v.Field(i).Kind() != reflect.String {
			continue
		}
		text, err := w.Word("drawing", strings.ToLower(v.Type().Field(i).Name))
		if err != nil {
			return words, err
		}
		v.Field(i).SetString(text)
	}
	words.Material = inWords(w, "material")
	words.Place = inWords(w, "place")
	return words, nil
}

// inWords is the wording's own word for a word of a list, or the word itself.
func inWords(w *templates.Wording, list string) func(string) string {
	return func(word string) string {
		if text, err := w.Word(list, word); err == nil {
			return text
		}
		return word
	}
}
