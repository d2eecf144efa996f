package main

import (
	"errors"
	"os"
	"path/filepath"
)

// replace writes a file whole or not at all: beside its place first, then
// renamed. A folder that is missing is made; a file that this run reads is
// never written over.
func replace(file string, data []byte, inputs []string) (err error) {
	if info, err := os.Stat(file); err == nil {
		if !info.Mode().IsRegular() {
			return notAFile(file, info)
		}
		for _, input := range inputs {
			if other, err := os.Stat(input); err == nil && os.SameFile(info, other) {
				return failing("choose another folder with --out", "%s is the same file as %s, which is read here", file, input)
			}
		}
	}
	dir := filepath.Dir(file)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, ".draft-*.part")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	if _, err = f.Write(data); err != nil {
		return errors.Join(err, f.Close())
	}
	if err = errors.Join(f.Chmod(0o644), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), file)
}

// inputsOf lists the files that records are read from, and their pictures.
func inputsOf(list []*record) []string {
	var files []string
	for _, rec := range list {
		files = append(files, rec.file)
		for _, p := range rec.stone.Photos {
			files = append(files, filepath.Join(filepath.Dir(rec.file), filepath.FromSlash(p.File)))
		}
		if rec.bench != nil {
			files = append(files, rec.bench.file)
		}
	}
	return files
}
