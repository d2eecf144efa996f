package main

import (
	"context"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
	"stonewrit/photos"
	lists "stonewrit/report/export"
)

// inventoryFlags are the flags of inventory.
type inventoryFlags struct {
	csv, xlsx, json         bool
	out                     string
	force                   bool
	species, location, kind string
	undecided               bool
	olderThan               string
}

// inventoryCommand lists a collection.
func (p *program) inventoryCommand() *cobra.Command {
	var f inventoryFlags
	c := &cobra.Command{
		Use: "inventory", Args: needsPaths,
		RunE: func(c *cobra.Command, paths []string) error { return p.inventory(c.Context(), paths, f) },
	}
	c.Flags().BoolVar(&f.csv, "csv", false, "")
	c.Flags().BoolVar(&f.xlsx, "xlsx", false, "")
	c.Flags().BoolVar(&f.json, "json", false, "")
	c.Flags().StringVar(&f.out, "out", "", "")
	c.Flags().BoolVar(&f.force, "force", false, "")
	c.Flags().StringVar(&f.species, "species", "", "")
	c.Flags().StringVar(&f.location, "location", "", "")
	c.Flags().StringVar(&f.kind, "kind", "", "")
	c.Flags().BoolVar(&f.undecided, "undecided", false, "")
	c.Flags().StringVar(&f.olderThan, "older-than", "3 years", "")
	return c
}

func (p *program) inventory(ctx context.Context, paths []string, f inventoryFlags) error {
	r, err := p.reader()
	if err != nil {
		return err
	}
	defer collectLess()() // also while the list is made
	v := &inventory{p: p, r: r}
	if v.limits.Values, err = lists.ParseAge(f.olderThan); err != nil {
		return failing(`for example --older-than "18 months"; none for no limit`, "--older-than %s: %v", f.olderThan, err)
	}
	if v.filter, err = r.filter(f); err != nil {
		return err
	}
	outputs, err := v.outputs(f)
	if err != nil {
		return err
	}
	if err := v.gather(ctx, r.list(paths), slices.ContainsFunc(outputs, func(o output) bool { return o.pictures })); err != nil {
		return err
	}
	for _, o := range outputs {
		if err := v.write(o, f.force); err != nil {
			p.fail(err)
		}
	}
	return nil
}

// filter is what the flags ask for.
func (r *reader) filter(f inventoryFlags) (lists.Filter, error) {
	filter := lists.Filter{Gems: r.tables.Gems, Location: f.location, Document: f.kind, Undecided: f.undecided}
	kinds := []string{stone.Appraisal, stone.ShortNote, stone.Record}
	if f.kind != "" && !slices.Contains(kinds, f.kind) {
		return filter, unknownWord("--kind %s is no kind of document", f.kind, kinds, listed(kinds))
	}
	if f.species == "" {
		return filter, nil
	}
	var err error
	if filter.Material, err = r.tables.Gems.Find(f.species); err != nil {
		return filter, nameError(err)
	}
	return filter, nil
}

// An inventory is a collection in the making.
type inventory struct {
	p      *program
	r      *reader
	bench  *benchFile // whose practice it is
	limits lists.Limits
	filter lists.Filter
	items  []lists.Item
	left   []string // files that could not be used
}

// gather examines the collection, and keeps what passes the filter.
func (v *inventory) gather(ctx context.Context, list []listing, pictures bool) error {
	if len(list) > 0 {
		v.bench = list[0].bench
	}
	v.limits.Today = v.bench.today(v.p.now())
	v.p.start(len(list), "listing")
	defer v.p.end()
	return inOrder(ctx, len(list), "no list was written: give the command again", func(i int) *listedFile { return v.list(v.r.read(list[i]), pictures) }, func(l *listedFile) error {
		if l.problems.Has(stone.Error) {
			v.p.met(statusFailed)
			v.p.sayProblems(l.file, l.problems)
			v.left = append(v.left, l.file)
		}
		for _, item := range l.items {
			if v.filter.Keeps(item) {
				v.items = append(v.items, item)
			}
		}
		v.p.step()
		return nil
	})
}

// A listedFile is what one file adds to the list: a stone, or a piece with the
// stones that are set in it.
type listedFile struct {
	file     string
	items    []lists.Item // none where the file cannot be used
	problems stone.Problems
}

// list makes the items of a file.
func (v *inventory) list(rec *record, pictures bool) *listedFile {
	out := &listedFile{file: rec.file, problems: rec.problems}
	add := func(file string, item lists.Item) {
		item.File = file
		if pictures {
			item.Thumbnail = v.r.thumbnail(file, item.Picture)
		}
		out.items = append(out.items, item)
	}
	if rec.piece == nil || rec.unread() {
		e := v.r.checked(rec)
		if out.problems = e.Problems; !e.Problems.Has(stone.Error) {
			add(rec.file, lists.Stone(e, nil, v.limits))
		}
		return out
	}
	e := v.r.checkedPiece(rec, rec.piece, func(file string) string { return file })
	if out.problems = e.Problems; e.Problems.Has(stone.Error) {
		return out
	}
	add(rec.file, lists.Piece(e, v.limits))
	set := rec.set
	for _, i := range e.Items {
		if !i.Counted && len(set) > 0 {
			add(set[0].file, lists.Stone(i.Stone, rec.piece, v.limits))
			set = set[1:]
		}
	}
	return out
}

// thumbnailOptions are for a picture as wide as a thumb, at some 200 dots an
// inch.
func thumbnailOptions() photos.Options {
	return photos.Options{Box: photos.Size{Width: 128, Height: 104}, Quality: 80}
}

// thumbnail is the small picture of an item; nil where there is none, or none
// that can be used, which check tells.
func (r *reader) thumbnail(file, picture string) []byte {
	if picture == "" {
		return nil
	}
	root, err := os.OpenRoot(filepath.Dir(file))
	if err != nil {
		return nil
	}
	defer root.Close()
	photo, err := r.photos.Load(root, picture, thumbnailOptions())
	if err != nil {
		return nil
	}
	return photo.JPEG
}
