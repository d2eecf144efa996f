package photos

import (
	"image"
	"image/color"
)

// shrinkYCbCr averages brightness and colour planes apart, as JPEG and WebP
// store them, and converts only the few pixels that are left.
func shrinkYCbCr(dst *image.NRGBA, src *image.YCbCr) {
	b, w, h := src.Rect, dst.Rect.Dx(), dst.Rect.Dy()
	luma := plane{src.Y, src.YStride}
	blue, red := plane{src.Cb, src.CStride}, plane{src.Cr, src.CStride}
	across, down := subsampling(src.SubsampleRatio)
	for y := range h {
		y0, y1 := edge(y, h, b.Dy()), edge(y+1, h, b.Dy())
		for x := range w {
			x0, x1 := edge(x, w, b.Dx()), edge(x+1, w, b.Dx())
			block := image.Rect(x0, y0, x1, y1)
			chroma := image.Rect(x0/across, y0/down, (x1-1)/across+1, (y1-1)/down+1)
			p := dst.Pix[y*dst.Stride+4*x:][:4]
			p[0], p[1], p[2] = color.YCbCrToRGB(luma.mean(block), blue.mean(chroma), red.mean(chroma))
			p[3] = 0xff
		}
	}
}

// plane is one channel of a picture whose first sample is at 0, 0.
type plane struct {
	pix    []byte
	stride int
}

func (p plane) mean(block image.Rectangle) uint8 {
	sum := 0
	for y := block.Min.Y; y < block.Max.Y; y++ {
		for _, v := range p.pix[y*p.stride+block.Min.X : y*p.stride+block.Max.X] {
			sum += int(v)
		}
	}
	n := block.Dx() * block.Dy()
	return uint8((sum + n/2) / n)
}

func subsampling(r image.YCbCrSubsampleRatio) (across, down int) {
	switch r {
	case image.YCbCrSubsampleRatio422:
		return 2, 1
	case image.YCbCrSubsampleRatio420:
		return 2, 2
	case image.YCbCrSubsampleRatio440:
		return 1, 2
	case image.YCbCrSubsampleRatio411:
		return 4, 1
	case image.YCbCrSubsampleRatio410:
		return 4, 2
	default:
		return 1, 1
	}
}
