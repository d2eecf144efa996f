package photos

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"
	"io"

	"github.com/bep/imagemeta"
	"golang.org/x/image/tiff"
	"golang.org/x/image/webp"
)

// Format is the kind of a picture file, told from its first bytes.
type Format string

// The formats that are read.
const (
	JPEG Format = "JPEG"
	PNG  Format = "PNG"
	TIFF Format = "TIFF"
	WebP Format = "WebP"
)

// codec holds what reads one format.
type codec struct {
	decode func(io.Reader) (image.Image, error)
	config func(io.Reader) (image.Config, error)
	notes  imagemeta.ImageFormat
}

func (f Format) codec() codec {
	switch f {
	case JPEG:
		return codec{jpeg.Decode, jpeg.DecodeConfig, imagemeta.JPEG}
	case PNG:
		return codec{png.Decode, png.DecodeConfig, imagemeta.PNG}
	case TIFF:
		return codec{tiff.Decode, tiff.DecodeConfig, imagemeta.TIFF}
	default:
		return codec{webp.Decode, webp.DecodeConfig, imagemeta.WebP}
	}
}

// formatOf tells the format of data, or names what it is instead.
func formatOf(name string, data []byte) (Format, error) {
	has := func(at int, magic string) bool {
		return len(data) >= at+len(magic) && string(data[at:at+len(magic)]) == magic
	}
	switch {
	case has(0, "\xff\xd8\xff"):
		return JPEG, nil
	case has(0, "\x89PNG\r\n\x1a\n"):
		return PNG, nil
	case has(0, "II*\x00"), has(0, "MM\x00*"):
		return TIFF, nil
	case has(0, "RIFF") && has(8, "WEBP"):
		return WebP, nil
	case len(data) == 0:
		return "", fault(name, ErrFormat, "is empty")
	case has(4, "ftyp"):
		return "", fault(name, ErrFormat, "is a HEIF, AVIF or video file; save it as JPEG, PNG, TIFF or WebP")
	case has(0, "GIF8"):
		return "", fault(name, ErrFormat, "is a GIF picture; save it as JPEG, PNG, TIFF or WebP")
	case has(0, "%PDF"):
		return "", fault(name, ErrFormat, "is a PDF document; save the picture as JPEG, PNG, TIFF or WebP")
	case has(0, "BM") && bytes.IndexByte(data[:min(len(data), 14)], 0) > 0:
		return "", fault(name, ErrFormat, "is a BMP picture; save it as JPEG, PNG, TIFF or WebP")
	default:
		return "", fault(name, ErrFormat, "is no JPEG, PNG, TIFF or WebP picture")
	}
}
