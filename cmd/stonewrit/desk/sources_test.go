package desk

import (
	"os"
	"strings"
	"testing"
)

// handlers are the Go files of the package that are no tests.
func handlers(t *testing.T) map[string]string {
	t.Helper()
	list, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, f := range list {
		if !goFiles.MatchString(f.Name()) || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		src, err := os.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		files[f.Name()] = string(src)
	}
	return files
}
