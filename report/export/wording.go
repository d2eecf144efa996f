package export

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed words.csv
var wordsFile string

// wording are the sentences of the printed list, by key. A key that is missing
// is noted and told at the end.
type wording struct {
	text    map[string]string
	missing []string
}

func loadWording() (*wording, error) {
	rows, err := csv.NewReader(strings.NewReader(wordsFile)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("words.csv: %w", err)
	}
	w := &wording{text: map[string]string{}}
	for _, row := range rows[1:] {
		w.text[row[0]] = row[1]
	}
	return w, nil
}

// say is a sentence with what stands in its braces: pairs of name and text.
func (w *wording) say(key string, pairs ...string) string {
	text, ok := w.text[key]
	if !ok {
		w.missing = append(w.missing, key)
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		pairs[i] = "{" + pairs[i] + "}"
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// count is a sentence about so many.
func (w *wording) count(key string, n int) string {
	if n == 1 {
		return w.say(key + ".one")
	}
	return w.say(key+".many", "n", strconv.Itoa(n))
}

func (w *wording) err() error {
	if len(w.missing) > 0 {
		return fmt.Errorf("words.csv has no %s", strings.Join(w.missing, ", "))
	}
	return nil
}
