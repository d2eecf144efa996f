package templates

import (
	"fmt"
	"reflect"
	"strings"
	"text/template"
)

// decimalSign is the sentence that stands between whole and fraction.
const decimalSign = "figure.sign"

// Wording is the sentences of one language.
type Wording struct {
	language string
	known    index
	root     *template.Template
	phrases  phrases
	sign     string // between whole and fraction
}

// Language is the tag of the language: "en".
func (w *Wording) Language() string { return w.language }

// Say is the named sentence filled with data, which must be the struct that
// the catalogue gives for it. A name such as "shape.oval" that the language does
// not have falls back to nothing where the catalogue says that it may.
func (w *Wording) Say(name string, data any) (Text, error) {
	s, err := w.raw(name, data)
	if err != nil {
		return nil, err
	}
	return runs(s), nil
}

// Has reports whether the language has the sentence.
func (w *Wording) Has(name string) bool { return w.root.Lookup(name) != nil }

// raw is the sentence with its voices still marked.
func (w *Wording) raw(name string, data any) (string, error) {
	entry, ok := w.known.find(name)
	if !ok {
		return "", fmt.Errorf("wording: there is no sentence %q", name)
	}
	if got, want := reflect.TypeOf(data), reflect.TypeOf(entry.data); got != want {
		return "", fmt.Errorf("wording: the sentence %q takes %v, not %v", name, want, got)
	}
	t := w.root.Lookup(name)
	if t == nil {
		return "", fmt.Errorf("wording: the language %q lacks the sentence %q", w.language, name)
	}
	var b strings.Builder
	if err := t.Execute(&b, data); err != nil {
		return "", fmt.Errorf("wording: %w", err)
	}
	return strings.Trim(b.String(), " \t\r\n"), nil
}

// word is an entry of a word list, or the word itself.
func (w *Wording) word(list, word string) (string, error) {
	name := list + "." + word
	if w.root == nil || !w.Has(name) {
		return w.term(list, word), nil
	}
	return w.raw(name, None{})
}

// words is word of each item.
func (w *Wording) words(list string, items []string) ([]string, error) {
	said := make([]string, len(items))
	for i, item := range items {
		word, err := w.word(list, item)
		if err != nil {
			return nil, err
		}
		said[i] = word
	}
	return said, nil
}

// Word is an entry of a word list: of "shape" and "oval" what the language
// says for it, or the word itself.
func (w *Wording) Word(list, word string) (string, error) {
	s, err := w.word(list, word)
	return runs(s).String(), err
}

// Figure is a number as the language writes it: with its own decimal sign.
// Only a point between two digits is a decimal sign.
func (w *Wording) Figure(s string) string {
	if w.sign == "." {
		return s
	}
	out := []byte(s)
	var b strings.Builder
	for i, c := range out {
		if c == '.' && i > 0 && i+1 < len(out) && digit(out[i-1]) && digit(out[i+1]) {
			b.WriteString(w.sign)
			continue
		}
		b.WriteByte(c)
	}
	return b.String()
}

func digit(c byte) bool { return c >= '0' && c <= '9' }
