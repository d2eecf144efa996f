package main

import (
	"fmt"
	"os"

	"golang.org/x/term"
)

// The variables of the environment that hold passwords, for runs without a
// terminal.
const (
	keyPassword  = "STONEWRIT_KEY_PASSWORD"
	copyPassword = "STONEWRIT_COPY_PASSWORD"
)

// secret is a password, from the environment or from the terminal, where it is
// not shown. It is never taken from a file or from the command line, which
// others can read.
func (p *program) secret(variable, prompt string) (string, error) {
	if given, ok := os.LookupEnv(variable); ok {
		return given, nil
	}
	in, ok := p.stdin.(*os.File)
	if !ok || !isTerminal(p.stdin) || !isTerminal(p.stderr) {
		return "", failing("set "+variable+" in the environment, or run it on a terminal", "a password is needed")
	}
	p.bar.hide()
	fmt.Fprint(p.stderr, prompt)
	typed, err := term.ReadPassword(int(in.Fd()))
	fmt.Fprintln(p.stderr)
	return string(typed), err
}
