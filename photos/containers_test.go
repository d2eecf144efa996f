package photos_test

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"slices"
	"testing"

	"golang.org/x/image/tiff"
)

func sortFields(f []field) {
	slices.SortFunc(f, func(a, b field) int { return cmp.Compare(a.tag, b.tag) })
}

// The test picture: four quarters, so that every turn and flip shows.
var (
	red    = color.NRGBA{220, 30, 30, 255}
	green  = color.NRGBA{30, 160, 30, 255}
	blue   = color.NRGBA{30, 30, 220, 255}
	yellow = color.NRGBA{230, 220, 40, 255}
)

const quarterWide, quarterHigh = 24, 16

// quarters has red at row 0, column 0; green at the end of row 0; blue at the
// end of column 0; yellow opposite.
func quarters() *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, 2*quarterWide, 2*quarterHigh))
	for y := range m.Rect.Dy() {
		for x := range m.Rect.Dx() {
			top, left := y < quarterHigh, x < quarterWide
			switch {
			case top && left:
				m.SetNRGBA(x, y, red)
			case top:
				m.SetNRGBA(x, y, green)
			case left:
				m.SetNRGBA(x, y, blue)
			default:
				m.SetNRGBA(x, y, yellow)
			}
		}
	}
	return m
}

func jpegOf(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func pngOf(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, m); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func tiffOf(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := tiff.Encode(&out, m, &tiff.Options{Compression: tiff.Deflate}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// jpegWith puts EXIF into an APP1 segment after the start of the image
// (EXIF, CIPA DC-008: "Exif", two zero bytes, TIFF structure).
func jpegWith(data, exif []byte) []byte {
	body := append([]byte("Exif\x00\x00"), exif...)
	out := append([]byte{}, data[:2]...)
	out = append(out, 0xff, 0xe1)
	out = binary.BigEndian.AppendUint16(out, uint16(len(body)+2))
	return append(append(out, body...), data[2:]...)
}

// chunk is a PNG chunk: length, type, data, CRC (PNG, W3C, section 5.3).
func chunk(kind string, data []byte) []byte {
	out := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	out = append(append(out, kind...), data...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
}

// pngWith puts EXIF into an eXIf chunk after the header chunk.
func pngWith(data, exif []byte) []byte {
	const headerEnd = 8 + 12 + 13
	out := append([]byte{}, data[:headerEnd]...)
	return append(append(out, chunk("eXIf", exif)...), data[headerEnd:]...)
}

// webpWith wraps the single picture chunk of a plain WebP file into the extended
// form: VP8X with the EXIF flag and the canvas size, picture, EXIF chunk (WebP
// container specification, "Extended File Format").
func webpWith(data, exif []byte, size image.Point) []byte {
	head := make([]byte, 10)
	head[0] = 1 << 3
	copy(head[4:7], binary.LittleEndian.AppendUint32(nil, uint32(size.X-1)))
	copy(head[7:10], binary.LittleEndian.AppendUint32(nil, uint32(size.Y-1)))
	body := append([]byte("WEBP"), riff("VP8X", head)...)
	body = append(body, data[12:]...)
	body = append(body, riff("EXIF", exif)...)
	return riff("RIFF", body)
}

func riff(kind string, data []byte) []byte {
	out := binary.LittleEndian.AppendUint32([]byte(kind), uint32(len(data)))
	out = append(out, data...)
	return append(out, make([]byte, len(data)%2)...)
}

// tiffWith writes an uncompressed RGB TIFF of one strip, whose pixels follow the
// directories (TIFF 6.0, section 6).
func tiffWith(m *image.NRGBA, c camera) []byte {
	w, h := uint32(m.Rect.Dx()), uint32(m.Rect.Dy())
	fields := func(strip uint32) []field {
		return []field{
			long(0x0100, w), long(0x0101, h), short(0x0102, 8, 8, 8),
			short(0x0103, 1), short(0x0106, 2), // no compression, RGB
			long(0x0111, strip), short(0x0115, 3), long(0x0116, h), long(0x0117, 3*w*h),
		}
	}
	c.more = fields(0)
	c.more = fields(uint32(len(c.exif())))
	out := c.exif()
	for i := 0; i < len(m.Pix); i += 4 {
		out = append(out, m.Pix[i:i+3]...)
	}
	return out
}

// quartersWebP is quarters() in a plain WebP file; see testdata/README.md.
func quartersWebP(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/quarters.webp")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// inEveryFormat is the quarters with the same camera notes in all four formats.
func inEveryFormat(t testing.TB, c camera) map[string][]byte {
	m := quarters()
	return map[string][]byte{
		"JPEG": jpegWith(jpegOf(t, m), c.exif()),
		"PNG":  pngWith(pngOf(t, m), c.exif()),
		"TIFF": tiffWith(m, c),
		"WebP": webpWith(quartersWebP(t), c.exif(), m.Rect.Size()),
	}
}

// pngClaiming is a PNG that holds a header only.
func pngClaiming(w, h uint32, depth, colour, interlace byte) []byte {
	head := binary.BigEndian.AppendUint32(nil, w)
	head = binary.BigEndian.AppendUint32(head, h)
	head = append(head, depth, colour, 0, 0, interlace)
	return append([]byte("\x89PNG\r\n\x1a\n"), chunk("IHDR", head)...)
}
