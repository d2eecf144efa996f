package quality

import "testing"

// IDC Rules 2.3 and 3.1.1.2; the equals of FL to I3 and loupe clean to P3 are
// common practice.
func TestDiamondGrades(t *testing.T) {
	g := load(t)
	for _, c := range []struct{ scale, text, printed, best, worst, why string }{
		{"colour", "G", "G", "G", "G", "one grade"},
		{"colour", "f to h", "f to h", "F", "H", "a range"},
		{"colour", "H-F", "F to H", "F", "H", "the better one first"},
		{"colour", "M–Z", "M to Z", "M", "Z", "a dash of typography"},
		{"colour", "F to F", "F", "F", "F", "no range"},
		{"clarity", "loupe clean", "loupe clean", "IF", "IF", "printed as written"},
		{"clarity", "loupe-clean", "loupe-clean", "IF", "IF", "with its hyphen"},
		{"clarity", "P1 to P3", "P1 to P3", "I1", "I3", "the other letters"},
		{"clarity", "VS", "VS1 to VS2", "VS1", "VS2", "not split in two"},
		{"clarity", "vvs2", "vvs2", "VVS2", "VVS2", "small letters"},
	} {
		parse := g.ParseDiamondColour
		if c.scale == "clarity" {
			parse = g.ParseDiamondClarity
		}
		got, err := parse(c.text)
		if err != nil || got.String() != c.printed || got.Best.Name != c.best || got.Worst.Name != c.worst {
			t.Errorf("%s %q: %q from %s to %s, %v; want %q, %s to %s: %s", c.scale, c.text, got, got.Best.Name, got.Worst.Name, err, c.printed, c.best, c.worst, c.why)
		}
	}
	for _, bad := range []string{"", "C", "AA", "F to", "to H", "F to 9", "fancy yellow"} {
		if got, err := g.ParseDiamondColour(bad); err == nil {
			t.Errorf("colour %q was read as %v", bad, got)
		}
	}
	for _, bad := range []string{"", "VS3", "P4", "clean", "I1 to"} {
		if got, err := g.ParseDiamondClarity(bad); err == nil {
			t.Errorf("clarity %q was read as %v", bad, got)
		}
	}
	if grades, _ := g.ParseDiamondClarity("P2"); grades.Best.Equal() != "I2" {
		t.Errorf("P2 equals %q", grades.Best.Equal())
	}
	if grades, _ := g.ParseDiamondColour("F to H"); g.ColourWords(grades) != "rare white + to white" {
		t.Errorf("F to H is %q", g.ColourWords(grades))
	}
	if _, ok := g.BetweenMasters("E", "G"); ok {
		t.Error("E and G are no neighbours")
	}
}

func TestFluorescence(t *testing.T) {
	g := load(t)
	for _, c := range []struct{ text, grades, colour string }{
		{"none", "none", ""}, {"medium blue", "medium", "blue"}, {"strong yellowish green", "strong", "yellowish green"}, {"none to weak", "none to weak", ""}, {"weak to medium blue", "weak to medium", "blue"}, {"slight blue", "slight", "blue"},
	} {
		f, err := g.ParseFluorescence(c.text)
		if err != nil || f.Grades.String() != c.grades || f.Colour != c.colour {
			t.Errorf("%q: %q in %q, %v; want %q in %q", c.text, f.Grades, f.Colour, err, c.grades, c.colour)
		}
	}
	for _, bad := range []string{"", "faint", "very strong blue", "blue", "none blue"} {
		if f, err := g.ParseFluorescence(bad); err == nil {
			t.Errorf("%q was read as %v", bad, f)
		}
	}
}
