package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"stonewrit/report"
	"stonewrit/report/pdf"
	"stonewrit/templates"
)

// The folders beside a bench file that replace what the program comes with.
const (
	wordingFolder = "templates"
	fontFolder    = "fonts"
)

// A workshop is what the documents of one bench are made with: wording,
// typeface and letterhead.
type workshop struct {
	wording  *templates.Set
	press    *pdf.Press
	pictures map[string]benchPicture // logo and signatures, by file name
}

// workshops makes a workshop for each bench, when it is first needed. Several
// goroutines may ask for one.
type workshops struct {
	lock sync.Mutex
	made map[*benchFile]func() (*workshop, error)
	told map[*workshopFault]bool
}

func newWorkshops() *workshops {
	return &workshops{made: map[*benchFile]func() (*workshop, error){}, told: map[*workshopFault]bool{}}
}

// A workshopFault says that the workshop of a bench cannot be made.
type workshopFault struct{ cause error }

func (f *workshopFault) Error() string { return f.cause.Error() }

// of is the workshop of a bench; nil stands for no bench file. Its error is a
// *workshopFault, the same one each time.
func (w *workshops) of(b *benchFile) (*workshop, error) {
	w.lock.Lock()
	shop, asked := w.made[b]
	if !asked {
		shop = sync.OnceValues(func() (*workshop, error) {
			made, err := newWorkshop(b)
			if err != nil {
				return nil, &workshopFault{err}
			}
			return made, nil
		})
		w.made[b] = shop
	}
	w.lock.Unlock()
	return shop()
}

// first reports whether the fault was not told yet.
func (w *workshops) first(f *workshopFault) bool {
	if w.told[f] {
		return false
	}
	w.told[f] = true
	return true
}

func newWorkshop(b *benchFile) (*workshop, error) {
	w := &workshop{pictures: map[string]benchPicture{}}
	var err error
	if w.wording, err = wordingOf(b); err != nil {
		return nil, err
	}
	if w.press, err = pressOf(b); err != nil {
		return nil, err
	}
	if err := w.letterhead(b); err != nil {
		return nil, err
	}
	return w, nil
}

// wordingOf loads the built-in wording, with the folder beside the bench file
// laid over it.
func wordingOf(b *benchFile) (*templates.Set, error) {
	folder, err := folderBeside(b, wordingFolder)
	if err != nil || folder == nil {
		return loadedWording(nil, "", err)
	}
	defer folder.Close()
	return loadedWording(folder.FS(), filepath.Join(filepath.Dir(b.file), wordingFolder), nil)
}

func loadedWording(folder fs.FS, name string, err error) (*templates.Set, error) {
	if err != nil {
		return nil, err
	}
	set, err := templates.Load(folder)
	if err != nil && name != "" {
		return nil, within(name, err, "mend the wording in that folder, or move it away to use the built-in one")
	}
	return set, err
}

// within says of an error, or of each of several joined ones, in which folder
// it is.
func within(folder string, err error, hint string) error {
	several, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return &failure{filepath.Join(folder, err.Error()), hint, err}
	}
	var list []error
	for _, one := range several.Unwrap() {
		list = append(list, &failure{filepath.Join(folder, one.Error()), hint, one})
	}
	return errors.Join(list...)
}

// folderBeside opens a folder beside the bench file; nil if there is none.
func folderBeside(b *benchFile, name string) (*os.Root, error) {
	if b == nil {
		return nil, nil
	}
	root, err := os.OpenRoot(filepath.Join(b.dir, name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	return root, err
}

// image is a picture of the letterhead, or nil if none is named.
func (w *workshop) image(file string) *report.Image {
	if p, ok := w.pictures[file]; ok && file != "" {
		return &report.Image{Data: p.jpeg}
	}
	return nil
}
