package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"stonewrit/report"
)

// tool runs a program that reads PDF and was written by others; without it the
// test is skipped.
func tool(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed", name)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, out)
	}
	return out
}

// printed writes the document to a file and returns its name.
func printed(t *testing.T, doc report.Document) string {
	t.Helper()
	data, err := newPress(t).Print(doc)
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "document.pdf")
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestFilesAreSound(t *testing.T) {
	docs := stressDocuments()
	for _, name := range slices.Sorted(maps.Keys(docs)) {
		t.Run(name, func(t *testing.T) {
			file := printed(t, docs[name])
			out := tool(t, "qpdf", "--check", file)
			if bytes.Contains(out, []byte("WARNING")) {
				t.Errorf("qpdf --check: %s", out)
			}
			fonts := strings.Split(strings.TrimSpace(string(tool(t, "pdffonts", file))), "\n")
			for _, line := range fonts[2:] {
				if f := strings.Fields(line); len(f) < 8 || !slices.Equal(f[len(f)-5:len(f)-2], []string{"yes", "yes", "yes"}) || f[0][6] != '+' {
					t.Errorf("font is not an embedded, named subset with a way back to text: %s", line)
				}
			}
		})
	}
}

// TestSameBytes: the same document gives the same bytes, from one press, from
// two, and in another process.
func TestSameBytes(t *testing.T) {
	a, b := newPress(t), newPress(t)
	for _, name := range sameBytesOf {
		doc := stressDocuments()[name]
		first, second, third := digest(t, a, doc), digest(t, a, doc), digest(t, b, doc)
		if first != second || first != third {
			t.Errorf("%s: three prints have digests %s, %s, %s", name, first, second, third)
		}
		cmd := exec.Command(os.Args[0], "-test.run=^TestDigestOf$", "-test.v")
		cmd.Env = append(os.Environ(), "DIGEST_OF="+name)
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		if !bytes.Contains(out, []byte("digest "+first)) {
			t.Errorf("%s: another process prints other bytes\n%s", name, out)
		}
	}
}

var sameBytesOf = []string{"note", "appraisal", "draft without photos", "twelve photos"}

// TestDigestOf prints the digest of one document, for TestSameBytes in another
// process.
func TestDigestOf(t *testing.T) {
	name := os.Getenv("DIGEST_OF")
	if name == "" {
		t.Skip("runs only when TestSameBytes asks for it")
	}
	fmt.Println("digest " + digest(t, newPress(t), stressDocuments()[name]))
}

func digest(t *testing.T, press *Press, doc report.Document) string {
	t.Helper()
	data, err := press.Print(doc)
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Sprintf("%x", sha256.Sum256(data))
}

// TestDateChangesTheFile: the date is the document's, not the clock's.
func TestDateChangesTheFile(t *testing.T) {
	press := newPress(t)
	doc := sampleNote()
	before := digest(t, press, doc)
	doc.Date = doc.Date.Add(time.Hour)
	if digest(t, press, doc) == before {
		t.Error("another date gives the same file")
	}
	out := string(tool(t, "pdfinfo", "-isodates", printed(t, sampleNote())))
	for _, want := range []string{"CreationDate:    2026-10-14T00:00:00", "ModDate:         2026-10-14T00:00:00", "Title:           Stone note KL-2026-000417-62", "Author:          A. Okafor"} {
		if !strings.Contains(out, want) {
			t.Errorf("pdfinfo lacks %q:\n%s", want, out)
		}
	}
}

func TestMetadataNamesTheDocument(t *testing.T) {
	doc := sampleNote()
	doc.Metadata.Author = "Ø. <Žižek> & Söhne"
	out := string(tool(t, "pdfinfo", "-meta", printed(t, doc)))
	for _, want := range []string{
		"<stonewrit:number>KL-2026-000417-62</stonewrit:number>", "<stonewrit:uuid>" + doc.UUID, "<stonewrit:digest>" + doc.Metadata.Digest,
		"<stonewrit:kind>note</stonewrit:kind>", `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">Stone note KL-2026-000417-62`,
		"<dc:language><rdf:Bag><rdf:li>en<", "Ø. &lt;Žižek&gt; &amp; Söhne", "<xmp:CreateDate>2026-10-14T00:00:00Z<",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("the metadata lack %q:\n%s", want, out)
		}
	}
}

