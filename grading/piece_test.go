package grading_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"stonewrit/grading"
	"stonewrit/grading/stone"
)

// pieceOf reads a piece with its stones and bench, and examines it. edit
// changes the file, if given.
func pieceOf(t *testing.T, tables *grading.Tables, name string, edit func(string) string) *grading.ExaminedPiece {
	t.Helper()
	dir := filepath.Dir(name)
	read := func(name string) []byte {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return src
	}
	bench, problems := stone.ReadBench("bench.yaml", read(filepath.Join(dir, "bench.yaml")), tables.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%+v", problems)
	}
	src := string(read(name))
	if edit != nil {
		src = edit(src)
	}
	p, problems := stone.ReadPiece(filepath.Base(name), []byte(src), tables.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%+v", problems)
	}
	var set []*grading.Examined
	for _, f := range p.Files() {
		s, problems := stone.Read(f, read(filepath.Join(dir, f)), tables.Gems)
		if problems.Has(stone.Error) {
			t.Fatalf("%s: %+v", f, problems)
		}
		set = append(set, tables.ExamineSet(s, p, bench, afterDemo))
	}
	return tables.ExaminePiece(p, set, bench, afterDemo)
}

const demoRing = demo + "/hl-0500.yaml"

// The ring of the demo has nothing to mend, and neither has its stone.
func TestDemoPiece(t *testing.T) {
	e := pieceOf(t, load(t), demoRing, nil)
	for _, p := range e.Problems {
		t.Errorf("%s: %s: %s", p.Severity, p.Where("hl-0500.yaml"), p.Message)
	}
	for _, i := range e.Items {
		for _, p := range i.Stone.Problems {
			t.Errorf("item %d: %s: %s", i.Number, p.Severity, p.Message)
		}
	}
}

