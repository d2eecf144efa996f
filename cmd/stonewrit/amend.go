package main

import (
	"context"
	"errors"

	"github.com/spf13/cobra"

	"stonewrit/report"
	"stonewrit/report/register"
)

// amendCommand issues a document that takes the place of another.
func (p *program) amendCommand() *cobra.Command {
	var o issueOptions
	var because string
	c := &cobra.Command{
		Use: "amend", Args: numberAndFile,
		RunE: func(c *cobra.Command, words []string) error {
			n, err := register.ParseNumber(words[0])
			switch {
			case err != nil:
				return err
			case because == "":
				return failing(`give --because "…": it is printed, and stays on file`, "amend needs a reason")
			}
			return p.amend(c.Context(), n, words[1], because, o)
		},
	}
	o.flags(c)
	c.Flags().StringVar(&because, "because", "", "")
	return c
}

func numberAndFile(c *cobra.Command, args []string) error {
	const example = `for example amend HL-2026-000001-16 hl-0412.yaml --because "…"`
	switch {
	case len(args) < 2:
		return failing(example, "amend needs the number to be replaced and the stone file as it is now")
	case len(args) > 2:
		return failing(c.CommandPath()+" --help shows the form", "amend takes a number and a file, %q is one too many", args[2])
	}
	return nil
}

func (p *program) amend(ctx context.Context, old register.Number, file, because string, o issueOptions) (err error) {
	i, err := p.issuer(o)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, i.books.close()) }()
	list := i.r.list([]string{file})
	if len(list) != 1 {
		if p.status == statusFailed { // told already
			return nil
		}
		return failing("amend one after the other", "%s: %s there, one was expected", file, count(len(list), "stone is", "stones are"))
	}
	c := i.candidate(list[0])
	if err := i.amend(ctx, old, c, because); err != nil {
		p.failAbout(c.rec.file, err, i.shops)
	}
	return nil
}

// amend gives one stone a number that replaces another.
func (i *issuer) amend(ctx context.Context, old register.Number, c *candidate, because string) error {
	rec, req := c.rec, c.req
	if rec.unread() {
		i.refuse(rec, rec.problems)
		return nil
	}
	if c.err != nil {
		return c.err
	}
	if !registerMade(rec.bench) {
		return register.ErrNoRegister
	}
	book, err := i.books.of(ctx, rec.bench)
	if err != nil {
		return err
	}
	before, err := book.Show(ctx, old)
	if err != nil {
		return err
	}
	known, err := i.has(ctx, rec.bench, req)
	if err != nil {
		return err
	}
	render := neverRendered
	var changes []change
	if !known {
		m, err := i.approved(ctx, c)
		if err != nil || m == nil {
			return err
		}
		if changes, err = i.changes(ctx, book, before, req, rec); err != nil {
			return err
		}
		m.input.Replaces = takesPlaceOf(before, because, changes)
		if err := m.printable(old, rec.bench.local(i.p.now())); err != nil {
			return err
		}
		render = i.render(m)
	}
	done, err := book.Amend(ctx, old, because, req, render)
	if err != nil {
		return err
	}
	i.told(done)
	for _, c := range changes {
		i.p.print("%s", labelled("changed", c.String()))
	}
	if done.Outcome == register.New {
		i.p.note("%s no longer holds; tell whoever has it that %s takes its place", old, done.Entry.Number)
	}
	return i.copy(rec, done)
}

func takesPlaceOf(before register.Entry, because string, changes []change) *report.Replaced {
	r := &report.Replaced{Number: before.Number.String(), Issued: before.Issued, Because: because}
	for _, c := range changes {
		r.Changes = append(r.Changes, report.Change{Field: c.path, Old: c.old, New: c.new})
	}
	return r
}
