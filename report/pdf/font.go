package pdf

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"
)

// embedded is a face with the characters that a file uses of it. In the file
// each character has a code of its own, counted from 1 in the order of the
// characters, also where two of them look alike, so that copied text is the
// text that was set.
type embedded struct {
	face  *face
	chars []rune
}

// resource is the name by which content calls a face.
func (f Face) resource() string { return [...]string{"/R", "/B", "/I", "/O"}[f] }

// used lists the faces that pages use, with their characters.
func (p *Press) used(pages []Page) [faceCount]*embedded {
	var seen [faceCount]map[rune]bool
	for _, page := range pages {
		eachPlacedText(page.Items, func(t Text) {
			if seen[t.Face] == nil {
				seen[t.Face] = make(map[rune]bool)
			}
			for _, r := range t.S {
				seen[t.Face][r] = true
			}
		})
	}
	var fonts [faceCount]*embedded
	for i, set := range seen {
		if set == nil {
			continue
		}
		e := &embedded{face: p.faces[i]}
		for r := range set {
			if e.face.has(r) {
				e.chars = append(e.chars, r)
			}
		}
		slices.Sort(e.chars)
		fonts[i] = e
	}
	return fonts
}

func eachPlacedText(items []Placed, visit func(Text)) {
	for _, it := range items {
		switch it := it.(type) {
		case Text:
			visit(it)
		case Drawing:
			eachPlacedText(it.Items, visit)
		}
	}
}

// codes is a text as the file writes it, two bytes a character.
func (e *embedded) codes(text string) []byte {
	var out []byte
	for _, r := range text {
		code := 0 // the glyph of a missing character
		if i, ok := slices.BinarySearch(e.chars, r); ok {
			code = i + 1
		}
		out = be.AppendUint16(out, uint16(code))
	}
	return out
}

// addFont embeds a face as a composite font (ISO 32000-1, 9.7) and returns its
// object.
func (f *file) addFont(e *embedded) (int, error) {
	glyphs, err := e.face.closure(e.chars)
	if err != nil {
		return 0, err
	}
	small, err := e.face.cut(e.chars, glyphs)
	if err != nil {
		return 0, err
	}
	name := subsetTag(e) + "+" + e.face.name
	program := f.addDeflated(fmt.Sprintf("/Length1 %d", len(small)), small)
	box := e.face.thousandths("head", 36, 4)
	descriptor := f.add(fmt.Sprintf("<</Type /FontDescriptor /FontName /%s /Flags 4 /FontBBox [%s] /ItalicAngle %d /Ascent %.0f /Descent %.0f /CapHeight %.0f /StemV %d /FontFile2 %d 0 R>>",
		name, strings.Join(box, " "), int16(be.Uint16(e.face.font.tables["post"][4:])), e.face.ascent*1000, -e.face.descent*1000, e.face.capitals*1000, stem, program))
	descendant := f.add(fmt.Sprintf("<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> /FontDescriptor %d 0 R /W [1 [%s]] /CIDToGIDMap %d 0 R>>",
		name, descriptor, e.widths(), f.addDeflated("", e.glyphMap(glyphs))))
	return f.add(fmt.Sprintf("<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>",
		name, descendant, f.addDeflated("", e.toUnicode()))), nil
}

// stem is the width of upright strokes that a font's description must tell. It
// would matter only where the font were not embedded.
const stem = 80

// thousandths reads n numbers of a table, in 1/1000 of the size.
func (f *face) thousandths(table string, at, n int) []string {
	var list []string
	for i := range n {
		v := int16(be.Uint16(f.font.tables[table][at+2*i:]))
		list = append(list, fmt.Sprintf("%.0f", float64(v)*1000/float64(f.font.unitsPerEm)))
	}
	return list
}

func (e *embedded) widths() string {
	var b strings.Builder
	for _, r := range e.chars {
		fmt.Fprintf(&b, "%d ", e.face.advance[r])
	}
	return strings.TrimSpace(b.String())
}

// glyphMap leads from codes to the glyphs of the embedded font (9.7.4.2).
func (e *embedded) glyphMap(glyphs []uint16) []byte {
	out := []byte{0, 0}
	for _, r := range e.chars {
		i, _ := slices.BinarySearch(glyphs, e.face.glyph[r])
		out = be.AppendUint16(out, uint16(i))
	}
	return out
}

// mostMapped is how many codes one section of a map may have (Adobe Technical
// Note 5014, 1.4.1).
const mostMapped = 100

// toUnicode leads from codes back to text (9.10.3).
func (e *embedded) toUnicode() []byte {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for from := 0; from < len(e.chars); from += mostMapped {
		some := e.chars[from:min(from+mostMapped, len(e.chars))]
		fmt.Fprintf(&b, "%d beginbfchar\n", len(some))
		for i, r := range some {
			fmt.Fprintf(&b, "<%04X> <", from+i+1)
			for _, u := range utf16.Encode([]rune{r}) {
				fmt.Fprintf(&b, "%04X", u)
			}
			b.WriteString(">\n")
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend")
	return []byte(b.String())
}

// subsetTag draws the six letters that a subset's name begins with (9.6.4) from
// the face and its characters, so that two subsets have two names and the same
// subset always the same.
func subsetTag(e *embedded) string {
	sum := sha256.Sum256([]byte(e.face.name + string(e.chars)))
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag)
}
