package pdf

import (
	"strings"
	"sync"
	"testing"

	"github.com/go-fonts/dejavu/dejavusans"

	"stonewrit/report"
)

// TestOtherFontStandsIn: a character that the family lacks is drawn from the
// other font, and only that one.
func TestOtherFontStandsIn(t *testing.T) {
	text := report.Plain("⌀ 7.82 mm, 1200 ₽")
	doc := report.Document{Title: "Note", Sections: []report.Section{{Blocks: []report.Block{report.Para(text)}}}}
	if got := newPress(t).Missing(doc); len(got) != 2 {
		t.Fatalf("without another font: %v, want the two signs", got)
	}
	press, err := NewPressWith(Family{Name: "with signs", Others: []Font{{Name: "signs", Data: dejavusans.TTF}}})
	if err != nil {
		t.Fatal(err)
	}
	var other string
	pages := layOut(t, press, doc)
	eachPlacedText(pages[0].Items, func(x Text) {
		if x.Face == FaceOther {
			other += x.S
		}
	})
	if other != "⌀₽" {
		t.Errorf("%q is drawn from the other font, want the two signs", other)
	}
	data, err := press.Print(doc)
	if err != nil {
		t.Fatal(err)
	}
	name := t.TempDir() + "/document.pdf"
	writeFile(t, name, data)
	if out := string(tool(t, "pdftotext", name, "-")); !strings.Contains(out, text.String()) {
		t.Errorf("the text reads %q", out)
	}
}

// TestPressIsShared: goroutines that share a press print what one alone prints.
func TestPressIsShared(t *testing.T) {
	press := newPress(t)
	want := digest(t, press, sampleNote())
	got := make([]string, 4)
	var wg sync.WaitGroup
	for i := range got {
		wg.Go(func() { got[i] = digest(t, press, sampleNote()) })
	}
	wg.Wait()
	for i, g := range got {
		if g != want {
			t.Errorf("goroutine %d prints other bytes", i)
		}
	}
}

// A label is as wide as it is set in a drawing, and a chart that measures with
// LabelWidth leaves it that room.
func TestLabelWidth(t *testing.T) {
	press := newPress(t)
	for _, s := range []string{"1.7613 ± 0.0024", "smaragdgrün, дѣло", "WWWW", "illi"} {
		var wide Point
		for _, item := range press.label(report.Label{Text: report.Plain(s)}) {
			b := item.Bounds()
			wide = max(wide, b.X+b.W)
		}
		if got := press.LabelWidth(s); got < wide-0.01 || got > wide+0.01 {
			t.Errorf("%q: measured %.2f pt, set %.2f pt wide", s, got, wide)
		}
	}
}
