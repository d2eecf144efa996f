package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"stonewrit/grading/stone"
)

// An authoriser finds out who answers for a document: the stone file says so,
// or the flag, or whoever sits at the terminal is asked, once for a bench.
type authoriser struct {
	p     *program
	flag  string
	said  map[*benchFile]string
	input *bufio.Reader
}

func (p *program) authoriser(flag string) *authoriser {
	return &authoriser{p: p, flag: flag, said: map[*benchFile]string{}}
}

// needed reports whether the kind of document must say who authorised it: an
// owner's own record need not (requirement "authoriser").
func needed(s *stone.Stone) bool { return s.Authorised == "" && s.Report != stone.Record }

// beforehand is who will authorise the document of a stone, if that is known
// without asking.
func (a *authoriser) beforehand(s *stone.Stone) (who string, known bool) {
	if !needed(s) {
		return s.Authorised, true
	}
	return a.flag, a.flag != ""
}

// authorise completes a record with who answers for it.
func (a *authoriser) authorise(ctx context.Context, rec *record) error {
	if !needed(rec.stone) {
		return nil
	}
	people := slices.Sorted(maps.Keys(rec.bench.bench.Examiners))
	who := a.flag
	if who == "" {
		who = a.said[rec.bench]
	}
	if who == "" && isTerminal(a.p.stdin) && isTerminal(a.p.stderr) {
		var err error
		if who, err = a.ask(ctx, people); err != nil {
			return err
		}
		a.said[rec.bench] = who
	}
	switch {
	case who == "":
		return failing("add authorised_by: "+rec.stone.Examiner+" to the file, or give --authorised-by "+rec.stone.Examiner,
			"%s: nobody is named who authorises the document", rec.file)
	case !slices.Contains(people, who):
		return unknownWord("--authorised-by %s is no examiner of "+rec.bench.file, who, people, listed(people))
	}
	rec.stone.Authorised = who
	return nil
}

// ask asks at the terminal until it is told one of the examiners. The end of
// input, and an interrupt, name nobody.
func (a *authoriser) ask(ctx context.Context, people []string) (string, error) {
	a.p.bar.hide()
	if a.input == nil {
		a.input = bufio.NewReader(a.p.stdin)
	}
	for {
		fmt.Fprintf(a.p.stderr, "Who authorises the documents that name nobody (%s)? ", strings.Join(people, ", "))
		line, err := a.line(ctx)
		if err != nil {
			return "", err
		}
		who := strings.TrimSpace(line)
		if who == "" || slices.Contains(people, who) {
			return who, nil
		}
		fmt.Fprintf(a.p.stderr, "%q is no examiner of the bench file\n", who)
	}
}

// line reads one line, or is interrupted.
func (a *authoriser) line(ctx context.Context) (string, error) {
	type answer struct {
		text string
		err  error
	}
	got := make(chan answer, 1)
	go func() {
		text, err := a.input.ReadString('\n')
		got <- answer{text, err}
	}()
	select {
	case <-ctx.Done():
		return "", failing("", "stopped")
	case x := <-got:
		if x.err == io.EOF {
			x.err = nil
		}
		return x.text, x.err
	}
}
