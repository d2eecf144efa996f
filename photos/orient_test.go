package photos_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"testing"

	"stonewrit/photos"
)

// side of the upright picture.
type side int

const (
	top side = iota
	right
	bottom
	left
)

// orientations: where row 0 and column 0 of the stored picture are to be seen.
// Source: TIFF 6.0 (Aldus, 1992), section 8, Orientation; EXIF uses the same.
var orientations = []struct {
	value         uint32
	row0, column0 side
}{
	{1, top, left}, {2, top, right}, {3, bottom, right}, {4, bottom, left},
	{5, left, top}, {6, right, top}, {7, right, bottom}, {8, left, bottom},
}

// corner returns a point well inside the corner between two sides.
func corner(size image.Point, a, b side) image.Point {
	p := image.Pt(size.X/4, size.Y/4)
	if a == right || b == right {
		p.X = size.X - 1 - p.X
	}
	if a == bottom || b == bottom {
		p.Y = size.Y - 1 - p.Y
	}
	return p
}

func opposite(s side) side { return (s + 2) % 4 }

func decoded(t testing.TB, data []byte) image.Image {
	t.Helper()
	m, err := jpeg.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// near allows for the loss of one pass of JPEG in a flat area.
func near(a, b color.Color, tol int) bool {
	ar, ag, ab, _ := a.RGBA()
	br, bg, bb, _ := b.RGBA()
	far := func(x, y uint32) bool { d := int(x>>8) - int(y>>8); return d > tol || d < -tol }
	return !far(ar, br) && !far(ag, bg) && !far(ab, bb)
}

func TestOrientation(t *testing.T) {
	for _, o := range orientations {
		for format, data := range inEveryFormat(t, camera{orientation: o.value}) {
			p, err := photos.Decode(format, data, photos.Options{})
			if err != nil {
				t.Errorf("%s, orientation %d: %v", format, o.value, err)
				continue
			}
			want := photos.Size{Width: 2 * quarterWide, Height: 2 * quarterHigh}
			if o.row0 == left || o.row0 == right {
				want.Width, want.Height = want.Height, want.Width
			}
			if p.Source != want || p.Thumbnail != want {
				t.Errorf("%s, orientation %d: source %v, thumbnail %v, want %v", format, o.value, p.Source, p.Thumbnail, want)
			}
			if string(p.Format) != format {
				t.Errorf("format %q, want %q", p.Format, format)
			}
			m := decoded(t, p.JPEG)
			for _, c := range []struct {
				where string
				a, b  side
				want  color.Color
			}{
				{"row 0, column 0", o.row0, o.column0, red},
				{"row 0, last column", o.row0, opposite(o.column0), green},
				{"last row, column 0", opposite(o.row0), o.column0, blue},
				{"last row, last column", opposite(o.row0), opposite(o.column0), yellow},
			} {
				at := corner(m.Bounds().Size(), c.a, c.b)
				if got := m.At(at.X, at.Y); !near(got, c.want, 8) {
					t.Errorf("%s, orientation %d: stored %s seen at %v is %v, want %v", format, o.value, c.where, at, got, c.want)
				}
			}
		}
	}
}

func TestOrientationOutOfRangeCountsAsUpright(t *testing.T) {
	for _, value := range []uint32{0, 9, 0xffff} {
		for format, data := range inEveryFormat(t, camera{orientation: value}) {
			p, err := photos.Decode(format, data, photos.Options{})
			if err != nil {
				t.Errorf("%s, orientation %d: %v", format, value, err)
				continue
			}
			if got := decoded(t, p.JPEG).At(3, 3); !near(got, red, 8) {
				t.Errorf("%s, orientation %d: top left is %v, want %v", format, value, got, red)
			}
		}
	}
}

func TestOrientationWithThumbnailBox(t *testing.T) {
	// The box holds for the picture as seen: 48 x 32 stored is 32 x 48 turned.
	data := inEveryFormat(t, camera{orientation: 6})["JPEG"]
	p, err := photos.Decode("x", data, photos.Options{Box: photos.Size{Width: 100, Height: 24}})
	if err != nil {
		t.Fatal(err)
	}
	if want := (photos.Size{Width: 16, Height: 24}); p.Thumbnail != want {
		t.Errorf("thumbnail %v, want %v", p.Thumbnail, want)
	}
}
