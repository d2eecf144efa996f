package chart_test

import (
	"os"
	"testing"

	"stonewrit/grading/weight"
	"stonewrit/report"
	"stonewrit/report/pdf"
)

func TestView(t *testing.T) {
	name := os.Getenv("VIEW")
	if name == "" {
		t.Skip()
	}
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	d := drawer(t)
	var blocks []report.Block
	add := func(f report.Figure, ok bool) {
		if ok {
			blocks = append(blocks, f)
		}
	}
	add(d.Index(rubyIndex()))
	add(d.Gravity(rubyGravity()))
	add(d.Index(quartzIndex()))
	add(d.Index(overIndex()))
	add(d.Index(doubletIndex()))
	add(d.Gravity(sinksGravity()))
	add(d.Gravity(betweenGravity()))
	add(d.Turns(rubyTurns()))
	add(d.Turns(topazTurns()))
	add(d.Turns(stillTurns()))
	add(d.Spectrum(rubySpectrum()))
	add(d.Spectrum(zirconSpectrum()))
	for _, m := range []weight.Dimensions{ovalMixed(), roundDiamond(), plainOval(), stepCut(), cabochon(), pear(), heartCut(), bead()} {
		add(d.Making(making(t, m)))
	}
	doc := report.Document{Title: "Drawings", Sections: []report.Section{{Name: "The evidence, drawn", Blocks: blocks}}}
	out, err := press.Print(doc)
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile(name, out, 0o644)
}
