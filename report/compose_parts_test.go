package report_test

import (
	"bytes"
	"errors"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"stonewrit/grading"
	"stonewrit/report"
)

// A caution stands in the row of the test it is about, in documents for people
// who may repeat the test.
func TestCautionsStandBesideTheirTest(t *testing.T) {
	for _, row := range testRows(t, compose(t, "spinel.yaml")) {
		test, note := row.Cells[0].Text.String(), row.Note.String()
		goggles := strings.Contains(note, "ultraviolet-blocking goggles") && strings.Contains(note, "used with eye protection")
		if lamp := strings.Contains(test, "ultraviolet"); lamp != goggles {
			t.Errorf("row %q: caution about eyes %v, want %v", test, goggles, lamp)
		}
	}
}

func testRows(t *testing.T, doc report.Document) []report.Row {
	t.Helper()
	for _, s := range doc.Sections {
		if s.Name != "The tests" {
			continue
		}
		for _, b := range s.Blocks {
			if table, ok := b.(report.Table); ok {
				return table.Rows
			}
		}
	}
	t.Fatal("no table of tests")
	return nil
}

// A reading that was set aside is printed as such and has no verdict
// (ISO/IEC 17025 7.5.2: both readings are kept).
func TestSetAsideIsPrintedAndNotJudged(t *testing.T) {
	row := testRows(t, compose(t, "contradicted.yaml"))[0]
	if got := row.Cells[3]; got.Text.String() != "set aside" || got.Mark != report.MarkNone {
		t.Errorf("the verdict reads %q with mark %d", got.Text, got.Mark)
	}
	if note := row.Note.String(); !strings.Contains(note, "was the edge of the contact liquid") {
		t.Errorf("the reason is not printed: %q", note)
	}
	if read := row.Cells[1].Text.String(); !strings.Contains(read, "1.79") {
		t.Errorf("the reading is not printed: %q", read)
	}
}

// The explanation of a contradicted claim stands on page one and beside the
// standing, not among the limits.
func TestExplanationStandsBesideTheStanding(t *testing.T) {
	doc := compose(t, "contradicted.yaml")
	const words = "The client's paper says citrine"
	lead := doc.Sections[0].Blocks[0].(report.Lead)
	found := false
	for _, p := range lead.Body {
		found = found || strings.Contains(p.String(), words) && strings.Contains(p.String(), "Contradicted:")
	}
	if !found {
		t.Error("the explanation is not in the opening")
	}
	if !strings.Contains(sectionText(doc, "On what ground"), words) {
		t.Error("the explanation is not beside the standing")
	}
	if strings.Contains(sectionText(doc, "Limits"), words) {
		t.Error("the explanation is among the limits")
	}
}

// Eight rivals by name and the number of the others (the JSON has all).
func TestRivalsByName(t *testing.T) {
	text := sectionText(compose(t, "emerald.yaml"), "On what ground")
	if n := strings.Count(text, "cannot exclude it"); n != 8 {
		t.Errorf("%d rivals with their reasons, want 8", n)
	}
	if !regexp.MustCompile(`And [0-9]+ more\.`).MatchString(text) {
		t.Error("the number of the others is not told")
	}
}

func TestMarksGoWithTheirWords(t *testing.T) {
	words := map[report.Mark]string{report.MarkFilled: "supported", report.MarkOpen: "undecided", report.MarkStruck: "contradicted"}
	seen := map[report.Mark]bool{}
	for _, doc := range samples(t) {
		for _, s := range doc.Sections {
			for _, b := range s.Blocks {
				claims, ok := b.(report.Claims)
				if !ok {
					continue
				}
				if len(claims.Claims) != 4 {
					t.Errorf("%d claims", len(claims.Claims))
				}
				for _, c := range claims.Claims {
					seen[c.Mark] = true
					if words[c.Mark] != c.Standing {
						t.Errorf("mark %d beside %q", c.Mark, c.Standing)
					}
				}
			}
		}
	}
	if len(seen) != 3 {
		t.Errorf("the samples show %d standings of three", len(seen))
	}
}

