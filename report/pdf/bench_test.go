package pdf

import (
	"io"
	"testing"

	"stonewrit/report"
)

// BenchmarkDraft lays out and writes a draft of two pages without photos, fonts
// embedded: what an examiner waits for again and again.
func BenchmarkDraft(b *testing.B) {
	press, err := NewPress()
	if err != nil {
		b.Fatal(err)
	}
	doc := draftWithoutPhotos()
	b.ReportAllocs()
	for b.Loop() {
		pages, err := press.Layout(doc)
		if err != nil {
			b.Fatal(err)
		}
		if len(pages) != 2 {
			b.Fatalf("%d pages, want 2", len(pages))
		}
		if err := press.Write(io.Discard, doc, pages); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkNewPress parses the typeface, once for any number of documents.
func BenchmarkNewPress(b *testing.B) {
	for b.Loop() {
		if _, err := NewPress(); err != nil {
			b.Fatal(err)
		}
	}
}

func draftWithoutPhotos() report.Document {
	doc := sampleNote()
	doc.Draft, doc.Number, doc.Practice.Logo = true, "", nil
	for i := range doc.Sections {
		for j, block := range doc.Sections[i].Blocks {
			switch b := block.(type) {
			case report.Lead:
				b.Photo = nil
				doc.Sections[i].Blocks[j] = b
			case report.Signature:
				b.Image = nil
				doc.Sections[i].Blocks[j] = b
			}
		}
	}
	return doc
}
