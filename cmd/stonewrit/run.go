package main

import (
	"bufio"
	"context"
	"errors"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"stonewrit/grading"
)

// world is what the program takes from outside.
type world struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	now            func() time.Time
	rand           io.Reader
}

// Exit status, by the contract.
const (
	statusGood     = 0 // nothing wrong
	statusFindings = 1 // findings: a contradicted claim, a failed audit
	statusFailed   = 2 // could not run: bad usage, unreadable or invalid file
)

// program is one run: the world, and the worst status met so far.
type program struct {
	world
	out    *bufio.Writer // standard output, written out before anything goes to standard error
	status int
	said   said
	bar    *progress
	loaded *grading.Tables
}

// run carries out one command line and returns the exit status.
func run(args []string, w world) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	heedLimits()
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	p := &program{world: w, out: bufio.NewWriter(w.stdout)}
	if err := p.root(args).ExecuteContext(ctx); err != nil {
		p.fail(err)
	}
	p.recap()
	if err := p.out.Flush(); err != nil && !errors.Is(err, syscall.EPIPE) {
		p.fail(err)
	}
	return p.status
}

// met keeps the worst status.
func (p *program) met(status int) { p.status = max(p.status, status) }

// tables loads the reference tables when they are first needed.
func (p *program) tables() (*grading.Tables, error) {
	if p.loaded == nil {
		tables, err := grading.Load()
		if err != nil {
			return nil, err
		}
		p.loaded = tables
	}
	return p.loaded, nil
}
