package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
	"stonewrit/report/register"
)

// firstStone is the reference of the stone file that start writes.
const firstStone = "STONE-1"

// startCommand makes a working folder.
func (p *program) startCommand() *cobra.Command {
	var prefix string
	c := &cobra.Command{
		Use: "start", Args: needsOne("a folder", "for example start gems; for this folder: start ."),
		RunE: func(_ *cobra.Command, words []string) error { return p.makeFolder(words[0], prefix) },
	}
	c.Flags().StringVar(&prefix, "prefix", "SW", "")
	return c
}

// makeFolder makes the folder with a bench file, one stone file and a place for
// pictures. It changes nothing that is there.
func (p *program) makeFolder(dir, prefix string) error {
	number, err := register.NewNumber(prefix, p.now().Year(), 1)
	if err != nil {
		return failing("capital letters and digits, for example --prefix HL", "--prefix %s: %v", prefix, err)
	}
	files, err := p.startFiles(dir, number)
	if err != nil {
		return err
	}
	if err := clash(dir, files); err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Join(dir, "photos"), 0o755); err != nil {
		return err
	}
	for _, f := range files {
		if err := create(f.file, f.src); err != nil {
			return err
		}
		p.print("%s\n", f.file)
	}
	p.note("first write your name and address in %s; then: %s check %s", files[0].file, name, files[1].file)
	return nil
}

// A newFile is a file to be written.
type newFile struct {
	file string
	src  []byte
}

// startFiles are the files of a new working folder.
func (p *program) startFiles(dir string, number register.Number) ([]newFile, error) {
	s := skeleton{
		File: filepath.Join(dir, fileName(firstStone)+".yaml"), Base: fileName(firstStone), Reference: firstStone,
		Kind: stone.ShortNote, Species: assumedSpecies, Today: p.now().Format(time.DateOnly), Examiner: "me",
		Prefix: number.Prefix(), FirstNumber: number.String(),
	}
	bench, err := s.write(benchName)
	if err != nil {
		return nil, err
	}
	first, err := s.write("stone.yaml")
	if err != nil {
		return nil, err
	}
	return []newFile{{filepath.Join(dir, benchName), bench}, {s.File, first}}, nil
}

// clash refuses a folder in which something stands where a file is to go.
func clash(dir string, files []newFile) error {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return failing("choose another name", "%s is a file, not a folder", dir)
	}
	if info, err := os.Stat(filepath.Join(dir, "photos")); err == nil && !info.IsDir() {
		return failing("nothing was changed; choose another folder", "%s is a file, not a folder", filepath.Join(dir, "photos"))
	}
	for _, f := range files {
		if _, err := os.Lstat(f.file); err == nil {
			return failing("nothing was changed; the command new adds a stone to a folder that is in use", "%s is there already", f.file)
		} else if !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}
