package stone

import (
	_ "embed"
	"encoding/csv"
	"reflect"
	"slices"
	"stonewrit/grading/phrase"
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
)

//go:embed said.csv
var saidCSV string

// didYouMean is a hint naming the allowed word that is meant: the word these
// files use for what the trade also says, or the nearest in spelling. It is
// empty when none is near.
func didYouMean(found string, allowed []string) phrase.Line {
	if w := said(found, allowed); w != "" {
		return phrase.Say("write %q", w)
	}
	if w := nearest(found, allowed); w != "" {
		return phrase.Say("did you mean %q?", w)
	}
	return ""
}

// said finds the allowed word for what people also say.
func said(found string, allowed []string) string {
	rows, err := csv.NewReader(strings.NewReader(saidCSV)).ReadAll()
	if err != nil {
		return ""
	}
	found = strings.Join(strings.Fields(strings.ToLower(strings.NewReplacer("-", " ", "_", " ").Replace(found))), " ")
	for _, row := range rows[1:] {
		if row[0] == found && slices.Contains(allowed, row[1]) {
			return row[1]
		}
	}
	return ""
}

// nearest finds the allowed word that differs by the fewest letters, at most by
// a third of them.
func nearest(found string, allowed []string) string {
	if len(found) > 60 {
		return "" // no word, and long texts are slow to compare
	}
	best, distance := "", (utf8.RuneCountInString(found)+2)/3+1
	for _, w := range allowed {
		d := levenshtein.ComputeDistance(strings.ToLower(found), strings.ToLower(w))
		if d < distance {
			best, distance = w, d
		}
	}
	return best
}

// placesOf finds where in a file a key is allowed, at most three places.
func placesOf(root reflect.Type, key string) []string {
	var places []string
	collectPlaces(root, "", key, &places)
	return places[:min(len(places), 3)]
}

func collectPlaces(t reflect.Type, path, key string, places *[]string) {
	switch {
	case t == reflect.TypeFor[AnyTest]():
		for _, k := range testKinds() {
			if _, ok := fieldsOf(reflect.TypeOf(k.make()).Elem()).find(key); ok {
				*places = append(*places, "a test: "+k.kind)
			}
		}
	case t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice || t.Kind() == reflect.Map:
		collectPlaces(t.Elem(), path, key, places)
	case t.Kind() == reflect.Struct:
		fields := fieldsOf(t)
		if _, ok := fields.find(key); ok && path != "" {
			*places = append(*places, path)
		}
		for _, f := range fields {
			collectPlaces(f.typ, strings.TrimPrefix(path+"."+f.key, "."), key, places)
		}
	}
}
