package photos_test

import (
	"fmt"
	"image"
	"testing"

	"stonewrit/photos"
)

// BenchmarkCold12Megapixels reads a JPEG as a camera of 12 megapixels makes it:
// decode, shrink, filter, encode, digest.
func BenchmarkCold12Megapixels(b *testing.B) {
	m := image.NewYCbCr(image.Rect(0, 0, 4000, 3000), image.YCbCrSubsampleRatio420)
	noise := uint32(1)
	for i := range m.Y {
		noise = noise*1664525 + 1013904223 // from memory: a common linear generator
		x, y := i%m.YStride, i/m.YStride
		m.Y[i] = byte(100 + 60*((x/40+y/40)%2) + int(noise>>28))
	}
	for i := range m.Cb {
		m.Cb[i], m.Cr[i] = byte(100+i%m.CStride/40), byte(120+i/m.CStride/40)
	}
	data := jpegOf(b, m)
	b.SetBytes(int64(len(data)))
	for _, wide := range []int{600, 1200} {
		b.Run(fmt.Sprintf("to%d", wide), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := photos.Decode("x", data, photos.Options{Box: photos.Size{Width: wide, Height: wide}}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
