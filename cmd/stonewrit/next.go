package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
)

// nextCommand tells which test is worth doing next.
func (p *program) nextCommand() *cobra.Command {
	return &cobra.Command{
		Use: "next", Args: needsPaths,
		RunE: func(_ *cobra.Command, paths []string) error {
			r, err := p.reader()
			if err != nil {
				return err
			}
			stones := r.judged(paths)
			if len(paths) == 1 && !isFolder(paths[0]) {
				for _, s := range stones {
					p.nextForStone(r, s)
				}
				return nil
			}
			p.nextForAll(r, stones)
			return nil
		},
	}
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// A judgedStone is a stone that was read and examined.
type judgedStone struct {
	*record
	*grading.Examined
}

func (j judgedStone) at() identify.Case {
	return identify.Case{Stone: j.Examined.Stone, Values: j.Values}
}

// judged reads and examines what can be, and tells the rest.
func (r *reader) judged(paths []string) []judgedStone {
	var list []judgedStone
	for _, rec := range r.stonesOf(paths) {
		problems := rec.problems
		if !rec.unread() {
			e := r.examine(rec)
			if problems = e.Problems; !problems.Has(stone.Error) {
				list = append(list, judgedStone{rec, e})
				continue
			}
		}
		r.p.met(statusFailed)
		r.p.sayProblems(rec.file, problems)
	}
	return list
}

// nextForStone lists the tests for one stone: those of the bench first.
func (p *program) nextForStone(r *reader, j judgedStone) {
	e := j.Examined
	p.print("%s  %s: %s, %s\n", oneLine(e.Stone.Reference), j.file, oneLine(e.Verdict.Species.Opinion), e.Verdict.Species.Standing)
	p.print("%s", labelled("rivals", rivalsText(e)))
	if reason := nothingToSettle(e); reason != "" {
		p.print("%s", labelled("next", reason))
		return
	}
	here := r.tables.Identifier().Next(j.at(), e.Verdict, owned(j.bench))
	all := r.tables.Identifier().Next(j.at(), e.Verdict, nil)
	label := "next"
	for _, s := range here {
		p.print("%s", suggestionLines(label, s, len(e.Verdict.Rivals)))
		label = "or"
	}
	if len(here) == 0 {
		p.print("%s", labelled(label, "no test left that the bench can do tells them apart"))
	}
	label = "not here"
	for _, s := range all {
		if !suggested(here, s.Test) {
			p.print("%s", suggestionLines(label, s, len(e.Verdict.Rivals)))
			label = ""
		}
	}
}

// nothingToSettle says why no test is suggested; "" where one may be.
func nothingToSettle(e *grading.Examined) string {
	switch {
	case e.Verdict.Species.Standing == identify.Contradicted:
		return "the opinion is contradicted: mend it, or repeat the tests that speak against it"
	case len(e.Stone.Tests) == 0:
		return "nothing was tested yet: begin with the refractometer, or with weighing in water"
	case len(e.Verdict.Rivals) == 0:
		return "no rival is left to tell it from"
	}
	return ""
}

func suggested(list []identify.Suggestion, test string) bool {
	for _, s := range list {
		if s.Test == test {
			return true
		}
	}
	return false
}

// suggestionLines tell a test, what it would exclude and what to beware of.
func suggestionLines(label string, s identify.Suggestion, rivals int) string {
	text := labelled(label, s.Test)
	if len(s.Excludes) > 0 {
		text += labelled("", fmt.Sprintf("would exclude %d of %d: %s", len(s.Excludes), rivals, some(s.Excludes, mostRivals)))
	} else {
		text += labelled("", "would exclude none if the opinion is right, and the opinion itself if one of the rivals is")
	}
	if s.Caution != "" {
		text += labelled("", "beware: "+s.Caution.String())
	}
	return text
}
