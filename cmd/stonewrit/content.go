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
	var set [][]byte
	for _, one := range rec.set {
		set = append(set, one.src)
	}
	pictures, err := picturesDigest(rec, set)
	if err != nil {
		return register.Content{}, err
	}
	letterhead, err := shop.letterheadDigest(rec.bench.bench, rec.stone)
	if err != nil {
		return register.Content{}, err
	}
	return register.Content{Stone: register.Sum(rec.src), Photos: pictures, Letterhead: letterhead}, nil
}

// picturesDigest is the digest of the pictures of a stone; of a piece, that of
// its own and of the files and pictures of its stones, since a piece has changed
// where one of its stones has. set are those files.
func picturesDigest(rec *record, set [][]byte) (register.Digest, error) {
	list, err := pictureDigests(rec)
	if err != nil {
		return register.Digest{}, err
	}
	for i, one := range rec.set {
		of, err := pictureDigests(one)
		if err != nil {
			return register.Digest{}, err
		}
		list = append(append(list, register.Sum(set[i])), of...)
	}
	return register.SumList(list...), nil
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
