package main

import (
	"path/filepath"
	"strings"

	"stonewrit/report"
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

// stillNamed refuses a copy in which the client stands all the same, because the
// file's own words name them; a single word of the name is only told, since it
// may mean something else there.
func (i *issuer) stillNamed(rec *record, doc report.Document) error {
	text := strings.Join(strings.Fields(textOf(doc)), " ")
	for _, one := range append([]*record{rec}, rec.set...) {
		for _, s := range peopleOf(one.stone) {
			if strings.Contains(text, s) {
				return failing("word that place without them; what the file says is printed as it stands",
					"%s: no copy to show was made: it would still hold %q of the client", rec.file, s)
			}
		}
		if word := lastName(one.stone); word != "" && strings.Contains(text, word) {
			i.p.note("%s: the copy to show holds the word %q, which is in the client's name too: read it before you show it", rec.file, word)
		}
	}
	return nil
}

// toShow makes a document anew without its client and whatever tells of people:
// marked as a copy on every page, without the files that travel inside.
func (i *issuer) toShow(rec *record, e register.Entry) ([]byte, error) {
	m, err := i.r.manuscript(withoutPeople(rec), i.shops)
	if err != nil {
		return nil, err
	}
	m.input.StoneFile, m.input.JSON, m.input.Code = nil, nil, nil
	for s := range m.input.Set {
		m.input.Set[s].StoneFile = nil
	}
	m.input.Copy = true
	doc, err := m.compose(e.Number, e.UUID.String(), e.Issued)
	if err != nil {
		return nil, err
	}
	if err := i.stillNamed(rec, doc); err != nil {
		return nil, err
	}
	doc.Kind += copyKind
	return m.shop.press.Print(doc)
}
