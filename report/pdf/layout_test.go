package pdf

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"stonewrit/report"
)

func newPress(t testing.TB) *Press {
	t.Helper()
	press, err := NewPress()
	if err != nil {
		t.Fatal(err)
	}
	return press
}

func layOut(t testing.TB, press *Press, doc report.Document) []Page {
	t.Helper()
	pages, err := press.Layout(doc)
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// TestLayoutHoldsUnderStress lays out every nasty document on both papers:
// nothing overlaps, nothing leaves its page, no text is lost.
func TestLayoutHoldsUnderStress(t *testing.T) {
	press := newPress(t)
	docs := stressDocuments()
	for _, name := range slices.Sorted(maps.Keys(docs)) {
		for _, paper := range []report.Paper{report.A4, report.Letter} {
			t.Run(fmt.Sprintf("%s/%d", name, paper), func(t *testing.T) {
				doc := docs[name]
				doc.Paper = paper
				pages := layOut(t, press, doc)
				for _, f := range Faults(pages) {
					t.Error(f)
				}
				for _, text := range lost(doc, pages) {
					t.Errorf("on no page: %s", text)
				}
			})
		}
	}
}

// lost returns the texts of the document that stand on no page.
func lost(doc report.Document, pages []Page) []string {
	var all strings.Builder
	for _, page := range pages {
		eachPlacedText(page.Items, func(x Text) { all.WriteString(x.S) })
	}
	have := letters(all.String())
	var out []string
	for _, sec := range doc.Sections {
		for _, b := range sec.Blocks {
			eachBlockText(b, sec.Name, func(place string, text report.Text) {
				if strings.HasSuffix(place, "caption") {
					text = text[:max(0, len(text)-1)] // of a digest only 16 digits are printed
				}
				for _, run := range text {
					if !found(have, letters(run.Text)) {
						out = append(out, place+": "+run.Text)
					}
				}
			})
		}
	}
	return out
}

// found looks for a text, whole or in parts: lines of a row that is broken
// between pages alternate with those of its other cells, and names in the
// margin stand between. A part is at least eight characters.
func found(have, want string) bool {
	for want != "" && !strings.Contains(have, want) {
		r := []rune(want)
		n := len(r) - 1
		for n >= 8 && !strings.Contains(have, string(r[:n])) {
			n--
		}
		if n < 8 {
			return false
		}
		want = string(r[n:])
	}
	return true
}

func TestLostFindsLostText(t *testing.T) {
	doc := sampleNote()
	pages := layOut(t, newPress(t), doc)
	at := slices.IndexFunc(pages[1].Items, func(it Placed) bool {
		x, ok := it.(Text)
		return ok && strings.HasPrefix(x.S, "Keep from sudden heat")
	})
	if at < 0 {
		t.Fatal("the sample has changed: no such line on page 2")
	}
	pages[1].Items = slices.Delete(pages[1].Items, at, at+1)
	if got := lost(doc, pages); len(got) != 1 || !strings.Contains(got[0], "Keep from sudden heat") {
		t.Errorf("lost text found: %q", got)
	}
}

// letters leaves only letters and digits of a text.
func letters(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return -1
	}, norm.NFD.String(s)) // so that a letter counts the same with its accent apart
}

// TestFaultsFindsFaults shows that the check can fail.
func TestFaultsFindsFaults(t *testing.T) {
	press := newPress(t)
	word := press.measure("a word", voice{FaceRegular, sizeBody, InkBlack})
	at := func(x, y Point) Text { return press.text(word, x, y) }
	img := &report.Image{Alt: "stone"}
	for _, tc := range []struct {
		name  string
		items []Placed
		want  string
	}{
		{"two texts", []Placed{at(100, 100), at(110, 103)}, `text "a word" overlaps text "a word"`},
		{"text on picture", []Placed{Picture{img, Rect{90, 90, 50, 50}}, at(100, 100)}, "picture stone overlaps"},
		{"line through text", []Placed{at(100, 100), rule(90, 97, 80, ruleThin, InkPale)}, "overlaps line"},
		{"labels of one drawing", []Placed{Drawing{Items: []Placed{at(100, 100), at(102, 100)}}}, "overlaps"},
		{"over the right edge", []Placed{at(590, 100)}, "leaves the page on the right"},
		{"over the lower edge", []Placed{at(100, 841)}, "leaves the page at the bottom"},
		{"nothing wrong", []Placed{at(100, 100), at(100, 114), rule(90, 104, 80, ruleThin, InkPale), Picture{img, Rect{200, 90, 50, 50}}}, ""},
	} {
		got := Faults([]Page{{Width: 595, Height: 842, Items: tc.items}})
		switch {
		case tc.want == "" && len(got) > 0:
			t.Errorf("%s: found %v", tc.name, got)
		case tc.want != "" && (len(got) == 0 || !strings.Contains(got[0].String(), tc.want)):
			t.Errorf("%s: found %v, want %q", tc.name, got, tc.want)
		}
	}
}

