package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/spf13/cobra"

	"stonewrit/report/register"
	"stonewrit/report/seal"
)

// verifyCommand tells whether a PDF is the document that was issued.
func (p *program) verifyCommand() *cobra.Command {
	var folder string
	var locked bool
	c := &cobra.Command{
		Use: "verify", Args: needsDocuments,
		RunE: func(c *cobra.Command, files []string) error {
			v, err := p.verifier(c.Context(), folder, c.Flags().Changed("bench"))
			if err != nil {
				return err
			}
			defer v.close()
			if locked {
				if v.password, err = p.secret(copyPassword, "Password of the PDF: "); err != nil {
					return err
				}
			}
			for _, file := range files {
				if err := v.verify(c.Context(), file); err != nil {
					p.fail(aboutFile(file, err))
				}
			}
			return nil
		},
	}
	benchFlag(c, &folder)
	c.Flags().BoolVar(&locked, "password", false, "")
	return c
}

func needsDocuments(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return failing("for example verify issued/HL-2026-000001-16.pdf", "%s needs a PDF", c.Name())
	}
	return nil
}

// A verifier compares PDFs with themselves and, if there is one, the register.
type verifier struct {
	p        *program
	book     *register.Reader // nil where none is asked
	without  string           // why none is
	password string
}

// verifier opens the register that belongs to a folder. It does without one that
// was never written to and, unless the folder was named, where none can be read.
func (p *program) verifier(ctx context.Context, folder string, named bool) (*verifier, error) {
	v := &verifier{p: p}
	bench, err := p.benchOf(folder)
	if err != nil {
		return nil, err
	}
	path, err := registerPath(bench)
	if err == nil {
		v.book, err = register.OpenReader(ctx, path)
	}
	if err != nil && named && !errors.Is(err, register.ErrNoRegister) {
		return nil, err
	}
	if err != nil {
		v.without = plainly(err)
	}
	return v, nil
}

func (v *verifier) close() {
	if v.book != nil {
		v.book.Close()
	}
}

// verify tells all that can be said of one file.
func (v *verifier) verify(ctx context.Context, file string) error {
	data, err := readDocument(file)
	if err != nil {
		return err
	}
	found, err := v.judge(ctx, data)
	switch {
	case errors.Is(err, seal.ErrLocked):
		return &failure{file + ": " + err.Error(), "give --password, or verify the document itself", err}
	case err != nil:
		return err
	}
	v.p.print("%s  %s\n", oneLine(file), oneLine(found.number))
	for _, line := range found.lines {
		v.p.print("%s", labelled(line[0], line[1]))
	}
	for _, finding := range found.findings {
		v.p.met(statusFindings)
		v.p.print("finding: %s: %s\n", oneLine(file), oneLine(finding))
	}
	return nil
}

// mostDocument is above any document with twelve photos.
const mostDocument = 256 << 20 // bytes

// readDocument reads a PDF, and no device that never ends.
func readDocument(file string) ([]byte, error) {
	info, err := os.Stat(file)
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, failing("name the PDF", "%s is a folder", file)
	case !info.Mode().IsRegular():
		return nil, notAFile(file, info)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, mostDocument))
}

// A judgement is what can be said of a PDF.
type judgement struct {
	number   string
	lines    [][2]string // label and text
	findings []string    // without any, the file is what it seems
}

func (j *judgement) say(label, format string, args ...any) {
	j.lines = append(j.lines, [2]string{label, fmt.Sprintf(format, args...)})
}

func (j *judgement) find(format string, args ...any) {
	j.findings = append(j.findings, fmt.Sprintf(format, args...))
}

// judge compares the parts of a PDF with one another and with the register.
func (v *verifier) judge(ctx context.Context, data []byte) (*judgement, error) {
	doc, err := seal.Open(data, v.password)
	if err != nil {
		return nil, err
	}
	j := &judgement{number: doc.Number}
	if j.findings = doc.Check(); len(j.findings) == 0 && !isCopy(doc) {
		j.say("parts", "files inside, metadata and print belong together")
	}
	for _, left := range doc.Unchecked() {
		j.say("left out", "%s: it does not say, as documents of older versions of the program do not", left)
	}
	for _, s := range doc.Signatures {
		if s.Err == nil {
			j.say("signed", "%s", signedBy(s))
		}
	}
	switch {
	case len(doc.Signatures) > 0:
	case v.book == nil:
		j.say("signed", "no; without the register nobody can tell it from one made to look like it")
	default:
		j.say("signed", "no")
	}
	if isCopy(doc) {
		j.find("it is a copy made to show; the document issued is another file")
	}
	return j, v.ask(ctx, j, doc, data)
}

func signedBy(s seal.Signature) string {
	text := "by " + s.Subject
	switch {
	case s.Issuer == s.Subject:
		text += ", by a certificate of their own making"
	default:
		text += ", by a certificate of " + s.Issuer
	}
	if !s.At.IsZero() {
		text += ", on " + s.At.UTC().Format(time.DateOnly)
	}
	return fmt.Sprintf("%s; SHA-256 of the certificate %x", text, s.Fingerprint)
}

// ask compares the PDF with the register.
func (v *verifier) ask(ctx context.Context, j *judgement, doc *seal.Document, data []byte) error {
	if v.book == nil {
		j.say("register", "not asked: %s", v.without)
		return nil
	}
	n, err := register.ParseNumber(doc.Number)
	if err != nil {
		j.find("its number is none: %v", err)
		return nil
	}
	e, err := v.book.Show(ctx, n)
	if errors.Is(err, register.ErrNotFound) {
		j.find("%s is not on the register", n)
		return nil
	}
	if err != nil {
		return err
	}
	j.issued(e, doc, data)
	if doc.UUID == e.UUID.String() {
		j.since(e)
	}
	return nil
}

// issued says whether it is the document of the entry.
func (j *judgement) issued(e register.Entry, doc *seal.Document, data []byte) {
	if register.Sum(data) == e.PDF {
		j.say("register", "issued on %s for %s; this is the document, byte for byte", register.DayOf(e.Issued), e.Stone)
		return
	}
	stone := "the stone file inside is not the one issued either"
	switch f := doc.StoneFile(); {
	case f == nil:
		stone = "no stone file is inside"
	case register.Sum(f.Data) == e.Content.Stone:
		stone = "the stone file inside is the one issued"
	}
	if doc.UUID != e.UUID.String() {
		stone += "; its UUID is another"
	}
	if doc.Locked && register.Sum(nilOr(doc.StoneFile())) == e.Content.Stone && doc.UUID == e.UUID.String() {
		j.say("register", "issued on %s for %s; this is a copy closed with a password, and %s", register.DayOf(e.Issued), e.Stone, stone)
		return
	}
	j.find("it is not the document issued as %s on %s, or was changed since: SHA-256 %s, issued was %s; %s",
		e.Number, register.DayOf(e.Issued), register.Sum(data), e.PDF, stone)
}

func nilOr(f *seal.File) []byte {
	if f == nil {
		return nil
	}
	return f.Data
}

// since says what became of the number.
func (j *judgement) since(e register.Entry) {
	switch e.State {
	case register.Void:
		j.find("%s was withdrawn since: %s", e.Number, e.Reason)
	case register.Amended:
		j.find("%s was amended since, %s takes its place: %s", e.Number, e.ReplacedBy, e.Reason)
	default:
		j.say("since", "neither amended nor withdrawn")
	}
}
