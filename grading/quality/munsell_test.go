package quality

import (
	"testing"
)

func TestParseMunsell(t *testing.T) {
	for _, c := range []struct {
		text, want string
		hue        float64
		why        string
	}{
		{"5R 4/12", "5R 4/12", 5, "ASTM D1535: hue, value, a stroke, chroma"},
		{"2.5gy 6.5/8", "2.5GY 6.5/8", 32.5, "small letters, halves, the fourth family of hues"},
		{"7.5 PB 3 / 10", "7.5PB 3/10", 77.5, "spaces do not matter"},
		{"10RP3/10", "10RP 3/10", 100, "the end of the circle"},
		{"0R 4/6", "10RP 4/6", 100, "0R is the same hue as 10RP"},
		{"10R 4/6", "10R 4/6", 10, "a hue belongs to the family it ends"},
		{"N 5/", "N 5/", 0, "ASTM D1535: a neutral grey"},
		{"N5", "N 5/", 0, "without the stroke"},
		{"N 5/0", "N 5/", 0, "chroma written out"},
		{"5Y 8/0", "N 8/", 0, "no chroma is a neutral grey"},
	} {
		m, err := ParseMunsell(c.text)
		if err != nil || m.String() != c.want || m.Hue != c.hue {
			t.Errorf("%q: got %v at hue %g, %v; want %s at %g: %s", c.text, m, m.Hue, err, c.want, c.hue, c.why)
		}
	}
	for _, bad := range []string{"", "red", "5R", "5R 4", "11R 4/6", "5R 11/6", "5R 4/60", "5X 4/6", "5R 4/12 extra", "N 11/", "N", "R 4/6", "5R 4,5/12"} {
		if m, err := ParseMunsell(bad); err == nil {
			t.Errorf("%q was read as %v", bad, m)
		}
	}
}

func FuzzParseMunsell(f *testing.F) {
	for _, seed := range []string{"5R 4/12", "N 5/", "10RP 3.5/0.5", "0.1R 9/2"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		m, err := ParseMunsell(text)
		if err != nil {
			return
		}
		again, err := ParseMunsell(m.String())
		if err != nil {
			t.Fatalf("%q printed as %q: %v", text, m, err)
		}
		if again.String() != m.String() {
			t.Errorf("%q: %v, then %v", text, m, again)
		}
	})
}
