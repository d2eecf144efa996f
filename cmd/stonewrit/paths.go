package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"stonewrit/grading/stone"
)

// A source is a YAML file that a path of the command line leads to.
type source struct {
	file       string // as printed: the path as typed, with what is below it
	dir, below string // the folder that was searched and the path in it; "" for a file that was named
	stone.Heading
}

// open opens the file: nothing outside of the folder that it was found in is
// reached, whatever became of it since.
func (s source) open() (*os.File, error) {
	if s.dir == "" {
		return os.Open(s.file)
	}
	return os.OpenInRoot(s.dir, s.below)
}

// read reads the whole file.
func (s source) read() ([]byte, error) {
	f, err := s.open()
	if err != nil {
		return nil, err
	}
	return slurp(f)
}

// mostRead is how much of a file is read: more than a record may have, so that
// the reader can say that it is too long.
const mostRead = 16 << 20

// search is one walk over the paths of a command line.
type search struct {
	p       *program
	sources []source
	seen    map[sameness][]fs.FileInfo // files found already, however they are called
	ours    int                        // files of ours met, those found before included
	passed  int                        // YAML that is none of ours
}

// find lists the stone files, piece files and bench files that the paths lead
// to: files as named, folders with their subfolders in name order. What cannot
// be read is told and does not stop the others. Bench files are listed only
// when they are named themselves.
func (p *program) find(paths []string) []source {
	s := &search{p: p, seen: map[sameness][]fs.FileInfo{}}
	for _, path := range paths {
		switch info, err := os.Stat(path); {
		case err != nil:
			p.fail(err)
		case info.IsDir():
			s.folder(path)
		default:
			s.named(path, info)
		}
	}
	switch s.passed {
	case 0:
	case 1:
		p.note("passed over one YAML file without the key stonewrit:")
	default:
		p.note("passed over %d YAML files without the key stonewrit:", s.passed)
	}
	return s.sources
}

// named reads a file that the user named.
func (s *search) named(file string, info fs.FileInfo) {
	if !info.Mode().IsRegular() {
		s.p.fail(notAFile(file, info))
		return
	}
	if s.twice(info) {
		return
	}
	f, err := os.Open(file)
	if err != nil {
		s.p.fail(err)
		return
	}
	src, err := slurp(f)
	if err != nil {
		s.p.fail(err)
		return
	}
	head := stone.Head(src)
	if head.Sort == stone.SortOther {
		s.p.fail(failing(`a stone file starts with "stonewrit: 1"; the command new writes one`, "%s:1:1: not a file of ours: it has no key stonewrit:", file))
		return
	}
	s.sources = append(s.sources, source{file: file, Heading: head})
}

// folder walks a folder. It is opened once, and nothing outside of it is
// reached, whatever its links say.
func (s *search) folder(dir string) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		s.p.fail(err)
		return
	}
	defer root.Close()
	before, status := s.ours, s.p.status
	_ = fs.WalkDir(root.FS(), ".", func(below string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			s.p.fail(fmt.Errorf("%s: %w", filepath.Join(dir, filepath.FromSlash(below)), bare(err)))
			return nil
		case !entry.IsDir() && isYAML(below):
			s.below(root, dir, below)
		}
		return nil
	})
	if s.ours == before && s.p.status == status {
		s.p.fail(failing("the command new writes one", "%s holds no stone file", dir))
	}
}

// below reads a file found in a folder.
func (s *search) below(root *os.Root, dir, below string) {
	file := filepath.Join(dir, filepath.FromSlash(below))
	info, err := root.Stat(below)
	switch {
	case err != nil:
		s.p.fail(outside(file, err))
		return
	case info.IsDir():
		s.p.note("%s links to a folder, which is not followed", file)
		return
	case !info.Mode().IsRegular():
		s.p.fail(notAFile(file, info))
		return
	case s.twice(info):
		return
	}
	f, err := root.Open(below)
	if err != nil {
		s.p.fail(outside(file, err))
		return
	}
	src, err := slurp(f)
	if err != nil {
		s.p.fail(fmt.Errorf("%s: %w", file, bare(err)))
		return
	}
	switch head := stone.Head(src); {
	case head.Sort == stone.SortOther && path.Base(below) != benchName:
		s.passed++
	case head.Sort == stone.SortStone || head.Sort == stone.SortPiece:
		s.ours++
		s.sources = append(s.sources, source{file, dir, below, head})
	}
}

// sameness is what one file has in common with itself under any name: only
// files that agree in it need to be compared.
type sameness struct {
	size    int64
	changed time.Time
}

// twice reports whether the file was found before, by the same or another name.
func (s *search) twice(info fs.FileInfo) bool {
	like := sameness{info.Size(), info.ModTime()}
	if slices.ContainsFunc(s.seen[like], func(other fs.FileInfo) bool { return os.SameFile(info, other) }) {
		s.ours++
		return true
	}
	s.seen[like] = append(s.seen[like], info)
	return false
}

// isYAML tells a YAML file by its name.
func isYAML(name string) bool {
	ext := strings.ToLower(path.Ext(name))
	return ext == ".yaml" || ext == ".yml"
}

func slurp(f *os.File) ([]byte, error) {
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, mostRead))
}

func notAFile(file string, info fs.FileInfo) error {
	kind := "something else"
	switch mode := info.Mode(); {
	case mode&fs.ModeDevice != 0:
		kind = "a device"
	case mode&fs.ModeNamedPipe != 0:
		kind = "a pipe"
	case mode&fs.ModeSocket != 0:
		kind = "a socket"
	}
	return failing("", "%s: %s, not a file", file, kind)
}

// outside words what os.Root refuses.
func outside(file string, err error) error {
	var pathError *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return failing("", "%s: the link leads to nothing", file)
	case errors.As(err, &pathError) && strings.Contains(pathError.Err.Error(), "escapes"):
		return failing("name the file itself, or copy it into the folder", "%s: the link leads out of the folder", file)
	}
	return fmt.Errorf("%s: %w", file, bare(err))
}

// bare is an error of the system without the path that it names.
func bare(err error) error {
	var pathError *fs.PathError
	if errors.As(err, &pathError) {
		return pathError.Err
	}
	return err
}
