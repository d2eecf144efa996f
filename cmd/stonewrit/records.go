package main

import (
	"fmt"
	"os"
	"stonewrit/grading/phrase"
	"strings"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/photos"
)

// A listing is a stone file that was found and not read yet, with the bench file
// that belongs to it. Of many thousand stones only the listings are kept.
type listing struct {
	source
	bench *benchFile
	same  []string       // the files of its reference, if it is not the only one
	twice stone.Problems // of a piece: stones that another piece has too
}

// A record is a stone file as read, or a piece file with those of its stones.
type record struct {
	listing
	src      []byte
	stone    *stone.Stone   // of a piece what it has in common with a stone
	piece    *stone.Piece   // nil for a stone
	set      []*record      // the stone files that a piece names, in their order
	problems stone.Problems // of reading it
}

// unread reports whether the record is not to be used.
func (r *record) unread() bool { return r.problems.Has(stone.Error) }

// reader reads stone files, with the bench files above them. Reading a listing,
// and examining its record, may be done by several goroutines at once.
type reader struct {
	p       *program
	tables  *grading.Tables
	stones  *stone.Reader
	benches *benches
	photos  *photos.Darkroom
	load    func(*os.Root, string, photos.Options) (photos.Photo, error) // pictures for documents
}

func (p *program) reader() (*reader, error) {
	tables, err := p.tables()
	if err != nil {
		return nil, err
	}
	return &reader{
		p: p, tables: tables, stones: stone.NewReader(tables.Gems), benches: &benches{p, tables.Gems, map[string]*benchFile{}},
		photos: photos.NewDarkroom(photos.DarkroomOptions{Folder: keptPhotos()}), load: photos.Load,
	}, nil
}

// list finds the stone files that the paths lead to, and reads their bench files.
func (r *reader) list(paths []string) []listing {
	var list []listing
	for _, s := range r.p.find(paths) {
		switch s.Sort {
		case stone.SortBench:
			r.p.fail(failing("name a stone file, or the folder", "%s:1:1: a bench file, a stone file was expected", s.file))
		default:
			list = append(list, listing{source: s, bench: r.benches.above(s.file)})
		}
	}
	list = r.setInPieces(list)
	sameReference(list)
	return list
}

// read reads one stone file. The record carries its problems, which are not told
// yet.
func (r *reader) read(l listing) *record {
	out := &record{listing: l}
	var err error
	if out.src, err = l.source.read(); err != nil {
		out.stone, _ = r.stones.Stone(l.file, nil)
		out.problems = stone.Problems{{Severity: stone.Error, Line: 1, Column: 1, Message: phrase.Say("cannot be read: %s", bare(err))}}
		return out
	}
	if l.Sort == stone.SortPiece {
		r.readItems(out)
	} else {
		out.stone, out.problems = r.stones.Stone(l.file, out.src)
	}
	if out.unread() && out.piece == nil && (out.bench == nil || out.bench.usable()) {
		out.problems = append(out.problems, stone.Against(out.stone, out.bench.record(), out.bench.today(r.p.now()))...)
		out.problems.Sort()
	}
	if len(out.same) > 0 {
		key := "stone"
		if out.piece != nil {
			key = "piece"
		}
		out.problems = append(out.problems, out.stone.Problem(stone.Error, key,
			phrase.Say("%s has the reference %s too", others(out.same, out.file), out.Reference), "give each stone a reference of its own"))
		out.problems.Sort()
	}
	if out.bench != nil && !out.bench.usable() {
		out.problems = append(stone.Problems{benchFault(out.bench)}, out.problems...)
	}
	return out
}

// benchFault says that a file cannot be used for its bench file's sake.
func benchFault(bench *benchFile) stone.Problem {
	return stone.Problem{
		Severity: stone.Error, Line: 1, Column: 1,
		Message: phrase.Say("%s, its bench file, has errors", bench.file), Hint: "mend the bench file first",
	}
}

// sameReference notes the stones that share a reference: a reference names one
// stone.
func sameReference(list []listing) {
	files := map[string][]string{}
	for _, l := range list {
		if l.Reference != "" {
			files[l.Reference] = append(files[l.Reference], l.file)
		}
	}
	for i, l := range list {
		if same := files[l.Reference]; len(same) > 1 {
			list[i].same = same
		}
	}
}

// others names the first of the files that are not this one, and counts the rest.
func others(files []string, this string) string {
	const named = 3
	var list []string
	for _, file := range files {
		if file != this && len(list) < named {
			list = append(list, file)
		}
	}
	if more := len(files) - 1 - len(list); more > 0 {
		list = append(list, fmt.Sprintf("%d more", more))
	}
	return strings.Join(list, " and ")
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
