package quality

import (
	"math"
	"strconv"
	"testing"
)

// The names of colours whose notation and name stand in a published chart of
// rock colours (1948, from memory; an earlier edition of the same method, with
// partly other boundaries). The nearest centre is not the block, so not every
// row can come out: the test prints how many do and holds two in three.
func TestNamesOfPublishedNotations(t *testing.T) {
	g := load(t)
	same, neighbour, rows := 0, 0, rowsOf(t, "rock-colours.csv")
	for _, r := range rows {
		m, err := ParseMunsell(r["munsell"])
		if err != nil {
			t.Fatal(err)
		}
		switch near := g.nearestColours(m, 3); r["name"] {
		case near[0].name:
			same++
		case near[1].name, near[2].name:
			neighbour++
		default:
			t.Logf("%s is %s, not %s", r["munsell"], near[0].name, r["name"])
		}
	}
	t.Logf("%d of %d have the published name, %d more have it next", same, len(rows), neighbour)
	if 3*same < 2*len(rows) {
		t.Errorf("only %d of %d notations have their published name", same, len(rows))
	}
}

// The neutral names meet at the values 2.5, 4.5, 6.5 and 8.5 (SP 440, from
// memory).
func TestNeutralNames(t *testing.T) {
	g := load(t)
	for _, c := range []struct{ notation, want string }{
		{"N 0/", "black"}, {"N 2.3/", "black"}, {"N 2.7/", "dark grey"}, {"N 4.3/", "dark grey"}, {"N 4.7/", "medium grey"}, {"N 6.3/", "medium grey"},
		{"N 6.7/", "light grey"}, {"N 8.3/", "light grey"}, {"N 8.7/", "white"}, {"N 10/", "white"}, {"5R 5/0.4", "medium grey"},
	} {
		m, err := ParseMunsell(c.notation)
		if err != nil {
			t.Fatal(err)
		}
		if got := g.ColourName(m).Name; got != c.want {
			t.Errorf("%s is %s, want %s", c.notation, got, c.want)
		}
	}
}

// The notations of the centres, which were computed by a library, are computed
// back here from the published renotation (testdata/README.md). Centres outside
// what a screen can show have no true sRGB and are left out.
func TestCentresAgainstRenotation(t *testing.T) {
	g := load(t)
	chips := renotation(t)
	worst, sum, n := 0.0, 0.0, 0
	err := each("iscc_nbs.csv", func(r *row) {
		m, err := ParseMunsell(r.text("munsell"))
		if err != nil || r.text("note") != "" || m.Neutral() {
			return
		}
		got, ok := chips.srgb(m)
		if !ok {
			return
		}
		for i := range 3 {
			want, _ := strconv.ParseUint(r.text("srgb")[1+2*i:3+2*i], 16, 8)
			d := math.Abs(got[i] - float64(want))
			worst, sum = max(worst, d), sum+d
			if d > 6 {
				t.Errorf("%s, %s: sRGB %.0f, the list has %s", r.text("name"), m, got, r.text("srgb"))
			}
		}
		n++
	}, "name", "munsell", "srgb")
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d of %d centres: sRGB differs by %.1f of 255 at most, %.2f on average", n, len(g.colours), worst, sum/float64(3*n))
	if n < 150 {
		t.Errorf("only %d centres could be computed back", n)
	}
}

func TestColourClashes(t *testing.T) {
	g := load(t)
	for _, c := range []struct {
		words, notation string
		want            bool
		why             string
	}{
		{"strong red", "5R 4/12", false, "its own name"},
		{"vivid red", "5R 4/12", false, "the neighbour's name"},
		{"deep red", "5R 4/12", false, "a neighbour still"},
		{"very deep red", "5R 4/12", true, "two values darker"},
		{"slightly purplish red", "5R 4/12", false, "not one of the names, same hue"},
		{"vivid green", "5R 4/12", true, "green is not red"},
		{"deep blue", "5R 4/12", true, "blue is not red"},
		{"pale pink", "5R 4/12", true, "a name far from the notation"},
		{"lively and even", "5R 4/12", false, "no hue is named"},
		{"medium gray", "N 5/", false, "the other spelling of grey"},
		{"bluish-grey", "7.5B 5.5/1", false, "hyphens do not matter"},
	} {
		m, err := ParseMunsell(c.notation)
		if err != nil {
			t.Fatal(err)
		}
		if got := g.Clashes(c.words, m); got != c.want {
			t.Errorf("%q beside %s clashes: %v, want %v: %s", c.words, c.notation, got, c.want, c.why)
		}
	}
}

// Our own rule: a name is told beside the nearest where the colour lies between
// the two.
func TestNextName(t *testing.T) {
	g := load(t)
	for notation, want := range map[string]ColourName{
		"5R 4/12": {Name: "strong red", Next: "vivid red"}, "5R 4/14": {Name: "vivid red"}, "10P 4/10": {Name: "strong reddish purple"},
	} {
		m, err := ParseMunsell(notation)
		if err != nil {
			t.Fatal(err)
		}
		if got := g.ColourName(m); got.Name != want.Name || got.Next != want.Next {
			t.Errorf("%s is %q, next %q; want %q, next %q", notation, got.Name, got.Next, want.Name, want.Next)
		}
	}
}

func TestTwoHundredAndSixtySevenColours(t *testing.T) {
	if n := len(load(t).ColourNames()); n != 267 {
		t.Errorf("%d names, SP 440 has 267", n)
	}
}
