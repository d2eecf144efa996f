package weight

import "testing"

// benchStones are the kinds of stones that cost differently.
func benchStones() []struct {
	name    string
	stone   Dimensions
	gravity Gravity
} {
	plain := func(shape, cut string) Dimensions {
		return Dimensions{Shape: shape, Cut: cut, Length: Measure{7, 0.01}, Width: Measure{5, 0.01}, Depth: Measure{3.2, 0.01}}
	}
	return []struct {
		name    string
		stone   Dimensions
		gravity Gravity
	}{
		{"round diamond", roundStone(), Gravity{3.51, 3.53}},
		{"oval mixed", ovalStone(), Gravity{3.99, 4.01}},
		{"cushion brilliant", plain("cushion", "brilliant"), Gravity{2.65, 2.75}},
		{"step cut", plain("cut-corner rectangle", "step"), Gravity{2.65, 2.75}},
		{"pear brilliant", plain("pear", "brilliant"), Gravity{2.65, 2.75}},
		{"marquise brilliant", plain("marquise", "brilliant"), Gravity{2.65, 2.75}},
		{"curved triangle", plain("curved triangle", "brilliant"), Gravity{2.65, 2.75}},
		{"rose", plain("oval", "rose"), Gravity{2.65, 2.75}},
		{"cabochon", plain("oval", "cabochon"), Gravity{2.65, 2.75}},
	}
}

func BenchmarkEstimate(b *testing.B) {
	e := newEstimator(b)
	for _, row := range benchStones() {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := e.Estimate(row.stone, row.gravity); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkContradictions(b *testing.B) {
	e := newEstimator(b)
	misread := roundStone()
	misread.Width.Value = 5.48
	beyond := roundStone()
	beyond.CrownHeight.Value = 11
	for _, row := range []struct {
		name   string
		stone  Dimensions
		carats Measure
		found  int
	}{
		{"good diamond", roundStone(), Measure{1.03, rounding}, 0},
		{"good oval", ovalStone(), Measure{1.49, rounding}, 0},
		{"misread digit", misread, Measure{1.03, rounding}, 1},
		{"no slip explains it", beyond, Measure{1.03, rounding}, 2},
	} {
		gravity := Gravity{diamondGravity, diamondGravity}
		if !row.stone.AsDiamond {
			gravity = Gravity{4, 4}
		}
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if found := e.Contradictions(row.stone, row.carats, gravity); len(found) != row.found {
					b.Fatalf("%d findings: %v", len(found), found)
				}
			}
		})
	}
}

func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		if _, err := New(); err != nil {
			b.Fatal(err)
		}
	}
}
