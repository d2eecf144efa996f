package main

import (
	"path/filepath"
	"strings"

	"stonewrit/report/register"
	"stonewrit/report/seal"
)

// copyKind is added to the kind of a document in the metadata of a copy made to
// show.
const copyKind = " copy"

func isCopy(doc *seal.Document) bool { return strings.HasSuffix(doc.Kind, copyKind) }

// copy writes the copies that were asked for of a document just issued, or
// issued before. They stand in a folder of their own: they are not on the
// register.
func (i *issuer) copy(rec *record, done register.Issuance) error {
	o := i.options
	if !o.withoutClient && !o.locked {
		return nil
	}
	pdf, name := []byte(nil), strings.TrimSuffix(done.Entry.File, ".pdf")
	var err error
	if o.withoutClient {
		name += "-without-client"
		pdf, err = i.toShow(rec, done.Entry)
	} else {
		pdf, err = readDocument(done.Path)
	}
	if err != nil {
		return err
	}
	if o.locked {
		name += "-locked"
		if pdf, err = seal.Lock(pdf, i.password); err != nil {
			return err
		}
	}
	file := filepath.Join(o.copies, name+".pdf")
	if err := replace(file, pdf); err != nil {
		return err
	}
	i.p.print("%s  copy of %s\n", file, done.Entry.Number)
	return nil
}

// toShow makes a document anew without its client and whatever tells of people:
// marked as a copy on every page, without the files that travel inside.
func (i *issuer) toShow(rec *record, e register.Entry) ([]byte, error) {
	bare := *rec
	bare.stone = anonymous(rec.stone)
	if rec.piece != nil {
		piece := *rec.piece
		piece.Assignment, piece.Account = bare.stone.Assignment, bare.stone.Account
		bare.piece = &piece
	}
	m, err := i.r.manuscript(&bare, i.shops)
	if err != nil {
		return nil, err
	}
	m.input.StoneFile, m.input.JSON, m.input.Code = nil, nil, nil
	m.input.Copy = true
	doc, err := m.compose(e.Number, e.UUID.String(), e.Issued)
	if err != nil {
		return nil, err
	}
	doc.Kind += copyKind
	return m.shop.press.Print(doc)
}
