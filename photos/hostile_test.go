package photos_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"strings"
	"testing"

	"stonewrit/photos"
)

// wantFault checks the fault and that the message names file, finding and limit.
func wantFault(t *testing.T, err error, want photos.Fault, message string) {
	t.Helper()
	var e *photos.Error
	switch {
	case err == nil:
		t.Errorf("accepted, want %q", want)
	case !errors.Is(err, want):
		t.Errorf("%v: fault %q, want %q", err, errors.Unwrap(err), want)
	case !errors.As(err, &e):
		t.Errorf("%v: not a *photos.Error", err)
	case err.Error() != message:
		t.Errorf("message %q\n   want %q", err, message)
	}
}

func TestRefusedByHeader(t *testing.T) {
	progressive := []byte{0xff, 0xd8, 0xff, 0xc2, 0, 11, 8, 0, 64, 0, 64, 1, 1, 0x11, 0}
	passes := append(bytes.Clone(progressive), bytes.Repeat([]byte{0xff, 0xda, 0, 8, 1, 1, 0, 1, 63, 0}, 101)...)
	webpBomb := append([]byte("WEBP"), riff("VP8X", []byte{0, 0, 0, 0, 0xff, 0x7f, 0, 0xff, 0x7f, 0})...)
	for _, c := range []struct {
		name    string
		data    []byte
		opt     photos.Options
		message string
	}{
		{name: "bomb.png", data: pngClaiming(60000, 60000, 8, 2, 0),
			message: "bomb.png: 60000 x 60000 pixels are more than the 120 megapixels accepted"},
		{name: "widest.png", data: pngClaiming(1<<31-1, 1, 1, 0, 0),
			message: "widest.png: 2147483647 x 1 pixels are more than the 120 megapixels accepted"},
		{name: "deep.png", data: pngClaiming(10900, 10900, 16, 6, 1),
			message: "deep.png: 10900 x 10900 pixels of this kind take up to 1901 MB to decode, more than the 1000 MB accepted"},
		{name: "bomb.webp", data: riff("RIFF", webpBomb),
			message: "bomb.webp: 32768 x 32768 pixels are more than the 120 megapixels accepted"},
		{name: "bomb.tif", data: append(tiffHeader(binary.LittleEndian), directory(binary.LittleEndian, 8, []field{
			long(0x0100, 50000), long(0x0101, 50000), short(0x0102, 8), short(0x0103, 1), short(0x0106, 1)})...),
			message: "bomb.tif: 50000 x 50000 pixels are more than the 120 megapixels accepted"},
		{name: "bomb.jpg", data: []byte{0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0xff, 0xff, 0xff, 0xff, 1, 1, 0x11, 0, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0},
			message: "bomb.jpg: 65535 x 65535 pixels are more than the 120 megapixels accepted"},
		{name: "passes.jpg", data: passes,
			message: "passes.jpg: 101 passes over the picture are more than the 100 accepted"},
		{name: "own.png", data: pngOf(t, quarters()), opt: photos.Options{MaxPixels: 1000},
			message: "own.png: 48 x 32 pixels are more than the 0.001 megapixels accepted"},
		{name: "long.png", data: make([]byte, 2001), opt: photos.Options{MaxBytes: 1000},
			message: "long.png: 0.002 MB, more than the 0.001 MB accepted"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := photos.Decode(c.name, c.data, c.opt)
			wantFault(t, err, photos.ErrTooBig, c.message)
		})
	}
}

func TestRefusedByFormat(t *testing.T) {
	for _, c := range []struct{ name, data, message string }{
		{"text.jpg", "a letter", "text.jpg: is no JPEG, PNG, TIFF or WebP picture"},
		{"nothing.png", "", "nothing.png: is empty"},
		{"phone.jpg", "\x00\x00\x00\x18ftypheic", "phone.jpg: is a HEIF, AVIF or video file; save it as JPEG, PNG, TIFF or WebP"},
		{"old.gif", "GIF89a", "old.gif: is a GIF picture; save it as JPEG, PNG, TIFF or WebP"},
		{"paper.jpg", "%PDF-1.7", "paper.jpg: is a PDF document; save the picture as JPEG, PNG, TIFF or WebP"},
		{"paint.bmp", "BM\x36\x10\x0e\x00\x00\x00\x00\x00", "paint.bmp: is a BMP picture; save it as JPEG, PNG, TIFF or WebP"},
		{"line\nbreak.jpg", "x", `"line\nbreak.jpg": is no JPEG, PNG, TIFF or WebP picture`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := photos.Decode(c.name, []byte(c.data), photos.Options{})
			wantFault(t, err, photos.ErrFormat, c.message)
		})
	}
}

