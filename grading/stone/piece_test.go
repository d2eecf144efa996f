package stone_test

import (
	"slices"
	"testing"

	"stonewrit/grading/stone"
)

// The piece file with every key gives the record that was written.
func TestReadPiece(t *testing.T) {
	src := readFile(t, "testdata/schema/good-piece.yaml")
	p, problems := stone.ReadPiece("p.yaml", src, loadTable(t))
	report(t, "p.yaml", problems)
	if got := p.Files(); !slices.Equal(got, []string{"stones/hl-0501.yaml"}) {
		t.Errorf("files: %q", got)
	}
	if p.File() != "p.yaml" || p.Reference != "P-1" || p.Kind != "ring" || p.Report != stone.Appraisal {
		t.Errorf("head: %q %q %q %q", p.File(), p.Reference, p.Kind, p.Report)
	}
	if m := p.Marks; len(m) != 3 || m[0].Text != "585" || m[1].How != "struck" || m[2].How != "read only" {
		t.Errorf("marks: %+v", m)
	}
	for i, want := range []struct {
		none             bool
		plating          string
		tested, defacing bool
	}{{true, "", false, false}, {false, "rhodium", true, false}, {false, "gold", true, true}} {
		m := p.Metals[i]
		if m.Plated.None != want.none || m.Plated.Metal != want.plating || m.Tested() != want.tested || m.Defaces() != want.defacing {
			t.Errorf("metals[%d]: %+v %+v, want %+v", i, m, *m.Plated, want)
		}
	}
	if d := p.Metals[2].Plated.Depth; d.Float() != 2.5 || d.Text != "2.5 um" {
		t.Errorf("thickness: %+v", d)
	}
	// 22.65 ct x 0.2 g = 4.53 g (16 CFR 23.18(b) note: a carat is 200 mg).
	if p.Mass.Gross.Grams != 4.53 || p.Mass.Net.Grams < 4.5299 || p.Mass.Net.Grams > 4.5301 {
		t.Errorf("mass: %+v", p.Mass)
	}
	if at := p.Position("stones[1].count"); at.Line != 17 || !p.Has("stones[1].count") || p.Has("stones[0].count") {
		t.Errorf("stones[1].count at %+v", at)
	}
}

// A counted line is a record of stones in their setting, named on the word of
// somebody unless the file says what the name rests on.
func TestCountedLineAsRecord(t *testing.T) {
	p, _ := stone.ReadPiece("p.yaml", readFile(t, "testdata/schema/good-piece.yaml"), loadTable(t))
	diamonds, rubies := p.Stones[1].Record(), p.Stones[2].Record()
	if !diamonds.Mounted || diamonds.Opinion.Species != "diamond" || diamonds.Opinion.Basis != "" || diamonds.Size.Number() != 12 || !diamonds.Size.InSetting || diamonds.Size.Shape != "round" {
		t.Errorf("diamonds: %+v %+v", diamonds.Opinion, diamonds.Size)
	}
	if rubies.Opinion.Basis != "stated" || rubies.Size.Number() != 1 || rubies.Weight.When != "before setting" {
		t.Errorf("rubies: %+v %+v", rubies.Opinion, rubies.Weight)
	}
}

// A certificate that is told not to exist is not one that nobody speaks of.
func TestNoCertificate(t *testing.T) {
	b, problems := stone.ReadBench("bench.yaml", readFile(t, "testdata/schema/good-bench.yaml"), loadTable(t))
	report(t, "bench.yaml", problems)
	if c := b.Instruments["scales-1"].Certificate; c == nil || !c.None || !b.Has("instruments.scales-1.checks") {
		t.Errorf("scales-1: %+v", c)
	}
	if c := b.Instruments["balance-1"].Certificate; c == nil || c.None || c.Number != "A-1" {
		t.Errorf("balance-1: %+v", c)
	}
	if b.Instruments["lamp-1"].Certificate != nil {
		t.Error("lamp-1 has a certificate")
	}
}
