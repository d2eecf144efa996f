package photos

import (
	"image"
	"image/draw"
)

// shrink averages blocks of the picture into one opaque pixel each, so that the
// fine filter has little left to do. It leaves at least one and a half pixels
// for each one wanted, so that the fine filter still decides the sharpness.
// Transparency is flattened on white; 16-bit and palette colours become 8-bit.
func shrink(img image.Image, want Size) *image.NRGBA {
	full := Size{img.Bounds().Dx(), img.Bounds().Dy()}
	factor := max(1, min(full.Width*2/(3*want.Width), full.Height*2/(3*want.Height)))
	small := image.NewNRGBA(image.Rect(0, 0, full.Width/factor, full.Height/factor))
	switch src := img.(type) {
	case *image.YCbCr:
		shrinkYCbCr(small, src)
	default:
		shrinkAny(small, deep(src))
	}
	return small
}

// edge is where block i of n begins along a length of full pixels.
func edge(i, n, full int) int { return i * full / n }

func shrinkAny(dst *image.NRGBA, src image.RGBA64Image) {
	b, w, h := src.Bounds(), dst.Rect.Dx(), dst.Rect.Dy()
	for y := range h {
		y0, y1 := b.Min.Y+edge(y, h, b.Dy()), b.Min.Y+edge(y+1, h, b.Dy())
		for x := range w {
			x0, x1 := b.Min.X+edge(x, w, b.Dx()), b.Min.X+edge(x+1, w, b.Dx())
			r, g, b := meanOnWhite(src, image.Rect(x0, y0, x1, y1))
			p := dst.Pix[y*dst.Stride+4*x:][:4]
			p[0], p[1], p[2], p[3] = r, g, b, 0xff
		}
	}
}

// meanOnWhite averages a block laid over white. Colours come premultiplied by
// their opacity, so white shows through by what opacity lacks.
func meanOnWhite(src image.RGBA64Image, block image.Rectangle) (r, g, b uint8) {
	var sumR, sumG, sumB, n uint64
	for y := block.Min.Y; y < block.Max.Y; y++ {
		for x := block.Min.X; x < block.Max.X; x++ {
			c := src.RGBA64At(x, y)
			white := 0xffff - uint64(c.A)
			sumR += uint64(c.R) + white
			sumG += uint64(c.G) + white
			sumB += uint64(c.B) + white
			n++
		}
	}
	return to8(sumR, n), to8(sumG, n), to8(sumB, n)
}

// to8 rounds the mean of n 16-bit values to 8 bits.
func to8(sum, n uint64) uint8 { return uint8(min(0xff, (sum+n*0x80)/(n*0x101))) }

// deep gives a picture the method that reads a pixel without allocating; every
// type that the decoders hand out has it.
func deep(img image.Image) image.RGBA64Image {
	if d, ok := img.(image.RGBA64Image); ok {
		return d
	}
	copied := image.NewRGBA64(img.Bounds())
	draw.Draw(copied, copied.Rect, img, copied.Rect.Min, draw.Src)
	return copied
}
