package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// replace writes a PDF whole or not at all: beside its place first, then
// renamed, for its owner alone, since it names clients. A folder that is missing
// is made. Only a PDF is written over, so that
// nothing is lost that somebody keeps or links under the name of a document.
func replace(file string, pdf []byte) (err error) {
	if info, err := os.Stat(file); err == nil {
		if err := replaceable(file, info); err != nil {
			return err
		}
	}
	dir := filepath.Dir(file)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, partPrefix+"*"+partEnd)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	if _, err = f.Write(pdf); err != nil {
		return errors.Join(err, f.Close())
	}
	if err = errors.Join(f.Chmod(0o600), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), file)
}

// partPrefix and partEnd are of the name of a file that is being written.
const partPrefix, partEnd = ".draft-", ".part"

// sweepParts removes what runs that were killed have left half written. What is
// younger than an hour may belong to a run that goes on.
func sweepParts(dir string) {
	files, _ := os.ReadDir(dir) // it need not be there
	for _, f := range files {
		if !strings.HasPrefix(f.Name(), partPrefix) || !strings.HasSuffix(f.Name(), partEnd) || !f.Type().IsRegular() {
			continue
		}
		if info, err := f.Info(); err == nil && time.Since(info.ModTime()) > time.Hour {
			_ = os.Remove(filepath.Join(dir, f.Name())) // it harms nobody
		}
	}
}

// replaceable refuses to write over what is no PDF.
func replaceable(file string, info fs.FileInfo) error {
	if !info.Mode().IsRegular() {
		return notAFile(file, info)
	}
	f, err := os.Open(file)
	if err != nil {
		return err
	}
	defer f.Close()
	start := make([]byte, len(pdfStart))
	if _, err := io.ReadFull(f, start); err != nil || string(start) != pdfStart {
		return failing("choose another folder with --out, or move that file away", "%s is there already and is no PDF", file)
	}
	return nil
}

// pdfStart begins every PDF (ISO 32000-1, 7.5.2).
const pdfStart = "%PDF-"
