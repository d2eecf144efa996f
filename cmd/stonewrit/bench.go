package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"stonewrit/grading/phrase"
	"strings"
	"time"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// benchName is the name of a bench file, looked for above every stone file.
const benchName = "bench.yaml"

// A benchFile is a bench file as read.
type benchFile struct {
	file     string // as printed
	dir      string // absolute
	bench    *stone.Bench
	problems stone.Problems
	zone     *time.Location
}

// usable reports whether stones may be judged with it.
func (b *benchFile) usable() bool { return b != nil && !b.problems.Has(stone.Error) }

// record is the bench to examine with: nil where there is no bench file.
func (b *benchFile) record() *stone.Bench {
	if b == nil {
		return nil
	}
	return b.bench
}

// today is the calendar day at the practice, as the records write days.
func (b *benchFile) today(now time.Time) time.Time {
	y, m, d := b.local(now).Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// local is the time that the practice's clock shows.
func (b *benchFile) local(now time.Time) time.Time {
	if b == nil || b.zone == nil {
		return now
	}
	return now.In(b.zone)
}

// benches finds the bench file of every stone file, and reads each once.
type benches struct {
	p     *program
	table *gem.Table
	read  map[string]*benchFile // by absolute folder; nil where that folder and those above have none
}

// above finds the nearest bench file in the file's folder or above; nil if
// there is none. A bench file with problems is told once.
func (b *benches) above(file string) *benchFile {
	dir := filepath.Dir(file)
	abs, err := filepath.Abs(dir)
	if err != nil {
		b.p.fail(err)
		return nil
	}
	return b.of(abs, !filepath.IsAbs(file))
}

// of finds the bench file of a folder, nearest first.
func (b *benches) of(dir string, relative bool) *benchFile {
	if known, ok := b.read[dir]; ok {
		return known
	}
	found := b.load(dir, relative)
	if parent := filepath.Dir(dir); found == nil && parent != dir {
		found = b.of(parent, relative)
	}
	b.read[dir] = found
	return found
}

// load reads the bench file of one folder, if it has one.
func (b *benches) load(dir string, relative bool) *benchFile {
	file := filepath.Join(dir, benchName)
	info, err := os.Stat(file)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrPermission) {
		return nil
	}
	printed := file
	if relative {
		printed = fromHere(file)
	}
	if err == nil && !info.Mode().IsRegular() {
		err = notAFile(printed, info)
	}
	if err != nil {
		return b.unreadable(printed, dir, err)
	}
	f, err := os.Open(file)
	if err != nil {
		return b.unreadable(printed, dir, err)
	}
	src, err := slurp(f)
	if err != nil {
		return b.unreadable(printed, dir, err)
	}
	return b.parse(printed, dir, src)
}

// unreadable stands for a bench file that is there and cannot be read.
func (b *benches) unreadable(file, dir string, err error) *benchFile {
	b.p.fail(err)
	return &benchFile{file: file, dir: dir, problems: stone.Problems{{Severity: stone.Error, Line: 1, Column: 1, Message: "cannot be read"}}}
}

// parse reads the record and tells its problems.
func (b *benches) parse(file, dir string, src []byte) *benchFile {
	out := &benchFile{file: file, dir: dir}
	out.bench, out.problems = stone.ReadBench(file, src, b.table)
	if zone := out.bench.TimeZone; zone != "" {
		loaded, err := time.LoadLocation(zone)
		if err != nil {
			at := out.bench.Position("time_zone")
			out.problems = append(out.problems, stone.Problem{
				Severity: stone.Error, Path: "time_zone", Line: at.Line, Column: at.Column,
				Message: phrase.Say("%q is not a time zone", zone), Hint: "write it as Europe/Berlin or America/New_York",
			})
			out.problems.Sort()
		}
		out.zone = loaded
	}
	if out.problems.Has(stone.Error) {
		b.p.met(statusFailed)
	}
	b.p.sayProblems(file, out.problems)
	return out
}

// fromHere is an absolute path as seen from the working folder, or as it is
// where that is not possible.
func fromHere(file string) string {
	here, err := os.Getwd()
	if err != nil {
		return file
	}
	short, err := filepath.Rel(here, file)
	if err != nil {
		return file
	}
	return short
}

// at is the place of a key in the bench file, as printed before a message.
func (b *benchFile) at(path string) string {
	at := b.bench.Position(path)
	return fmt.Sprintf("%s:%d:%d: %s", b.file, at.Line, at.Column, path)
}

// isAddress tells the address of a server from the name of a file.
func isAddress(register string) bool { return strings.Contains(register, "://") }
