package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/report/register"
)

// contentOf is what decides whether a stone has changed since it was issued:
// its file, its pictures and the letterhead.
func contentOf(rec *record, shop *workshop) (register.Content, error) {
	pictures, err := pictureDigests(rec)
	if err != nil {
		return register.Content{}, err
	}
	for _, set := range rec.set { // a piece has changed where one of its stones has
		of, err := pictureDigests(set)
		if err != nil {
			return register.Content{}, err
		}
		pictures = append(append(pictures, register.Sum(set.src)), of...)
	}
	letterhead, err := shop.letterheadDigest(rec.bench.bench, rec.stone)
	if err != nil {
		return register.Content{}, err
	}
	return register.Content{Stone: register.Sum(rec.src), Photos: register.SumList(pictures...), Letterhead: letterhead}, nil
}

// pictureDigests are the digests of the pictures' files, in the order of the
// stone file.
func pictureDigests(rec *record) ([]register.Digest, error) {
	if len(rec.stone.Photos) == 0 {
		return nil, nil
	}
	root, err := os.OpenRoot(filepath.Dir(rec.file))
	if err != nil {
		return nil, err
	}
	defer root.Close()
	var list []register.Digest
	var errs []error
	for i, p := range rec.stone.Photos {
		info, err := photos.Check(root, p.File, photos.Options{})
		if err != nil {
			errs = append(errs, pictureError(rec, i, err))
		}
		list = append(list, info.SHA256)
	}
	return list, errors.Join(errs...)
}

// pictureError says where in the stone file the picture is named that cannot
// be used.
func pictureError(rec *record, i int, err error) error {
	at := rec.stone.Problem(stone.Error, fmt.Sprintf("photos[%d].file", i), "", "").Where(rec.file)
	return &failure{at + ": " + err.Error(), pictureHint(err), err}
}
