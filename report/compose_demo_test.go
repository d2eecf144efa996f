package report_test

import (
	"bytes"
	"image"
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
)

const demo = "../testdata/demo"

// afterDemo is a day on which every stone of the demo is examined.
var afterDemo = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// A demoFile is a stone or piece file of the demo, or a changed one in its
// place.
type demoFile struct {
	name string
	src  []byte
}

func readDemo(t testing.TB, name string) demoFile {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(demo, name))
	if err != nil {
		t.Fatal(err)
	}
	return demoFile{name, src}
}

// demoBench is the bench of the demo, or a changed one.
func demoBench(t testing.TB, src []byte) *stone.Bench {
	t.Helper()
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	b, problems := stone.ReadBench("bench.yaml", src, tb.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("bench.yaml: %+v", problems)
	}
	return b
}

// examined is a demo file examined: one of the two.
type examined struct {
	stone *grading.Examined
	piece *grading.ExaminedPiece
	set   []report.Set
}

// problems are those of the file, and of a piece those of its stones too.
func (e examined) problems() stone.Problems {
	if e.piece == nil {
		return e.stone.Problems
	}
	all := append(stone.Problems{}, e.piece.Problems...)
	for _, i := range e.piece.Items {
		if !i.Counted {
			all = append(all, i.Stone.Problems...)
		}
	}
	return all
}

func examineDemo(t testing.TB, f demoFile, b *stone.Bench) examined {
	t.Helper()
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	if stone.Sniff(f.src) != stone.SortPiece {
		s, problems := stone.Read(f.name, f.src, tb.Gems)
		if problems.Has(stone.Error) {
			t.Fatalf("%s: %+v", f.name, problems)
		}
		return examined{stone: tb.Examine(s, b, afterDemo)}
	}
	p, problems := stone.ReadPiece(f.name, f.src, tb.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%s: %+v", f.name, problems)
	}
	var out examined
	var stones []*grading.Examined
	for _, name := range p.Files() {
		one := readDemo(t, name)
		s, problems := stone.Read(name, one.src, tb.Gems)
		if problems.Has(stone.Error) {
			t.Fatalf("%s: %+v", name, problems)
		}
		stones = append(stones, tb.ExamineSet(s, p, b, afterDemo))
		set := report.Set{StoneFile: one.src}
		for range s.Photos {
			set.Photos = append(set.Photos, oneDot(t))
		}
		out.set = append(out.set, set)
	}
	out.piece = tb.ExaminePiece(p, stones, b, afterDemo)
	return out
}

// demoInput is what the document of a demo file is made of.
func demoInput(t testing.TB, f demoFile, b *stone.Bench) report.Input {
	t.Helper()
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	wording, err := wordings()
	if err != nil {
		t.Fatal(err)
	}
	e := examineDemo(t, f, b)
	in := report.Input{
		Examined: e.stone, Piece: e.piece, Set: e.set, Gems: tb.Gems, Wording: wording, StoneFile: f.src, Program: "stonewrit 0.1.0",
		Number: "HL-2026-000417-62", UUID: "3b0c8f52-6f0e-4b4e-9a55-0e2b6a0f7d11", Issued: afterDemo,
	}
	var list []stone.Photo
	if e.piece != nil {
		list = e.piece.Piece.Photos
		in.JSON, err = e.piece.JSON()
	} else {
		list = e.stone.Stone.Photos
		in.JSON, err = e.stone.JSON(nil)
	}
	if err != nil {
		t.Fatal(err)
	}
	for range list {
		in.Photos = append(in.Photos, oneDot(t))
	}
	return in
}

// dot is the smallest picture: what a document says does not depend on more.
var dot = sync.OnceValues(func() (photos.Photo, error) {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewRGBA(image.Rect(0, 0, 8, 8)), nil); err != nil {
		return photos.Photo{}, err
	}
	return photos.Decode("dot.jpg", b.Bytes(), photos.Options{})
})

func oneDot(t testing.TB) photos.Photo {
	t.Helper()
	p, err := dot()
	if err != nil {
		t.Fatal(err)
	}
	return p
}
