package register

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
)

const (
	pdfSuffix  = ".pdf"
	partSuffix = ".part" // of a file that is being written
)

// An outlet is the folder into which PDFs go. Names are looked up inside it
// alone, so a link cannot lead a write elsewhere.
type outlet struct {
	root   *os.Root
	folder string
}

// makeOutlet opens a folder and makes it if there is none.
func makeOutlet(folder string) (*outlet, error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, err
	}
	return openOutlet(folder)
}

func openOutlet(folder string) (*outlet, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	return &outlet{root: root, folder: folder}, nil
}

func (o *outlet) close() { o.root.Close() }

// stage writes data under the temporary name of a PDF and syncs it, in place
// of what an interrupted run may have left there. After an error there is no
// such file.
func (o *outlet) stage(name string, data []byte) (err error) {
	temp := partName(name)
	if err := o.discard(name); err != nil {
		return err
	}
	f, err := o.root.OpenFile(temp, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		o.root.Remove(temp)
	}
	return err
}

// discard removes the temporary file of a PDF, if there is one.
func (o *outlet) discard(name string) error {
	err := o.root.Remove(partName(name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// place gives a staged PDF its name, unless that is taken (fs.ErrExist), and
// syncs the folder.
func (o *outlet) place(name string) error {
	err := o.root.Link(partName(name), name)
	switch {
	case err == nil:
		err = o.discard(name)
	case !errors.Is(err, fs.ErrExist):
		err = o.rename(name) // a file system without hard links
	}
	if err != nil {
		return err
	}
	return o.sync()
}

// rename gives a staged PDF its name where there are no hard links. It looks
// first, which leaves a moment in which another program may take the name.
func (o *outlet) rename(name string) error {
	if _, err := o.root.Lstat(name); err == nil {
		return fs.ErrExist
	}
	return o.root.Rename(partName(name), name)
}

func (o *outlet) sync() error {
	if runtime.GOOS == "windows" {
		return nil // a folder cannot be opened for syncing there
	}
	d, err := o.root.Open(".")
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}

// deliver puts an entry's PDF in its place, unless it is there already.
// written reports whether it had to. It returns a [FileError] if something
// else is there. The caller holds the write transaction of the book, so that
// nobody else is at work on the same temporary name.
func (o *outlet) deliver(e Entry, pdf []byte) (written bool, err error) {
	there, err := o.holds(e)
	if err != nil {
		return false, err
	}
	if there {
		return false, o.discard(e.File)
	}
	if got, err := o.sum(partName(e.File)); err != nil || got != e.PDF {
		if err := o.stage(e.File, pdf); err != nil {
			return false, err
		}
	}
	if err := o.place(e.File); err != nil {
		return false, err
	}
	return true, nil
}

// holds reports whether the entry's PDF is in its place, and a [FileError] if
// something else is.
func (o *outlet) holds(e Entry) (bool, error) {
	other := func(format string, args ...any) error {
		return &FileError{Number: e.Number, Path: o.path(e.File), Detail: fmt.Sprintf(format, args...)}
	}
	info, err := o.root.Lstat(e.File)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, err
	case !info.Mode().IsRegular():
		return false, other("it is no ordinary file")
	case info.Size() != e.Size && e.Size > 0:
		return false, other("it has %d bytes, not %d", info.Size(), e.Size)
	}
	got, err := o.sum(e.File)
	if err != nil {
		return false, err
	}
	if got != e.PDF {
		return false, other("its SHA-256 is %s, not %s", got, e.PDF)
	}
	return true, nil
}

func (o *outlet) sum(name string) (Digest, error) {
	f, err := o.root.Open(name)
	if err != nil {
		return Digest{}, err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return Digest{}, err
	}
	return Digest(h.Sum(nil)), nil
}

func (o *outlet) path(name string) string { return filepath.Join(o.folder, name) }

// partName returns the temporary name of a PDF.
func partName(name string) string { return "." + name + partSuffix }

// isPart reports whether a file name is a temporary name of ours.
func isPart(name string) bool {
	rest, dotted := strings.CutPrefix(name, ".")
	rest, part := strings.CutSuffix(rest, pdfSuffix+partSuffix)
	_, err := ParseNumber(rest)
	return dotted && part && err == nil
}
