package pdf

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// trueType is a font file with glyf outlines, cut into its tables. Names and
// layout of the tables: ISO/IEC 14496-22 (Open Font Format), clause 5.
type trueType struct {
	tables               map[string][]byte
	unitsPerEm           uint16
	ascender, descender  int16
	capHeight            int16
	glyphCount, hMetrics int
	longLoca             bool
}

// ErrFont says that a font cannot be used: it is damaged, or its outlines are
// not TrueType outlines, the only kind that is embedded.
var ErrFont = errors.New("not a usable TrueType font")

var be = binary.BigEndian

func parseTrueType(src []byte) (trueType, error) {
	var tt trueType
	if len(src) < 12 || (be.Uint32(src) != 0x00010000 && be.Uint32(src) != 0x74727565) {
		return tt, fmt.Errorf("%w: wants a .ttf file with glyf outlines", ErrFont)
	}
	tt.tables = make(map[string][]byte)
	for i := range int(be.Uint16(src[4:])) {
		at := 12 + 16*i
		if at+16 > len(src) {
			return tt, fmt.Errorf("%w: table directory is cut off", ErrFont)
		}
		off, n := int(be.Uint32(src[at+8:])), int(be.Uint32(src[at+12:]))
		if off+n > len(src) {
			return tt, fmt.Errorf("%w: table %q is cut off", ErrFont, src[at:at+4])
		}
		tt.tables[string(src[at:at+4])] = src[off : off+n]
	}
	for _, need := range []struct {
		name  string
		least int
	}{{"head", 54}, {"hhea", 36}, {"maxp", 32}, {"hmtx", 4}, {"loca", 4}, {"glyf", 1}, {"post", 32}, {"OS/2", 78}} {
		if len(tt.tables[need.name]) < need.least {
			return tt, fmt.Errorf("%w: table %q is missing or short", ErrFont, need.name)
		}
	}
	return tt, tt.readHeaders()
}

func (tt *trueType) readHeaders() error {
	head, hhea, os2 := tt.tables["head"], tt.tables["hhea"], tt.tables["OS/2"]
	tt.unitsPerEm = be.Uint16(head[18:])
	tt.longLoca = be.Uint16(head[50:]) == 1
	tt.ascender, tt.descender = int16(be.Uint16(hhea[4:])), int16(be.Uint16(hhea[6:]))
	tt.hMetrics = int(be.Uint16(hhea[34:]))
	tt.glyphCount = int(be.Uint16(tt.tables["maxp"][4:]))
	if be.Uint16(os2) >= 2 && len(os2) >= 90 {
		tt.capHeight = int16(be.Uint16(os2[88:]))
	}
	entry := 2
	if tt.longLoca {
		entry = 4
	}
	switch {
	case tt.unitsPerEm == 0:
		return fmt.Errorf("%w: no units per em", ErrFont)
	case len(tt.tables["loca"]) < entry*(tt.glyphCount+1):
		return fmt.Errorf("%w: table \"loca\" is short", ErrFont)
	case tt.hMetrics == 0 || len(tt.tables["hmtx"]) < 4*tt.hMetrics+2*(tt.glyphCount-tt.hMetrics):
		return fmt.Errorf("%w: table \"hmtx\" is short", ErrFont)
	}
	return nil
}

// metrics returns a glyph's advance and left side bearing in font units.
func (tt *trueType) metrics(glyph uint16) (advance, bearing uint16) {
	hmtx, g := tt.tables["hmtx"], int(glyph)
	if g < tt.hMetrics {
		return be.Uint16(hmtx[4*g:]), be.Uint16(hmtx[4*g+2:])
	}
	last := 4 * (tt.hMetrics - 1)
	return be.Uint16(hmtx[last:]), be.Uint16(hmtx[4*tt.hMetrics+2*(g-tt.hMetrics):])
}

func (tt *trueType) advance(glyph uint16) uint16 {
	a, _ := tt.metrics(glyph)
	return a
}

// thousandths turns font units into thousandths of the size, the unit of fonts in
// PDF, rounded.
func (tt *trueType) thousandths(units int) int {
	return int(math.Round(float64(units) * 1000 / float64(tt.unitsPerEm)))
}

// box is a side of the box round all glyphs: left, bottom, right, top.
func (tt *trueType) box(side int) int {
	return tt.thousandths(int(int16(be.Uint16(tt.tables["head"][36+2*side:]))))
}

// slant is the angle of italics in degrees, negative to the right.
func (tt *trueType) slant() int { return int(int16(be.Uint16(tt.tables["post"][4:]))) }

// stem is the width of upright strokes in thousandths, guessed from the weight
// class: 400 is 88 and 700 is 166 (common practice, no source).
func (tt *trueType) stem() int {
	weight := float64(be.Uint16(tt.tables["OS/2"][4:])) / 65
	return 50 + int(weight*weight)
}

// outline returns a glyph's data in the glyf table; nil for a blank one.
func (tt *trueType) outline(glyph uint16) ([]byte, error) {
	loca, g := tt.tables["loca"], int(glyph)
	if g >= tt.glyphCount {
		return nil, fmt.Errorf("%w: no glyph %d", ErrFont, g)
	}
	var from, to int
	if tt.longLoca {
		from, to = int(be.Uint32(loca[4*g:])), int(be.Uint32(loca[4*g+4:]))
	} else {
		from, to = 2*int(be.Uint16(loca[2*g:])), 2*int(be.Uint16(loca[2*g+2:]))
	}
	if from == to {
		return nil, nil
	}
	if from > to || to > len(tt.tables["glyf"]) || to-from < 12 {
		return nil, fmt.Errorf("%w: glyph %d is damaged", ErrFont, g)
	}
	return tt.tables["glyf"][from:to], nil
}