func TestWrongExtensionIsReadByContent(t *testing.T) {
	p, err := photos.Decode("really-a-png.jpg", pngOf(t, quarters()), photos.Options{})
	if err != nil || p.Format != photos.PNG {
		t.Errorf("format %q, %v; want PNG", p.Format, err)
	}
}

func TestTruncated(t *testing.T) {
	noisy := image.NewNRGBA(image.Rect(0, 0, 120, 90))
	for i := range noisy.Pix {
		noisy.Pix[i] = byte(i * i >> 3)
		if i%4 == 3 {
			noisy.Pix[i] = 255
		}
	}
	files := map[string][]byte{
		"JPEG": jpegOf(t, noisy), "PNG": pngOf(t, noisy), "TIFF": tiffOf(t, noisy),
		"plain TIFF": tiffWith(noisy, camera{orientation: 1}), "WebP": quartersWebP(t),
	}
	for name, data := range files {
		for _, tenths := range []int{1, 3, 5, 7, 9} {
			_, err := photos.Decode(name, data[:len(data)*tenths/10], photos.Options{})
			if !errors.Is(err, photos.ErrDecode) && !errors.Is(err, photos.ErrFormat) {
				t.Errorf("%s cut to %d tenths: %v, want %v", name, tenths, err, photos.ErrDecode)
			}
		}
	}
}

// TestDecoderPanicIsAnError: a palette TIFF may point past its palette, which
// the decoder does not notice until the pixel is looked at.
func TestDecoderPanicIsAnError(t *testing.T) {
	le := binary.LittleEndian
	fields := func(strip, colours uint32) []field {
		all := make([]uint32, 3*colours)
		return []field{
			long(0x0100, 8), long(0x0101, 8), short(0x0102, 8), short(0x0103, 1), short(0x0106, 3),
			long(0x0111, strip), short(0x0115, 1), long(0x0116, 8), long(0x0117, 64), short(0x0140, all...),
		}
	}
	strip := 8 + uint32(len(directory(le, 8, fields(0, 2))))
	data := append(tiffHeader(le), directory(le, 8, fields(strip, 2))...)
	data = append(data, bytes.Repeat([]byte{200}, 64)...)
	_, err := photos.Decode("palette.tif", data, photos.Options{})
	if !errors.Is(err, photos.ErrDecode) || !strings.HasPrefix(err.Error(), "palette.tif: cannot be decoded as TIFF: ") {
		t.Errorf("%v, want %v", err, photos.ErrDecode)
	}
}

// FuzzDecode: damaged notes, headers and pixels give an error, never a panic. Run it
// with -fuzzminimizetime 10x; minimizing pictures takes longer than finding them.
func FuzzDecode(f *testing.F) {
	for _, data := range inEveryFormat(f, camera{orientation: 6, taken: "2026:10:14 09:30:00", zone: "+02:00"}) {
		f.Add(data)
	}
	f.Add(cmykJPEG(0, 0xff, 0xff, 0))
	f.Add(tiffOf(f, quarters()))
	f.Add(pngClaiming(60000, 60000, 8, 2, 0))
	opt := photos.Options{Box: photos.Size{Width: 16, Height: 16}, MaxPixels: 1e5, MaxBytes: 1e5, MaxMemory: 1e7}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := photos.Decode("fuzz", data, opt)
		if err != nil {
			var e *photos.Error
			if !errors.As(err, &e) {
				t.Fatalf("%v: not a *photos.Error", err)
			}
			return
		}
		got := decoded(t, p.JPEG).Bounds().Size()
		if got.X != p.Thumbnail.Width || got.Y != p.Thumbnail.Height || got.X > 16 || got.Y > 16 || got.X < 1 || got.Y < 1 {
			t.Fatalf("thumbnail %v, said %v", got, p.Thumbnail)
		}
		again, err := photos.Decode("fuzz", data, opt)
		if err != nil || !bytes.Equal(again.JPEG, p.JPEG) {
			t.Fatalf("a second reading differs: %v", err)
		}
	})
}
