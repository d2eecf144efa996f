package pdf

import (
	"bytes"
	"fmt"
	"slices"
)

// subset returns a small font that holds only the given characters, in
// ascending order without repeats, to be embedded, and the glyphs of the whole
// font that it has, in their order. The instructions that fit outlines to a coarse
// screen are left out.
func (f *face) subset(chars []rune) (font []byte, glyphs []uint16, err error) {
	if glyphs, err = f.closure(chars); err != nil {
		return nil, nil, err
	}
	var glyf, loca, hmtx []byte
	for _, g := range glyphs {
		data, err := f.font.outline(g)
		if err != nil {
			return nil, nil, err
		}
		loca = be.AppendUint32(loca, uint32(len(glyf)))
		if data, err = bareOutline(data, glyphs); err != nil {
			return nil, nil, err
		}
		glyf = append(glyf, data...)
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
		advance, bearing := f.font.metrics(g)
		hmtx = be.AppendUint16(be.AppendUint16(hmtx, advance), bearing)
	}
	loca = be.AppendUint32(loca, uint32(len(glyf)))

	n := uint16(len(glyphs))
	head := bytes.Clone(f.font.tables["head"])
	be.PutUint32(head[8:], 0)  // checksum of the file, not needed inside a PDF
	be.PutUint16(head[50:], 1) // long loca
	hhea := bytes.Clone(f.font.tables["hhea"])
	be.PutUint16(hhea[34:], n)
	maxp := bytes.Clone(f.font.tables["maxp"][:32])
	be.PutUint16(maxp[4:], n)
	for _, field := range []int{18, 20, 22, 24, 26} { // storage and instructions: none are left
		be.PutUint16(maxp[field:], 0)
	}
	post := append([]byte{0, 3, 0, 0}, f.font.tables["post"][4:32]...) // version 3: no glyph names
	return assembleFont(map[string][]byte{
		"OS/2": f.font.tables["OS/2"], "cmap": f.cmap(chars, glyphs), "glyf": glyf, "head": head,
		"hhea": hhea, "hmtx": hmtx, "loca": loca, "maxp": maxp, "name": {0, 0, 0, 0, 0, 6}, "post": post,
	}), glyphs, nil
}

// closure returns the glyphs of the characters and of their parts, in
// ascending order, the glyph for a missing character first.
func (f *face) closure(chars []rune) ([]uint16, error) {
	seen := map[uint16]bool{0: true}
	queue := []uint16{0}
	add := func(g uint16) {
		if !seen[g] {
			seen[g] = true
			queue = append(queue, g)
		}
	}
	for _, r := range chars {
		add(f.glyph[r])
	}
	for i := 0; i < len(queue); i++ {
		data, err := f.font.outline(queue[i])
		if err != nil {
			return nil, err
		}
		if err := eachPart(data, func(at int) { add(be.Uint16(data[at:])) }); err != nil {
			return nil, err
		}
	}
	slices.Sort(queue)
	return queue, nil
}

// Flags of the parts of a composite glyph: ISO/IEC 14496-22, glyf table.
const (
	partWords        = 0x0001
	partScale        = 0x0008
	partMore         = 0x0020
	partTwoScales    = 0x0040
	partMatrix       = 0x0080
	partInstructions = 0x0100
)

// eachPart calls visit with the place of each part's glyph number in a
// composite outline; a simple one has none.
func eachPart(data []byte, visit func(at int)) error {
	_, err := walkParts(data, visit)
	return err
}

// walkParts is eachPart that also returns where the parts end.
func walkParts(data []byte, visit func(at int)) (end int, err error) {
	if len(data) < 10 || int16(be.Uint16(data)) >= 0 {
		return 0, nil
	}
	for at := 10; ; {
		if at+6 > len(data) {
			return 0, fmt.Errorf("%w: composite glyph is cut off", ErrFont)
		}
		flags := be.Uint16(data[at:])
		visit(at + 2)
		at += 6
		if flags&partWords != 0 {
			at += 2
		}
		switch {
		case flags&partScale != 0:
			at += 2
		case flags&partTwoScales != 0:
			at += 4
		case flags&partMatrix != 0:
			at += 8
		}
		if flags&partMore == 0 {
			return min(at, len(data)), nil
		}
	}
}

// bareOutline returns the outline without instructions and with its parts
// renumbered to their places in glyphs.
func bareOutline(data []byte, glyphs []uint16) ([]byte, error) {
	if len(data) == 0 {
		return nil, nil
	}
	if contours := int16(be.Uint16(data)); contours >= 0 {
		at := 10 + 2*int(contours)
		if at+2 > len(data) || at+2+int(be.Uint16(data[at:])) > len(data) {
			return nil, fmt.Errorf("%w: glyph is cut off", ErrFont)
		}
		rest := data[at+2+int(be.Uint16(data[at:])):]
		return append(append(bytes.Clone(data[:at]), 0, 0), rest...), nil
	}
	out := bytes.Clone(data)
	end, err := walkParts(out, func(at int) {
		i, _ := slices.BinarySearch(glyphs, be.Uint16(out[at:]))
		be.PutUint16(out[at:], uint16(i))
		be.PutUint16(out[at-2:], be.Uint16(out[at-2:])&^partInstructions)
	})
	return out[:end], err
}

// cmap returns a table of format 4 with a segment for each run of characters
// whose glyphs follow one another.
func (f *face) cmap(chars []rune, glyphs []uint16) []byte {
	type segment struct{ first, last, delta uint16 }
	var segs []segment
	for _, r := range chars {
		i, _ := slices.BinarySearch(glyphs, f.glyph[r])
		delta := uint16(i) - uint16(r)
		if k := len(segs) - 1; k >= 0 && segs[k].last+1 == uint16(r) && segs[k].delta == delta {
			segs[k].last++
			continue
		}
		segs = append(segs, segment{uint16(r), uint16(r), delta})
	}
	segs = append(segs, segment{0xffff, 0xffff, 1})
	n := uint16(len(segs))
	power, log := uint16(1), uint16(0)
	for power*2 <= n {
		power, log = power*2, log+1
	}
	var b []byte
	put := func(values ...uint16) {
		for _, v := range values {
			b = be.AppendUint16(b, v)
		}
	}
	put(0, 1, 3, 1, 0, 12)                            // one table: Windows, Unicode
	put(4, 16+8*n, 0, 2*n, 2*power, log, 2*n-2*power) // format, length, language, search fields
	each := func(v func(segment) uint16) {
		for _, s := range segs {
			put(v(s))
		}
	}
	each(func(s segment) uint16 { return s.last })
	put(0)
	each(func(s segment) uint16 { return s.first })
	each(func(s segment) uint16 { return s.delta })
	each(func(segment) uint16 { return 0 })
	return b
}

// assembleFont writes the tables, sorted by name, as a font file.
func assembleFont(tables map[string][]byte) []byte {
	names := make([]string, 0, len(tables))
	for name := range tables {
		names = append(names, name)
	}
	slices.Sort(names)
	out := be.AppendUint32(nil, 0x00010000)
	for _, v := range []uint16{uint16(len(names)), 0, 0, 0} {
		out = be.AppendUint16(out, v)
	}
	offset := len(out) + 16*len(names)
	for _, name := range names {
		out = append(out, name...)
		out = be.AppendUint32(out, 0)
		out = be.AppendUint32(out, uint32(offset))
		out = be.AppendUint32(out, uint32(len(tables[name])))
		offset += (len(tables[name]) + 3) &^ 3
	}
	for _, name := range names {
		out = append(out, tables[name]...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	return out
}
