package desk

import (
	"bytes"
	"embed"
	"fmt"
	"reflect"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/phrase"
	"stonewrit/report/chart"
)

//go:embed words/*.yaml help/*.yaml
var wordFiles embed.FS

// words are the texts of the page in one language.
type words struct {
	language string
	page     map[string]string
	fields   map[string]string // names of keys that need another than their own
	tests    map[string]testHelp
	chart    chart.Words
}

// said is a sentence of the examination in the language of the page.
func (w *words) said(l phrase.Line) string { return l.String() }

func (w *words) saidAll(lines []phrase.Line) []string {
	var list []string
	for _, l := range lines {
		list = append(list, w.said(l))
	}
	return list
}

// testHelp is what to know of a test.
type testHelp struct {
	Shows    string   `yaml:"shows"`    // what it tells
	Well     []string `yaml:"well"`     // how it is done well
	Misleads []string `yaml:"misleads"` // how it misleads
}

// loadWords reads the texts of a language.
func loadWords(language string) (*words, error) {
	var page struct {
		Page   map[string]string `yaml:"page"`
		Fields map[string]string `yaml:"fields"`
		Chart  map[string]string `yaml:"chart"`
	}
	if err := loadTexts("words/"+language+".yaml", &page); err != nil {
		return nil, err
	}
	w := &words{language: language, page: page.Page, fields: page.Fields}
	if err := chartWords(&w.chart, page.Chart); err != nil {
		return nil, fmt.Errorf("words/%s.yaml: %w", language, err)
	}
	return w, loadTexts("help/"+language+".yaml", &w.tests)
}

// chartWords gives the drawings their words; each word must be there, and no
// other.
func chartWords(w *chart.Words, texts map[string]string) error {
	v, taken := reflect.ValueOf(w).Elem(), 0
	for i := range v.NumField() {
		if v.Field(i).Kind() != reflect.String {
			continue
		}
		text, ok := texts[v.Type().Field(i).Name]
		if !ok {
			return fmt.Errorf("chart has no %s", v.Type().Field(i).Name)
		}
		v.Field(i).SetString(text)
		taken++
	}
	if taken != len(texts) {
		return fmt.Errorf("chart has %d words, %d are of use", len(texts), taken)
	}
	return nil
}

// loadTexts reads one file of texts. An unknown key in it is an error.
func loadTexts(name string, out any) error {
	src, err := wordFiles.ReadFile(name)
	if err != nil {
		return fmt.Errorf("the desk has no file %s: %w", name, err)
	}
	dec := yaml.NewDecoder(bytes.NewReader(src))
	dec.KnownFields(true)
	if err := dec.Decode(out); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// say is a text of the page with what belongs into it. An unknown text is an
// error.
func (w *words) say(key string, args ...any) (string, error) {
	text, ok := w.page[key]
	if !ok {
		return "", fmt.Errorf("words/%s.yaml has no text %q", w.language, key)
	}
	if len(args) == 0 {
		return text, nil
	}
	return fmt.Sprintf(text, args...), nil
}

// text is say for handlers, which show the key where the text lacks.
func (w *words) text(key string, args ...any) string {
	text, err := w.say(key, args...)
	if err != nil {
		return key
	}
	return text
}

// label is the name of a key in the form.
func (w *words) label(key string) string {
	if name, ok := w.fields[key]; ok {
		return name
	}
	return strings.ReplaceAll(key, "_", " ")
}
