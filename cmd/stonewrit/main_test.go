package main

import (
	"crypto/rand"
	"os"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets the scripts of testdata/script run the program as "stonewrit".
// Its clock stands at the time in the variable NOW, at noon of 1 November 2026
// without one.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"stonewrit": func() {
			now := time.Date(2026, 11, 1, 12, 0, 0, 0, time.UTC)
			if text := os.Getenv("NOW"); text != "" {
				var err error
				if now, err = time.Parse(time.RFC3339, text); err != nil {
					panic(err)
				}
			}
			os.Exit(run(os.Args[1:], world{os.Stdin, os.Stdout, os.Stderr, func() time.Time { return now }, rand.Reader}))
		},
	})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		Deadline:            time.Now().Add(4 * time.Minute), // a program that waits for ever fails its script
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("UPDATE_SCRIPTS") != "",
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"status": status, "key": keyFile, "append": appendTo, "older": older, "fill": fill, "many": many, "windows": windows},
		Setup:               serverSetup,
		Condition:           serverCondition,
	})
}
