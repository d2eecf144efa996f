package templates

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"stonewrit/grading/phrase"
)

// What the examination itself says is not in the sentence files, since it is
// English there: a language has it in files of two columns, the English and its
// own. termsFile holds words and short names; any other file of the kind holds
// sentences, with the verbs of the English where something is filled in.
const termsFile = "terms.csv"

// phrases are the words and sentences of one language by their English.
type phrases struct {
	terms, forms map[string]string
}

// readPhrases takes the two-column files of a folder; what they say replaces
// what was there.
func (l *loader) readPhrases(folder fs.FS) {
	files, err := fs.Glob(folder, "*/*.csv")
	if err != nil {
		l.fail(err)
	}
	fresh := map[string]string{}
	for _, file := range files {
		f, err := folder.Open(file)
		if err != nil {
			l.fail(err)
			continue
		}
		l.phraseFile(file, f, fresh)
		_ = f.Close() // read only
	}
}

func (l *loader) phraseFile(file string, from io.Reader, fresh map[string]string) {
	language, base := path.Split(file)
	language = path.Clean(language)
	said, ok := l.phrases[language]
	if !ok {
		said = phrases{map[string]string{}, map[string]string{}}
		l.phrases[language] = said
	}
	into := said.forms
	if base == termsFile {
		into = said.terms
	}
	r := csv.NewReader(from)
	r.FieldsPerRecord = 2
	for first := true; ; first = false {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		if wrong := (*csv.ParseError)(nil); errors.As(err, &wrong) {
			l.fail(fmt.Errorf("%s:%d: %w; each row has the English and its translation", file, wrong.Line, wrong.Err))
			continue
		}
		if err != nil {
			l.fail(fmt.Errorf("%s: %w", file, err))
			return
		}
		line, _ := r.FieldPos(0)
		english, other := row[0], strings.ReplaceAll(row[1], "~", "\u00a0")
		switch key := language + base + english; {
		case first && english == "english":
		case other == "":
			l.fail(fmt.Errorf("%s:%d: %q has no translation", file, line, english))
		case fresh[key] != "":
			l.fail(fmt.Errorf("%s:%d: %q is also in %s", file, line, english, fresh[key]))
		default:
			fresh[key] = fmt.Sprintf("%s:%d", file, line)
			if err := phrase.Fits(english, other); err != nil && base != termsFile {
				l.fail(fmt.Errorf("%s:%d: %w", file, line, err))
			}
			into[english] = other
		}
	}
}

// Wording says what the examination says, in its language.
var _ phrase.Language = (*Wording)(nil)

// Form is a sentence of the examination, or the English where the language has
// none for it.
func (w *Wording) Form(english string) string {
	if said, ok := w.phrases.forms[english]; ok {
		return said
	}
	return w.Term(english)
}

// Term is a word or a short name of the program, or the English.
func (w *Wording) Term(english string) string {
	if said, ok := w.phrases.terms[english]; ok {
		return said
	}
	return english
}

// term is a word of a list: "list:word" where the word means something else in
// this list than elsewhere.
func (w *Wording) term(list, word string) string {
	if said, ok := w.phrases.terms[list+":"+word]; ok {
		return said
	}
	return w.Term(word)
}

// has reports whether the language itself says a sentence or a word of the
// examination.
func (p phrases) has(english string) bool {
	_, form := p.forms[english]
	_, term := p.terms[english]
	return form || term
}

// Lacks lists which of the English sentences and words the language does not
// say, in their order.
func (w *Wording) Lacks(english []string) []string {
	var list []string
	for _, e := range english {
		if !w.phrases.has(e) {
			list = append(list, e)
		}
	}
	return list
}
