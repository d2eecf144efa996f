package chart_test

import (
	"flag"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"stonewrit/grading/weight"
	"stonewrit/report"
	"stonewrit/report/pdf"
)

var update = flag.Bool("update", false, "write the golden texts and pictures anew")

// galleries are pages of drawings that are kept as text and pictures.
func galleries(t *testing.T) map[string][]report.Block {
	t.Helper()
	d := drawer(t)
	out := map[string][]report.Block{}
	add := func(name string, f report.Figure, ok bool) {
		if !ok {
			t.Fatalf("%s: nothing is drawn", name)
		}
		out[name] = append(out[name], f)
	}
	index := func(f report.Figure, ok bool) { add("rulers", f, ok) }
	index(d.Index(rubyIndex()))
	index(d.Gravity(rubyGravity()))
	index(d.Index(quartzIndex()))
	index(d.Index(overIndex()))
	bounds := func(f report.Figure, ok bool) { add("bounds", f, ok) }
	bounds(d.Index(doubletIndex()))
	bounds(d.Gravity(betweenGravity()))
	bounds(d.Gravity(sinksGravity()))
	bounds(d.Turns(stillTurns()))
	strip := func(f report.Figure, ok bool) { add("spectra", f, ok) }
	strip(d.Spectrum(rubySpectrum()))
	strip(d.Spectrum(zirconSpectrum()))
	strip(d.Turns(rubyTurns()))
	strip(d.Turns(topazTurns()))
	for name, list := range map[string][]weight.Dimensions{
		"makings": {roundDiamond(), ovalMixed(), plainOval()}, "shapes": {stepCut(), cabochon(), pear()}, "outlines": {heartCut(), bead()},
	} {
		for _, dims := range list {
			f, ok := d.Making(making(t, dims))
			add(name, f, ok)
		}
	}
	return out
}

// TestGolden compares the pages of drawings, as other programs read and draw
// them, with those kept.
func TestGolden(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	for name, blocks := range galleries(t) {
		t.Run(name, func(t *testing.T) {
			doc := report.Document{Title: "Drawings", Sections: []report.Section{{Name: "The evidence, drawn", Blocks: blocks}}}
			pages, err := press.Layout(doc)
			if err != nil {
				t.Fatal(err)
			}
			if len(pages) != 1 {
				t.Errorf("%d pages, want one", len(pages))
			}
			for _, f := range pdf.Faults(pages) {
				t.Error(f)
			}
			data, err := press.Print(doc)
			if err != nil {
				t.Fatal(err)
			}
			file := filepath.Join(t.TempDir(), "drawings.pdf")
			write(t, file, data)
			compareText(t, name, file)
			comparePage(t, name, file)
		})
	}
}

func compareText(t *testing.T, name, file string) {
	t.Helper()
	got := tool(t, "pdftotext", "-raw", "-enc", "UTF-8", file, "-")
	golden := filepath.Join("testdata", name+".txt")
	if *update {
		write(t, golden, got)
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Errorf("the text differs from %s:\n%s", golden, got)
	}
}

// Two renderings may differ by this share of pixels that are not nearly alike.
const (
	alike     = 96 // of 255
	mayDiffer = 0.002
)

func comparePage(t *testing.T, name, file string) {
	t.Helper()
	base := filepath.Join(t.TempDir(), "page")
	tool(t, "pdftoppm", "-gray", "-png", "-r", "100", "-singlefile", file, base)
	drawn, err := os.ReadFile(base + ".png")
	if err != nil {
		t.Fatal(err)
	}
	golden := filepath.Join("testdata", name+".png")
	if *update {
		write(t, golden, drawn)
	}
	share, diff := difference(readPNG(t, base+".png"), readPNG(t, golden))
	if share <= mayDiffer {
		return
	}
	failed := filepath.Join("testdata", "failed-"+name)
	write(t, failed+"-got.png", drawn)
	f, err := os.Create(failed + "-diff.png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, diff); err != nil {
		t.Fatal(err)
	}
	t.Errorf("the page differs from %s in %.2f %% of its pixels; see %s-diff.png", golden, 100*share, failed)
}

// TestDifferenceSeesOneBracket: the comparison sees a bracket that has moved by
// four points.
func TestDifferenceSeesOneBracket(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	in := rubyIndex()
	in.Readings[0].Low += 0.0005
	f, _ := drawer(t).Index(in)
	blocks := galleries(t)["rulers"]
	blocks[0] = f
	data, err := press.Print(report.Document{Title: "Drawings", Sections: []report.Section{{Name: "The evidence, drawn", Blocks: blocks}}})
	if err != nil {
		t.Fatal(err)
	}
	base := filepath.Join(t.TempDir(), "page")
	write(t, base+".pdf", data)
	tool(t, "pdftoppm", "-gray", "-png", "-r", "100", "-singlefile", base+".pdf", base)
	if share, _ := difference(readPNG(t, base+".png"), readPNG(t, filepath.Join("testdata", "rulers.png"))); share <= mayDiffer/20 {
		t.Errorf("a bracket that moved changes %.4f %% of the pixels", 100*share)
	}
}

// difference is the share of pixels that are not alike, and a picture of them.
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

// tool runs a program that is not of this project, or skips where it is not to
// be had.
func tool(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed", name)
	}
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return out
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

func write(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.WriteFile(name, data, 0o644); err != nil {
		t.Fatal(err)
	}
}
