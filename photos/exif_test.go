package photos_test

import "encoding/binary"

// Numbers of tags and types: TIFF 6.0 sections 2 and 8, EXIF (CIPA DC-008).
const (
	tagOrientation = 0x0112
	tagExifIFD     = 0x8769
	tagGPSIFD      = 0x8825
	tagTaken       = 0x9003 // DateTimeOriginal
	tagZone        = 0x9011 // OffsetTimeOriginal
	tagGPSLatRef   = 0x0001
	tagGPSDatum    = 0x0012

	typeASCII = 2
	typeShort = 3
	typeLong  = 4
)

// datum is written where a camera writes the place; it must reach nobody.
const datum = "PLACE-THAT-NOBODY-MAY-SEE"

// field is one entry of an image file directory.
type field struct {
	tag, kind uint16
	text      string   // of typeASCII
	numbers   []uint32 // of typeShort and typeLong
}

func short(tag uint16, v ...uint32) field     { return field{tag: tag, kind: typeShort, numbers: v} }
func long(tag uint16, v ...uint32) field      { return field{tag: tag, kind: typeLong, numbers: v} }
func ascii(tag uint16, v string) field        { return field{tag: tag, kind: typeASCII, text: v + "\x00"} }
func (f field) count() uint32                 { return uint32(max(len(f.text), len(f.numbers))) }
func directorySize(fields []field) (n uint32) { return uint32(2 + 12*len(fields) + 4) }

func (f field) value(order binary.AppendByteOrder) []byte {
	out := []byte(f.text)
	for _, n := range f.numbers {
		if f.kind == typeShort {
			out = order.AppendUint16(out, uint16(n))
		} else {
			out = order.AppendUint32(out, n)
		}
	}
	return out
}

// directory lays fields out as if they stood at offset at: the entries, no next
// directory, then the values of more than four bytes.
func directory(order binary.AppendByteOrder, at uint32, fields []field) []byte {
	out := order.AppendUint16(nil, uint16(len(fields)))
	var values []byte
	for _, f := range fields {
		out = order.AppendUint16(out, f.tag)
		out = order.AppendUint16(out, f.kind)
		out = order.AppendUint32(out, f.count())
		v := f.value(order)
		if len(v) > 4 {
			out = order.AppendUint32(out, at+directorySize(fields)+uint32(len(values)))
			values = append(values, v...)
			values = append(values, make([]byte, len(v)%2)...)
			continue
		}
		out = append(out, append(v, 0, 0, 0, 0)[:4]...)
	}
	return append(order.AppendUint32(out, 0), values...)
}

// tiffHeader is the byte order mark, 42, and the place of the first directory.
func tiffHeader(order binary.AppendByteOrder) []byte {
	mark := "II"
	if order.String() == binary.BigEndian.String() {
		mark = "MM"
	}
	out := order.AppendUint16([]byte(mark), 42)
	return order.AppendUint32(out, 8)
}

// camera is what a test lets a camera write.
type camera struct {
	orientation uint32
	taken, zone string
	more        []field // of the first directory, tags below tagExifIFD
	order       binary.AppendByteOrder
}

// exif builds a TIFF structure with orientation, dates and a place.
func (c camera) exif() []byte {
	order := c.order
	if order == nil {
		order = binary.BigEndian
	}
	first := append([]field{}, c.more...)
	first = append(first, short(tagOrientation, c.orientation), long(tagExifIFD, 0), long(tagGPSIFD, 0))
	sortFields(first)
	dates := []field{ascii(tagTaken, c.taken), ascii(tagZone, c.zone)}
	place := []field{ascii(tagGPSLatRef, "N"), ascii(tagGPSDatum, datum)}

	datesAt := 8 + uint32(len(directory(order, 8, first)))
	second := directory(order, datesAt, dates)
	placeAt := datesAt + uint32(len(second))
	for i := range first {
		switch first[i].tag {
		case tagExifIFD:
			first[i].numbers[0] = datesAt
		case tagGPSIFD:
			first[i].numbers[0] = placeAt
		}
	}
	out := append(tiffHeader(order), directory(order, 8, first)...)
	out = append(out, second...)
	return append(out, directory(order, placeAt, place)...)
}
