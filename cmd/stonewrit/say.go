package main

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"stonewrit/grading/stone"
	"stonewrit/report/register"
)

// name is what messages begin with, and the word that starts the program.
const name = "stonewrit"

// A failure is an error with a next step.
type failure struct {
	message, hint string
	cause         error
}

func (f *failure) Error() string { return f.message }
func (f *failure) Unwrap() error { return f.cause }

// failing makes a failure without a cause of its own.
func failing(hint, format string, args ...any) error {
	return &failure{message: fmt.Sprintf(format, args...), hint: hint}
}

// hintOf is the next step that an error brings along.
func hintOf(err error) string {
	var f *failure
	if errors.As(err, &f) && f.hint != "" {
		return f.hint
	}
	return register.Hint(err)
}

// fail tells an error, or each of several joined ones, and remembers that
// something could not be done.
func (p *program) fail(err error) {
	if several, ok := err.(interface{ Unwrap() []error }); ok {
		for _, one := range several.Unwrap() {
			p.fail(one)
		}
		return
	}
	p.met(statusFailed)
	p.say("error", plainly(err), hintOf(err))
}

// plainly words an error of the system without the name of a system call.
func plainly(err error) string {
	var path *fs.PathError
	if !errors.As(err, &path) || err.Error() != path.Error() {
		return err.Error()
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return path.Path + ": no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return path.Path + ": not allowed to read or write it"
	}
	return path.Path + ": " + path.Err.Error()
}

// say writes a message and its hint, one line each.
func (p *program) say(severity, message, hint string) {
	p.bar.hide()
	_ = p.out.Flush() // a fault of standard output is told at the end of the run
	fmt.Fprintf(p.stderr, "%s: %s: %s\n", name, severity, oneLine(message))
	p.said.message(severity, message)
	if hint != "" {
		fmt.Fprintf(p.stderr, "%s: hint: %s\n", name, oneLine(hint))
	}
}

// note tells something that is neither a result nor an error.
func (p *program) note(format string, args ...any) {
	p.bar.hide()
	_ = p.out.Flush()
	fmt.Fprintf(p.stderr, "%s: %s\n", name, oneLine(fmt.Sprintf(format, args...)))
}

// sayProblems tells the problems of a file that keep it from being used.
func (p *program) sayProblems(file string, problems stone.Problems) {
	for _, q := range problems {
		p.say(string(q.Severity), q.Where(file)+": "+q.Message.String(), q.Hint.String())
	}
}

// print writes to standard output.
func (p *program) print(format string, args ...any) {
	p.bar.hide()
	text := fmt.Sprintf(format, args...)
	_, _ = p.out.WriteString(text) // a fault of standard output is told at the end of the run
	p.said.lines += strings.Count(text, "\n")
}

// oneLine keeps a message on its line, and control characters of a file out of
// the terminal.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0:
			return '�'
		}
		return r
	}, s)
}
