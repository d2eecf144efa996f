package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"

	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/report/register"
)

// A benchPicture is a picture that the bench file names.
type benchPicture struct {
	jpeg   []byte
	digest register.Digest // of the file
}

// Logo and signature are printed a few centimetres wide.
func benchPictureOptions() photos.Options {
	return photos.Options{Box: photos.Size{Width: 1200, Height: 600}, Quality: 92, MaxBytes: 32 << 20}
}

// letterhead loads logo and signatures.
func (w *workshop) letterhead(b *benchFile) error {
	if b == nil {
		return nil
	}
	type named struct{ path, file string }
	files := []named{{"practice.logo", b.bench.Practice.Logo}}
	for _, id := range slices.Sorted(maps.Keys(b.bench.Examiners)) {
		files = append(files, named{"examiners." + id + ".signature", b.bench.Examiners[id].Signature})
	}
	root, err := os.OpenRoot(b.dir)
	if err != nil {
		return err
	}
	defer root.Close()
	for _, f := range files {
		if f.file == "" {
			continue
		}
		picture, err := photos.Load(root, f.file, benchPictureOptions())
		if err != nil {
			at := b.bench.Position(f.path)
			return failing("it is looked for from the folder of the bench file", "%s:%d:%d: %s: %v", b.file, at.Line, at.Column, f.path, err)
		}
		w.pictures[f.file] = benchPicture{picture.JPEG, picture.SHA256}
	}
	return nil
}

// signer is a person as the letterhead shows one.
type signer struct {
	ID          string          `json:"id"`
	Name        string          `json:"name"`
	Credentials string          `json:"credentials"`
	Signature   register.Digest `json:"signature"`
}

// letterheadDigest is one digest for the practice and for those who answer for
// the stone, with their pictures: a change in it makes another document.
func (w *workshop) letterheadDigest(b *stone.Bench, s *stone.Stone) (register.Digest, error) {
	people := []signer{}
	for _, id := range []string{s.Examiner, s.Authorised} {
		e, ok := b.Examiners[id]
		if ok && !slices.ContainsFunc(people, func(p signer) bool { return p.ID == id }) {
			people = append(people, signer{id, e.Name, e.Credentials, w.pictures[e.Signature].digest})
		}
	}
	src, err := json.Marshal(struct {
		Name, Address, Contact string
		Logo                   register.Digest
		People                 []signer
	}{b.Practice.Name, b.Practice.Address, b.Practice.Contact, w.pictures[b.Practice.Logo].digest, people})
	if err != nil {
		return register.Digest{}, fmt.Errorf("letterhead: %w", err)
	}
	return register.Sum(src), nil
}
