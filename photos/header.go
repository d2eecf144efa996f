package photos

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"
	"strconv"
)

// maxScans bounds the passes of a progressive JPEG: cameras and editors write
// about ten (from memory), while a hostile file may repeat an empty one for hours.
const maxScans = 100

// checkHeader returns the stored size of the picture, and the bytes that decoding
// it takes at most, after holding what its header claims against the limits.
func checkHeader(name string, data []byte, format Format, opt Options) (image.Config, int64, error) {
	cfg, err := safely(func() (image.Config, error) {
		return format.codec().config(bytes.NewReader(data))
	})
	if err != nil {
		return cfg, 0, fault(name, ErrDecode, "cannot be decoded as %s: %v", format, err)
	}
	if cfg.Width <= 0 || cfg.Height <= 0 {
		return cfg, 0, fault(name, ErrDecode, "has no pixels (%d x %d)", cfg.Width, cfg.Height)
	}
	pixels := int64(cfg.Width) * int64(cfg.Height) // both at most 32 bits wide
	if pixels > opt.MaxPixels || pixels/int64(cfg.Width) != int64(cfg.Height) {
		return cfg, 0, fault(name, ErrTooBig, "%d x %d pixels are more than the %s accepted",
			cfg.Width, cfg.Height, megapixels(opt.MaxPixels))
	}
	passes := passesOf(data, format)
	if passes.scans > maxScans {
		return cfg, 0, fault(name, ErrTooBig, "%d passes over the picture are more than the %d accepted", passes.scans, maxScans)
	}
	interlaced := format == PNG && len(data) > 28 && data[28] != 0
	need := pixels * bytesAPixel(format, cfg.ColorModel, passes.progressive || interlaced)
	if need > opt.MaxMemory {
		return cfg, 0, fault(name, ErrTooBig, "%d x %d pixels of this kind take up to %s to decode, more than the %s accepted",
			cfg.Width, cfg.Height, megabytes(need), megabytes(opt.MaxMemory))
	}
	return cfg, need, nil
}

func passesOf(data []byte, format Format) jpegScans {
	if format != JPEG {
		return jpegScans{scans: 1}
	}
	return scanJPEG(data)
}

// bytesAPixel is the most memory that decoding takes for a pixel: the picture
// and what its decoder keeps beside it (read off the decoders' code). A gradual
// file is a progressive JPEG or an interlaced PNG.
func bytesAPixel(format Format, model color.Model, gradual bool) int64 {
	n := bytesOf(model)
	switch {
	case format == JPEG && gradual:
		return n * 6 // coefficients, four bytes a sample, until the last pass
	case format == JPEG:
		return n * 2 // planes that may have to be gathered
	case format == PNG && gradual:
		return n * 2 // passes are merged
	case format == TIFF:
		return n + 16 // a strip as large as the picture, in a growing buffer
	case format == WebP:
		return n + 8 // lossless parts are undone in copies
	default:
		return n
	}
}

func bytesOf(model color.Model) int64 {
	if _, ok := model.(color.Palette); ok {
		return 1
	}
	switch model {
	case color.GrayModel:
		return 1
	case color.Gray16Model:
		return 2
	case color.YCbCrModel:
		return 3
	case color.RGBA64Model, color.NRGBA64Model:
		return 8
	default:
		return 4
	}
}

// safely turns a panic of a decoder into an error.
func safely[T any](f func() (T, error)) (got T, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the decoder failed: %v", r)
		}
	}()
	return f()
}

func megabytes(n int64) string { return millions(n) + " MB" }

func megapixels(n int64) string { return millions(n) + " megapixels" }

// millions rounds to a tenth, and small numbers to three digits.
func millions(n int64) string {
	m := float64(n) / 1e6
	if m < 1 {
		return strconv.FormatFloat(m, 'g', 3, 64)
	}
	return strconv.FormatFloat(math.Round(m*10)/10, 'f', -1, 64)
}
