package stone

import (
	"encoding/csv"
	"reflect"
	"slices"
	"strings"
	"testing"

	"stonewrit/grading/quantity"
)

// allWords collects the keys and words that a file may use, from a type down.
func allWords(t reflect.Type, seen map[reflect.Type]bool, words map[string]bool) {
	if seen[t] {
		return
	}
	seen[t] = true
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Map:
		allWords(t.Elem(), seen, words)
	case reflect.Struct:
		for _, f := range fieldsOf(t) {
			words[f.key] = true
			for _, w := range f.tags.words {
				words[w] = true
			}
			allWords(f.typ, seen, words)
		}
	}
}

func everyWord() map[string]bool {
	words, seen := map[string]bool{}, map[reflect.Type]bool{}
	allWords(reflect.TypeFor[Stone](), seen, words)
	allWords(reflect.TypeFor[Piece](), seen, words)
	allWords(reflect.TypeFor[Bench](), seen, words)
	for _, k := range testKinds() {
		words[k.kind] = true
		allWords(reflect.TypeOf(k.make()).Elem(), seen, words)
	}
	for _, k := range InstrumentKinds() {
		words[k] = true
	}
	for _, w := range fluorescenceWords() {
		words[w] = true
	}
	return words
}

// Each row of said.csv turns a word of the trade into one that a file may use,
// and is needed: the word itself is not one.
func TestSaidWords(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(saidCSV)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	words := everyWord()
	var pairs []string
	for _, row := range rows[1:] {
		if !words[row[1]] {
			t.Errorf("%s: %q is no word of the files", row[0], row[1])
		}
		if row[2] == "" || row[0] != strings.ToLower(row[0]) || strings.ContainsAny(row[0], "-_") {
			t.Errorf("%q is never found or has no source", row[0])
		}
		if said(row[0], []string{row[1]}) != row[1] {
			t.Errorf("%q does not lead to %q", row[0], row[1])
		}
		pair := row[0] + " = " + row[1]
		if slices.Contains(pairs, pair) {
			t.Errorf("%s stands twice", pair)
		}
		pairs = append(pairs, pair)
	}
}

// Every key has a sentence for the schema, and its example can be read.
func TestEveryKeyIsDescribed(t *testing.T) {
	var walk func(t reflect.Type, path string)
	seen := map[reflect.Type]bool{}
	walk = func(typ reflect.Type, path string) {
		switch typ.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Map:
			walk(typ.Elem(), path)
		case reflect.Struct:
			if seen[typ] {
				return
			}
			seen[typ] = true
			for _, f := range fieldsOf(typ) {
				if f.doc == "" {
					t.Errorf("%s.%s has no description", path, f.key)
				}
				walk(f.typ, path+"."+f.key)
			}
		}
	}
	walk(reflect.TypeFor[Stone](), "")
	walk(reflect.TypeFor[Piece](), "")
	walk(reflect.TypeFor[Bench](), "")
	for _, k := range testKinds() {
		walk(reflect.TypeOf(k.make()).Elem(), k.kind)
	}
}

func TestNearest(t *testing.T) {
	for _, tt := range []struct{ found, want, why string }{
		{"oavl", "oval", "two letters changed places"},
		{"rond", "round", "one is missing"},
		{"Oval ", "oval", "case and a space"},
		{"hexagonal", "hexagon", "an ending"},
		{"xyz", "", "nothing is near"},
		{"", "", "nothing is written"},
		{strings.Repeat("oval", 100), "", "no word"},
	} {
		if got := nearest(tt.found, []string{"round", "oval", "pear", "hexagon"}); got != tt.want {
			t.Errorf("%q: got %q, want %q: %s", tt.found, got, tt.want, tt.why)
		}
	}
}

func TestExplainYAML(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(yamlWordsCSV)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows[1:] {
		if meaning, _ := explainYAML(row[0]); meaning.String() != row[1] {
			t.Errorf("row %d: %q is hidden by a row above, and explained as %q", i+2, row[0], meaning)
		}
	}
}

// The words of the bench file for rounding are the rules there are.
func TestRoundingWords(t *testing.T) {
	f, ok := fieldsOf(reflect.TypeFor[Bench]()).find("weight_rounding")
	if !ok || len(f.tags.words) == 0 {
		t.Fatal("no words for weight_rounding")
	}
	for _, w := range f.tags.words {
		if _, err := quantity.Rounding(w).Round("1.568"); err != nil {
			t.Error(err)
		}
	}
}
