package photos

import (
	"bytes"
	"crypto/sha256"
	"image"
	"os"
	"time"
)

// Options say how a picture is read and made. The zero value is ready for use.
type Options struct {
	Box     Size // the thumbnail fits in here and is never enlarged; 1200 x 1200 if zero
	Quality int  // of the JPEG made, 1 to 100; 88 if zero

	MaxBytes  int64 // size of a file; 128 MB if zero
	MaxPixels int64 // width times height; 120 megapixels if zero
	MaxMemory int64 // bytes that one picture may take while it is decoded; 1 GB if zero
}

func (o Options) filled() Options {
	if o.Box.Width <= 0 || o.Box.Height <= 0 {
		o.Box = Size{1200, 1200}
	}
	if o.Quality <= 0 {
		o.Quality = 88
	}
	if o.MaxBytes <= 0 {
		o.MaxBytes = 128e6
	}
	if o.MaxPixels <= 0 {
		o.MaxPixels = 120e6
	}
	if o.MaxMemory <= 0 {
		o.MaxMemory = 1e9
	}
	return o
}

// Info is what a picture file tells without its pixels being decoded.
type Info struct {
	Format Format
	Source Size      // pixels of the picture in the file, turned upright
	Taken  time.Time // when the camera took it; zero if the file does not say

	// ZoneKnown tells that Taken carries the camera's offset from UTC. Otherwise
	// Taken is the bare reading of the camera's clock, written as if in UTC.
	ZoneKnown bool

	SHA256 [sha256.Size]byte // of the bytes of the file

	orientation int
	memory      int64 // bytes that decoding takes at most
}

// Photo is a picture made ready for print.
type Photo struct {
	Info
	Thumbnail Size   // pixels of JPEG
	JPEG      []byte // upright, sRGB or grey, without any metadata
}

// Load reads the picture name, a path with slashes below root, and makes its
// thumbnail. The same bytes and options give the same thumbnail. Errors are of
// type [*Error] and wrap a [Fault]. Several Loads may run at once; each takes
// up to MaxBytes and MaxMemory.
func Load(root *os.Root, name string, opt Options) (Photo, error) {
	data, err := read(root, name, opt.filled().MaxBytes)
	if err != nil {
		return Photo{}, err
	}
	return Decode(name, data, opt)
}

// Check is Load without the pixels: it opens and digests the file and holds its
// header against the limits. Damage further inside the file is left to Load.
func Check(root *os.Root, name string, opt Options) (Info, error) {
	opt = opt.filled()
	data, err := read(root, name, opt.MaxBytes)
	if err != nil {
		return Info{}, err
	}
	return inspect(name, data, opt)
}

// Decode makes a Photo of the bytes of a picture file; name serves in messages
// only. Its errors are those of [Load].
func Decode(name string, data []byte, opt Options) (Photo, error) {
	opt = opt.filled()
	info, err := inspect(name, data, opt)
	if err != nil {
		return Photo{}, err
	}
	return develop(name, data, info, opt)
}

// develop decodes a picture that was inspected, and makes its thumbnail.
func develop(name string, data []byte, info Info, opt Options) (Photo, error) {
	// Thumbnail and all: a decoder may hand out a picture that fails when looked at.
	small, err := safely(func() (*image.RGBA, error) {
		img, err := info.Format.codec().decode(bytes.NewReader(data))
		if err != nil {
			return nil, err
		}
		return thumbnail(img, opt.Box, info.orientation), nil
	})
	if err != nil {
		return Photo{}, fault(name, ErrDecode, "cannot be decoded as %s: %v", info.Format, err)
	}
	coded, err := encode(small, opt.Quality)
	if err != nil {
		return Photo{}, fault(name, ErrDecode, "its thumbnail cannot be written: %v", err)
	}
	size := small.Bounds().Size()
	return Photo{Info: info, Thumbnail: Size{size.X, size.Y}, JPEG: coded}, nil
}

func inspect(name string, data []byte, opt Options) (Info, error) {
	if n := int64(len(data)); n > opt.MaxBytes {
		return Info{}, fault(name, ErrTooBig, "%s, more than the %s accepted", megabytes(n), megabytes(opt.MaxBytes))
	}
	format, err := formatOf(name, data)
	if err != nil {
		return Info{}, err
	}
	cfg, memory, err := checkHeader(name, data, format, opt)
	if err != nil {
		return Info{}, err
	}
	noted := readNotes(data, format)
	return Info{
		Format:      format,
		Source:      Size{cfg.Width, cfg.Height}.turned(noted.orientation),
		Taken:       noted.taken,
		ZoneKnown:   noted.zoned,
		SHA256:      sha256.Sum256(data),
		orientation: noted.orientation,
		memory:      memory,
	}, nil
}
