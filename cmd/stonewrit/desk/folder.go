package desk

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading/stone"
)

// benchName is the name of a bench file.
const benchName = "bench.yaml"

// mostFile is how much of a file is read: more than a record may have, so that
// the reader can say that it is too long.
const mostFile = 2 << 20

// Errors that handlers tell apart.
var (
	errOutside = errors.New("not a file of this folder")
	errChanged = errors.New("the file was changed elsewhere")
)

// read reads a file of the folder. Whatever the path and its links say, nothing
// outside is reached.
func (d *Desk) read(name string) ([]byte, error) {
	if !filepath.IsLocal(filepath.FromSlash(name)) || name != path.Clean(name) {
		return nil, errOutside
	}
	info, err := d.root.Stat(filepath.FromSlash(name))
	if err != nil || !info.Mode().IsRegular() {
		return nil, errOutside
	}
	f, err := d.root.Open(filepath.FromSlash(name))
	if err != nil {
		return nil, errOutside
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, mostFile))
}

// readStone reads a stone file or a piece file, and no other sort.
func (d *Desk) readStone(name string) ([]byte, error) {
	if !isYAML(name) {
		return nil, errOutside
	}
	src, err := d.read(name)
	if err != nil {
		return nil, err
	}
	if sort := stone.Sniff(src); sort != stone.SortStone && sort != stone.SortPiece {
		return nil, errOutside
	}
	return src, nil
}

// formOf is the form of the sort of file that a text is.
func (d *Desk) formOf(src []byte) *form.Form {
	switch stone.Sniff(src) {
	case stone.SortPiece:
		return d.piece
	case stone.SortBench:
		return d.bench
	}
	return d.stone
}

func isYAML(name string) bool {
	ext := strings.ToLower(path.Ext(name))
	return ext == ".yaml" || ext == ".yml"
}

// digest tells one state of a file from any other.
func digest(src []byte) string {
	sum := sha256.Sum256(src)
	return hex.EncodeToString(sum[:16])
}

// write replaces a file if it still is in the state that was: the new text is
// written beside it, brought to the disk and put in its place in one step, so
// that whatever happens the file is the old or the new one. It returns
// errChanged if the file is in another state.
func (d *Desk) write(name, was string, src []byte) error {
	d.writing.Lock()
	defer d.writing.Unlock()
	have, err := d.read(name)
	if err != nil {
		return err
	}
	if digest(have) != was {
		return errChanged
	}
	if bytes.Equal(have, src) {
		return nil
	}
	return d.replace(name, src)
}

func (d *Desk) replace(name string, src []byte) error {
	local := filepath.FromSlash(name)
	mode := fs.FileMode(0o644)
	if info, err := d.root.Stat(local); err == nil {
		mode = info.Mode().Perm()
	}
	beside, err := d.beside(local, src, mode)
	if err != nil {
		return err
	}
	if err := d.root.Rename(beside, local); err != nil {
		return errors.Join(err, d.root.Remove(beside))
	}
	d.syncFolder(filepath.Dir(local))
	return nil
}

// beside writes a file next to another, under a name that no search for stone
// files finds.
func (d *Desk) beside(local string, src []byte, mode fs.FileMode) (string, error) {
	for i := range 100 {
		name := filepath.Join(filepath.Dir(local), fmt.Sprintf(".%s.%d.part", filepath.Base(local), i))
		f, err := d.root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		_, err = f.Write(src)
		if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
			return "", errors.Join(err, d.root.Remove(name))
		}
		return name, nil
	}
	return "", fmt.Errorf("there are a hundred unfinished files beside %s", local)
}

// syncFolder brings the change of a name to the disk, where the system can.
func (d *Desk) syncFolder(dir string) {
	f, err := d.root.Open(dir)
	if err != nil {
		return
	}
	defer f.Close()
	_ = f.Sync() // not every system can; the rename itself is whole
}
