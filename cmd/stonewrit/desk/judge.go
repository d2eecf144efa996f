package desk

import (
	"errors"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
)

// benchRecord is the bench file that counts for a stone.
type benchRecord struct {
	Name     string // below the folder, or the name of the outer one
	Src      []byte
	Bench    *stone.Bench
	Problems stone.Problems
	Outer    bool
	zone     *time.Location
}

// usable reports whether stones may be judged with it.
func (b *benchRecord) usable() bool { return b == nil || !b.Problems.Has(stone.Error) }

// record is the bench to examine with; nil where there is no bench file.
func (b *benchRecord) record() *stone.Bench {
	if b == nil {
		return nil
	}
	return b.Bench
}

// kinds lists the kinds of instrument that the bench has; nil asks for all.
func (b *benchRecord) kinds() []string {
	if b == nil {
		return nil
	}
	kinds := []string{}
	for _, id := range slices.Sorted(maps.Keys(b.Bench.Instruments)) {
		if in := b.Bench.Instruments[id]; (in.Owned == nil || *in.Owned) && !slices.Contains(kinds, in.Kind) {
			kinds = append(kinds, in.Kind)
		}
	}
	return kinds
}

// today is the calendar day at the practice.
func (d *Desk) today(b *benchRecord) time.Time {
	now := d.o.Now()
	if b != nil && b.zone != nil {
		now = now.In(b.zone)
	}
	y, m, day := now.Date()
	return time.Date(y, m, day, 0, 0, 0, 0, time.UTC)
}

// benchFor finds the bench file nearest above a stone file.
func (d *Desk) benchFor(file string) *benchRecord {
	for dir := path.Dir(file); ; dir = path.Dir(dir) {
		name := path.Join(dir, benchName)
		if src, err := d.read(name); err == nil {
			return d.parseBench(name, src, false)
		}
		if dir == "." || dir == "/" {
			break
		}
	}
	if d.o.Outer != nil {
		return d.parseBench(d.o.OuterName, d.o.Outer, true)
	}
	return nil
}

// benchTexts are bench files as read, by their text: a folder of stones has one
// bench file, which need not be read for each of them.
type benchTexts struct {
	mu   sync.Mutex
	read map[string]*benchRecord
}

// mostBenches is how many states of bench files are kept.
const mostBenches = 32

// parseBench reads a bench file. What it returns is shared, and not changed.
func (d *Desk) parseBench(name string, src []byte, outer bool) *benchRecord {
	state := name + " " + digest(src)
	d.benches.mu.Lock()
	defer d.benches.mu.Unlock()
	if known := d.benches.read[state]; known != nil {
		return known
	}
	if d.benches.read == nil || len(d.benches.read) >= mostBenches {
		d.benches.read = map[string]*benchRecord{}
	}
	b := d.readBench(name, src, outer)
	d.benches.read[state] = b
	return b
}

func (d *Desk) readBench(name string, src []byte, outer bool) *benchRecord {
	b := &benchRecord{Name: name, Src: src, Outer: outer}
	b.Bench, b.Problems = stone.ReadBench(name, src, d.o.Tables.Gems)
	if b.Bench.TimeZone != "" {
		var err error
		if b.zone, err = time.LoadLocation(b.Bench.TimeZone); err != nil {
			at := b.Bench.Position("time_zone")
			b.Problems = append(b.Problems, stone.Problem{Severity: stone.Error, Path: "time_zone", Line: at.Line, Column: at.Column,
				Message: "this is not a time zone", Hint: "write it as Europe/Berlin"})
		}
	}
	return b
}

// A judged stone is a file with all that follows from it.
type judged struct {
	File     string
	Src      []byte
	Stone    *stone.Stone // of a piece what it has in common with a stone
	Bench    *benchRecord
	Examined *grading.Examined      // nil of a piece, and of a file that cannot be used
	Piece    *grading.ExaminedPiece // nil of a stone, and of a file that cannot be used
	Set      []*judged              // the stones that a piece names
	Problems stone.Problems
	sort     string
}

// unread reports whether the file cannot be used.
func (j *judged) unread() bool { return j.Examined == nil && j.Piece == nil }

// stops counts what keeps the file from being issued.
func (j *judged) stops() int {
	n := 0
	for _, p := range j.Problems {
		if p.Severity == stone.Error || p.Severity == stone.Missing {
			n++
		}
	}
	if e := j.Examined; e != nil && e.Contradicted() && strings.TrimSpace(e.Stone.Explanation) == "" {
		n++
	}
	return n
}

// benchProblems say that nothing can be judged for the bench file's sake.
func benchProblems() stone.Problems {
	return stone.Problems{{Severity: stone.Error, Line: 1, Column: 1, Message: "the bench file has errors", Hint: "mend it first: see bench"}}
}

// judge reads and examines the text of a stone file or a piece file.
func (d *Desk) judge(file string, src []byte, bench *benchRecord) *judged {
	if stone.Sniff(src) == stone.SortPiece {
		return d.judgePiece(file, src, bench)
	}
	j := &judged{File: file, Src: src, Bench: bench, sort: stone.SortStone}
	j.Stone, j.Problems = stone.Read(path.Base(file), src, d.o.Tables.Gems)
	switch {
	case !bench.usable():
		j.Problems = append(benchProblems(), j.Problems...)
		return j
	case j.Problems.Has(stone.Error):
		return j
	}
	e := d.o.Tables.Examine(j.Stone, bench.record(), d.today(bench))
	j.Problems = append(j.Problems, e.Problems...)
	if !j.Problems.Has(stone.Error) {
		j.Examined = e
		j.Problems = append(j.Problems, d.pictureProblems(j)...)
	}
	j.Problems.Sort()
	return j
}

// next are the tests worth doing next with what the bench has.
func (d *Desk) next(j *judged) []identify.Suggestion {
	e := j.Examined
	return d.o.Tables.Identifier().Next(identify.Case{Stone: e.Stone, Values: e.Values}, e.Verdict, j.Bench.kinds())
}

// brief takes out of a contradiction what the standing of its claim tells test
// by test.
func brief(p stone.Problem) stone.Problem {
	if p.Statement == grading.Contradiction {
		p.Message = p.Message.First()
	}
	return p
}

// isChanged tells the one error that a second try can mend.
func isChanged(err error) bool { return errors.Is(err, errChanged) }
