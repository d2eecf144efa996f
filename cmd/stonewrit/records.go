package main

import (
	"fmt"
	"strings"

	"stonewrit/grading"
	"stonewrit/grading/stone"
)

// A record is a stone file as read, with the bench file that belongs to it.
type record struct {
	source
	stone    *stone.Stone
	bench    *benchFile
	problems stone.Problems // of reading it
}

// unread reports whether the record is not to be used.
func (r *record) unread() bool { return r.problems.Has(stone.Error) }

// reader reads stone files, with the bench files above them.
type reader struct {
	p       *program
	tables  *grading.Tables
	benches *benches
}

func (p *program) reader() (*reader, error) {
	tables, err := p.tables()
	if err != nil {
		return nil, err
	}
	return &reader{p, tables, &benches{p, tables.Gems, map[string]*benchFile{}}}, nil
}

// records reads the stone files that the paths lead to. Each record carries its
// own problems, which are not told yet.
func (r *reader) records(paths []string) []*record {
	var list []*record
	for _, s := range r.p.find(paths) {
		switch s.sort {
		case stone.SortBench:
			r.p.fail(failing("name a stone file, or the folder", "%s:1:1: a bench file, a stone file was expected", s.file))
		case stone.SortPiece:
			r.p.fail(failing("give each stone a file of its own until then", "%s:1:1: a piece file, which this version cannot read yet", s.file))
		default:
			list = append(list, r.read(s))
		}
	}
	sameReference(list)
	return list
}

// read reads one stone file.
func (r *reader) read(s source) *record {
	out := &record{source: s, bench: r.benches.above(s.file)}
	out.stone, out.problems = stone.Read(s.file, s.src, r.tables.Gems)
	if out.unread() && (out.bench == nil || out.bench.usable()) {
		out.problems = append(out.problems, stone.Against(out.stone, out.bench.record(), out.bench.today(r.p.now()))...)
		out.problems.Sort()
	}
	if out.bench != nil && !out.bench.usable() {
		out.problems = append(stone.Problems{{
			Severity: stone.Error, Line: 1, Column: 1,
			Message: out.bench.file + ", its bench file, has errors", Hint: "mend the bench file first",
		}}, out.problems...)
	}
	return out
}

// sameReference adds an error to stones that share one reference: a reference
// names one stone.
func sameReference(list []*record) {
	files := map[string][]*record{}
	for _, r := range list {
		if r.stone.Reference != "" {
			files[r.stone.Reference] = append(files[r.stone.Reference], r)
		}
	}
	for _, r := range list {
		var others []string
		for _, other := range files[r.stone.Reference] {
			if other != r {
				others = append(others, other.file)
			}
		}
		if len(others) > 0 {
			r.problems = append(r.problems, r.stone.Problem(stone.Error, "stone",
				fmt.Sprintf("%s has the reference %s too", strings.Join(others, " and "), r.stone.Reference), "give each stone a reference of its own"))
			r.problems.Sort()
		}
	}
}

// examine examines a record that was read without errors. What reading it had
// to say is among the problems.
func (r *reader) examine(rec *record) *grading.Examined {
	e := r.tables.Examine(rec.stone, rec.bench.record(), rec.bench.today(r.p.now()))
	e.Problems = append(e.Problems, rec.problems...)
	e.Problems.Sort()
	return e
}

// statusOf is the exit status that the problems of a stone come to.
func statusOf(problems stone.Problems) int {
	switch {
	case problems.Has(stone.Error):
		return statusFailed
	case problems.Has(stone.Finding), problems.Has(stone.Missing):
		return statusFindings
	}
	return statusGood
}
