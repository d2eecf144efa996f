package pdf

import (
	"errors"
	"math"
	"slices"
	"testing"

	"github.com/go-fonts/stix/stix2textregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"github.com/go-fonts/liberation/liberationserifregular"
)

// TestSubsetDrawsTheSame reads a subset with a font reader that is not ours
// (golang.org/x/image/font/sfnt) and compares each outline and advance with the
// whole font's.
func TestSubsetDrawsTheSame(t *testing.T) {
	press := newPress(t)
	chars := []rune(" !,.0123456789ABCabcxyzÅÄéñøœßĞŁΔΩάῷЁЖщқ–—‘’“”…€°±×≥\u00a0\u202f\u0301")
	slices.Sort(chars)
	small, _, err := press.faces[FaceRegular].subset(chars)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := sfnt.Parse(liberationserifregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	cut, err := sfnt.Parse(small)
	if err != nil {
		t.Fatalf("the subset does not parse: %v", err)
	}
	if len(small) > len(liberationserifregular.TTF)/15 {
		t.Errorf("the subset has %d bytes of %d", len(small), len(liberationserifregular.TTF))
	}
	ppem := fixed.I(int(whole.UnitsPerEm()))
	var buf sfnt.Buffer
	for _, r := range chars {
		a, b := glyph(t, whole, r), glyph(t, cut, r)
		if b == 0 {
			t.Errorf("%q is not in the subset", r)
			continue
		}
		wantAdvance, _ := whole.GlyphAdvance(&buf, a, ppem, font.HintingNone)
		gotAdvance, _ := cut.GlyphAdvance(&buf, b, ppem, font.HintingNone)
		if gotAdvance != wantAdvance {
			t.Errorf("%q: advance %v, want %v", r, gotAdvance, wantAdvance)
		}
		if got := math.Round(float64(wantAdvance) / 64 * 1000 / float64(whole.UnitsPerEm())); got != float64(press.faces[FaceRegular].advance[r]) {
			t.Errorf("%q: measured as %d, want %v thousandths", r, press.faces[FaceRegular].advance[r], got)
		}
		want, err1 := whole.LoadGlyph(&buf, a, ppem, nil)
		want = slices.Clone(want)
		got, err2 := cut.LoadGlyph(&buf, b, ppem, nil)
		if err1 != nil || err2 != nil || !slices.Equal(got, want) {
			t.Errorf("%q: outline differs (%v, %v)", r, err1, err2)
		}
	}
	if glyph(t, cut, 'Z') != 0 {
		t.Error("Z is in the subset, though nobody asked for it")
	}
}

func glyph(t *testing.T, f *sfnt.Font, r rune) sfnt.GlyphIndex {
	t.Helper()
	var buf sfnt.Buffer
	g, err := f.GlyphIndex(&buf, r)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestFontsThatCannotBeUsed(t *testing.T) {
	ttf := liberationserifregular.TTF
	for name, src := range map[string][]byte{
		"nothing":                {},
		"text":                   []byte("this is not a font at all, only text"),
		"outlines of PostScript": stix2textregular.TTF, // a file with CFF outlines despite the name
		"cut in half":            ttf[:len(ttf)/2],
		"only a head":            ttf[:40],
	} {
		if _, err := NewPressWith(Family{Name: name, Regular: src}); !errors.Is(err, ErrFont) {
			t.Errorf("%s: got %v, want ErrFont", name, err)
		}
	}
}

// FuzzFont: no damaged font makes the reader panic.
func FuzzFont(f *testing.F) {
	ttf := liberationserifregular.TTF
	f.Add(uint32(4), byte(200))
	f.Add(uint32(12+16*5+10), byte(255))
	f.Add(uint32(len(ttf)/2), byte(1))
	f.Fuzz(func(t *testing.T, at uint32, flip byte) {
		src := slices.Clone(ttf)
		src[int(at)%len(src)] ^= flip
		face, err := parseFace(src)
		if err != nil {
			return
		}
		_, _, _ = face.subset([]rune("ABCabcéά"))
	})
}
