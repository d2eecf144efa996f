package desk

import (
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading/stone"
)

// Every key of a stone file has its place on the page, once.
func TestSectionsHoldEveryKey(t *testing.T) {
	var placed []string
	for _, s := range sections() {
		placed = append(placed, s.keys...)
	}
	for _, s := range form.StoneSpecs() {
		n := len(slices.DeleteFunc(slices.Clone(placed), func(k string) bool { return k != s.Key }))
		if s.Key != formatKey && n != 1 {
			t.Errorf("%s stands on the page %d times", s.Key, n)
		}
	}
	if len(placed) != len(form.StoneSpecs())-1 {
		t.Errorf("%d keys are placed, a stone file has %d", len(placed), len(form.StoneSpecs())-1)
	}
}

var (
	said    = regexp.MustCompile(`say "([^"]+)"`)
	spoken  = regexp.MustCompile(`(?:\.text\(|refuse\(w, r, [A-Za-z.]+, |"notice": |notice: |notice = )"([a-z.]+)"`)
	madeOf  = regexp.MustCompile(`say \(print "([^"]+)"`)
	goFiles = regexp.MustCompile(`\.go$`)
)

// Every text that a page asks for exists, and every text is asked for: a
// translator need not translate what nobody reads.
func TestTexts(t *testing.T) {
	for _, language := range languages(t) {
		w, err := loadWords(language)
		if err != nil {
			t.Fatal(err)
		}
		used := map[string]bool{}
		var begins []string
		for name, text := range sources(t) {
			for _, g := range append(said.FindAllStringSubmatch(text, -1), spoken.FindAllStringSubmatch(text, -1)...) {
				used[g[1]] = true
				if _, ok := w.page[g[1]]; !ok && !strings.HasSuffix(g[1], ".") {
					t.Errorf("%s: %s asks for %q, which is not there", language, name, g[1])
				}
			}
			for _, g := range madeOf.FindAllStringSubmatch(text, -1) {
				begins = append(begins, g[1])
			}
		}
		begins = append(begins, "section.", "claim.", "notice.", "refused.", "standing.", "sign.")
		for key := range w.page {
			if !used[key] && !slices.ContainsFunc(begins, func(b string) bool { return strings.HasPrefix(key, b) }) && !slices.Contains([]string{"yes", "no"}, key) {
				t.Errorf("%s: nothing asks for %q", language, key)
			}
		}
		for _, kind := range stone.TestKinds() {
			h, ok := w.tests[kind]
			if !ok || h.Shows == "" || len(h.Well) == 0 || len(h.Misleads) == 0 {
				t.Errorf("%s: the help on %s is not whole", language, kind)
			}
		}
		if len(w.tests) != len(stone.TestKinds()) {
			t.Errorf("%s: help on %d tests, there are %d", language, len(w.tests), len(stone.TestKinds()))
		}
	}
}

func languages(t *testing.T) []string {
	t.Helper()
	names, err := fs.Glob(wordFiles, "words/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal(err)
	}
	for i := range names {
		names[i] = strings.TrimSuffix(strings.TrimPrefix(names[i], "words/"), ".yaml")
	}
	return names
}

// sources are the pages and the handlers.
func sources(t *testing.T) map[string]string {
	t.Helper()
	files := map[string]string{}
	pages, err := fs.Glob(pageFiles, "pages/*.html")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range pages {
		src, err := fs.ReadFile(pageFiles, name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(src)
	}
	for name, text := range handlers(t) {
		files[name] = text
	}
	return files
}
