package templates

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"text/template"
	"text/template/parse"
)

//go:embed order.txt en/*.tmpl de/*.tmpl de/*.csv
var builtin embed.FS

// Builtin is the wording that comes with the program, as a folder.
func Builtin() fs.FS { return builtin }

// DefaultLanguage is the language of a document when nobody names one.
const DefaultLanguage = "en"

// Set is the wording in all its languages. It never changes and may be used
// from several goroutines.
type Set struct {
	order     order
	languages map[string]*Wording
}

// Load reads the wording of a folder laid over the built-in one. A nil folder
// is the built-in wording alone. The error joins all mistakes of all files, each
// beginning with file:line.
func Load(folder fs.FS) (*Set, error) {
	l := newLoader()
	l.read(builtin)
	l.readPhrases(builtin)
	base := l.names()
	if folder != nil && folder != fs.FS(builtin) {
		l.read(folder)
		l.readPhrases(folder)
	}
	set := &Set{order: l.order, languages: map[string]*Wording{}}
	for _, language := range l.names() {
		set.languages[language] = l.wording(language)
	}
	l.complete(base)
	l.withSentences()
	if len(l.errs) > 0 {
		return nil, errors.Join(l.errs...)
	}
	return set, nil
}

// Languages lists the languages of the set, sorted.
func (s *Set) Languages() []string { return sorted(s.languages) }

// Language is the wording in one language. The error names the languages that
// there are.
func (s *Set) Language(name string) (*Wording, error) {
	if w, ok := s.languages[name]; ok {
		return w, nil
	}
	return nil, fmt.Errorf("no wording in the language %q, there is: %s", name, strings.Join(s.Languages(), ", "))
}

// Order is the sections of a kind of document, in order. The error names the
// kinds that there are.
func (s *Set) Order(kind string) ([]string, error) {
	if sections, ok := s.order[kind]; ok {
		return slices.Clone(sections), nil
	}
	return nil, fmt.Errorf("no section order for the kind of document %q, there is: %s", kind, strings.Join(sorted(s.order), ", "))
}

// source is where a sentence was found, with its parsed form.
type source struct {
	file string
	tree *parse.Tree
}

type loader struct {
	known   index
	own     map[string]any // signatures of the functions
	order   order
	sources map[string]map[string]source // by language, by name of the sentence
	phrases map[string]phrases           // by language
	errs    []error
}

func newLoader() *loader {
	return &loader{known: newIndex(), own: signatures(), sources: map[string]map[string]source{}, phrases: map[string]phrases{}}
}

func (l *loader) names() []string { return sorted(l.sources) }

func (l *loader) fail(err error) { l.errs = append(l.errs, err) }

// read takes all that a folder has; what it defines replaces what was there.
func (l *loader) read(folder fs.FS) {
	switch text, err := fs.ReadFile(folder, orderFile); {
	case err == nil:
		order, errs := parseOrder(string(text))
		l.order = l.order.with(order)
		l.errs = append(l.errs, errs...)
	case !errors.Is(err, fs.ErrNotExist):
		l.fail(err)
	}
	files, err := fs.Glob(folder, "*/*.tmpl")
	if err != nil {
		l.fail(err)
	}
	fresh := map[string]string{} // sentence of a language to the file of this folder
	for _, file := range files {
		text, err := fs.ReadFile(folder, file)
		if err != nil {
			l.fail(err)
			continue
		}
		l.file(file, string(text), fresh)
	}
}

// file takes one file of sentences.
func (l *loader) file(file, text string, fresh map[string]string) {
	trees, err := parse.Parse(file, text, "", "", l.own, builtinNames())
	if err != nil {
		l.fail(errors.New(strings.TrimPrefix(err.Error(), "template: ")))
		return
	}
	language := path.Dir(file)
	for _, name := range sorted(trees) {
		tree := trees[name]
		if name == file {
			if line, stray := strayText(text, tree); stray {
				l.fail(fmt.Errorf("%s:%d: text stands outside of any sentence; put it between define and end", file, line))
			}
			continue
		}
		if first, twice := fresh[language+" "+name]; twice {
			l.fail(fmt.Errorf("%s: the sentence %q is also in %s", where(tree, tree.Root), name, first))
			continue
		}
		fresh[language+" "+name] = file
		if l.sources[language] == nil {
			l.sources[language] = map[string]source{}
		}
		l.sources[language][name] = source{file, tree}
	}
}

// wording checks the sentences of a language and makes them ready.
func (l *loader) wording(language string) *Wording {
	w := &Wording{language: language, known: l.known, root: template.New(language), phrases: l.phrases[language]}
	w.root.Funcs(w.functions())
	all := l.sources[language]
	for _, name := range sorted(all) {
		s := all[name]
		entry, ok := l.known.find(name)
		if !ok {
			l.fail(fmt.Errorf("%s: there is no sentence %q; %s", where(s.tree, s.tree.Root), name, l.known.nearest(name)))
			continue
		}
		for _, err := range check(s.tree, entry.data, l.known, l.own) {
			l.fail(err)
		}
		noBreak(s.tree.Root)
		if _, err := w.root.AddParseTree(name, s.tree); err != nil {
			l.fail(fmt.Errorf("%s: %v", s.file, err))
		}
	}
	w.sign = "."
	if w.Has(decimalSign) {
		sign, err := w.raw(decimalSign, None{})
		if err != nil {
			l.fail(err)
		}
		w.sign = sign
	}
	return w
}

// complete refuses a new language that lacks sentences; the built-in ones are
// complete by test.
func (l *loader) complete(base []string) {
	for _, language := range l.names() {
		if slices.Contains(base, language) {
			continue
		}
		var missing []string
		for _, e := range Catalogue() {
			if _, ok := l.sources[language][e.Name]; !ok && !e.Optional {
				missing = append(missing, e.Name)
			}
		}
		if len(missing) > 0 {
			l.fail(fmt.Errorf("%s: the language lacks the sentences %s", language, strings.Join(missing, ", ")))
		}
	}
}

// withSentences refuses phrases of a language that has no sentences of documents.
func (l *loader) withSentences() {
	for _, language := range sorted(l.phrases) {
		if l.sources[language] == nil {
			l.fail(fmt.Errorf("%s/%s: there are words of the language %q, and no sentences of it; there is: %s", language, termsFile, language, strings.Join(l.names(), ", ")))
		}
	}
}

// strayText finds the line of text that stands between the sentences of a file.
func strayText(text string, tree *parse.Tree) (line int, stray bool) {
	if tree.Root == nil {
		return 0, false
	}
	for _, n := range tree.Root.Nodes {
		at := int(n.Position())
		if t, ok := n.(*parse.TextNode); ok {
			rest := strings.TrimLeft(string(t.Text), " \t\r\n")
			if rest == "" {
				continue
			}
			at += len(t.Text) - len(rest)
		}
		return 1 + strings.Count(text[:at], "\n"), true
	}
	return 0, false
}

// where is the file and line of a node.
func where(tree *parse.Tree, n parse.Node) string {
	location, _ := tree.ErrorContext(n)
	file, line, _ := strings.Cut(location, ":")
	line, _, _ = strings.Cut(line, ":")
	return file + ":" + line
}
