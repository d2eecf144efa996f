package quality

import "testing"

// 16 CFR 23.18: a claim is true to its last decimal.
func TestClaims(t *testing.T) {
	for _, c := range []struct {
		text, carats, points, fraction, low, high string
		total                                     bool
	}{
		{".5 carat", ".5", "", "", "0.495", "0.504", false},
		{"0.47 ct", "0.47", "", "", "0.465", "0.474", false},
		{"1 ct", "1", "", "", "0.995", "1.004", false},
		{"total weight 1.20 cts", "1.20", "", "", "1.195", "1.204", true},
		{"25 points", "", "25", "", "", "", false},
		{"a 25-pointer, 0.25 ct", "0.25", "25", "", "0.245", "0.254", false},
		{"1/2 ct", "", "", "1/2", "", "", false},
		{"¾ carat", "", "", "¾", "", "", false},
		{"1.523 ct", "1.523", "", "", "", "", false},
	} {
		got, ok := ParseClaim(c.text)
		low, high, _ := got.Bounds()
		if !ok || got.Carats != c.carats || got.Points != c.points || got.Fraction != c.fraction || low != c.low || high != c.high || got.Total != c.total {
			t.Errorf("%q: %+v from %s to %s, want %+v", c.text, got, low, high, c)
		}
	}
	for _, none := range []string{"", "an oval stone", "5 g", "18 K", "page 3 of 4"} {
		if got, ok := ParseClaim(none); ok {
			t.Errorf("%q was read as %+v", none, got)
		}
	}
}

// A point is a hundredth of a carat (16 CFR 23.18(b) note).
func TestPoints(t *testing.T) {
	for points, want := range map[string]string{"25": "0.25", "1": "0.01", "33.5": "0.335", "100": "1.00"} {
		if got, err := FromPoints(points); err != nil || got != want {
			t.Errorf("%s points are %s ct, %v; want %s", points, got, err, want)
		}
	}
	if _, err := FromPoints("many"); err == nil {
		t.Error("many points were read")
	}
}

// By hand.
func TestTotals(t *testing.T) {
	if got, err := Total("1.52", "0.07", "0.105"); err != nil || got != "1.695" {
		t.Errorf("got %s, %v; want 1.695", got, err)
	}
	if got, err := Total("0.1", "0.2"); err != nil || got != "0.3" {
		t.Errorf("got %s, %v; want 0.3: no binary fraction comes in between", got, err)
	}
	for _, bad := range []string{"1/2", "1e3", "-1", "x", ""} {
		if got, err := Total(bad); err == nil {
			t.Errorf("%q was added to %s", bad, got)
		}
	}
}
