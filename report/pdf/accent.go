package pdf

import (
	"unicode"

	"golang.org/x/text/unicode/norm"

	"stonewrit/report"
)

// Letters with an accent mostly are characters of their own. Some are not, in
// Yoruba, Igbo or Lithuanian names for instance: there letter and accent are
// two characters, and the accent has to be moved to where it belongs.

// isAccent reports whether r is set on the character before it.
func isAccent(r rune) bool { return r >= 0x300 && unicode.Is(unicode.Mn, r) }

// Combining classes of accents that are centred above and below their letter:
// Unicode Standard, 4.3.
const (
	classBelow = 220
	classAbove = 230
)

// extent is the box of a glyph's outline in font units, y upwards.
type extent struct{ xMin, yMin, xMax, yMax int16 }

func (f *face) extent(r rune) (extent, bool) {
	data, err := f.font.outline(f.glyph[r])
	if err != nil || len(data) < 10 {
		return extent{}, false
	}
	at := func(i int) int16 { return int16(be.Uint16(data[i:])) }
	return extent{at(2), at(4), at(6), at(8)}, true
}

// accentShift returns how far an accent has to be moved from the end of its
// letter, in points, y downwards: to the middle of the letter, and above what
// is already above it or below what is below. over are the accents set on the
// letter before this one.
func (f *face) accentShift(letter rune, over []rune, accent rune, size Point) report.XY {
	l, ok := f.extent(letter)
	a, ok2 := f.extent(accent)
	if !ok || !ok2 {
		return report.XY{}
	}
	end := int(f.font.advance(f.glyph[letter]))
	dx := (int(l.xMin)+int(l.xMax))/2 - (int(a.xMin)+int(a.xMax))/2 - end
	dy := 0
	class := combiningClass(accent)
	const gap = 60 // in units of 2048 to the em, as the family sets its own accents
	air := gap * int(f.font.unitsPerEm) / 2048
	switch class {
	case classAbove:
		top := int(l.yMax)
		for _, o := range over {
			if e, ok := f.extent(o); ok && combiningClass(o) == classAbove {
				top = max(top, int(l.yMax)) + int(e.yMax-e.yMin) + air
			}
		}
		dy = top + air - int(a.yMin)
	case classBelow:
		dy = min(0, int(l.yMin)) - air - int(a.yMax)
		dy = min(dy, 0)
	}
	unit := size / Point(f.font.unitsPerEm)
	return report.XY{X: Point(dx) * unit, Y: -Point(dy) * unit}
}

func combiningClass(r rune) uint8 { return norm.NFC.PropertiesString(string(r)).CCC() }
