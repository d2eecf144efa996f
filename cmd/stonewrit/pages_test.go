package main

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/color/palette"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden texts and pages of report/testdata/pages anew")

// Where the golden pages stand, seen from this package.
const goldenPages = "../../report/testdata/pages"

// drawnInFull are the documents of which every page is kept as a picture: one
// of each kind, and a piece.
func drawnInFull() []string { return []string{"HL-0412", "HL-0407", "HL-0411", "HL-0500"} }

// Every document of the demo, as the program makes it: its text as another
// program reads it is compared exactly, the pages of drawnInFull within a
// tolerance, and the number of pages with the table of report/README.md.
func TestGoldenDocuments(t *testing.T) {
	for _, tool := range []string{"pdftotext", "pdftoppm"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("%s of poppler is not installed: texts and pages of the demo are not compared", tool)
		}
	}
	golden, err := filepath.Abs(goldenPages)
	if err != nil {
		t.Fatal(err)
	}
	told := toldPages(t, filepath.Join(golden, "..", "..", "README.md"))
	demo(t, "demo")
	command(t, statusGood, "draft", "--out", "proofs", ".")
	files, err := filepath.Glob("proofs/*.pdf")
	if err != nil || len(files) < 14 {
		t.Fatalf("%d proofs, %v", len(files), err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), "-draft.pdf")
		text := textOfDraft(t, file)
		compareText(t, filepath.Join(golden, "text", name+".txt"), text)
		if n := strings.Count(text, "\f"); told[name] != n {
			t.Errorf("%s has %d pages, report/README.md says %d", name, n, told[name])
		}
		delete(told, name)
	}
	for name := range told {
		t.Errorf("report/README.md tells pages of %s, which the demo does not have", name)
	}
	for _, name := range drawnInFull() {
		for i, drawn := range drawPages(t, filepath.Join("proofs", name+"-draft.pdf")) {
			comparePicture(t, filepath.Join(golden, "after", fmt.Sprintf("%s-p%d.png", name, i+1)), drawn)
		}
	}
}

// The German of an appraisal of a stone and of a piece, the kinds that say the
// most: texts exactly, and of HL-0412 the first page as a picture.
func TestGoldenGerman(t *testing.T) {
	for _, tool := range []string{"pdftotext", "pdftoppm"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("%s of poppler is not installed: German texts and pages of the demo are not compared", tool)
		}
	}
	golden, err := filepath.Abs(goldenPages)
	if err != nil {
		t.Fatal(err)
	}
	demo(t, "demo")
	speak(t, "de")
	command(t, statusGood, "draft", "--out", "proofs", "hl-0412.yaml", "hl-0500.yaml")
	for _, name := range []string{"HL-0412", "HL-0500"} {
		text := textOfDraft(t, filepath.Join("proofs", name+"-draft.pdf"))
		compareText(t, filepath.Join(golden, "text", name+"-de.txt"), text)
	}
	first := drawPages(t, filepath.Join("proofs", "HL-0412-draft.pdf"))[0]
	comparePicture(t, filepath.Join(golden, "after", "HL-0412-de-p1.png"), first)
}

// speak sets the language of the bench in the folder of the test.
func speak(t *testing.T, language string) {
	t.Helper()
	bench, err := os.ReadFile("bench.yaml")
	if err != nil {
		t.Fatal(err)
	}
	said := bytes.Replace(bench, []byte("\n  language: en\n"), []byte("\n  language: "+language+"\n"), 1)
	if bytes.Equal(said, bench) {
		t.Fatal("the bench of the demo sets no language")
	}
	if err := os.WriteFile("bench.yaml", said, 0o644); err != nil {
		t.Fatal(err)
	}
}

// toldPages reads the rows "| HL-0401 | appraisal | 6 |" of a table.
func toldPages(t *testing.T, file string) map[string]int {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]int{}
	for _, row := range regexp.MustCompile(`(?m)^\| (HL-\d+) \| [^|]+ \| (\d+) \|$`).FindAllStringSubmatch(string(src), -1) {
		if told[row[1]], err = strconv.Atoi(row[2]); err != nil {
			t.Fatal(err)
		}
	}
	return told
}

