package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"

	"stonewrit/report/register"
	"stonewrit/report/seal"
)

// changes says in what the stone, or the piece with its stones, differs from
// what was issued, by the files that travel in the document.
func (i *issuer) changes(ctx context.Context, book *register.Book, before register.Entry, req register.Request, rec *record) ([]change, error) {
	var list []change
	issued, err := issuedFiles(ctx, book, before)
	if err != nil {
		return nil, err
	}
	if before.Content.Stone != req.Content.Stone {
		if list, err = fileChanges(issued[0].Data, rec.src); err != nil {
			return nil, err
		}
	}
	if before.Content.Photos != req.Content.Photos {
		others, err := otherChanges(before, rec, issued[1:])
		if err != nil {
			return nil, err
		}
		list = append(list, others...)
	}
	if before.Content.Letterhead != req.Content.Letterhead {
		list = append(list, change{path: "the letterhead"})
	}
	return list, nil
}

// issuedFiles are the stone file inside the document of an entry or, of a piece,
// the piece file and those of its stones.
func issuedFiles(ctx context.Context, book *register.Book, e register.Entry) ([]seal.File, error) {
	pdf, err := book.Document(ctx, e.Number)
	if err != nil {
		return nil, err
	}
	doc, err := seal.Open(pdf, "")
	if err != nil {
		return nil, fmt.Errorf("%s: %w", e.File, err)
	}
	files := doc.StoneFiles()
	if len(files) == 0 || register.Sum(files[0].Data) != e.Content.Stone {
		return nil, failing("", "%s: the stone file inside is not the one on the register", e.File)
	}
	return files, nil
}

// fileChanges compares two files that differ.
func fileChanges(old, now []byte) ([]change, error) {
	list, err := changesOf(old, now)
	if err == nil && len(list) == 0 {
		list = append(list, change{path: "how the stone file is written, and no field of it"})
	}
	return list, err
}

// otherChanges are those of the pictures and, of a piece, of the files of its
// stones. Of pictures the register holds a digest alone, which stands for all of
// them together; whether they changed can be told where the stones are the same.
func otherChanges(before register.Entry, rec *record, issued []seal.File) ([]change, error) {
	var list []change
	var were [][]byte
	for _, one := range rec.set {
		at := slices.IndexFunc(issued, func(f seal.File) bool { return f.Name == filepath.Base(one.file) })
		if at < 0 {
			break
		}
		was := issued[at].Data
		were, issued = append(were, was), slices.Delete(slices.Clone(issued), at, at+1)
		if register.Sum(was) == register.Sum(one.src) {
			continue
		}
		of, err := fileChanges(was, one.src)
		if err != nil {
			return nil, err
		}
		for _, c := range of {
			list = append(list, change{one.stone.Reference + ", " + c.path, c.old, c.new})
		}
	}
	if len(issued) > 0 || len(were) < len(rec.set) {
		return append(list, change{path: "the stones that are set, or the photos"}), nil
	}
	same, err := picturesDigest(rec, were)
	if err == nil && same != before.Content.Photos {
		list = append(list, change{path: "the photos"})
	}
	return list, err
}