// The amounts printed are those of the calculation, and add up.
func TestSumIsTheCalculation(t *testing.T) {
	for _, s := range compose(t, "ruby.yaml").Sections {
		for _, b := range s.Blocks {
			sum, ok := b.(report.Sum)
			if !ok {
				continue
			}
			var cents, total int
			for _, l := range sum.Lines {
				n, err := strconv.Atoi(regexp.MustCompile(`[^0-9]`).ReplaceAllString(l.Amount, ""))
				if err != nil {
					t.Fatalf("amount %q", l.Amount)
				}
				if !l.Total {
					cents += n
				} else if l.Label.String() == "Sum" {
					total = n
				}
			}
			// By hand: 1.52 x 1850.00 = 2812.00, 96.50, 12 % of 2812.00 = 337.44.
			if cents != 324594 || total != cents {
				t.Errorf("lines make %d, sum says %d, want 324594", cents, total)
			}
			if last := sum.Lines[len(sum.Lines)-1].Amount; plainSpaces(last) != "EUR 3,850.00" {
				t.Errorf("concluded %q, want EUR 3,850.00: 3245.94 x 1.19 = 3862.67 to the nearest 50", last)
			}
			return
		}
	}
	t.Error("no calculation")
}

func TestDraftHasNoNumber(t *testing.T) {
	in := input(t, "ruby.yaml")
	in.Number, in.UUID, in.Draft = "", "", true
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	if !doc.Draft || doc.Words.Draft == "" || !strings.Contains(textOf(doc), "it has no number, stands in no register") {
		t.Error("a draft does not say so")
	}
	if strings.Contains(textOf(doc), "ISO/IEC 7064") {
		t.Error("a draft explains check digits that it has not")
	}
}

func TestAttachmentsAndMetadata(t *testing.T) {
	in := input(t, "ruby.yaml")
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	if len(doc.Attachments) != 2 || doc.Attachments[0].Name != "ruby.yaml" || doc.Attachments[1].Name != "ruby.json" ||
		!bytes.Equal(doc.Attachments[0].Data, in.StoneFile) || !bytes.Equal(doc.Attachments[1].Data, in.JSON) {
		t.Errorf("attachments: %+v", doc.Attachments)
	}
	if doc.Metadata.Author != "Adaeze Okafor" || len(doc.Metadata.Digest) != 64 || doc.Language != "en" {
		t.Errorf("metadata: %+v, language %q", doc.Metadata, doc.Language)
	}
	if !strings.Contains(textOf(doc), doc.Metadata.Digest) {
		t.Error("the digest is not printed")
	}
	if doc.Accent != (report.Color{R: 0x1f, G: 0x3d, B: 0x52}) {
		t.Errorf("accent %+v", doc.Accent)
	}
}

// The scale of a picture follows it when it is made smaller: 640 pixels at
// 0.0125 mm are 8 mm, whatever the pixels of the copy.
func TestScaleFollowsThePicture(t *testing.T) {
	in := input(t, "ruby.yaml")
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	photo := doc.Sections[0].Blocks[0].(report.Lead).Photo
	if got := photo.MMPerPixel * float64(in.Photos[0].Thumbnail.Width); got < 7.999 || got > 8.001 {
		t.Errorf("the picture is %.4f mm wide, want 8", got)
	}
}

// A document that amends another says which, and why (ISO/IEC 17025 7.8.8.1 to
// 7.8.8.3).
func TestAmendmentNamesWhatItReplaces(t *testing.T) {
	in := input(t, "spinel.yaml")
	in.Replaces = &report.Replaced{Number: "KL-2026-000400-11", Issued: issued.AddDate(0, 0, -9), Because: "the weight was misread", Changes: []report.Change{{Field: "weight, measured", Old: "2.13 ct", New: "2.31 ct"}, {Field: "the photos"}, {Field: "location", Old: "safe"}}}
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	lead := doc.Sections[0].Blocks[0].(report.Lead)
	want := "This document takes the place of number KL-2026-000400-11 of 7 October 2026, which no longer holds, because the weight was misread. Changed: weight, measured: 2.31 ct, was 2.13 ct; the photos; location: left out, was safe."
	if got := plainSpaces(lead.Body[0].String()); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestUnreadablePhotoIsLeftOut(t *testing.T) {
	in := input(t, "ruby.yaml")
	in.Photos[0].JPEG = nil
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	if photo := doc.Sections[0].Blocks[0].(report.Lead).Photo; photo == nil || !strings.Contains(photo.Caption.String(), "from the side") {
		t.Error("the next picture does not lead")
	}
}

func TestNothingExaminedIsAnError(t *testing.T) {
	if _, err := report.Compose(report.Input{}); !errors.Is(err, report.ErrNotExamined) {
		t.Errorf("no input gives %v", err)
	}
	if _, err := report.Compose(report.Input{Examined: &grading.Examined{}}); !errors.Is(err, report.ErrNotExamined) {
		t.Errorf("no stone gives %v", err)
	}
}
