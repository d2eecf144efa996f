package weight

import "testing"

func BenchmarkEstimate(b *testing.B) {
	e := newEstimator(b)
	for _, row := range []struct {
		name    string
		stone   Dimensions
		gravity Gravity
	}{
		{"round diamond", roundStone(), Gravity{3.51, 3.53}},
		{"oval mixed", ovalStone(), Gravity{3.99, 4.01}},
		{"step cut", Dimensions{Shape: "cut-corner rectangle", Cut: "step", Length: Measure{7, 0.01}, Width: Measure{5, 0.01}, Depth: Measure{3.2, 0.01}}, Gravity{2.65, 2.75}},
		{"pear brilliant", Dimensions{Shape: "pear", Cut: "brilliant", Length: Measure{7, 0.01}, Width: Measure{5, 0.01}, Depth: Measure{3.2, 0.01}}, Gravity{2.65, 2.75}},
		{"cabochon", Dimensions{Shape: "oval", Cut: "cabochon", Length: Measure{7, 0.01}, Width: Measure{5, 0.01}, Depth: Measure{3.2, 0.01}}, Gravity{2.65, 2.75}},
	} {
		b.Run(row.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := e.Estimate(row.stone, row.gravity); err != nil {
					b.Fatal(err)
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
