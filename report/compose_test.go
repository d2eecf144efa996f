package report_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/report"
	"stonewrit/templates"
)

var issued = time.Date(2026, 10, 16, 0, 0, 0, 0, time.UTC)

// Tables and wording are read once: they are the same for every test.
var (
	tables   = sync.OnceValues(grading.Load)
	wordings = sync.OnceValues(func() (*templates.Set, error) { return templates.Load(nil) })
)

// input examines a stone of testdata/stones and makes what a document needs.
func input(t testing.TB, name string) report.Input {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("testdata", "stones", name))
	if err != nil {
		t.Fatal(err)
	}
	return inputOf(t, name, src)
}

func inputOf(t testing.TB, name string, src []byte) report.Input {
	t.Helper()
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	benchSrc, err := os.ReadFile(filepath.Join("testdata", "stones", "bench.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	b, problems := stone.ReadBench("bench.yaml", benchSrc, tb.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("bench.yaml: %+v", problems)
	}
	s, problems := stone.Read(name, src, tb.Gems)
	if problems.Has(stone.Error) {
		for _, p := range problems {
			t.Errorf("%s: %s: %s", p.Where(name), p.Message, p.Hint)
		}
		t.FailNow()
	}
	e := tb.Examine(s, b, issued)
	js, err := e.JSON(nil)
	if err != nil {
		t.Fatal(err)
	}
	wording, err := wordings()
	if err != nil {
		t.Fatal(err)
	}
	in := report.Input{
		Examined: e, Gems: tb.Gems, Wording: wording, Number: "KL-2026-000417-62", UUID: "3b0c8f52-6f0e-4b4e-9a55-0e2b6a0f7d11",
		Issued: issued, StoneFile: src, JSON: js, Program: "stonewrit 0.1.0",
	}
	for range s.Photos {
		in.Photos = append(in.Photos, picture(t))
	}
	return in
}

// picture is a drawing of a red stone of 640 by 480 pixels.
func picture(t testing.TB) photos.Photo {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 640, 480))
	for y := range 480 {
		for x := range 640 {
			dx, dy := float64(x-320)/280, float64(y-240)/210
			c := color.RGBA{236, 234, 230, 255}
			if dx*dx+dy*dy < 1 {
				c = color.RGBA{uint8(150 + (x*7+y*3)%60), 30, 60, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	p, err := photos.Decode("face.jpg", b.Bytes(), photos.Options{Box: photos.Size{Width: 320, Height: 320}})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func compose(t testing.TB, name string) report.Document {
	t.Helper()
	doc, err := report.Compose(input(t, name))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}