// TestThreeSizes: no document uses a fourth size of text.
func TestThreeSizes(t *testing.T) {
	press := newPress(t)
	sizes := make(map[Point]bool)
	for _, doc := range stressDocuments() {
		for _, page := range layOut(t, press, doc) {
			eachPlacedText(page.Items, func(x Text) { sizes[x.Size] = true })
		}
	}
	if got := slices.Sorted(maps.Keys(sizes)); !slices.Equal(got, []Point{sizeSmall, sizeBody, sizeLarge}) {
		t.Errorf("sizes on the pages are %v", got)
	}
}

// TestEveryPageSaysWhatItBelongsTo: practice, number, date and page count stand
// on every page, the end line on the last only (ISO/IEC 17025:2017 7.8.2.1 d).
func TestEveryPageSaysWhatItBelongsTo(t *testing.T) {
	press := newPress(t)
	doc := sampleAppraisal()
	pages := layOut(t, press, doc)
	if len(pages) < 3 {
		t.Fatalf("%d pages, want several", len(pages))
	}
	for i, page := range pages {
		text := textOf(page)
		for _, want := range []string{doc.Practice.Name, doc.Number, doc.DateText, fmt.Sprintf("page %d of %d", i+1, len(pages))} {
			if !slices.Contains(text, want) {
				t.Errorf("page %d lacks %q", i+1, want)
			}
		}
		if got, want := slices.Contains(text, doc.End), i == len(pages)-1; got != want {
			t.Errorf("page %d has the end line: %v, want %v", i+1, got, want)
		}
		if slices.Contains(text, "DRAFT") {
			t.Errorf("page %d of an issued document says DRAFT", i+1)
		}
	}
	doc.Draft, doc.Number = true, ""
	doc.Words = report.Words{Draft: "ENTWURF", Unnumbered: "ohne Nummer"}
	for i, page := range layOut(t, press, doc) {
		if text := textOf(page); !slices.Contains(text, "ENTWURF") || !slices.Contains(text, "ohne Nummer") {
			t.Errorf("page %d of a draft does not say so", i+1)
		}
	}
}

func textOf(page Page) []string {
	var out []string
	eachPlacedText(page.Items, func(x Text) { out = append(out, x.S) })
	return out
}

// TestTableHeadIsRepeated: wherever rows of a table stand, its head stands above.
func TestTableHeadIsRepeated(t *testing.T) {
	press := newPress(t)
	for _, wide := range []bool{false, true} {
		table := longCells(40, wide)
		doc := report.Document{Title: "Note", Sections: []report.Section{{Name: "Rows", Blocks: []report.Block{table}}}}
		pages := layOut(t, press, doc)
		if len(pages) < 3 {
			t.Fatalf("%d pages, want several", len(pages))
		}
		for i, page := range pages {
			heads := 0
			for _, s := range textOf(page) {
				if s == "longer" {
					heads++
				}
			}
			if heads != 1 {
				t.Errorf("wide %v: page %d has the head %d times", wide, i+1, heads)
			}
		}
	}
}

// TestSectionNameIsRepeated: a section that goes on is named again.
func TestSectionNameIsRepeated(t *testing.T) {
	press := newPress(t)
	long := report.Plain(strings.Repeat("All that was seen is told here. ", 400))
	doc := report.Document{Sections: []report.Section{{Name: "Description", Blocks: []report.Block{report.Para(long)}}}}
	pages := layOut(t, press, doc)
	for i, page := range pages {
		text := textOf(page)
		if !slices.Contains(text, "Description") {
			t.Errorf("page %d does not name the section", i+1)
		}
		if got, want := slices.Contains(text, "continued"), i > 0; got != want {
			t.Errorf("page %d says continued: %v, want %v", i+1, got, want)
		}
	}
}

// TestNoLineStandsAlone: of a paragraph broken between pages, at least two lines
// stand on each.
func TestNoLineStandsAlone(t *testing.T) {
	press := newPress(t)
	for before := range 60 { // push the paragraphs down the page line by line
		var blocks []report.Block
		for range before {
			blocks = append(blocks, report.Para(report.Plain("filler")))
		}
		for range 6 {
			blocks = append(blocks, report.Para(report.Plain(strings.Repeat("brünett ", 60))))
		}
		doc := report.Document{Sections: []report.Section{{Blocks: blocks}}}
		for i, page := range layOut(t, press, doc) {
			for _, n := range paragraphLines(page, "brünett") {
				if n < 2 {
					t.Fatalf("after %d lines: page %d has a line of a paragraph alone", before, i+1)
				}
			}
		}
	}
}

// paragraphLines counts the lines of each stretch of lines that hold a word; a
// gap wider than a line's leading ends a stretch.
func paragraphLines(page Page, word string) []int {
	var out []int
	last := Point(-1000)
	eachPlacedText(page.Items, func(x Text) {
		if !strings.Contains(x.S, word) {
			return
		}
		if x.At.Y-last > wideGrid().leadBody+1 {
			out = append(out, 0)
		}
		out[len(out)-1]++
		last = x.At.Y
	})
	return out
}

