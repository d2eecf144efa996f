package main

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"time"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
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
	for n, l := range list {
		err := ctx.Err()
		if err == nil {
			err = i.issue(ctx, i.r.read(l))
		}
		switch {
		case errors.Is(err, context.Canceled):
			return stopped(n, len(list), "what has its number keeps it: give the command again for the others")
		case err != nil:
			p.failAbout(l.file, err, i.shops)
		}
		p.step()
	}
	p.end()
	p.counted("%s of %s", count(i.done, "document", "documents"), count(len(list), "file", "files"))
	return nil
}

// An issuer gives numbers to stones.
type issuer struct {
	p      *program
	r      *reader
	shops  *workshops
	books  *books
	people *authoriser
	done   int // documents that were issued, now or before

	options  issueOptions
	key      *seal.Key // nil for unsigned documents
	password string    // of the copies
}

func (p *program) issuer(o issueOptions) (i *issuer, err error) {
	i = &issuer{p: p, shops: newWorkshops(), books: p.books(o.out), people: p.authoriser(o.authorised), options: o}
	if i.r, err = p.reader(); err != nil {
		return nil, err
	}
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
func (i *issuer) issue(ctx context.Context, rec *record) error {
	if rec.unread() {
		i.refuse(rec, rec.problems)
		return nil
	}
	req, err := i.request(rec)
	if err != nil {
		return err
	}
	known, err := i.has(ctx, rec.bench, req)
	if err != nil {
		return err
	}
	render := neverRendered
	if !known {
		m, err := i.approved(ctx, rec)
		if err != nil || m == nil {
			return err
		}
		render = i.render(m)
	}
	book, err := i.books.of(ctx, rec.bench)
	if err != nil {
		return err
	}
	done, err := book.Issue(ctx, req, render)
	if err != nil {
		return err
	}
	i.told(done)
	return i.copy(rec, done)
}

// request is what the register wants to know of a stone.
func (i *issuer) request(rec *record) (register.Request, error) {
	var none register.Request
	if _, err := registerPath(rec.bench); err != nil {
		return none, &failure{about(rec, err), hintOf(err), err}
	}
	shop, err := i.shops.of(rec.bench)
	if err != nil {
		return none, err
	}
	content, err := contentOf(rec, shop)
	if err != nil {
		return none, err
	}
	days := rec.stone.Examined.Items
	return register.Request{
		Stone: rec.stone.Reference, Kind: register.Kind(rec.stone.Report), Examiner: rec.stone.Examiner,
		Examined: register.Span{First: register.DayOf(days[0].Time), Last: register.DayOf(days[len(days)-1].Time)},
		Content:  content, Program: name + " " + version(), Data: i.r.tables.Gems.Version(), Folder: i.options.out,
	}, nil
}

// about names the stone file where there is no bench file to name.
func about(rec *record, err error) string {
	if rec.bench == nil {
		return rec.file + ": " + err.Error()
	}
	return err.Error()
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

// approved makes the manuscript of a stone that may go out; nil where the
// stone may not, which is told.
func (i *issuer) approved(ctx context.Context, rec *record) (*manuscript, error) {
	if list := rec.bench.unwritten(); len(list) > 0 {
		i.refuse(rec, list)
		return nil, nil
	}
	m, problems, err := i.r.ready(rec, i.shops)
	switch {
	case err != nil:
		return nil, err
	case m == nil:
		i.refuse(rec, problems)
		return nil, nil
	}
	if i.stopped(m) {
		return nil, nil
	}
	if err := i.people.authorise(ctx, rec); err != nil {
		return nil, err
	}
	m.authorised(rec.stone.Authorised)
	for _, part := range m.parts() {
		i.report(part)
	}
	m.input.Code = seal.Code
	now := i.p.now()
	number, err := sampleNumber(rec.bench, now)
	if err != nil {
		return nil, err
	}
	return m, m.printable(number, rec.bench.local(now))
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
