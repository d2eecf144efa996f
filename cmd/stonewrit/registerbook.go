package main

import (
	"context"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"stonewrit/report/register"
)

// registerCommand shows the book of issued numbers.
func (p *program) registerCommand() *cobra.Command {
	c := &cobra.Command{Use: "register", Args: cobra.ArbitraryArgs}
	c.RunE = func(c *cobra.Command, words []string) error {
		if len(words) == 0 {
			return failing("for example register list", "register needs one of: %s", listed(commandNames(c)))
		}
		return unknownWord("register has no command %q", words[0], commandNames(c), "register --help lists them")
	}
	c.AddCommand(p.registerList(), p.registerShow(), p.registerAudit(), p.registerExport())
	return c
}

// book reads the register that belongs to a folder, and hands it to do.
func (p *program) book(ctx context.Context, folder string, do func(*register.Reader) error) error {
	bench, err := p.benchOf(folder)
	if err != nil {
		return err
	}
	return p.bookOf(ctx, bench, do)
}

// bookOf reads the register that a bench file names, and hands it to do.
func (p *program) bookOf(ctx context.Context, bench *benchFile, do func(*register.Reader) error) error {
	path, err := registerPath(bench)
	if err != nil {
		return err
	}
	book, err := register.OpenReader(ctx, path)
	if err != nil {
		return err
	}
	defer book.Close()
	return do(book)
}

// benchOf is the bench file of a folder, which must be usable.
func (p *program) benchOf(folder string) (*benchFile, error) {
	r, err := p.reader()
	if err != nil {
		return nil, err
	}
	if info, err := os.Stat(folder); err != nil {
		return nil, err
	} else if !info.IsDir() {
		return nil, failing("name the folder of the bench file", "%s is a file, not a folder", folder)
	}
	bench := r.benches.above(filepath.Join(folder, benchName))
	if bench != nil && !bench.usable() {
		return nil, failing("mend the bench file first", "%s has errors", bench.file)
	}
	return bench, nil
}

// registerList prints the entries, one a line.
func (p *program) registerList() *cobra.Command {
	var folder, kind string
	var f register.Filter
	c := &cobra.Command{
		Use: "list", Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			if kind != "" {
				var err error
				if f.Kind, err = register.ParseKind(kind); err != nil {
					return failing("appraisal, note or record", "--kind %s: %v", kind, err)
				}
			}
			return p.book(c.Context(), folder, func(book *register.Reader) error { return p.list(c.Context(), book, f) })
		},
	}
	benchFlag(c, &folder)
	c.Flags().StringVar(&f.Stone, "stone", "", "")
	c.Flags().StringVar(&kind, "kind", "", "")
	c.Flags().IntVar(&f.Year, "year", 0, "")
	return c
}

// benchFlag is the flag that names the folder whose register is meant.
func benchFlag(c *cobra.Command, folder *string) { c.Flags().StringVar(folder, "bench", ".", "") }

func (p *program) list(ctx context.Context, book *register.Reader, f register.Filter) error {
	entries, err := book.List(ctx, f)
	if err != nil {
		return err
	}
	for _, e := range entries {
		p.print("%s  %s  %s%s%s%s\n", e.Number, register.DayOf(e.Issued), pad(string(e.State), 10), pad(string(e.Kind), 11), oneLine(e.Stone), replaced(e))
	}
	p.print("%s\n", count(len(entries), "number", "numbers"))
	return nil
}

func replaced(e register.Entry) string {
	switch {
	case !e.ReplacedBy.IsZero():
		return ", replaced by " + e.ReplacedBy.String()
	case !e.Replaces.IsZero():
		return ", replaces " + e.Replaces.String()
	}
	return ""
}

// registerShow prints all that the book holds of one number.
func (p *program) registerShow() *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use: "show", Args: needsOne("a number", "for example register show HL-2026-000001-16"),
		RunE: func(c *cobra.Command, words []string) error {
			n, err := register.ParseNumber(words[0])
			if err != nil {
				return err
			}
			return p.book(c.Context(), folder, func(book *register.Reader) error { return p.show(c.Context(), book, n) })
		},
	}
	benchFlag(c, &folder)
	return c
}

func (p *program) show(ctx context.Context, book *register.Reader, n register.Number) error {
	e, err := book.Show(ctx, n)
	if err != nil {
		return err
	}
	p.print("%s\n", e.Number)
	for _, line := range [][2]string{
		{"state", string(e.State)}, {"because", e.Reason}, {"replaces", e.Replaces.String()}, {"replaced by", e.ReplacedBy.String()},
		{"stone", e.Stone}, {"kind", string(e.Kind)}, {"examined", e.Examined.String()}, {"examiner", e.Examiner},
		{"issued", e.Issued.Format("2006-01-02 15:04:05 -07:00")}, {"uuid", e.UUID.String()}, {"document", e.File}, {"office", e.Office},
		{"its sha-256", e.PDF.String()}, {"stone file", e.Content.Stone.String()}, {"photos", e.Content.Photos.String()},
		{"letterhead", e.Content.Letterhead.String()}, {"program", e.Program}, {"table", e.Data}, {"in the log", e.Hash.String()},
	} {
		if line[1] != "" {
			p.print("%s", labelled(line[0], line[1]))
		}
	}
	history, err := book.History(ctx, e.Stone)
	if err != nil {
		return err
	}
	for _, other := range history {
		if other.Number != e.Number {
			p.print("%s", labelled("also", other.Number.String()+" of "+register.DayOf(other.Issued).String()+", "+string(other.State)))
		}
	}
	return nil
}

// registerAudit proves the book and the documents against each other.
func (p *program) registerAudit() *cobra.Command {
	var folder, out string
	c := &cobra.Command{
		Use: "audit", Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			bench, err := p.benchOf(folder)
			if err != nil {
				return err
			}
			return p.bookOf(c.Context(), bench, func(book *register.Reader) error {
				return p.audit(c.Context(), book, register.Shelf{Folder: out, Office: bench.bench.Numbers.Office})
			})
		},
	}
	benchFlag(c, &folder)
	c.Flags().StringVar(&out, "out", "issued", "")
	return c
}

func (p *program) audit(ctx context.Context, book *register.Reader, shelf register.Shelf) error {
	a, err := book.Audit(ctx, shelf)
	if err != nil {
		return err
	}
	for _, f := range a.Findings {
		p.print("finding: %s\n", oneLine(f.String()))
	}
	if !a.Clean() {
		p.met(statusFindings)
	}
	for _, office := range slices.Sorted(maps.Keys(a.Elsewhere)) {
		p.print("kept elsewhere: %d by %s; what the register stores of them was looked at instead\n", a.Elsewhere[office], officeName(office))
	}
	p.print("%s, %s, %s\n", count(a.Entries, "number", "numbers"), count(a.Events, "event", "events"), count(len(a.Findings), "finding", "findings"))
	p.print("newest event: %s\n", a.Head)
	if a.Clean() {
		p.note("keep the line of the newest event elsewhere: it shows later that what is in the book up to now was not written anew")
	}
	return nil
}

func officeName(office string) string {
	if office == "" {
		return "an office without a name"
	}
	return "office " + oneLine(office)
}
