// Command stonewrit judges the readings taken on gemstones, weighs what cannot
// be weighed, and issues numbered documents of what was found.
//
// It is the outermost shell: it finds files, reads the clock, asks the
// terminal, writes. What is true of a stone is decided in grading, what a
// document says in report, what a number means in report/register.
package main

import (
	"crypto/rand"
	"os"
	"time"
	_ "time/tzdata" // time zones of practices, also where the system has none
)

func main() {
	os.Exit(run(os.Args[1:], world{os.Stdin, os.Stdout, os.Stderr, time.Now, rand.Reader}))
}
