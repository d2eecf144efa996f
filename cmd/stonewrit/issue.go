package main

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"sync/atomic"
	"time"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/report/register"
	"stonewrit/report/seal"
)

// issueCommand writes numbered documents and enters them on the register.
func (p *program) issueCommand() *cobra.Command {
	var o issueOptions
	c := &cobra.Command{
		Use: "issue", Args: needsPaths,
		RunE: func(c *cobra.Command, paths []string) error { return p.issue(c.Context(), paths, o) },
	}
	o.flags(c)
	return c
}

// issueOptions are the flags of the commands that issue.
type issueOptions struct {
	out, authorised, key  string
	copies                string // folder of the copies
	withoutClient, locked bool   // which copies
}

func (o *issueOptions) flags(c *cobra.Command) {
	c.Flags().StringVar(&o.out, "out", "issued", "")
	c.Flags().StringVar(&o.authorised, "authorised-by", "", "")
	c.Flags().StringVar(&o.key, "key", "", "")
	c.Flags().StringVar(&o.copies, "copies", "copies", "")
	c.Flags().BoolVar(&o.withoutClient, "without-client", false, "")
	c.Flags().BoolVar(&o.locked, "password", false, "")
}

func (p *program) issue(ctx context.Context, paths []string, o issueOptions) (err error) {
	i, err := p.issuer(o)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, i.books.close()) }()
	list := i.r.list(paths)
	p.start(len(list), "issuing")
	defer p.end()
	err = inOrder(ctx, len(list), "what has its number keeps it: give the command again for the others", func(n int) *candidate { return i.candidate(list[n]) }, func(c *candidate) error {
		err := i.issue(ctx, c)
		switch {
		case errors.Is(err, context.Canceled):
			return err
		case err != nil:
			p.failAbout(c.rec.file, err, i.shops)
		}
		p.step()
		return nil
	})
	p.end()
	if err == nil {
		p.counted("%s of %s", count(i.done, "document", "documents"), count(len(list), "file", "files"))
	}
	return err
}

// An issuer gives numbers to stones.
type issuer struct {
	p      *program
	r      *reader
	shops  *workshops
	books  *books
	people *authoriser
	done   int // documents that were issued, now or before

	ahead atomic.Bool // whether documents are prepared before it is their turn

	options  issueOptions
	key      *seal.Key // nil for unsigned documents
	password string    // of the copies
}

func (p *program) issuer(o issueOptions) (i *issuer, err error) {
	i = &issuer{p: p, shops: newWorkshops(), books: p.books(o.out), people: p.authoriser(o.authorised), options: o}
	if i.r, err = p.reader(); err != nil {
		return nil, err
	}
	i.r.load = photos.NewDarkroom(photos.DarkroomOptions{}).Load // from the picture itself: nothing is kept
	i.ahead.Store(true)
	if i.key, err = p.key(o.key); err != nil {
		return nil, err
	}
	if o.locked {
		if i.password, err = p.secret(copyPassword, "Password for the copies: "); err != nil {
			return nil, err
		}
		return i, seal.Fit(i.password)
	}
	return i, nil
}

// issue gives one stone its number, or says why not. Everything that can be
// wrong with the document is found before a number is taken; a register that
// was never written to is not even made before.
func (i *issuer) issue(ctx context.Context, c *candidate) error {
	if c.rec.unread() {
		i.refuse(c.rec, c.rec.problems)
		return nil
	}
	if c.err != nil {
		return c.err
	}
	known, err := i.has(ctx, c.rec.bench, c.req)
	if err != nil {
		return err
	}
	i.ahead.Store(!known)
	render := neverRendered
	if !known {
		m, err := i.approved(ctx, c)
		if err != nil || m == nil {
			return err
		}
		render = i.render(m)
	}
	book, err := i.books.of(ctx, c.rec.bench)
	if err != nil {
		return err
	}
	done, err := book.Issue(ctx, c.req, render)
	if err != nil {
		return err
	}
	i.told(done)
	return i.copy(c.rec, done)
}

