package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// many copies a file many times into a folder, as 000.yaml and so on, with NNN
// replaced by its number:
//
//	many FILE FOLDER NUMBER
func many(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: many FILE FOLDER NUMBER")
	}
	n, err := strconv.Atoi(args[2])
	ts.Check(err)
	text, folder := ts.ReadFile(args[0]), ts.MkAbs(args[1])
	ts.Check(os.MkdirAll(folder, 0o755))
	for i := range n {
		number := fmt.Sprintf("%03d", i)
		ts.Check(os.WriteFile(filepath.Join(folder, number+".yaml"), []byte(strings.ReplaceAll(text, "NNN", number)), 0o600))
	}
}
