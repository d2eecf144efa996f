package seal_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"stonewrit/report"
	"stonewrit/report/seal"
)

func write(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestOpen(t *testing.T) {
	doc := open(t, sample(t, nil))
	for _, row := range []struct{ name, got, want string }{
		{"number", doc.Number, sampleNumber}, {"uuid", doc.UUID, sampleUUID}, {"kind", doc.Kind, "note"},
		{"stone file", doc.Stone, digest(stoneFile)}, {"examined stone", doc.Examined, digest(stoneJSON)},
		{"stone file inside", string(doc.StoneFile().Data), stoneFile}, {"its name", doc.StoneFile().Name, "KL-0098.yaml"},
		{"JSON inside", string(doc.ExaminedStone().Data), stoneJSON},
	} {
		if row.got != row.want {
			t.Errorf("%s is %q, want %q", row.name, row.got, row.want)
		}
	}
	if len(doc.Pages) < 2 {
		t.Errorf("%d pages, want several", len(doc.Pages))
	}
	if found := doc.Check(); len(found) > 0 {
		t.Errorf("found %q in a document of one piece", found)
	}
}

// TestReadsAsOthersDo compares the letters of each page with those that
// poppler reads.
func TestReadsAsOthersDo(t *testing.T) {
	data := sample(t, nil)
	file := t.TempDir() + "/a.pdf"
	write(t, file, data)
	theirs := strings.Split(tool(t, nil, "pdftotext", "-raw", file, "-"), "\f")
	for n, page := range open(t, data).Pages {
		want, got := letters(theirs[n]), letters(page)
		if got != want {
			t.Errorf("page %d: the letters differ: got\n%s\nwant\n%s", n+1, got, want)
		}
	}
}

// letters are the printable ASCII of a text, sorted: readers differ in order.
func letters(s string) string {
	var b []byte
	for _, c := range []byte(s) {
		if c > ' ' && c < 0x7f {
			b = append(b, c)
		}
	}
	slices.Sort(b)
	return string(b)
}

// TestCheck puts documents together of parts that do not belong together.
func TestCheck(t *testing.T) {
	for _, row := range []struct {
		name   string
		change func(*report.Document)
		after  func(t *testing.T, data []byte) []byte
		want   []string
	}{
		{name: "another stone file", want: []string{"the stone file inside it, KL-0098.yaml, is another"},
			change: func(d *report.Document) { d.Attachments[0].Data = []byte("stone: KL-0099\n") }},
		{name: "another JSON", want: []string{"the JSON of the examined stone inside it, KL-0098.json, is another"},
			change: func(d *report.Document) { d.Attachments[1].Data = []byte("{}\n") }},
		{name: "no files", want: []string{"the stone file is missing", "the JSON of the examined stone is missing"},
			change: func(d *report.Document) { d.Attachments = nil }},
		{name: "a file more", want: []string{"it holds a file that is not due, more.txt"},
			change: func(d *report.Document) {
				d.Attachments = append(d.Attachments, report.Attachment{Name: "more.txt", Type: "text/plain", Data: []byte("x")})
			}},
		{name: "a stone of a piece", change: set(stoneFile, stoneFile)},
		{name: "another stone in a piece", want: []string{"the file of a stone inside it, set.yaml, is another"}, change: set("stone: KL-0097\n", stoneFile)},
		{name: "a stone more in a piece", want: []string{"it holds 1 files of a piece's stones; by its metadata it should hold 0"}, change: set(stoneFile)},
		{name: "a stone less in a piece", want: []string{"it holds 1 files of a piece's stones; by its metadata it should hold 2"},
			change: set(stoneFile, stoneFile, stoneFile)},
		{name: "another UUID in the metadata", want: []string{`the UUID of its metadata, "6`},
			change: func(d *report.Document) { d.UUID = "6" + sampleUUID[1:] }},
		{name: "another digest in the metadata", want: []string{"the stone file inside it", "the digest of the stone file is not in its print"},
			change: func(d *report.Document) { d.Metadata.Digest = digest("x") }},
		{name: "another number in print", want: []string{"page 1 prints the number KL-2026-000420-53; by its metadata it is " + sampleNumber, "page 2", "page 3"},
			change: func(d *report.Document) { d.Number = "KL-2026-000420-53" },
			after:  func(t *testing.T, data []byte) []byte { return claiming(t, data, "KL-2026-000420-53", sampleNumber) }},
		{name: "no number in print", want: []string{"page 1 prints no number", "page 2", "page 3"},
			change: func(d *report.Document) { d.Number = "KL-2026-000419-xx" },
			after:  func(t *testing.T, data []byte) []byte { return claiming(t, data, "KL-2026-000419-xx", sampleNumber) }},
		{name: "a figure changed in print", want: []string{"its pages show something else than when it was made"},
			change: func(d *report.Document) {
				d.Sections[0].Blocks = append(d.Sections[0].Blocks, report.Paragraph{Text: report.Plain("It weighs 9.52 ct.")})
			},
			after: func(t *testing.T, data []byte) []byte { // under the metadata of the one without
				shown := regexp.MustCompile("<stonewrit:shown>[0-9a-f]{64}")
				return shown.ReplaceAllLiteral(data, shown.Find(sample(t, nil)))
			}},
		{name: "something added", want: []string{"something was added to the file after it was made"},
			after: func(t *testing.T, data []byte) []byte { return addition(data) }},
	} {
		t.Run(row.name, func(t *testing.T) {
			data := sample(t, row.change)
			if row.after != nil {
				data = row.after(t, data)
			}
			found := open(t, data).Check()
			if len(found) != len(row.want) {
				t.Fatalf("found %q, want %q", found, row.want)
			}
			for i, want := range row.want {
				if !strings.Contains(found[i], want) {
					t.Errorf("found %q, want %q", found[i], want)
				}
			}
		})
	}
}

// TestUnchecked looks at documents as they were before what their pages show was
// written into their metadata.
func TestUnchecked(t *testing.T) {
	const pages, stones = "its pages cannot be compared", "the files of its stones cannot be compared"
	for _, row := range []struct {
		name   string
		change func(*report.Document)
		older  bool
		left   []string
		found  []string
	}{
		{name: "of this version"},
		{name: "a piece of this version", change: set(stoneFile, stoneFile)},
		{name: "older", older: true, left: []string{pages}},
		{name: "older, of a piece", older: true, change: set(stoneFile), left: []string{pages, stones}},
		{name: "older, another stone file", older: true, left: []string{pages}, found: []string{"the stone file inside it, KL-0098.yaml, is another"},
			change: func(d *report.Document) { d.Attachments[0].Data = []byte("stone: KL-0099\n") }},
	} {
		t.Run(row.name, func(t *testing.T) {
			data := sample(t, row.change)
			if row.older {
				shown := regexp.MustCompile("<stonewrit:shown>[0-9a-f]{64}</stonewrit:shown>").Find(data)
				if shown == nil {
					t.Fatal("the metadata do not say what the pages show")
				}
				data = bytes.Replace(data, shown, bytes.Repeat([]byte(" "), len(shown)), 1)
			}
			doc := open(t, data)
			for _, list := range []struct {
				name      string
				got, want []string
			}{{"left out", doc.Unchecked(), row.left}, {"found", doc.Check(), row.found}} {
				if !slices.EqualFunc(list.got, list.want, strings.HasPrefix) {
					t.Errorf("%s: got %q, want %q", list.name, list.got, list.want)
				}
			}
		})
	}
}

// set puts the file of a stone into a document, as that of a piece, whose
// metadata name the digests of others.
func set(inside string, named ...string) func(*report.Document) {
	return func(d *report.Document) {
		file := report.Attachment{Name: "set.yaml", Type: "application/yaml", Data: []byte(inside)}
		d.Attachments = slices.Insert(d.Attachments, 1, file)
		for _, n := range named {
			d.Metadata.Stones = append(d.Metadata.Stones, digest(n))
		}
	}
}

// addition adds an empty update at the end of a PDF (ISO 32000-1, 7.5.6).
func addition(data []byte) []byte {
	trailer := data[bytes.LastIndex(data, []byte("trailer")):]
	dict, end, _ := bytes.Cut(trailer, []byte("startxref"))
	dict = regexp.MustCompile(`/Prev \d+`).ReplaceAll(dict, nil)
	prev := bytes.Fields(end)[0]
	dict = bytes.Replace(dict, []byte("<<"), fmt.Appendf(nil, "<</Prev %s ", prev), 1)
	return fmt.Appendf(bytes.Clone(data), "xref\n0 0\n%sstartxref\n%d\n%%%%EOF\n", dict, len(data))
}

// TestRefused opens what is no document of ours.
func TestRefused(t *testing.T) {
	good := sample(t, nil)
	for _, row := range []struct {
		name string
		data []byte
		want error
	}{
		{"empty", nil, seal.ErrNotPDF},
		{"text", []byte("stone: KL-0098\n"), seal.ErrNotPDF},
		{"its first line", []byte("%PDF-1.7\n%%EOF\n"), seal.ErrNotPDF},
		{"cut short", good[:len(good)/2], seal.ErrNotPDF},
		{"its middle gone", slices.Concat(good[:200], good[len(good)-200:]), seal.ErrNotPDF},
		{"all noughts", slices.Concat([]byte("%PDF-1.7\n"), make([]byte, 1<<20), []byte("%%EOF\n")), seal.ErrNotPDF},
		{"no number", sample(t, func(d *report.Document) { d.Number = "" }), seal.ErrForeign},
		{"another namespace", bytes.ReplaceAll(good, []byte("stonewrit.example/document/1#"), []byte("stonewrit.example/document/9#")), seal.ErrForeign},
		{"metadata that are no XML", bytes.Replace(good, []byte("<rdf:RDF"), []byte("<<df:RDF"), 1), seal.ErrNotPDF},
	} {
		doc, err := seal.Open(row.data, "")
		if !errors.Is(err, row.want) || strings.Contains(err.Error(), "\n") || len(err.Error()) > 400 {
			t.Errorf("%s: got %v, %v, want %v in a line", row.name, doc, err, row.want)
		}
	}
}

func FuzzOpen(f *testing.F) {
	f.Add(sample(f, nil))
	f.Add(sample(f, func(d *report.Document) { d.Sections[0].Blocks = d.Sections[0].Blocks[:1] }))
	f.Fuzz(func(t *testing.T, data []byte) {
		doc, err := seal.Open(data, "")
		if err == nil {
			doc.Check()
		}
	})
}

func read(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
