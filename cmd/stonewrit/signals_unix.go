//go:build unix

package main

import (
	"os/signal"
	"syscall"
)

// heedLimits has a write beyond the limit for the size of files fail like one on
// a full disk, instead of ending the program.
func heedLimits() { signal.Ignore(syscall.SIGXFSZ) }
