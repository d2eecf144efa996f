package pdf

import (
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"stonewrit/report"
)

var update = flag.Bool("update", false, "write the golden texts and pictures anew")

// goldens are the invented documents whose pages are kept as text and pictures.
func goldens() map[string]report.Document {
	return map[string]report.Document{"note": sampleNote(), "appraisal": sampleAppraisal(), "draft": draftWithoutPhotos()}
}

// TestGoldenText compares the text that another program reads from the file:
// wording, order, numbers.
func TestGoldenText(t *testing.T) {
	for name, doc := range goldens() {
		t.Run(name, func(t *testing.T) {
			got := tool(t, "pdftotext", "-raw", "-enc", "UTF-8", printed(t, doc), "-")
			golden := filepath.Join("testdata", name+".txt")
			if *update {
				writeFile(t, golden, got)
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if string(got) != string(want) {
				t.Errorf("the text differs from %s:\n%s", golden, firstDifference(string(got), string(want)))
			}
		})
	}
}

func firstDifference(got, want string) string {
	n := 0
	for n < len(got) && n < len(want) && got[n] == want[n] {
		n++
	}
	part := func(s string) string { return s[max(0, n-40):min(len(s), n+60)] }
	return fmt.Sprintf("got  %q\nwant %q", part(got), part(want))
}

// Two renderings of a page may differ by this share of pixels that are not
// nearly alike: programs smooth letters differently.
const (
	alike      = 96    // of 255
	mayDiffer  = 0.004 // of all pixels
	resolution = 72
)

// TestGoldenPages compares the pages as another program draws them with the
// pictures kept. A failure leaves what was drawn, and the difference, beside
// the golden picture.
func TestGoldenPages(t *testing.T) {
	for name, doc := range goldens() {
		t.Run(name, func(t *testing.T) {
			file := printed(t, doc)
			for i := range layOut(t, newPress(t), doc) {
				comparePage(t, file, name, i+1)
			}
		})
	}
}

func comparePage(t *testing.T, file, name string, page int) {
	t.Helper()
	base := filepath.Join(t.TempDir(), "page")
	n := fmt.Sprint(page)
	tool(t, "pdftoppm", "-gray", "-png", "-r", fmt.Sprint(resolution), "-f", n, "-l", n, "-singlefile", file, base)
	drawn, err := os.ReadFile(base + ".png")
	if err != nil {
		t.Fatal(err)
	}
	golden := filepath.Join("testdata", fmt.Sprintf("%s-p%d.png", name, page))
	if *update {
		writeFile(t, golden, drawn)
	}
	got, want := readPNG(t, base+".png"), readPNG(t, golden)
	share, diff := difference(got, want)
	if share <= mayDiffer {
		return
	}
	failed := filepath.Join("testdata", fmt.Sprintf("failed-%s-p%d", name, page))
	writeFile(t, failed+"-got.png", drawn)
	f, err := os.Create(failed + "-diff.png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, diff); err != nil {
		t.Fatal(err)
	}
	t.Errorf("page %d differs from %s in %.2f %% of its pixels; see %s-diff.png", page, golden, 100*share, failed)
}

// difference returns the share of pixels that are not alike, and a picture of
// them: black where they differ, white elsewhere.
func difference(a, b image.Image) (float64, image.Image) {
	r := a.Bounds().Union(b.Bounds())
	diff := image.NewGray(r)
	count := 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			diff.SetGray(x, y, color.Gray{Y: 255})
			p, q := int(level(a, x, y)), int(level(b, x, y))
			if max(p-q, q-p) > alike {
				count++
				diff.SetGray(x, y, color.Gray{})
			}
		}
	}
	return float64(count) / float64(r.Dx()*r.Dy()), diff
}

func level(img image.Image, x, y int) uint8 {
	return color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y
}

// TestDifferenceSeesOneLine shows that the comparison is sharp enough to see a
// line of text that is missing or has moved.
func TestDifferenceSeesOneLine(t *testing.T) {
	doc := sampleNote()
	page := readPNG(t, filepath.Join("testdata", "note-p1.png"))
	doc.Sections[1].Blocks = doc.Sections[1].Blocks[:1] // without the line on other materials
	base := filepath.Join(t.TempDir(), "page")
	tool(t, "pdftoppm", "-gray", "-png", "-r", fmt.Sprint(resolution), "-f", "1", "-l", "1", "-singlefile", printed(t, doc), base)
	if share, _ := difference(readPNG(t, base+".png"), page); share <= mayDiffer {
		t.Errorf("a missing line changes %.3f %% of the pixels, and passes", 100*share)
	}
}

func readPNG(t *testing.T, name string) image.Image {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

func writeFile(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.WriteFile(name, data, 0o644); err != nil {
		t.Fatal(err)
	}
}
