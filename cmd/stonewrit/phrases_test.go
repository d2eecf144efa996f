package main

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/go/packages"

	"stonewrit/cmd/stonewrit/desk"
	"stonewrit/grading/gem"
	"stonewrit/templates"
)

// TestEveryPhraseIsTranslated finds by the types of the code every constant that
// is a sentence or a word of the examination or of the desk's handlers, takes
// the sentences of the desk's pages, and asks each language for them.
func TestEveryPhraseIsTranslated(t *testing.T) {
	if testing.Short() {
		t.Skip("loads the types of all packages")
	}
	sentences := phrasesOf(t)
	if len(sentences) < 100 {
		t.Fatalf("only %d sentences were found, the search is broken", len(sentences))
	}
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	pages, err := desk.Sentences(table)
	if err != nil {
		t.Fatal(err)
	}
	sentences = append(sentences, pages...)
	t.Logf("%d sentences and words of the code and of the pages", len(sentences))
	set, err := templates.Load(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range set.Languages() {
		if language == templates.DefaultLanguage {
			continue
		}
		w, err := set.Language(language)
		if err != nil {
			t.Fatal(err)
		}
		lacks := w.Lacks(sentences)
		if len(lacks) > 0 {
			t.Errorf("%s lacks %d of %d, such as:\n%s", language, len(lacks), len(sentences), strings.Join(lacks[:min(len(lacks), 20)], "\n"))
		}
	}
}

// phrasesOf lists the constants of the types phrase.Line and phrase.Word. A line
// that is put together with + would have its parts inside its form, where no
// language finds them.
func phrasesOf(t *testing.T) []string {
	t.Helper()
	loaded, err := packages.Load(&packages.Config{
		Mode: packages.NeedName | packages.NeedFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports,
	}, "stonewrit/...")
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for _, p := range loaded {
		if len(p.Errors) > 0 {
			t.Fatalf("%s: %v", p.PkgPath, p.Errors[0])
		}
		if p.PkgPath == "stonewrit/grading/phrase" {
			continue
		}
		for _, file := range p.Syntax {
			ast.Inspect(file, func(n ast.Node) bool {
				e, ok := n.(ast.Expr)
				if !ok {
					return true
				}
				switch tv := p.TypesInfo.Types[e]; {
				case !isPhrase(tv.Type):
				case tv.Value != nil:
					if s := constant.StringVal(tv.Value); hasWords(s) {
						found[s] = true
					}
					return false
				default:
					if sum, ok := n.(*ast.BinaryExpr); ok && sum.Op == token.ADD {
						t.Errorf("%s: a line is put together with +, use phrase.Say", p.Fset.Position(sum.OpPos))
					}
				}
				return true
			})
		}
	}
	list := make([]string, 0, len(found))
	for s := range found {
		list = append(list, s)
	}
	slices.Sort(list)
	return list
}

func isPhrase(t types.Type) bool {
	named, ok := t.(*types.Named)
	if !ok || named.Obj().Pkg() == nil || named.Obj().Pkg().Path() != "stonewrit/grading/phrase" {
		return false
	}
	return named.Obj().Name() == "Line" || named.Obj().Name() == "Word"
}

var verbs = regexp.MustCompile(`%(\[\d+\])?[-+# 0-9.]*[a-zA-Z%]`)

// hasWords reports whether a form says anything beside its parts and signs.
func hasWords(form string) bool {
	return regexp.MustCompile(`\pL`).MatchString(verbs.ReplaceAllString(form, ""))
}
