package pdf

import (
	"fmt"

	"golang.org/x/image/font/sfnt"
)

// Face is one of the faces of a press's typeface.
type Face uint8

// The faces. FaceOther and those behind it stand in for characters that the
// family lacks, where the press was given such fonts.
const (
	FaceRegular Face = iota
	FaceBold
	FaceItalic
	FaceOther
	faceCount = FaceOther + MostOthers
)

// MostOthers is how many fonts may stand in.
const MostOthers = 6

// face is one parsed font: for each character of the basic plane its glyph and
// its advance.
type face struct {
	name     string // PostScript name
	font     trueType
	glyph    []uint16 // by character; 0 is none
	advance  []uint16 // by character, in 1/1000 of the size
	ascent   float64  // of the size
	descent  float64  // of the size, positive
	capitals float64  // height of capitals, of the size
}

// planeEnd is one past the last character of the basic plane, to which documents
// are limited.
const planeEnd = 0x10000

// parseFace reads a TrueType font. A font with other than TrueType outlines is
// an error: the file would need another kind of font.
func parseFace(src []byte) (*face, error) {
	tt, err := parseTrueType(src)
	if err != nil {
		return nil, err
	}
	parsed, err := sfnt.Parse(src)
	if err != nil {
		return nil, fmt.Errorf("reading font: %w", err)
	}
	f := &face{font: tt, glyph: make([]uint16, planeEnd), advance: make([]uint16, planeEnd)}
	var buf sfnt.Buffer
	for r := rune(0x20); r < planeEnd; r++ {
		g, err := parsed.GlyphIndex(&buf, r)
		if err != nil || g == 0 {
			continue
		}
		f.glyph[r] = uint16(g)
		// Rounded as the file holds it, so that a reader sets what we measured.
		f.advance[r] = uint16(tt.thousandths(int(tt.advance(uint16(g)))))
	}
	if f.name, err = parsed.Name(&buf, sfnt.NameIDPostScript); err != nil || f.name == "" {
		f.name = "Unnamed"
	}
	f.name = pdfName(f.name)
	em := float64(tt.unitsPerEm)
	f.ascent, f.descent = float64(tt.ascender)/em, -float64(tt.descender)/em
	f.capitals = float64(tt.capHeight) / em
	if f.capitals <= 0 {
		f.capitals = f.ascent * 0.75 // a font that does not say: old OS/2 tables
	}
	return f, nil
}

func (f *face) has(r rune) bool { return r >= 0 && r < planeEnd && f.glyph[r] != 0 }
