package main

import (
	"compress/gzip"
	"io"
	"os"

	"github.com/rogpeppe/go-internal/testscript"
)

// older puts the register that an older version of the program wrote into a
// file; see testdata/README.md of report/register:
//
//	older FILE
func older(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: older FILE")
	}
	packed, err := os.Open("../../report/register/testdata/version-1.db.gz")
	ts.Check(err)
	defer packed.Close()
	in, err := gzip.NewReader(packed)
	ts.Check(err)
	data, err := io.ReadAll(in)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o600))
}
