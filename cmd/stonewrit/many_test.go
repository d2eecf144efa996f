package main

import (
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
	"golang.org/x/text/encoding/charmap"
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

// windows writes a file of UTF-8 again in Windows-1252, with more bytes at its
// end if some are given in hexadecimal:
//
//	windows FILE [HEX]
func windows(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 || len(args) > 2 {
		ts.Fatalf("usage: windows FILE [HEX]")
	}
	text, err := charmap.Windows1252.NewEncoder().Bytes([]byte(ts.ReadFile(args[0])))
	ts.Check(err)
	if len(args) == 2 {
		more, err := hex.DecodeString(args[1])
		ts.Check(err)
		text = append(text, more...)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), text, 0o600))
}
