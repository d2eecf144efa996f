package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// mayImport is the table of packages: which of our own packages each may
// import, with all that those may. A new arrow is a decision to be seen in
// review.
func mayImport() map[string][]string {
	return map[string][]string{
		"grading/phrase":            {},
		"grading/phrase/phrasetest": {},
		"grading/quantity":          {},
		"grading/gem":               {"grading/quantity"},
		"grading/stone":             {"grading/phrase", "grading/quantity", "grading/gem"},
		"grading/reading":           {"grading/phrase", "grading/quantity", "grading/stone"},
		"grading/identify":          {"grading/phrase", "grading/reading", "grading/gem"},
		"grading/weight":            {"grading/phrase", "grading/quantity", "grading/stone"},
		"grading/quality":           {"grading/phrase", "grading/quantity", "grading/gem", "grading/stone"},
		"grading/worth":             {"grading/phrase", "grading/quantity", "grading/stone"},
		"grading": {
			"grading/phrase", "grading/quantity", "grading/gem", "grading/stone", "grading/reading", "grading/identify", "grading/weight", "grading/quality", "grading/worth",
		},
		"photos":          {},
		"templates":       {"grading/phrase"},
		"report":          {"grading", "grading/phrase", "templates", "photos"},
		"report/pdf":      {"report"},
		"report/chart":    {"report", "grading"},
		"report/register": {},
		"report/seal":     {},
		"report/export":   {"report"},
	}
}

// pureMayNot is what the judging packages leave alone: files, clock,
// environment, network, randomness and logging.
func pureMayNot() []string {
	return []string{"os", "io/ioutil", "path/filepath", "net", "net/http", "log", "log/slog", "math/rand", "math/rand/v2", "crypto/rand", "syscall", "os/exec"}
}

// A sourceFile is one Go file of the module that is no test.
type sourceFile struct {
	name, pkg string
	tree      *ast.File
}

// moduleFiles parses the module, without its tests and its test data.
func moduleFiles(t *testing.T) []sourceFile {
	t.Helper()
	root := filepath.Join("..", "..")
	var list []sourceFile
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "testdata" || strings.HasPrefix(entry.Name(), ".") && name != "."):
			return fs.SkipDir
		case path.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		tree, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, name), nil, 0)
		if err != nil {
			return err
		}
		list = append(list, sourceFile{name, path.Dir(name), tree})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(list) < 100 {
		t.Fatalf("only %d files were found", len(list))
	}
	return list
}

func (f sourceFile) imports() []string {
	var list []string
	for _, spec := range f.tree.Imports {
		p, _ := strconv.Unquote(spec.Path.Value)
		list = append(list, p)
	}
	return list
}

func TestImportTable(t *testing.T) {
	for _, f := range moduleFiles(t) {
		if strings.HasPrefix(f.pkg, "cmd/") {
			continue
		}
		if _, ok := mayImport()[f.pkg]; !ok {
			t.Errorf("%s: package %s is not in the table of packages", f.name, f.pkg)
		}
		allowed := closure(f.pkg)
		for _, p := range f.imports() {
			ours, isOurs := strings.CutPrefix(p, name+"/")
			if isOurs && !slices.Contains(allowed, ours) {
				t.Errorf("%s imports %s, which the table does not allow", f.name, ours)
			}
		}
	}
}

// closure lists all that a package may reach.
func closure(pkg string) []string {
	var all []string
	var add func(string)
	add = func(p string) {
		for _, next := range mayImport()[p] {
			if !slices.Contains(all, next) {
				all = append(all, next)
				add(next)
			}
		}
	}
	add(pkg)
	return all
}

func TestGradingIsPure(t *testing.T) {
	for _, f := range moduleFiles(t) {
		if f.pkg != "grading" && !strings.HasPrefix(f.pkg, "grading/") {
			continue
		}
		for _, p := range f.imports() {
			if slices.Contains(pureMayNot(), p) {
				t.Errorf("%s imports %s", f.name, p)
			}
		}
		ast.Inspect(f.tree, func(n ast.Node) bool {
			sel, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := sel.X.(*ast.Ident); ok && x.Name == "time" && slices.Contains([]string{"Now", "Since", "Until", "LoadLocation", "Local"}, sel.Sel.Name) {
				t.Errorf("%s uses time.%s", f.name, sel.Sel.Name)
			}
			return true
		})
	}
}

func TestNoInitAndNoCatchAllPackages(t *testing.T) {
	for _, f := range moduleFiles(t) {
		if slices.Contains([]string{"util", "utils", "common", "helpers", "types", "misc"}, path.Base(f.pkg)) {
			t.Errorf("%s: a package is named for what it gives, not %s", f.name, path.Base(f.pkg))
		}
		for _, decl := range f.tree.Decls {
			if fn, ok := decl.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == "init" {
				t.Errorf("%s has an init function", f.name)
			}
		}
	}
}
