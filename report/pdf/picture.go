package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"

	"stonewrit/report"
)

// ErrImage says that a picture of the document is neither JPEG nor PNG, or is
// damaged.
var ErrImage = errors.New("not a readable JPEG or PNG picture")

// pixelSize is the size of a picture in pixels.
type pixelSize struct{ w, h int }

const pngSignature = "\x89PNG\r\n\x1a\n"

func isPNG(data []byte) bool { return bytes.HasPrefix(data, []byte(pngSignature)) }

// pixels returns the size of a picture without decoding the whole of it.
func pixels(img *report.Image) (pixelSize, error) {
	decode := jpeg.DecodeConfig
	if isPNG(img.Data) {
		decode = png.DecodeConfig
	}
	var cfg image.Config
	cfg, err := decode(bytes.NewReader(img.Data))
	if err != nil {
		return pixelSize{}, fmt.Errorf("%w: %v", ErrImage, err)
	}
	if cfg.Width < 1 || cfg.Height < 1 {
		return pixelSize{}, fmt.Errorf("%w: it is empty", ErrImage)
	}
	return pixelSize{cfg.Width, cfg.Height}, nil
}

// coarsest is the resolution below which a small picture is not enlarged: one
// pixel a point.
const coarsest Point = 1

// fit returns the printed size of the picture in a box of w by h: as large as
// fits, in its own proportions.
func (p pixelSize) fit(w, h Point) (Point, Point) {
	pw, ph := Point(p.w), Point(p.h)
	scale := min(w/pw, h/ph, coarsest)
	return pw * scale, ph * scale
}
