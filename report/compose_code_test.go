package report_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Sentences stand in the wording, not in the code: no string of the composing
// code has more than three words, errors apart.
func TestNoSentenceInCode(t *testing.T) {
	files, err := filepath.Glob("compose*.go")
	if err != nil {
		t.Fatal(err)
	}
	words := regexp.MustCompile(`[A-Za-z]{2,}( [A-Za-z]{2,}){3,}`)
	looked := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, src, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				if f, ok := call.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "New" {
					return false
				}
			}
			if s, ok := n.(*ast.BasicLit); ok && s.Kind == token.STRING {
				looked++
				if words.MatchString(s.Value) {
					t.Errorf("%s holds the sentence %s", name, s.Value)
				}
			}
			return true
		})
	}
	if looked < 100 {
		t.Errorf("only %d strings were looked at", looked)
	}
}
