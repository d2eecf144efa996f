package photos

import (
	"bytes"
	"image"
	"image/draw"
	"image/jpeg"

	"github.com/disintegration/imaging"
)

// Size is a width and a height in pixels.
type Size struct{ Width, Height int }

// within is the largest size of the same proportions that fits the box and is
// no larger than s itself; at least one pixel each way.
func (s Size) within(box Size) Size {
	if s.Width <= box.Width && s.Height <= box.Height {
		return s
	}
	w, h := int64(s.Width), int64(s.Height)
	if w*int64(box.Height) > h*int64(box.Width) {
		return Size{box.Width, max(1, int((h*int64(box.Width)+w/2)/w))}
	}
	return Size{max(1, int((w*int64(box.Height)+h/2)/h)), box.Height}
}

// thumbnail scales a stored picture to fit the box once it is upright.
func thumbnail(img image.Image, box Size, orientation int) *image.RGBA {
	stored := Size{img.Bounds().Dx(), img.Bounds().Dy()}
	want := stored.within(box.turned(orientation))
	small := shrink(img, want)
	if got := small.Rect.Size(); got.X != want.Width || got.Y != want.Height {
		small = imaging.Resize(small, want.Width, want.Height, imaging.Lanczos)
	}
	return opaque(turn(small, orientation))
}

// opaque is the same picture in the type that the JPEG encoder is quick with:
// without transparency the two differ in name only.
func opaque(m *image.NRGBA) *image.RGBA {
	return &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
}

// encode writes a JPEG of pixels alone. A picture without colour takes one
// channel.
func encode(m *image.RGBA, quality int) ([]byte, error) {
	var img image.Image = m
	if isGrey(m) {
		grey := image.NewGray(m.Rect)
		draw.Draw(grey, grey.Rect, m, m.Rect.Min, draw.Src)
		img = grey
	}
	var out bytes.Buffer
	err := jpeg.Encode(&out, img, &jpeg.Options{Quality: quality})
	return out.Bytes(), err
}

func isGrey(m *image.RGBA) bool {
	for i := 0; i+2 < len(m.Pix); i += 4 {
		if m.Pix[i] != m.Pix[i+1] || m.Pix[i] != m.Pix[i+2] {
			return false
		}
	}
	return true
}