// Items are numbered from 1, each with its name and its weight. By hand: six
// round brilliants of 2.00 x 1.20 mm at 0.0061 x d x d x depth (the plain factor
// of the project's weight package) are 6 x 0.02928 = 0.1757 ct; the table of
// the package takes a little off for a smaller girdle.
func TestItems(t *testing.T) {
	e := pieceOf(t, load(t), demoRing, nil)
	var got []string
	for _, i := range e.Items {
		got = append(got, fmt.Sprintf("%d %s %d %s %s counted %v", i.Number, i.Name, i.Count, i.Carats, i.Basis, i.Counted))
	}
	want := []string{
		"1 aquamarine (natural beryl) 1 1.81 weighed counted false",
		"2 natural or laboratory-grown diamonds, growth not determined 6 0.17 estimated counted true",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
	estimate := e.Items[1].Stone.Weight.Estimate.Chosen.Carats
	if math.Abs(estimate.Value-6*0.0061*2*2*1.2) > estimate.U {
		t.Errorf("six brilliants weigh %v ct, by hand 0.1757", estimate.Value)
	}
	if len(e.Totals) != 0 {
		t.Errorf("totals over species: %+v", e.Totals)
	}
}

// The working of the demo ring with a pencil, as the README of the demo tells
// it: 1.81 x 400.00; 0.17 x 500.00; (4.53 - 1.81 x 0.2 - 0.17 x 0.2) x 0.750 x
// 80.00; 300.00; 10 % of the two lines above; 20 % tax; to the nearest 50.
func TestPieceWorth(t *testing.T) {
	r := pieceOf(t, load(t), demoRing, nil).Worth
	var got []string
	for _, l := range r.Lines {
		got = append(got, l.What+" "+l.Amount)
	}
	want := []string{"centre stone 724.00", "side stones 85.00", "metal 248.04", "labour 300.00", "workshop margin 54.80"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if r.Cost.Amount != "1411.84" || r.CostTaxed.Amount != "1694.21" || r.Conclusion.Amount != "1700.00" {
		t.Errorf("%s, with tax %s, concluded %s; want 1411.84, 1694.21, 1700.00", r.Cost.Amount, r.CostTaxed.Amount, r.Conclusion.Amount)
	}
}

// Stones of one name in several items have a total; other names have none of
// their own, and are never added to them (16 CFR 23.18; CIBJO Diamond Book 2017,
// 4.1.2).
func TestTotals(t *testing.T) {
	more := `  - {what: diamond, growth: undetermined, known_by: all by the thermal tester, count: 2, weight: {stated: 0.31 ct, by: the invoice}, diameter: 3.4 mm, setting: claw}
  - {what: diamond, growth: laboratory-grown, known_by: the invoice, count: 2, weight: {stated: 0.40 ct, by: the invoice}, diameter: 3.4 mm, setting: claw}
  - {what: ruby, growth: undetermined, known_by: spectroscope, weight: {stated: 0.20 ct, by: the invoice}, diameter: 3.4 mm, setting: claw, count: 1}
`
	e := pieceOf(t, load(t), demoRing, func(s string) string { return strings.Replace(s, "size: {ring", more+"size: {ring", 1) })
	if len(e.Totals) != 1 {
		t.Fatalf("%d totals, want one: %+v", len(e.Totals), e.Totals)
	}
	total := e.Totals[0]
	if total.Carats != "0.48" || total.Count != 8 || total.Basis != grading.Stated || !slices.Equal(total.Items, []int{2, 3}) || !strings.HasPrefix(total.Name.String(), "natural or laboratory-grown diamonds") {
		t.Errorf("%+v, want 0.17 + 0.31 ct of items 2 and 3", total)
	}
}

// Rows change one thing of the demo ring; each tells what is to be found then,
// as severity, path and statement.
func TestPieceFindings(t *testing.T) {
	tables := load(t)
	for _, tt := range []struct{ name, old, new, want, why string }{
		{"no metals", "metals:\n  - {part: shank and head, metal: gold, colour: yellow, fineness: 750, known_by: mark, plated: none}\n", "", "missing metals metal-fineness", "JISO 79 mounting fields"},
		{"bare gold", "fineness: 750, known_by: mark, plated", "plated", "missing metals[0] gold-word", "16 CFR 23.3(b)(2)"},
		{"bare silver", "metal: gold, colour: yellow, fineness: 750, known_by: mark", "metal: silver", "missing metals[0] silver-word", "16 CFR 23.5(b)"},
		{"low platinum without its metals", "metal: gold, colour: yellow, fineness: 750", "metal: platinum, fineness: 800", "missing metals[0] platinum", "16 CFR 23.6"},
		{"low platinum with its metals", "metal: gold, colour: yellow, fineness: 750", "metal: platinum, fineness: 800, alloy: [{metal: iridium, fineness: 200}]", "", "16 CFR 23.6"},
		{"layer not told", ", plated: none", "", "missing metals[0] gold-coated", "16 CFR 23.3(b)(3)"},
		{"measured below the mark", "known_by: mark", "known_by: assay, result: 746 of 1000, measured: 746", "missing metals[0].measured no-minus;missing metals[0].measured us-tolerance", "ISO 9202: none; 15 USC 295: 3 per mille"},
		{"measured within the law of the United States", "known_by: mark", "known_by: assay, result: 748 of 1000, measured: 748", "missing metals[0].measured no-minus", "ISO 9202: none; 15 USC 295: 3 per mille"},
		{"touchstone without consent", "known_by: mark", "known_by: touchstone, result: \"750\"", "warning metals[0] acid-touch", "handbook practice"},
		{"mark without how", ", how: read only", "", "missing marks[1] metal-fineness", "tested or only read"},
		{"no mass", "mass: {gross: 4.53 g, instrument: balance-1}\n", "", "missing mass metal-mass", "JISO 79"},
		{"net that does not fit", "gross: 4.53 g,", "gross: 4.53 g, net: 4.00 g, how: weighed before setting,", "finding mass.net metal-mass", "0.53 g for 0.40 g of stones"},
		{"net that fits", "gross: 4.53 g,", "gross: 4.53 g, net: 4.13 g, how: weighed before setting,", "", "0.40 g for 0.396 g of stones"},
		{"setting not told", "setting: claw, ", "", "missing stones[0] setting", "JISO 79"},
		{"no construction", "construction: {words: \"cast shank, the head soldered on\"}\n", "", "missing construction setting", "JISO 79"},
		{"hand work", "cast shank", "handmade shank", "missing construction.words setting", "16 CFR 23.2"},
		{"hand work shown", "{words: \"cast shank, the head soldered on\"}", "{words: handmade, by_hand: file marks}", "", "16 CFR 23.2"},
		{"no description", "description: \"yellow metal ring, a pale blue oval in four claws between three small colourless round ones on each shoulder\"\n", "", "warning description item-layman", "26 CFR 1.170A-13(c)(3)"},
		{"bare gold in words", "description: \"yellow metal ring", "description: \"gold ring", "finding description gold-word", "16 CFR 23.3(b)(2)"},
		{"gold with its karat in words", "description: \"yellow metal ring", "description: \"18 K gold ring", "", "16 CFR 23.3(b)(2)"},
		{"sterling that is none", "description: \"yellow metal ring", "description: \"sterling ring", "finding description silver-word", "16 CFR 23.5(b)(2)"},
		{"vermeil that is none", "description: \"yellow metal ring", "description: \"vermeil ring", "missing description vermeil", "16 CFR 23.4(b)"},
		{"bare diamonds in words", "small colourless round ones", "small diamonds", "finding description diamond-iso", "ISO 18323, 2.2 note"},
		{"misnomer in words", "a pale blue oval", "a Brazilian aquamarine", "finding description varietal", "16 CFR 23.26"},
		{"number of side stones", "    count: 6\n", "", "missing stones[1] ins-mounting", "like stones grouped"},
		{"growth of side stones", "    growth: undetermined\n", "", "missing stones[1] natural-or-not", "CIBJO Gemstone Book 3.1"},
		{"no size of side stones", "    diameter: [1.98 mm, 2.02 mm]\n    depth: 1.20 mm\n    hidden: depth\n", "", "error worth.lines[1] ;error worth.lines[2].mass_is ;error worth.lines[4].of[0] ;missing stones[1] ct-estimated", "no weight, so no price a carat"},
		{"grades without a system", "    system: \"IDC Rules\"\n", "", "missing stones[1] grade-system", "16 CFR 23.1 note"},
		{"examined tomorrow", "examined: [2026-10-08, 2026-10-09]", "examined: 2026-11-26", "error examined ", "the day is 2026-11-25"},
	} {
		e := pieceOf(t, tables, demoRing, func(s string) string {
			if !strings.Contains(s, tt.old) {
				t.Fatalf("%s: the file does not hold %q", tt.name, tt.old)
			}
			return strings.Replace(s, tt.old, tt.new, 1)
		})
		var got []string
		for _, p := range e.Problems {
			got = append(got, fmt.Sprintf("%s %s %s", p.Severity, p.Path, p.Statement))
			if p.Line == 0 || p.Message == "" {
				t.Errorf("%s: %+v has no place or no words", tt.name, p)
			}
		}
		slices.Sort(got)
		want := strings.FieldsFunc(tt.want, func(r rune) bool { return r == ';' })
		if !slices.Equal(got, want) {
			t.Errorf("%s: got %q, want %q: %s", tt.name, got, want, tt.why)
		}
	}
}

// A piece whose stone file cannot be used is not examined.
func TestPieceWithoutItsStone(t *testing.T) {
	tables := load(t)
	p := pieceOf(t, tables, demoRing, nil).Piece
	e := tables.ExaminePiece(p, []*grading.Examined{nil}, nil, afterDemo)
	if len(e.Problems) != 1 || e.Problems[0].Severity != stone.Error || e.Problems[0].Path != "stones[0].file" {
		t.Errorf("%+v", e.Problems)
	}
}

// A stone in two pieces is told in both; the folder counts, not only the name.
func TestSetTwice(t *testing.T) {
	tables := load(t)
	read := func(file, reference, stones string) *stone.Piece {
		p, problems := stone.ReadPiece(file, []byte("stonewrit: 1\npiece: "+reference+"\nkind: ring\nreport: note\nexamined: 2026-10-14\nexaminer: okafor\nstones: "+stones+"\n"), tables.Gems)
		if problems.Has(stone.Error) {
			t.Fatal(problems)
		}
		return p
	}
	ring := read("shop/ring.yaml", "P-1", "[{what: ruby}, {file: s/a.yaml}]")
	pendant := read("shop/s/pendant.yaml", "P-2", "[{file: a.yaml}]")
	other := read("other/ring.yaml", "P-3", "[{file: s/a.yaml}]")
	told := grading.SetTwice([]*stone.Piece{ring, pendant, other})
	if len(told) != 2 || len(told[other]) != 0 {
		t.Fatalf("%+v", told)
	}
	if p := told[ring][0]; p.Path != "stones[1].file" || p.Line != 7 || p.Message.String() != "s/a.yaml is set in P-2 too, which is shop/s/pendant.yaml" {
		t.Errorf("%+v", p)
	}
	if p := told[pendant][0]; p.Path != "stones[0].file" || p.Message.String() != "a.yaml is set in P-1 too, which is shop/ring.yaml" {
		t.Errorf("%+v", p)
	}
}
