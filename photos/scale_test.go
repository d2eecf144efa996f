package photos_test

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"sync"
	"testing"

	"stonewrit/photos"
)

func TestThumbnailSize(t *testing.T) {
	for _, c := range []struct {
		name string
		w, h int
		box  photos.Size
		want photos.Size
	}{
		{"never enlarged", 40, 30, photos.Size{Width: 100, Height: 100}, photos.Size{Width: 40, Height: 30}},
		{"width decides", 400, 300, photos.Size{Width: 100, Height: 100}, photos.Size{Width: 100, Height: 75}},
		{"height decides", 300, 400, photos.Size{Width: 100, Height: 100}, photos.Size{Width: 75, Height: 100}},
		{"exact", 400, 300, photos.Size{Width: 400, Height: 300}, photos.Size{Width: 400, Height: 300}},
		{"a strip keeps one row", 3000, 2, photos.Size{Width: 100, Height: 100}, photos.Size{Width: 100, Height: 1}},
		{"a pole keeps one column", 2, 3000, photos.Size{Width: 100, Height: 100}, photos.Size{Width: 1, Height: 100}},
		{"odd numbers", 1001, 777, photos.Size{Width: 333, Height: 333}, photos.Size{Width: 333, Height: 258}},
		{"one pixel", 1, 1, photos.Size{Width: 1, Height: 1}, photos.Size{Width: 1, Height: 1}},
	} {
		for _, data := range [][]byte{
			jpegOf(t, image.NewYCbCr(image.Rect(0, 0, c.w, c.h), image.YCbCrSubsampleRatio420)),
			pngOf(t, image.NewGray(image.Rect(0, 0, c.w, c.h))),
		} {
			p, err := photos.Decode(c.name, data, photos.Options{Box: c.box})
			if err != nil {
				t.Errorf("%v", err)
				continue
			}
			got := decoded(t, p.JPEG).Bounds().Size()
			if p.Thumbnail != c.want || got.X != c.want.Width || got.Y != c.want.Height {
				t.Errorf("%s: thumbnail %v, pixels %v, want %v", c.name, p.Thumbnail, got, c.want)
			}
		}
	}
}

// wave is smooth in x and y, so its value at any place is known.
func wave(x, y, w, h float64) float64 {
	return 128 + 50*math.Cos(2*math.Pi*3*x/w) + 40*math.Sin(2*math.Pi*2*y/h)
}

// TestSmoothPicturesKeepTheirValues compares with the formula of the picture at
// the centre of each thumbnail pixel: no shift, no change of brightness, at
// sizes that divide evenly and not.
func TestSmoothPicturesKeepTheirValues(t *testing.T) {
	const w, h = 1003, 701
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetGray(x, y, color.Gray{uint8(math.Round(wave(float64(x)+0.5, float64(y)+0.5, w, h)))})
		}
	}
	for _, wide := range []int{900, 501, 250, 157, 64} {
		for format, data := range map[string][]byte{"JPEG": jpegOf(t, m), "PNG": pngOf(t, m)} {
			p, err := photos.Decode(format, data, photos.Options{Box: photos.Size{Width: wide, Height: wide}, Quality: 98})
			if err != nil {
				t.Fatal(err)
			}
			got := decoded(t, p.JPEG).(*image.Gray)
			worst := 0.0
			for y := 2; y < p.Thumbnail.Height-2; y++ { // edges have no neighbours to filter with
				for x := 2; x < p.Thumbnail.Width-2; x++ {
					at := wave((float64(x)+0.5)*w/float64(p.Thumbnail.Width), (float64(y)+0.5)*h/float64(p.Thumbnail.Height), w, h)
					worst = max(worst, math.Abs(at-float64(got.GrayAt(x, y).Y)))
				}
			}
			if worst > 4 {
				t.Errorf("%s to %d wide: off by up to %.1f of 255, want at most 4", format, wide, worst)
			}
		}
	}
}

// TestFinePatternBecomesFlat: a pattern finer than the thumbnail's pixels has no
// place in it (sampling theorem); subsampling without a mean would show bands.
func TestFinePatternBecomesFlat(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 800, 600))
	for y := range 600 {
		for x := range 800 {
			m.SetGray(x, y, color.Gray{uint8(255 * ((x + y) % 2))})
		}
	}
	for _, wide := range []int{300, 133, 100} {
		p, err := photos.Decode("fine", pngOf(t, m), photos.Options{Box: photos.Size{Width: wide, Height: wide}})
		if err != nil {
			t.Fatal(err)
		}
		got := decoded(t, p.JPEG).(*image.Gray)
		for y := 3; y < p.Thumbnail.Height-3; y++ {
			for x := 3; x < p.Thumbnail.Width-3; x++ {
				if v := got.GrayAt(x, y).Y; v < 118 || v > 137 {
					t.Fatalf("to %d wide: %d at %d, %d; want about 127.5", wide, v, x, y)
				}
			}
		}
	}
}

func TestColourSurvivesEverySubsampling(t *testing.T) {
	y, cb, cr := color.RGBToYCbCr(90, 40, 150)
	for _, ratio := range []image.YCbCrSubsampleRatio{
		image.YCbCrSubsampleRatio444, image.YCbCrSubsampleRatio422, image.YCbCrSubsampleRatio420,
		image.YCbCrSubsampleRatio440, image.YCbCrSubsampleRatio411, image.YCbCrSubsampleRatio410,
	} {
		m := image.NewYCbCr(image.Rect(0, 0, 101, 67), ratio)
		fill(m.Y, y)
		fill(m.Cb, cb)
		fill(m.Cr, cr)
		p, err := photos.Decode(ratio.String(), jpegOf(t, m), photos.Options{Box: photos.Size{Width: 20, Height: 20}})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := decoded(t, p.JPEG).At(10, 6), (color.NRGBA{90, 40, 150, 255}); !near(got, want, 4) {
			t.Errorf("%v: %v, want %v", ratio, got, want)
		}
	}
}

func fill(b []byte, v byte) {
	for i := range b {
		b[i] = v
	}
}

func TestSameBytesEveryTimeAndAtOnce(t *testing.T) {
	files := inEveryFormat(t, camera{orientation: 7})
	for format, data := range files {
		opt := photos.Options{Box: photos.Size{Width: 20, Height: 20}}
		first, err := photos.Decode(format, data, opt)
		if err != nil {
			t.Fatal(err)
		}
		var all sync.WaitGroup
		for range 8 {
			all.Go(func() {
				again, err := photos.Decode(format, data, opt)
				if err != nil || !bytes.Equal(again.JPEG, first.JPEG) || again.SHA256 != first.SHA256 {
					t.Errorf("%s: a second reading differs (%v)", format, err)
				}
			})
		}
		all.Wait()
	}
}
