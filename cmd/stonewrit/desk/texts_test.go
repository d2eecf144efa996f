package desk

import (
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading"
	"stonewrit/grading/stone"
)

// Every key of a stone file and of a piece file has its place on the page, once.
func TestSectionsHoldEveryKey(t *testing.T) {
	for _, c := range []struct {
		sections []section
		specs    []form.Spec
	}{{sections(), form.StoneSpecs()}, {pieceSections(), form.PieceSpecs()}} {
		var placed []string
		for _, s := range c.sections {
			placed = append(placed, s.keys...)
		}
		for _, s := range c.specs {
			n := len(slices.DeleteFunc(slices.Clone(placed), func(k string) bool { return k != s.Key }))
			if s.Key != formatKey && n != 1 {
				t.Errorf("%s stands on the page %d times", s.Key, n)
			}
		}
		if len(placed) != len(c.specs)-1 {
			t.Errorf("%d keys are placed, the file has %d", len(placed), len(c.specs)-1)
		}
	}
}

var (
	byKey   = regexp.MustCompile(`word "([^"]+)"|\.word\("([^"]+)"\)|refuse\(w, r, [A-Za-z.]+, "([a-z.]+)"|"((?:notice|bench)\.[a-z]+)"`)
	byWord  = regexp.MustCompile(`word \(print "([^"]+)"|\.word\("([^"]+)" ?\+|"(notice\.)" \+`)
	goFiles = regexp.MustCompile(`\.go$`)
)

// Every phrase that is asked for exists, and every one is asked for: a
// translator need not translate what nobody reads.
func TestPhrases(t *testing.T) {
	known, used := phrases(), map[string]bool{}
	begins := []string{"notice.", "refused."}
	for name, text := range sources(t) {
		for _, g := range byKey.FindAllStringSubmatch(text, -1) {
			key := strings.Join(g[1:], "")
			if key == benchName {
				continue
			}
			used[key] = true
			if _, ok := known[key]; !ok && !strings.HasSuffix(key, ".") {
				t.Errorf("%s asks for %q, which is not there", name, key)
			}
		}
		for _, g := range byWord.FindAllStringSubmatch(text, -1) {
			begins = append(begins, strings.Join(g[1:], ""))
		}
	}
	for key := range known {
		if !used[key] && !slices.ContainsFunc(begins, func(b string) bool { return strings.HasPrefix(key, b) }) {
			t.Errorf("nothing asks for %q", key)
		}
	}
	help, err := loadHelp()
	if err != nil {
		t.Fatal(err)
	}
	for _, kind := range stone.TestKinds() {
		if h, ok := help[kind]; !ok || h.Shows == "" || len(h.Well) == 0 || len(h.Misleads) == 0 {
			t.Errorf("the help on %s is not whole", kind)
		}
	}
	if len(help) != len(stone.TestKinds()) {
		t.Errorf("help on %d tests, there are %d", len(help), len(stone.TestKinds()))
	}
}

// Every sentence that a page shows passes through the voice: what is left of a
// page without its actions and marks has no letter in it.
func TestNoSentenceOutsideTheVoice(t *testing.T) {
	action := regexp.MustCompile(`(?s){{.*?}}`)
	mark := regexp.MustCompile(`(?s)<[^>]*>`)
	shown := regexp.MustCompile(`(?:placeholder|title|alt|aria-label)="([^"]*)"`)
	for name, text := range sources(t) {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		text = action.ReplaceAllString(text, "")
		left := mark.ReplaceAllString(text, "")
		for _, g := range shown.FindAllStringSubmatch(text, -1) {
			left += g[1]
		}
		for _, own := range []string{"stonewrit", "&nbsp;", "ct"} {
			left = strings.ReplaceAll(left, own, "")
		}
		if word := regexp.MustCompile(`[\pL]+`).FindString(left); word != "" {
			t.Errorf("%s shows %q in one language only", name, word)
		}
	}
}

var sentence = regexp.MustCompile(`\.t\(("(?:[^"\\]|\\.)*")`)

// Sentences that handlers say are found in their sources, the others by
// Sentences.
func TestSentences(t *testing.T) {
	tables, err := grading.Load()
	if err != nil {
		t.Fatal(err)
	}
	list, err := Sentences(tables.Gems)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"%d of %d files.", "Saved.", "in a liquid", "day the stone came in", "refractometer", "laboratory-grown", "own reference, unique in the folder"} {
		if !slices.Contains(list, want) {
			t.Errorf("%q is not among the %d sentences", want, len(list))
		}
	}
	spoken := 0
	for _, text := range handlers(t) {
		spoken += len(sentence.FindAllString(text, -1))
	}
	t.Logf("%d sentences of pages, forms and help, %d of handlers", len(list), spoken)
}

func TestChoose(t *testing.T) {
	spoken := []string{"en", "de"}
	for _, c := range []struct {
		header string
		wishes []string
		want   string
		why    string
	}{
		{"", nil, "en", "nobody asks for any"},
		{"de-AT,de;q=0.9,en;q=0.5", nil, "de", "the browser asks for it"},
		{"fr", nil, "en", "none that is spoken is asked for"},
		{"de", []string{"", "en", "de"}, "en", "a wish counts before the browser, the first wish first"},
		{"de", []string{"fr", "", ""}, "de", "a wish for a language that is not spoken"},
	} {
		if got := choose(spoken, c.header, c.wishes...); got != c.want {
			t.Errorf("%s: got %s, want %s", c.why, got, c.want)
		}
	}
}

func TestOwnPath(t *testing.T) {
	for to, want := range map[string]string{
		"/stone/a.yaml": "/stone/a.yaml", "": "/", "//evil.example/x": "/", "https://evil.example/": "/", `/\evil.example`: "/", "/%2F/evil.example": "/",
	} {
		if got := ownPath(to); got != want {
			t.Errorf("%q leads to %q, want %q", to, got, want)
		}
	}
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
