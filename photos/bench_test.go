package photos_test

import (
	"fmt"
	"image"
	"testing"

	"stonewrit/photos"
)

// cameraJPEG is a JPEG as a camera of 12 megapixels makes it.
func cameraJPEG(b *testing.B) []byte {
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
	return jpegOf(b, m)
}

// BenchmarkCold12Megapixels decodes, shrinks, filters, encodes and digests.
func BenchmarkCold12Megapixels(b *testing.B) {
	data := cameraJPEG(b)
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

// BenchmarkWarm loads a picture of a few megabytes that was made before.
func BenchmarkWarm(b *testing.B) {
	root := album(b, map[string][]byte{"a.jpg": cameraJPEG(b)})
	d := photos.NewDarkroom(photos.DarkroomOptions{Folder: b.TempDir()})
	opt := photos.Options{Box: photos.Size{Width: 600, Height: 600}}
	if _, err := d.Load(root, "a.jpg", opt); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := d.Load(root, "a.jpg", opt); err != nil {
			b.Fatal(err)
		}
	}
}