// has reports whether the stone has a valid number for the same content
// already. Its document is then the one that was issued, however it would be
// judged today.
func (i *issuer) has(ctx context.Context, bench *benchFile, req register.Request) (bool, error) {
	if !registerMade(bench) {
		return false, nil
	}
	book, err := i.books.of(ctx, bench)
	if err != nil {
		return false, err
	}
	entries, err := book.History(ctx, req.Stone)
	for _, e := range entries {
		if (e.State == register.Issued || e.State == register.Reserved) && e.Content == req.Content {
			return true, err
		}
	}
	return false, err
}

// neverRendered is the render of a stone that has its document: it is called
// only if the number was withdrawn at this very moment.
func neverRendered(register.Number, uuid.UUID, time.Time) ([]byte, error) {
	return nil, failing("issue the stone again", "its number was withdrawn just now")
}

// approved is the manuscript of a stone that may go out; nil where the stone
// may not, which is told.
func (i *issuer) approved(ctx context.Context, c *candidate) (*manuscript, error) {
	d := c.prepared()
	switch {
	case d.err != nil:
		return nil, d.err
	case d.m == nil:
		i.refuse(c.rec, d.problems)
		return nil, nil
	}
	if i.stopped(d.m) {
		return nil, nil
	}
	if err := i.people.authorise(ctx, c.rec); err != nil {
		return nil, err
	}
	for _, part := range d.m.parts() {
		i.report(part)
	}
	if !d.tried {
		d.unfit = i.fits(d.m, c.rec.stone.Authorised)
	}
	return d.m, d.unfit
}

// stopped tells what keeps a document from being issued, file by file.
func (i *issuer) stopped(m *manuscript) bool {
	stopped := false
	for _, part := range m.parts() {
		if stops := stopping(part); len(stops) > 0 {
			i.p.met(max(statusFindings, statusOf(stops)))
			i.p.sayProblems(part.file, stops)
			stopped = true
		}
	}
	if stopped {
		i.p.note("%s: not issued, no number was taken", m.rec.file)
	}
	return stopped
}

// stopping are the problems that keep a stone from being issued: what a
// required statement lacks, and a contradicted claim that nobody explains.
func stopping(part part) stone.Problems {
	var list stone.Problems
	for _, q := range part.problems {
		if q.Severity == stone.Missing || isContradiction(part.stone, q) && strings.TrimSpace(part.explanation) == "" {
			list = append(list, q)
		}
	}
	return list
}

// isContradiction tells the finding that a claim is contradicted.
func isContradiction(e *grading.Examined, q stone.Problem) bool {
	if e == nil {
		return false
	}
	for _, c := range e.Claims() {
		if q.Severity == stone.Finding && q.Path == c.Path && c.Claim.Standing == identify.Contradicted {
			return true
		}
	}
	return false
}

// refuse tells why a stone is not issued.
func (i *issuer) refuse(rec *record, problems stone.Problems) {
	i.p.met(max(statusFindings, statusOf(problems)))
	i.p.sayProblems(rec.file, problems)
	i.p.note("%s: not issued, no number was taken", rec.file)
}

// report tells the findings that the document itself tells: it is issued all
// the same.
func (i *issuer) report(part part) {
	for _, q := range part.problems {
		switch {
		case q.Severity != stone.Finding:
		case isContradiction(part.stone, q):
			i.p.note("%s: %s is contradicted, and issued with its explanation", part.file, q.Path)
		default:
			i.p.met(statusFindings)
			i.p.sayProblems(part.file, stone.Problems{q})
		}
	}
}

// told prints the number of a stone and where its document is.
func (i *issuer) told(done register.Issuance) {
	i.done++
	how := ""
	switch done.Outcome {
	case register.Unchanged:
		how = "  (unchanged, issued before)"
	case register.Restored:
		how = "  (unchanged, issued before; the lost document was put back)"
	}
	i.p.print("%s  %s  %s%s\n", done.Entry.Number, filepath.Join(i.options.out, done.Entry.File), oneLine(done.Entry.Stone), how)
}
