package desk

import (
	"fmt"
	"html/template"
	"reflect"
	"strings"

	"stonewrit/report/chart"
	"stonewrit/templates"
)

// A voice says in one language what the desk says in English. All sentences of
// the pages, of the forms and of the help pass through it.
type voice struct {
	language string
	phrases  map[string]string
	names    map[string]string
	help     map[string]testHelp
	chart    chart.Words
	pages    *template.Template
}

// t is a sentence in the language of the voice, with what belongs into it. The
// English sentence is its name.
func (v *voice) t(english string, args ...any) string {
	if len(args) == 0 {
		return v.sentence(english)
	}
	return fmt.Sprintf(v.sentence(english), args...)
}

// sentence is what stands for an English sentence, with the same places to be
// filled.
func (v *voice) sentence(english string) string { return english }

// line is what grading says: a problem, a reason, a caution.
func (v *voice) line(said any) string { return v.sentence(fmt.Sprint(said)) }

// term is a word of the program's own lists: a kind of test, a shape, a state.
func (v *voice) term(word any) string { return v.sentence(fmt.Sprint(word)) }

// word is one of the phrases, by its key; the key itself where there is none.
func (v *voice) word(key string) string {
	english, ok := v.phrases[key]
	if !ok {
		return key
	}
	return v.sentence(english)
}

// label is the name of a key in the form.
func (v *voice) label(key string) string {
	for _, k := range []string{key, strings.TrimPrefix(key, "/")} {
		if name, ok := v.names[k]; ok {
			return v.sentence(name)
		}
	}
	return v.sentence(strings.ReplaceAll(strings.TrimPrefix(key, "/"), "_", " "))
}

// newVoice makes the voice of a language.
func newVoice(language string) (*voice, error) {
	v := &voice{language: language, phrases: phrases(), names: names()}
	var err error
	if v.help, err = loadHelp(); err != nil {
		return nil, err
	}
	if v.chart, err = drawingWords(language); err != nil {
		return nil, err
	}
	v.pages, err = loadPages(v)
	return v, err
}

// drawingWords are the words of the drawings, the same as in documents; in
// English where documents are not written in the language.
func drawingWords(language string) (chart.Words, error) {
	var words chart.Words
	set, err := templates.Load(templates.Builtin())
	if err != nil {
		return words, err
	}
	w, err := set.Language(language)
	if err != nil {
		if w, err = set.Language(templates.DefaultLanguage); err != nil {
			return words, err
		}
	}
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
	words.Material, words.Place = inWords(w, "material"), inWords(w, "place")
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
