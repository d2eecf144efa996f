package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
)

// fpdf would embed fonts too, but goes through a table of all characters several
// times for each font of each document, which took half of the time of a draft.
// Fonts are therefore embedded here. Clauses in this file are of ISO 32000-1.

// embedded is a font of the file, with the characters that the pages use. Pages
// call a character by its place among them, from 1; 0 is the sign for a missing
// one.
type embedded struct {
	face   *face
	chars  []rune   // ascending
	file   []byte   // the font with these characters alone
	glyphs []uint16 // of the whole font, in the order of the file
}

// fonts are the fonts of a document, by face; nil for a face that is not used.
type fonts [faceCount]*embedded

// fonts finds the characters that the pages use.
func (p *Press) fonts(pages []Page) (fonts, error) {
	var used [faceCount]map[rune]bool
	for _, page := range pages {
		eachPlacedText(page.Items, func(t Text) {
			if used[t.Face] == nil {
				used[t.Face] = make(map[rune]bool)
			}
			for _, r := range t.S {
				used[t.Face][r] = true
			}
		})
	}
	var out fonts
	for i, set := range used {
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
		var err error
		if e.file, e.glyphs, err = e.face.subset(e.chars); err != nil {
			return out, err
		}
		out[i] = e
	}
	return out, nil
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

// code is the number that pages call a character by.
func (e *embedded) code(r rune) uint16 {
	i, ok := slices.BinarySearch(e.chars, r)
	if !ok {
		return 0
	}
	return uint16(i + 1)
}

// codes writes text as pages hold it: a string of two bytes a character (7.3.4.2,
// 9.7.5.2).
func (e *embedded) codes(text string) string {
	b := append(make([]byte, 0, 2*len(text)+2), '(')
	for _, r := range text {
		code := e.code(r)
		for _, c := range [2]byte{byte(code >> 8), byte(code)} {
			switch c {
			case '(', ')', '\\':
				b = append(b, '\\', c)
			case '\r':
				b = append(b, `\r`...) // a bare one would be read as the end of a line
			default:
				b = append(b, c)
			}
		}
	}
	return string(append(b, ')'))
}

// name is the one by which pages call the font of a face.
func (f Face) name() string { return "F" + f.String() }

// addFonts embeds the fonts and names them in the resources.
func (f *file) addFonts(list fonts) error {
	var names strings.Builder
	for i, e := range list {
		if e != nil {
			fmt.Fprintf(&names, "/%s %d 0 R ", Face(i).name(), f.addFont(e))
		}
	}
	return f.nameResources("/Font <<", names.String())
}

// addFont embeds a font as one of codes of two bytes (9.7) and returns its
// number.
func (f *file) addFont(e *embedded) int {
	name := "/" + e.tag() + "+" + e.face.name
	tt := &e.face.font
	data := f.addStream(fmt.Sprintf("/Filter /FlateDecode /Length1 %d", len(e.file)), f.deflate(e.file))
	describe := f.add(fmt.Sprintf("<</Type /FontDescriptor /FontName %s /Flags 4 /FontBBox [%d %d %d %d] /ItalicAngle %d /Ascent %.0f /Descent %.0f /CapHeight %.0f /StemV %d /FontFile2 %d 0 R>>",
		name, tt.box(0), tt.box(1), tt.box(2), tt.box(3), tt.slant(), 1000*e.face.ascent, -1000*e.face.descent, 1000*e.face.capitals, tt.stem(), data))
	places := f.addStream("/Filter /FlateDecode", f.deflate(e.places()))
	meant := f.addStream("/Filter /FlateDecode", f.deflate(e.meaning()))
	inner := f.add(fmt.Sprintf("<</Type /Font /Subtype /CIDFontType2 /BaseFont %s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> /FontDescriptor %d 0 R /CIDToGIDMap %d 0 R /DW %d /W [1 %d]>>",
		name, describe, places, tt.thousandths(int(tt.advance(0))), e.widths()))
	return f.add(fmt.Sprintf("<</Type /Font /Subtype /Type0 /BaseFont %s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>", name, inner, meant))
}

// places maps codes to glyphs of the font's file: two bytes each (9.7.4.2).
func (e *embedded) places() []byte {
	out := []byte{0, 0}
	for _, r := range e.chars {
		i, _ := slices.BinarySearch(e.glyphs, e.face.glyph[r])
		out = be.AppendUint16(out, uint16(i))
	}
	return out
}

// widths lists the advances of the codes from 1.
func (e *embedded) widths() []uint16 {
	out := make([]uint16, len(e.chars))
	for i, r := range e.chars {
		out[i] = e.face.advance[r]
	}
	return out
}

// meaning maps codes to characters, for those who copy or search text (9.10.3).
func (e *embedded) meaning() []byte {
	var b bytes.Buffer
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	const most = 100 // in one block (ibid.)
	code := 0
	for chars := range slices.Chunk(e.chars, most) {
		fmt.Fprintf(&b, "%d beginbfchar\n", len(chars))
		for _, r := range chars {
			code++
			fmt.Fprintf(&b, "<%04X> <%04X>\n", code, r) // of the basic plane: one unit of UTF-16
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return b.Bytes()
}

// tag draws six letters from the font and its characters: a subset is named by
// them and a plus sign before the font's own name, two subsets by two (9.6.4).
func (e *embedded) tag() string {
	sum := sha256.Sum256([]byte(e.face.name + string(e.chars)))
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag)
}
