package chart_test

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/report"
	"stonewrit/report/pdf"
)

// tables are read once: they are the same for every test.
var tables = sync.OnceValues(grading.Load)

func loaded(t testing.TB) *grading.Tables {
	t.Helper()
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	return tb
}

// demo examines the invented stones of the demo folder, by their file names.
func demo(t testing.TB) map[string]*grading.Examined {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "demo", "hl-*.yaml"))
	if err != nil || len(files) < 10 {
		t.Fatalf("%d stones in the demo folder, %v", len(files), err)
	}
	tb := loaded(t)
	bench := benchOf(t, tb)
	out := map[string]*grading.Examined{}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(src), "\nstone: ") {
			continue // a piece that holds stones
		}
		name := strings.TrimSuffix(filepath.Base(f), ".yaml")
		s, problems := stone.Read(name, src, tb.Gems)
		if problems.Has(stone.Error) {
			t.Fatalf("%s: %+v", name, problems)
		}
		out[name] = tb.Examine(s, bench, time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC))
	}
	return out
}

func benchOf(t testing.TB, tb *grading.Tables) *stone.Bench {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("..", "..", "testdata", "demo", "bench.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	b, problems := stone.ReadBench("bench.yaml", src, tb.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%+v", problems)
	}
	return b
}

// drawings names what was drawn, by the alternative texts.
func drawings(figures []report.Figure) string {
	var out []string
	for _, f := range figures {
		switch {
		case strings.HasPrefix(f.Alt, "Ruler of the refractive index"):
			out = append(out, "index")
		case strings.HasPrefix(f.Alt, "Ruler of the specific gravity"):
			out = append(out, "gravity")
		case strings.Contains(f.Alt, "turns on the refractometer"):
			out = append(out, "turns")
		case strings.HasPrefix(f.Alt, "Spectrum"):
			out = append(out, "spectrum")
		case strings.HasPrefix(f.Alt, "Making drawing"):
			out = append(out, "making")
		}
	}
	return strings.Join(out, " ")
}

// TestEvidenceOfTheDemo: each stone has the drawings that its file has readings
// for, all of them sound, and laid out without fault.
func TestEvidenceOfTheDemo(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{
		"hl-0404": "",                                    // twelve small stones of differing size, tested for heat alone
		"hl-0409": "",                                    // a strand of pearls of differing size
		"hl-0411": "making",                              // nothing was tested
		"hl-0412": "index gravity turns spectrum making", // all that the format's description shows
		"hl-0406": "index gravity making",                // a spot reading has no turns
		"hl-0403": "index gravity spectrum making",       // over the limit
	}
	d := drawer(t)
	for name, e := range demo(t) {
		figures := d.Evidence(e, loaded(t))
		if expected, ok := want[name]; ok && drawings(figures) != expected {
			t.Errorf("%s: drawn are %q, want %q", name, drawings(figures), expected)
		}
		var blocks []report.Block
		for _, f := range figures {
			lookAt(t, f, true).sound()
			blocks = append(blocks, f)
		}
		pages, err := press.Layout(report.Document{Title: name, Sections: []report.Section{{Name: "The evidence, drawn", Blocks: blocks}}})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range pdf.Faults(pages) {
			t.Errorf("%s: %v", name, f)
		}
	}
}

// TestEvidenceOfOneStone: the figures of the stone of the format's description,
// worked out by hand from its readings, less the offset of the quartz check:
// 1.762 - 0.00075 and 1.770 - 0.00075, and 0.3040 g in air over 0.2281 g in
// water at 21.5 C.
func TestEvidenceOfOneStone(t *testing.T) {
	figures := drawer(t).Evidence(demo(t)["hl-0412"], loaded(t))
	if len(figures) != 5 {
		t.Fatalf("%d drawings", len(figures))
	}
	index, gravity, turns, spectrum := lookAt(t, figures[0], true), lookAt(t, figures[1], true), lookAt(t, figures[2], true), lookAt(t, figures[3], true)
	scale, ticks := index.levelScale(), index.ticks()
	if len(ticks) != 2 || !close2(scale.at(ticks[0]), 1.76125, 2e-5) || !close2(scale.at(ticks[1]), 1.76925, 2e-5) {
		t.Errorf("index ticks at %v", ticks)
	}
	if !index.says("0.0080") || !index.says("ruby") {
		t.Errorf("the index ruler says %q", index.texts())
	}
	scale, ticks = gravity.levelScale(), gravity.ticks()
	if len(ticks) != 1 || !close2(scale.at(ticks[0]), 3.993, 1e-3) {
		t.Errorf("gravity tick at %v", ticks)
	}
	discs, rings := turns.discs()
	if len(discs) != 4 || len(rings) != 4 || !close2(turns.uprightScale().at(discs[2].Y), 1.768-0.00075, 2e-5) {
		t.Errorf("turns: %v, %v", discs, rings)
	}
	for _, text := range []string{"694", "668", "659", "476", "500–610", "450", "694.2", "published for ruby"} {
		if !spectrum.says(text) {
			t.Errorf("the spectrum lacks %q: %q", text, spectrum.texts())
		}
	}
}

// TestEvidenceOfAComposite: a reading of each part, each with its place, over
// the ranges of the parts.
func TestEvidenceOfAComposite(t *testing.T) {
	tb := loaded(t)
	src := `stonewrit: 1
stone: D-1
report: note
examined: 2026-10-14
examiner: okafor
opinion:
  growth: composite
  layers: [{part: crown, material: almandine}, {part: pavilion, material: glass}]
appearance: {colour: red, transparency: transparent}
tests:
  - {test: refractometer, instrument: refractometer-1, place: crown, readings: [1.77]}
  - {test: refractometer, instrument: refractometer-1, place: pavilion, readings: [1.52]}
  - {test: specific gravity, method: liquid, liquid: 3.32, stone: sinks}
  - {test: specific gravity, method: liquid, liquid: 2.62, stone: sinks}
  - {test: specific gravity, method: liquid, liquid: 4.0, stone: floats}
`
	s, problems := stone.Read("d-1.yaml", []byte(src), tb.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%+v", problems)
	}
	e := tb.Examine(s, benchOf(t, tb), time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC))
	figures := drawer(t).Evidence(e, tb)
	if got := drawings(figures); got != "index gravity" {
		t.Fatalf("drawn are %q: %+v", got, e.Problems)
	}
	index, gravity := lookAt(t, figures[0], true), lookAt(t, figures[1], true)
	index.sound()
	all := strings.Join(index.texts(), "|")
	for _, text := range []string{"crown\u00a01.7", "pavilion\u00a01.5", "almandine, crown", "glass, pavilion"} {
		if !strings.Contains(all, text) {
			t.Errorf("the ruler lacks %q: %q", text, all)
		}
	}
	if !gravity.says("above 3.32") || !gravity.says("below 4.00") {
		t.Errorf("of several liquids the nearest do not bound it: %q", gravity.texts())
	}
}

func BenchmarkEvidence(b *testing.B) {
	e, tb, d := demo(b)["hl-0412"], loaded(b), drawer(b)
	for b.Loop() {
		d.Evidence(e, tb)
	}
}
