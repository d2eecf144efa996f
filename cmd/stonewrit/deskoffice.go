package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"stonewrit/cmd/stonewrit/desk"
	"stonewrit/report/register"
)

// A deskOffice makes documents for the desk by the commands themselves, so that
// page and command line cannot differ.
type deskOffice struct {
	p    *program
	dir  string
	once sync.Mutex // one command at a time
}

func newDeskOffice(p *program, dir string) *deskOffice { return &deskOffice{p: p, dir: dir} }

// outcome is what a command said.
type outcome struct {
	out, notes []string
	status     int
}

// run carries out a command and keeps what it says.
func (o *deskOffice) run(ctx context.Context, args ...string) outcome {
	o.once.Lock()
	defer o.once.Unlock()
	p, out, notes := o.program()
	if err := p.root(args).ExecuteContext(ctx); err != nil {
		p.fail(err)
	}
	_ = p.out.Flush() // into memory
	return outcome{o.lines(out), o.lines(notes), p.status}
}

// program is a run of its own within this one.
func (o *deskOffice) program() (p *program, out, notes *bytes.Buffer) {
	out, notes = &bytes.Buffer{}, &bytes.Buffer{}
	w := world{strings.NewReader(""), out, notes, o.p.now, o.p.rand}
	return &program{world: w, out: bufio.NewWriter(out), loaded: o.p.loaded}, out, notes
}

// lines are what was said, with the names of files as the desk shows them.
func (o *deskOffice) lines(b *bytes.Buffer) []string {
	var list []string
	for _, line := range strings.Split(b.String(), "\n") {
		line = strings.TrimPrefix(line, name+": ")
		line = strings.ReplaceAll(line, o.dir+string(filepath.Separator), "")
		if strings.TrimSpace(line) != "" {
			list = append(list, line)
		}
	}
	return list
}

// err tells a command that came to nothing.
func (r outcome) err() error { return errors.New(strings.Join(r.notes, "\n")) }

func (o *deskOffice) path(file string) string { return filepath.Join(o.dir, filepath.FromSlash(file)) }

func (o *deskOffice) New(ctx context.Context, n desk.NewStone) (string, error) {
	args := []string{"new", "--kind", n.Kind, "--in", o.dir}
	if n.Piece != "" {
		args = append(args, "--piece", n.Piece)
	} else {
		args = append(args, "--species", n.Species)
	}
	r := o.run(ctx, append(args, "--", n.Reference)...)
	if r.status != statusGood || len(r.out) == 0 {
		return "", r.err()
	}
	return filepath.ToSlash(r.out[0]), o.forget(filepath.Join(o.dir, r.out[0]))
}

// forget takes the folder of this computer out of the remarks of a new file,
// which goes out with its document.
func (o *deskOffice) forget(file string) error {
	src, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	return os.WriteFile(file, bytes.ReplaceAll(src, []byte(o.dir+string(filepath.Separator)), nil), 0o644)
}

// Draft makes a proof in a folder that is taken away again.
func (o *deskOffice) Draft(ctx context.Context, file string) (desk.Paper, error) {
	return o.made(func(folder string) outcome { return o.run(ctx, "draft", "--out", folder, "--", o.path(file)) })
}

// made is the one file that a command makes in a folder.
func (o *deskOffice) made(command func(folder string) outcome) (desk.Paper, error) {
	folder, err := os.MkdirTemp("", name)
	if err != nil {
		return desk.Paper{}, err
	}
	defer os.RemoveAll(folder)
	r := command(folder)
	files, err := filepath.Glob(filepath.Join(folder, "*.pdf"))
	if err != nil || len(files) != 1 {
		return desk.Paper{}, errors.Join(err, r.err())
	}
	data, err := os.ReadFile(files[0])
	return desk.Paper{Name: filepath.Base(files[0]), Type: "application/pdf", Data: data}, err
}