// textOfDraft is the text of a PDF. The version of the program and the digest of
// its table are left out, since both change where no document should.
func textOfDraft(t *testing.T, file string) string {
	t.Helper()
	out, err := exec.Command("pdftotext", "-raw", "-enc", "UTF-8", file, "-").Output()
	if err != nil {
		t.Fatalf("pdftotext %s: %v", file, err)
	}
	out = regexp.MustCompile(`(?s)Berechnet(\s)mit(\s)stonewrit(\s)\S+;(\s)Referenztabelle(\s)[0-9a-f]{12}`).
		ReplaceAll(out, []byte("Berechnet${1}mit${2}stonewrit${3}VERSION;${4}Referenztabelle${5}TABLE"))
	return regexp.MustCompile(`(?s)Worked(\s)out(\s)with(\s)stonewrit(\s)\S+;(\s)reference(\s)table(\s)[0-9a-f]{12}`).
		ReplaceAllString(string(out), "Worked${1}out${2}with${3}stonewrit${4}VERSION;${5}reference${6}table${7}TABLE")
}

func compareText(t *testing.T, golden, got string) {
	t.Helper()
	if *update {
		writeGolden(t, golden, []byte(got))
		return
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	a, b := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			t.Errorf("%s:%d:\ngot  %s\nwant %s\n-update writes it anew", filepath.Base(golden), i+1, a[i], b[i])
			return
		}
	}
	if len(a) != len(b) {
		t.Errorf("%s: %d lines, want %d", filepath.Base(golden), len(a), len(b))
	}
}

// drawPages draws the pages at 60 dpi with a palette of 256 colours, which keeps
// the pictures small.
func drawPages(t *testing.T, file string) []*image.Paletted {
	t.Helper()
	base := filepath.Join(t.TempDir(), "page")
	if out, err := exec.Command("pdftoppm", "-r", "60", "-png", file, base).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm %s: %v\n%s", file, err, out)
	}
	drawn, err := filepath.Glob(base + "-*.png")
	if err != nil || len(drawn) == 0 {
		t.Fatalf("%s: no page drawn, %v", file, err)
	}
	var pages []*image.Paletted
	for _, name := range drawn {
		src := decodePNG(t, name)
		page := image.NewPaletted(src.Bounds(), palette.Plan9)
		draw.Draw(page, page.Bounds(), src, src.Bounds().Min, draw.Src)
		pages = append(pages, page)
	}
	return pages
}

// Programs smooth letters differently; by this much pixels may differ, and by
// this share of them a page.
const (
	pixelsAlike = 96    // of 255
	mayDiffer   = 0.004 // of all pixels: a missing line of text is more
)

// comparePicture compares a page with the picture kept. A failure leaves what
// was drawn, and the difference in black, beside it.
func comparePicture(t *testing.T, golden string, got *image.Paletted) {
	t.Helper()
	if *update {
		writeGolden(t, golden, encodePNG(t, got))
		return
	}
	want := decodePNG(t, golden)
	area := got.Bounds().Union(want.Bounds())
	diff := image.NewGray(area)
	count := 0
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			diff.SetGray(x, y, color.Gray{Y: 255})
			a, b := grey(got, x, y), grey(want, x, y)
			if max(a-b, b-a) > pixelsAlike {
				diff.SetGray(x, y, color.Gray{})
				count++
			}
		}
	}
	if share := float64(count) / float64(area.Dx()*area.Dy()); share > mayDiffer {
		failed := filepath.Join(filepath.Dir(golden), "failed-"+strings.TrimSuffix(filepath.Base(golden), ".png"))
		writeGolden(t, failed+"-got.png", encodePNG(t, got))
		writeGolden(t, failed+"-diff.png", encodePNG(t, diff))
		t.Errorf("%s differs in %.2f %% of its pixels; see %s-diff.png, -update writes it anew", filepath.Base(golden), 100*share, failed)
	}
}

func grey(img image.Image, x, y int) int {
	return int(color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y)
}

func decodePNG(t *testing.T, name string) image.Image {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(src))
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return img
}

func encodePNG(t *testing.T, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func writeGolden(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, data, 0o644); err != nil {
		t.Fatal(err)
	}
}