func TestAttachmentsComeBack(t *testing.T) {
	doc := sampleNote()
	doc.Attachments = append(doc.Attachments, report.Attachment{Name: "Ωmega (1).bin", Data: bytes.Repeat([]byte("endobj endstream \x00\xff"), 100)})
	dir := t.TempDir()
	tool(t, "pdfdetach", "-saveall", "-o", dir, printed(t, doc))
	for _, a := range doc.Attachments {
		got, err := os.ReadFile(filepath.Join(dir, a.Name))
		if err != nil || !bytes.Equal(got, a.Data) {
			t.Errorf("%s comes back as %d bytes, want %d (%v)", a.Name, len(got), len(a.Data), err)
		}
	}
}

// TestOutlineLeadsToSections asks qpdf where each outline entry leads.
func TestOutlineLeadsToSections(t *testing.T) {
	press := newPress(t)
	doc := sampleAppraisal()
	var want []string
	for i, page := range layOut(t, press, doc) {
		for _, s := range page.Sections {
			if s.Name != "" {
				want = append(want, fmt.Sprintf("%s on page %d", s.Name, i+1))
			}
		}
	}
	var got struct {
		Outlines []struct {
			Title string
			Page  int `json:"destpageposfrom1"`
		}
	}
	if err := json.Unmarshal(tool(t, "qpdf", "--json=1", "--json-key=outlines", printed(t, doc)), &got); err != nil {
		t.Fatal(err)
	}
	var have []string
	for _, o := range got.Outlines {
		have = append(have, fmt.Sprintf("%s on page %d", o.Title, o.Page))
	}
	if len(want) != 3 || !slices.Equal(have, want) {
		t.Errorf("the outline leads to %q, want %q", have, want)
	}
}

// TestCatalogueSaysLanguage, and that the window should show the title.
func TestCatalogueSaysLanguage(t *testing.T) {
	out := string(tool(t, "qpdf", "--json=1", "--json-key=objects", printed(t, stressDocuments()["letters"])))
	for _, want := range []string{`"/Lang": "el"`, `"/DisplayDocTitle": true`, `"/AF": [`} {
		if !strings.Contains(out, want) {
			t.Errorf("the catalogue lacks %s", want)
		}
	}
}

// TestPicturesOfAllKinds: greys, palettes, transparency, 16 bits.
func TestPicturesOfAllKinds(t *testing.T) {
	doc := sampleNote()
	var photos []report.Photo
	for i, data := range pictureKinds(t) {
		photos = append(photos, report.Photo{Image: report.Image{Data: data}, Caption: report.Plainf("kind %d", i)})
	}
	doc.Sections = []report.Section{{Name: "Pictures", Blocks: []report.Block{report.Photos{Photos: photos, Columns: 4}}}}
	file := printed(t, doc)
	tool(t, "qpdf", "--check", file)
	list := string(tool(t, "pdfimages", "-list", file))
	if n := strings.Count(list, " image "); n < len(photos) {
		t.Errorf("%d pictures in the file, want at least %d:\n%s", n, len(photos), list)
	}
}

// TestOnePictureOnce: a picture used twice is in the file once.
func TestOnePictureOnce(t *testing.T) {
	doc := sampleNote()
	same := photo(200, 150, red, "once")
	other := same
	other.Image.Data = bytes.Clone(same.Image.Data)
	doc.Sections = []report.Section{{Blocks: []report.Block{report.Photos{Photos: []report.Photo{same, same, other}}}}}
	doc.Practice.Logo = nil
	out := tool(t, "qpdf", "--stream-data=preserve", printed(t, doc), "-")
	if n := bytes.Count(out, []byte("/DCTDecode")); n != 1 {
		t.Errorf("the picture is in the file %d times", n)
	}
}

func TestDescriptionsAreInTheFile(t *testing.T) {
	file := printed(t, sampleNote())
	out := string(tool(t, "qpdf", "--stream-data=uncompress", file, "-"))
	if want := "/Span <</Alt " + textString(sampleRuler().Alt) + ">> BDC"; !strings.Contains(out, want) {
		t.Error("the drawing's description in words is not in the file")
	}
}