func (o *deskOffice) Issue(ctx context.Context, file, authorisedBy string) (desk.Answer, error) {
	args := []string{"issue", "--out", o.path("issued")}
	if authorisedBy != "" {
		args = append(args, "--authorised-by", authorisedBy)
	}
	return numbered(o.run(ctx, append(args, "--", o.path(file))...)), nil
}

// numbered is what a command answers that gives a number: it did if it names
// one, whatever else it found.
func numbered(r outcome) desk.Answer {
	a := desk.Answer{Lines: append(r.out, r.notes...)}
	for _, line := range r.out {
		word, _, _ := strings.Cut(line, " ")
		if n, err := register.ParseNumber(word); err == nil {
			a.Good, a.Number = true, n.String()
		}
	}
	return a
}

func (o *deskOffice) Amend(ctx context.Context, number, file, because, authorisedBy string) (desk.Answer, error) {
	args := []string{"amend", "--because", because, "--out", o.path("issued")}
	if authorisedBy != "" {
		args = append(args, "--authorised-by", authorisedBy)
	}
	return numbered(o.run(ctx, append(args, "--", number, o.path(file))...)), nil
}

func (o *deskOffice) Void(ctx context.Context, number, because string) (desk.Answer, error) {
	r := o.run(ctx, "void", "--bench", o.dir, "--because", because, "--", number)
	return desk.Answer{Good: r.status == statusGood, Lines: append(r.out, r.notes...)}, nil
}

func (o *deskOffice) Verify(ctx context.Context, pdf []byte) (desk.Answer, error) {
	folder, err := os.MkdirTemp("", name)
	if err != nil {
		return desk.Answer{}, err
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "document.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		return desk.Answer{}, err
	}
	r := o.run(ctx, "verify", "--bench", o.dir, "--", file)
	a := desk.Answer{Good: r.status == statusGood}
	for _, line := range append(r.out, r.notes...) {
		line = strings.TrimPrefix(strings.ReplaceAll(line, file+": ", ""), file)
		a.Lines = append(a.Lines, strings.TrimSpace(line))
	}
	return a, nil
}

// reading hands the register to do; one that was never written to is passed
// over.
func (o *deskOffice) reading(ctx context.Context, do func(*register.Reader) error) error {
	p, _, notes := o.program()
	bench, err := p.benchOf(o.dir)
	switch {
	case err != nil:
		return errors.Join(err, errors.New(strings.Join(o.lines(notes), "\n")))
	case bench == nil || !registerMade(bench):
		return nil
	}
	return p.book(ctx, o.dir, do)
}

func (o *deskOffice) Entries(ctx context.Context) ([]desk.Entry, error) {
	var list []desk.Entry
	err := o.reading(ctx, func(book *register.Reader) error {
		entries, err := book.List(ctx, register.Filter{})
		for _, e := range entries {
			list = append(list, desk.Entry{
				Number: e.Number.String(), Stone: e.Stone, Kind: string(e.Kind), State: string(e.State), Issued: register.DayOf(e.Issued).String(),
				Reason: e.Reason, Replaces: numberOrNone(e.Replaces), ReplacedBy: numberOrNone(e.ReplacedBy),
			})
		}
		return err
	})
	return list, err
}

func numberOrNone(n register.Number) string {
	if n.IsZero() {
		return ""
	}
	return n.String()
}

func (o *deskOffice) Document(ctx context.Context, number string) (desk.Paper, error) {
	n, err := register.ParseNumber(number)
	if err != nil {
		return desk.Paper{}, err
	}
	p := desk.Paper{Name: number + ".pdf", Type: "application/pdf"}
	err = o.reading(ctx, func(book *register.Reader) error {
		p.Data, err = book.Document(ctx, n)
		return err
	})
	if err == nil && p.Data == nil {
		err = fmt.Errorf("%s: %w", number, register.ErrNoRegister)
	}
	return p, err
}

func (o *deskOffice) Inventory(ctx context.Context) (desk.Paper, error) {
	return o.made(func(folder string) outcome {
		return o.run(ctx, "inventory", "--out", filepath.Join(folder, "inventory.pdf"), "--", o.dir)
	})
}
