package main

import (
	"errors"
	"os"
	"path/filepath"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/report"
	"stonewrit/report/register"
)

// A manuscript is a stone with all that its document is made of, before number
// and date.
type manuscript struct {
	rec   *record
	shop  *workshop
	input report.Input
}

// manuscript examines a record, loads its pictures and finds the wording.
// Problems that keep the document from being made are an error of the record.
func (r *reader) manuscript(rec *record, shops *workshops) (*manuscript, error) {
	shop, err := shops.of(rec.bench)
	if err != nil {
		return nil, err
	}
	if rec.piece != nil {
		return r.pieceManuscript(rec, shop)
	}
	e := r.forDocument(rec)
	if e.Problems.Has(stone.Error) {
		return &manuscript{rec: rec, shop: shop, input: report.Input{Examined: e}}, nil
	}
	json, err := e.JSON(r.suggestions(rec, e))
	if err != nil {
		return nil, err
	}
	pictures, err := r.pictures(rec)
	if err != nil {
		return nil, err
	}
	drawings, err := r.evidence(e, e.Stone.Report, shop)
	if err != nil {
		return nil, err
	}
	m := &manuscript{rec: rec, shop: shop, input: report.Input{
		Examined: e, Evidence: drawings, Gems: r.tables.Gems, Wording: shop.wording, Photos: pictures,
		StoneFile: rec.src, JSON: json, Program: name + " " + version(),
	}}
	m.letterhead()
	return m, nil
}

// letterhead adds the practice's logo and the examiner's signature.
func (m *manuscript) letterhead() {
	if b := m.rec.bench.record(); b != nil {
		m.input.Logo = m.shop.image(b.Practice.Logo)
		m.input.Signature = m.shop.image(b.Examiners[m.rec.stone.Examiner].Signature)
	}
}

// forDocument examines a stone under the bare name of its file: the folders of
// this computer are nobody else's business.
func (r *reader) forDocument(rec *record) *grading.Examined {
	bare := *rec
	bare.stone = rec.stone.Named(filepath.Base(rec.file))
	return r.checked(&bare)
}

// pictures makes the pictures of a stone ready for print.
func (r *reader) pictures(rec *record) ([]photos.Photo, error) {
	if len(rec.stone.Photos) == 0 {
		return nil, nil
	}
	root, err := os.OpenRoot(filepath.Dir(rec.file))
	if err != nil {
		return nil, err
	}
	defer root.Close()
	var list []photos.Photo
	var errs []error
	for i, p := range rec.stone.Photos {
		photo, err := r.load(root, p.File, photos.Options{})
		if err != nil {
			errs = append(errs, pictureError(rec, i, err))
		}
		list = append(list, photo)
	}
	return list, errors.Join(errs...)
}

// compose makes the document for a number and a day; the zero number makes a
// draft.
func (m *manuscript) compose(number register.Number, id string, issued time.Time) (report.Document, error) {
	in := m.input
	in.Number, in.UUID, in.Issued, in.Draft = number.String(), id, issued, number.IsZero()
	return report.Compose(in)
}

// printable reports what would keep the document from being printed.
func (m *manuscript) printable(number register.Number, issued time.Time) error {
	doc, err := m.compose(number, "00000000-0000-4000-8000-000000000000", issued)
	if err != nil {
		return err
	}
	return m.located(m.shop.press.Check(doc))
}

// print makes the PDF.
func (m *manuscript) print(number register.Number, id string, issued time.Time) ([]byte, error) {
	doc, err := m.compose(number, id, issued)
	if err != nil {
		return nil, err
	}
	data, err := m.shop.press.Print(doc)
	return data, m.located(err)
}
