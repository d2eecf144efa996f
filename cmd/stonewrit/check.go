package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
)

// checkCommand reads, reduces, judges and weighs, tells what it finds and
// writes nothing.
func (p *program) checkCommand() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use: "check", Args: needsPaths,
		RunE: func(c *cobra.Command, paths []string) error { return p.check(c, paths, asJSON) },
	}
	c.Flags().BoolVar(&asJSON, "json", false, "")
	return c
}

// needsPaths refuses a command line without a path.
func needsPaths(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return failing("for this folder: "+c.CommandPath()+" .", "%s needs a file or a folder", c.Name())
	}
	return nil
}

func (p *program) check(c *cobra.Command, paths []string, asJSON bool) error {
	r, err := p.reader()
	if err != nil {
		return err
	}
	if len(paths) == 1 && isBench(paths[0]) {
		return p.checkBench(r, paths[0])
	}
	list := r.list(paths)
	show := showing{r.block, r.pieceBlock}
	if asJSON {
		show = showing{r.line, r.pieceLine}
	}
	var sum tally
	p.start(len(list), "checking")
	defer p.end()
	err = inOrder(c.Context(), len(list), "check writes nothing: give the command again", func(i int) *checkedStone { return r.checkOne(list[i], show) }, func(s *checkedStone) error {
		p.met(statusOf(s.problems))
		sum.add(s)
		if s.err != nil {
			return s.err
		}
		if s.text == "" {
			p.sayProblems(s.file, s.problems)
		}
		p.print("%s", s.text)
		p.step()
		return nil
	})
	p.end()
	if err == nil && len(list) > 1 && !asJSON {
		p.print("%s\n", sum)
	}
	return err
}

// A checkedStone is what check tells of one stone.
type checkedStone struct {
	file     string
	problems stone.Problems
	text     string // for standard output
	err      error
	piece    bool
}

// showing is how check shows a stone and a piece.
type showing struct {
	stone func(*record, *grading.Examined) (string, error)
	piece func(*record, *grading.ExaminedPiece) (string, error)
}

// checkOne reads and examines one stone and words what is known of it.
func (r *reader) checkOne(l listing, show showing) *checkedStone {
	rec := r.read(l)
	if rec.piece != nil {
		return r.checkPiece(rec, show)
	}
	e := r.checked(rec)
	text, err := show.stone(rec, e)
	return &checkedStone{l.file, e.Problems, text, err, false}
}

// checked examines a record and looks at its pictures. Of a record that cannot
// be used only the problems are known.
func (r *reader) checked(rec *record) *grading.Examined {
	if rec.unread() {
		return &grading.Examined{Stone: rec.stone, Problems: rec.problems}
	}
	e := r.examine(rec)
	if !e.Problems.Has(stone.Error) {
		e.Problems = append(e.Problems, r.pictureProblems(rec)...)
		e.Problems = append(e.Problems, rec.bench.unwritten()...)
		e.Problems.Sort()
	}
	return e
}

// line is the object of the contract, on a line of its own.
func (r *reader) line(rec *record, e *grading.Examined) (string, error) {
	line, err := grading.Unread(rec.file, e.Problems)
	if !e.Problems.Has(stone.Error) {
		line, err = e.JSON(r.suggestions(rec, e))
	}
	if err != nil {
		return "", fmt.Errorf("%s: %w", rec.file, err)
	}
	return string(line) + "\n", nil
}

// suggestions are the tests worth doing next with what the bench has.
func (r *reader) suggestions(rec *record, e *grading.Examined) []identify.Suggestion {
	return r.tables.Identifier().Next(identify.Case{Stone: e.Stone, Values: e.Values}, e.Verdict, owned(rec.bench))
}

// isBench reports whether a path is that of a bench file.
func isBench(path string) bool {
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() {
		return false // opening a pipe would wait for somebody to write
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	src, err := slurp(f)
	return err == nil && stone.Sniff(src) == stone.SortBench
}

// checkBench checks a bench file alone.
func (p *program) checkBench(r *reader, path string) error {
	for _, s := range p.find([]string{path}) {
		src, err := s.read()
		if err != nil {
			return err
		}
		if b := r.benches.parse(s.file, "", src); b.usable() {
			p.print("%s: the bench file can be read: %s, %s\n", s.file,
				count(len(b.bench.Examiners), "examiner", "examiners"), count(len(b.bench.Instruments), "instrument", "instruments"))
			for _, q := range b.unwritten() {
				p.met(statusFindings)
				p.print("%s", labelled(string(q.Severity), q.Message.String()))
			}
		}
	}
	return nil
}

// tally counts how the stones of a run came out.
type tally struct{ good, found, unread, pieces int }

func (t *tally) add(s *checkedStone) {
	if s.piece {
		t.pieces++
	}
	switch statusOf(s.problems) {
	case statusGood:
		t.good++
	case statusFindings:
		t.found++
	default:
		t.unread++
	}
}

func (t tally) String() string {
	var parts []string
	if t.good > 0 {
		parts = append(parts, fmt.Sprintf("%d with nothing to mend", t.good))
	}
	if t.found > 0 {
		parts = append(parts, fmt.Sprintf("%d with something to look at", t.found))
	}
	if t.unread > 0 {
		parts = append(parts, fmt.Sprintf("%d that cannot be used", t.unread))
	}
	what := "stone files"
	if t.pieces > 0 {
		what = "files of stones and pieces"
	}
	return fmt.Sprintf("%d %s: %s", t.good+t.found+t.unread, what, strings.Join(parts, ", "))
}