// TestHeadingStaysWithItsBlock: a subhead never ends a page.
func TestHeadingStaysWithItsBlock(t *testing.T) {
	press := newPress(t)
	for before := range 50 {
		var blocks []report.Block
		for range before {
			blocks = append(blocks, report.Para(report.Plain("filler")))
		}
		blocks = append(blocks, report.Subhead("Heading"), comparables(8))
		pages := layOut(t, press, report.Document{Sections: []report.Section{{Blocks: blocks}}})
		for i, page := range pages {
			text := textOf(page)
			if slices.Contains(text, "Heading") && !slices.Contains(text, "oval sapphire, blue, heated, retail") {
				t.Fatalf("after %d lines: the heading on page %d stands without its table", before, i+1)
			}
		}
	}
}

func TestLayoutIsPure(t *testing.T) {
	press := newPress(t)
	for name, doc := range stressDocuments() {
		a, b := fmt.Sprintf("%#v", layOut(t, press, doc)), fmt.Sprintf("%#v", layOut(t, press, doc))
		if plain(a) != plain(b) {
			t.Errorf("%s: two layouts of one document differ", name)
		}
	}
}

// plain leaves out the addresses that %#v prints for pointers.
func plain(s string) string {
	for {
		at := strings.Index(s, "(0x")
		if at < 0 {
			return s
		}
		end := strings.IndexByte(s[at:], ')')
		s = s[:at] + s[at+end+1:]
	}
}

func TestCheckNamesWhatCannotBePrinted(t *testing.T) {
	press := newPress(t)
	doc := sampleNote()
	if err := press.Check(doc); err != nil {
		t.Fatalf("the sample: %v", err)
	}
	doc.Practice.Name = "Gem 🜁 Room"
	doc.Sections[3].Blocks = append(doc.Sections[3].Blocks, report.Table{Columns: []report.Column{{Head: "who", Width: 1}}, Rows: []report.Row{
		report.Cells(report.Plain("宝石")), report.Cells(report.Strong("שלום")), report.Cells(report.Plain("a\x07b")),
	}})
	missing := press.Missing(doc)
	var got []string
	for _, m := range missing {
		got = append(got, fmt.Sprintf("%s %U", m.Place, m.Char))
	}
	want := []string{
		"letterhead, name U+1F701",
		`section "The tests", block 2, row 1, column "who" U+5B9D`, `section "The tests", block 2, row 1, column "who" U+77F3`,
		`section "The tests", block 2, row 2, column "who" U+05E9`, `section "The tests", block 2, row 2, column "who" U+05DC`,
		`section "The tests", block 2, row 2, column "who" U+05D5`, `section "The tests", block 2, row 2, column "who" U+05DD`,
		`section "The tests", block 2, row 3, column "who" U+0007`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("missing:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	var m MissingCharacter
	if _, err := press.Layout(doc); !errors.As(err, &m) || m.Char != '🜁' {
		t.Errorf("Layout returns %v, want the missing character", err)
	}
	if msg := m.Error(); !strings.Contains(msg, "letterhead, name") || !strings.Contains(msg, "U+1F701") || !strings.Contains(msg, "Gem 🜁 Room") {
		t.Errorf("the message does not say what and where: %s", msg)
	}
}

func TestCheckRefusesWhatDoesNotFit(t *testing.T) {
	press := newPress(t)
	with := func(b report.Block) report.Document {
		return report.Document{Sections: []report.Section{{Blocks: []report.Block{b}}}}
	}
	broken := report.Image{Data: []byte("not a picture")}
	crowd := report.Document{Practice: report.Practice{Address: []string{strings.Repeat("a long address ", 500)}}}
	for _, tc := range []struct {
		name string
		doc  report.Document
		want error
	}{
		{"drawing too wide", with(report.Figure{Width: 500, Height: 10}), ErrShape},
		{"drawing too high", with(report.Figure{Width: 100, Height: 481}), ErrShape},
		{"drawing without size", with(report.Figure{}), ErrShape},
		{"more cells than columns", with(report.Table{Columns: []report.Column{{}}, Rows: []report.Row{report.Cells(nil, nil)}}), ErrShape},
		{"a letterhead as high as the page", crowd, ErrShape},
		{"lead photo", with(report.Lead{Photo: &report.Photo{Image: broken}}), ErrImage},
		{"photo", with(report.Photos{Photos: []report.Photo{{Image: broken}}}), ErrImage},
		{"signature", with(report.Signature{Image: &broken}), ErrImage},
		{"logo", report.Document{Practice: report.Practice{Logo: &broken}}, ErrImage},
		{"largest drawing", with(report.Figure{Width: report.FigureWideWidth, Height: report.FigureHeight}), nil},
	} {
		if err := press.Check(tc.doc); !errors.Is(err, tc.want) || (tc.want == nil) != (err == nil) {
			t.Errorf("%s: got %v, want %v", tc.name, err, tc.want)
		}
	}
}
