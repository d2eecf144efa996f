package photos_test

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/color/palette"
	"image/draw"
	"image/jpeg"
	"testing"

	"stonewrit/photos"
)

// painted fills m with one colour.
func painted(m draw.Image, c color.Color) draw.Image {
	draw.Draw(m, m.Bounds(), image.NewUniform(c), image.Point{}, draw.Src)
	return m
}

func TestKindsOfPixels(t *testing.T) {
	box := image.Rect(0, 0, 40, 30)
	teal := color.NRGBA64{0x2020, 0x8080, 0x9090, 0xffff}
	mid := color.Gray16{0x8080}
	for _, c := range []struct {
		name string
		data []byte
		want color.Color
		why  string
	}{
		{"grey JPEG", jpegOf(t, painted(image.NewGray(box), mid)), color.Gray{0x80}, "same"},
		{"grey PNG", pngOf(t, painted(image.NewGray(box), mid)), color.Gray{0x80}, "same"},
		{"16-bit grey PNG", pngOf(t, painted(image.NewGray16(box), mid)), color.Gray{0x80}, "8080 hex is 80 hex in 8 bits"},
		{"16-bit RGB PNG", pngOf(t, painted(image.NewNRGBA64(box), teal)), color.NRGBA{0x20, 0x80, 0x90, 255}, "upper bytes"},
		{"16-bit RGB TIFF", tiffOf(t, painted(image.NewRGBA64(box), teal)), color.NRGBA{0x20, 0x80, 0x90, 255}, "upper bytes"},
		{"16-bit grey TIFF", tiffOf(t, painted(image.NewGray16(box), mid)), color.Gray{0x80}, "upper byte"},
		{"palette PNG", pngOf(t, painted(image.NewPaletted(box, palette.WebSafe), color.NRGBA{0x33, 0x99, 0xcc, 255})), color.NRGBA{0x33, 0x99, 0xcc, 255}, "in the palette"},
		{"palette TIFF", tiffOf(t, painted(image.NewPaletted(box, palette.WebSafe), color.NRGBA{0x33, 0x99, 0xcc, 255})), color.NRGBA{0x33, 0x99, 0xcc, 255}, "in the palette"},
		{"clear PNG", pngOf(t, painted(image.NewNRGBA(box), color.NRGBA{200, 0, 0, 0})), color.White, "nothing there: white"},
		{"half clear PNG", pngOf(t, painted(image.NewNRGBA(box), color.NRGBA{0, 0, 0, 128})), color.Gray{127}, "255 (1 - 128/255)"},
		{"half clear 16-bit TIFF", tiffOf(t, painted(image.NewNRGBA64(box), color.NRGBA64{0xffff, 0, 0, 0x8080})), color.NRGBA{255, 127, 127, 255}, "red over white"},
		{"CMYK JPEG", cmykJPEG(0, 0xff, 0xff, 0), color.NRGBA{255, 0, 0, 255}, "magenta and yellow ink make red"},
		{"CMYK JPEG, black", cmykJPEG(0, 0, 0, 0xff), color.Black, "black ink"},
	} {
		p, err := photos.Decode(c.name, c.data, photos.Options{Box: photos.Size{Width: 20, Height: 20}})
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		m := decoded(t, p.JPEG)
		if got := m.At(m.Bounds().Dx()/2, m.Bounds().Dy()/2); !near(got, c.want, 3) {
			t.Errorf("%s: %v, want %v: %s", c.name, got, c.want, c.why)
		}
		r, g, b, _ := c.want.RGBA()
		cfg, err := jpeg.DecodeConfig(bytes.NewReader(p.JPEG))
		if err != nil {
			t.Fatal(err)
		}
		if grey := r == g && g == b; (cfg.ColorModel == color.GrayModel) != grey {
			t.Errorf("%s: one channel %v, want %v", c.name, !grey, grey)
		}
	}
}

// cmykJPEG is an 8 x 8 JPEG of one colour in four inks, 0 for none, built by
// ITU-T T.81 (baseline, all quantizers 1, one block a component: its mean and
// end of block). The Adobe segment says "not transformed"; such files store inks
// inverted, 255 for none (Adobe Technical Note 5116, and common practice).
func cmykJPEG(inks ...byte) []byte {
	out := []byte{0xff, 0xd8}
	segment := func(marker byte, body ...byte) {
		out = append(out, 0xff, marker)
		out = binary.BigEndian.AppendUint16(out, uint16(len(body)+2))
		out = append(out, body...)
	}
	segment(0xee, append([]byte("Adobe"), 0, 100, 0, 0, 0, 0, 0)...)
	segment(0xdb, append([]byte{0}, bytes.Repeat([]byte{1}, 64)...)...)
	segment(0xc0, 8, 0, 8, 0, 8, 4, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0, 4, 0x11, 0)
	sixteen := func(at int, n byte) []byte { b := make([]byte, 16); b[at-1] = n; return b }
	segment(0xc4, append(append([]byte{0x00}, sixteen(2, 2)...), 10, 11)...) // codes 00: 10 bits follow, 01: 11 bits
	segment(0xc4, append(append([]byte{0x10}, sixteen(1, 1)...), 0)...)      // code 0: end of block
	segment(0xda, 4, 1, 0, 2, 0, 3, 0, 4, 0, 0, 63, 0)
	var bits string
	for _, ink := range inks {
		if ink == 0 {
			bits += "00" + "1111111000" + "0" // stored 255: 8 (255-128) = 1016
		} else {
			bits += "01" + "01111111111" + "0" // stored 0: 8 (0-128) = -1024
		}
	}
	for len(bits)%8 != 0 {
		bits += "1"
	}
	for ; bits != ""; bits = bits[8:] {
		var b byte
		for _, bit := range bits[:8] {
			b = b<<1 | byte(bit-'0')
		}
		out = append(out, b)
		if b == 0xff {
			out = append(out, 0)
		}
	}
	return append(out, 0xff, 0xd9)
}
