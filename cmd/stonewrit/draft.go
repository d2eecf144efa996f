package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
	"stonewrit/report/register"
)

// draftCommand writes proofs, without number, marked as drafts on every page.
func (p *program) draftCommand() *cobra.Command {
	var out string
	var changed bool
	c := &cobra.Command{
		Use: "draft", Args: needsPaths,
		RunE: func(c *cobra.Command, paths []string) error { return p.draft(c.Context(), paths, out, changed) },
	}
	c.Flags().StringVar(&out, "out", "drafts", "")
	c.Flags().BoolVar(&changed, "changed", false, "")
	return c
}

func (p *program) draft(ctx context.Context, paths []string, out string, changed bool) error {
	r, err := p.reader()
	if err != nil {
		return err
	}
	r.load = r.photos.Load // what is issued is always made from the picture itself
	list := r.list(paths)
	d := drafter{p: p, r: r, shops: newWorkshops(), out: out, written: map[string]string{}}
	if changed {
		d.changes = newChanges()
	}
	sweepParts(out)
	p.start(len(list), "drafting")
	err = inOrder(ctx, len(list), "the drafts so far are whole; draft --changed leaves them and makes the others", func(i int) *proof { return d.proof(list[i]) }, func(f *proof) error {
		if err := d.write(f); err != nil {
			p.failAbout(f.rec.file, err, d.shops)
		}
		p.step()
		return nil
	})
	p.end()
	if err == nil {
		p.counted("%s of %s", count(len(d.written), "draft", "drafts"), count(len(list), "file", "files"))
	}
	return err
}

// drafter writes the proofs of one run.
type drafter struct {
	p       *program
	r       *reader
	shops   *workshops
	out     string
	written map[string]string // file of a draft to the stone file it is of
	changes *changes          // nil where all drafts are made anew
}

// A proof is a draft that is made and not yet written.
type proof struct {
	rec      *record
	problems stone.Problems
	pdf      []byte // nil where the stone cannot be used
	kept     bool   // nothing has changed since the draft that is there
	err      error
}

// proof reads one stone and makes its draft.
func (d *drafter) proof(l listing) *proof {
	out := &proof{rec: d.r.read(l)}
	if !out.rec.unread() && d.changes != nil && !d.changes.since(d.file(out.rec), out.rec) {
		out.kept = true
		return out
	}
	var m *manuscript
	if m, out.problems, out.err = d.r.ready(out.rec, d.shops); m != nil {
		out.pdf, out.err = m.print(register.Number{}, "", l.bench.local(d.p.now()))
	}
	return out
}

// file is the name of the draft of a stone.
func (d *drafter) file(rec *record) string {
	return filepath.Join(d.out, pdfName(rec.stone.Reference)+"-draft.pdf")
}

// write writes a proof that was made, or tells why there is none.
func (d *drafter) write(f *proof) error {
	rec := f.rec
	switch {
	case f.err != nil:
		return f.err
	case f.pdf == nil && !f.kept:
		d.p.met(statusOf(f.problems))
		d.p.sayProblems(rec.file, f.problems)
		return nil
	}
	file := d.file(rec)
	if other, taken := d.written[strings.ToLower(file)]; taken {
		return failing("give the stones references that differ in letters or digits", "%s: the draft of %s has the name %s already", rec.file, other, file)
	}
	d.written[strings.ToLower(file)] = rec.file
	if f.kept {
		d.p.print("%s  %s  (nothing has changed)\n", file, oneLine(rec.stone.Reference))
		return nil
	}
	if err := replace(file, f.pdf); err != nil {
		delete(d.written, strings.ToLower(file))
		return err
	}
	d.p.met(statusOf(f.problems))
	d.p.print("%s  %s%s\n", file, oneLine(rec.stone.Reference), beforeIssue(f.problems))
	return nil
}

// ready makes the manuscript of a record that can be used. It returns nil and
// the problems of one that cannot.
func (r *reader) ready(rec *record, shops *workshops) (*manuscript, stone.Problems, error) {
	if rec.unread() {
		return nil, rec.problems, nil
	}
	m, err := r.manuscript(rec, shops)
	if err != nil {
		return nil, nil, err
	}
	problems := m.problems()
	if problems.Has(stone.Error) {
		return nil, problems, nil
	}
	return m, problems, nil
}

// failAbout tells an error that one stone file has met. A fault of the workshop,
// which many stones may meet, is told with the first of them.
func (p *program) failAbout(file string, err error, shops *workshops) {
	var fault *workshopFault
	if errors.As(err, &fault) {
		if err = fault.cause; !shops.first(fault) {
			err = errors.New("wording, typeface or letterhead cannot be used, as told above")
		}
	}
	p.fail(aboutFile(file, err))
}

// aboutFile says of an error, or of each of several joined ones, which stone
// file it is about, unless it says so itself.
func aboutFile(file string, err error) error {
	if several, ok := err.(interface{ Unwrap() []error }); ok {
		var list []error
		for _, one := range several.Unwrap() {
			list = append(list, aboutFile(file, one))
		}
		return errors.Join(list...)
	}
	var said *failure
	if errors.As(err, &said) {
		return err
	}
	return &failure{file + ": " + err.Error(), hintOf(err), err}
}

// beforeIssue counts what is to be mended before a draft can become a document.
func beforeIssue(problems stone.Problems) string {
	n := 0
	for _, q := range problems {
		if q.Severity == stone.Missing || q.Severity == stone.Finding {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("  (%s before it is issued: see check)", count(n, "thing to look at", "things to look at"))
}

// pdfName makes a file's name of a reference, and keeps its letters as they
// are.
func pdfName(reference string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' || r == '.' {
			return r
		}
		return '-'
	}, reference)
}
