package desk

import (
	"fmt"
	"html/template"
	"reflect"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/report/chart"
	"stonewrit/templates"
)

// A voice says in one language what the desk says in English. All sentences of
// the pages, of the forms and of the help pass through it.
type voice struct {
	language string
	wording  *templates.Wording
	phrases  map[string]string
	names    map[string]string
	help     map[string]testHelp
	chart    chart.Words
	pages    *template.Template
}

// t is a sentence in the language of the voice, with what belongs into it. The
// English sentence is its name.
func (v *voice) t(english phrase.Line, args ...any) string {
	return phrase.Say(english, args...).In(v.wording)
}

// sentence is what stands for an English sentence, with the same places to be
// filled.
func (v *voice) sentence(english string) string { return v.wording.Form(english) }

// line is what grading says: a problem, a reason, a caution.
func (v *voice) line(said any) string {
	if l, ok := said.(phrase.Line); ok {
		return l.In(v.wording)
	}
	return v.sentence(fmt.Sprint(said))
}

// figure is a value with so many decimals, the same digits as in a document.
func (v *voice) figure(value float64, decimals int) string {
	return v.wording.Figure(quantity.Decimal(value, decimals))
}

// term is a word of the program's own lists: a kind of test, a shape, a state.
func (v *voice) term(word any) string { return v.wording.Term(fmt.Sprint(word)) }

// word is one of the phrases, by its key; the key itself where there is none.
func (v *voice) word(key string) string {
	english, ok := v.phrases[key]
	if !ok {
		return key
	}
	list, _, _ := strings.Cut(key, ".")
	return v.inList(list, english)
}

// inList is a word as one of a list of the desk: it may mean something else
// elsewhere.
func (v *voice) inList(list, english string) string {
	if said, err := v.wording.Word("desk "+list, english); err == nil && said != english {
		return said
	}
	return v.sentence(english)
}

// label is the name of a key in the form.
func (v *voice) label(key string) string {
	for _, k := range []string{key, strings.TrimPrefix(key, "/")} {
		if name, ok := v.names[k]; ok {
			return v.inList("field", name)
		}
	}
	return v.inList("field", strings.ReplaceAll(strings.TrimPrefix(key, "/"), "_", " "))
}

// newVoice makes the voice of a language.
func newVoice(language string) (*voice, error) {
	w, err := wordingOf(language)
	if err != nil {
		return nil, err
	}
	v := &voice{language: language, wording: w, phrases: phrases(), names: names()}
	if v.help, err = loadHelp(); err != nil {
		return nil, err
	}
	if v.chart, err = DrawingWords(w); err != nil {
		return nil, err
	}
	v.pages, err = loadPages(v)
	return v, err
}

// wordingOf is the wording of documents in the language of the page.
func wordingOf(language string) (*templates.Wording, error) {
	set, err := templates.Load(nil)
	if err != nil {
		return nil, err
	}
	return set.Language(language)
}

// DrawingWords are the words of the drawings: each text field has the sentence
// of its name in small letters.
func DrawingWords(w *templates.Wording) (chart.Words, error) {
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
	words.Number, words.Material, words.Place = w.Figure, inWords(w, "material"), inWords(w, "place")
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
