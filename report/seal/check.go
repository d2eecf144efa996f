package seal

import (
	"fmt"
	"path"
	"slices"
	"strings"
)

// The files that travel inside are told apart by the ends of their names.
func isStoneFile(name string) bool {
	ext := strings.ToLower(path.Ext(name))
	return ext == ".yaml" || ext == ".yml"
}

func isExaminedStone(name string) bool { return path.Ext(name) == ".json" }

// StoneFile is the stone file inside, of a piece the piece file; nil if there is
// none.
func (d *Document) StoneFile() *File { return d.file(isStoneFile) }

// StoneFiles are the stone file inside or, of a piece, the piece file and the
// files of its stones.
func (d *Document) StoneFiles() []File {
	return slices.DeleteFunc(slices.Clone(d.Files), func(f File) bool { return !isStoneFile(f.Name) })
}

// ExaminedStone is the JSON of the examined stone inside; nil if there is none.
func (d *Document) ExaminedStone() *File { return d.file(isExaminedStone) }

func (d *Document) file(is func(name string) bool) *File {
	for i := range d.Files {
		if is(d.Files[i].Name) {
			return &d.Files[i]
		}
	}
	return nil
}

// Check compares the parts of the document with one another and returns what
// does not fit, a sentence each without capital and full stop. Without
// findings the document is of one piece, which is not to say that it is the
// one issued.
func (d *Document) Check() []string {
	var found []string
	add := func(format string, args ...any) { found = append(found, fmt.Sprintf(format, args...)) }
	d.checkFile(add, "the stone file", d.StoneFile(), d.Stone)
	d.checkFile(add, "the JSON of the examined stone", d.ExaminedStone(), d.Examined)
	d.checkStones(add)
	for i := range d.Files {
		if f := &d.Files[i]; f != d.ExaminedStone() && !isStoneFile(f.Name) {
			add("it holds a file that is not due, %s", f.Name)
		}
	}
	d.checkPrint(add)
	for i, s := range d.Signatures {
		switch {
		case s.Err != nil:
			add("signature %d, of %s: %v", i+1, s.Subject, s.Err)
		case !s.Whole && i == len(d.Signatures)-1:
			add("something was added to the file after %s had signed it", s.Subject)
		}
	}
	if d.revisions > 1+len(d.Signatures) && !d.Locked {
		add("something was added to the file after it was made")
	}
	return found
}

// Unchecked returns what [Document.Check] leaves out because the document does not
// say what its parts were when it was made, a sentence each without capital and
// full stop. Versions of the program before these digests did not write them.
// Leaving one out proves nothing of the document, for good or bad: whoever changes
// a part could change its digest too.
func (d *Document) Unchecked() []string {
	var left []string
	if d.Shown == "" {
		left = append(left, "its pages cannot be compared with what they showed when it was made")
	}
	if d.stonesUntold() {
		left = append(left, "the files of its stones cannot be compared with their digests")
	}
	return left
}

// stonesUntold reports whether it is a piece's of a version that wrote no digests
// of the stones' files. All that write them write Shown too.
func (d *Document) stonesUntold() bool {
	return d.Shown == "" && len(d.Stones) == 0 && len(d.StoneFiles()) > 1
}

// checkStones compares the files of a piece's stones, which travel behind that of
// the piece.
func (d *Document) checkStones(add func(string, ...any)) {
	if d.stonesUntold() {
		return
	}
	files := d.StoneFiles()
	if len(files) > 0 {
		files = files[1:]
	}
	if len(files) != len(d.Stones) {
		add("it holds %d files of a piece's stones; by its metadata it should hold %d", len(files), len(d.Stones))
		return
	}
	for i := range files {
		d.checkFile(add, "the file of a stone", &files[i], d.Stones[i])
	}
}

func (d *Document) checkFile(add func(string, ...any), what string, f *File, digest string) {
	switch {
	case f == nil && digest != "":
		add("%s is missing from it", what)
	case f != nil && digest != "" && hexadecimal(Sum(f.Data)) != digest:
		add("%s inside it, %s, is another than its metadata say", what, f.Name)
	}
}

// checkPrint looks for number, UUID and digest on the pages.
func (d *Document) checkPrint(add func(string, ...any)) {
	for n, page := range d.Pages {
		switch on := Numbers(page); {
		case len(on) == 0:
			add("page %d prints no number; by its metadata it is %s", n+1, d.Number)
		case !slices.Contains(on, d.Number):
			add("page %d prints the number %s; by its metadata it is %s", n+1, on[0], d.Number)
		}
	}
	all := strings.ReplaceAll(strings.Join(d.Pages, ""), "\n", "") // digests go over several lines
	if len(d.Pages) == 0 {
		add("it has no page")
		return
	}
	if d.Shown != "" && d.Shown != hexadecimal(d.shown) {
		add("its pages show something else than when it was made")
	}
	if d.UUID == "" || !strings.Contains(all, d.UUID) {
		add("the UUID of its metadata, %q, is not in its print", d.UUID)
	}
	if d.Stone != "" && !strings.Contains(all, d.Stone) {
		add("the digest of the stone file is not in its print")
	}
}
