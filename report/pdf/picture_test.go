package pdf

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"testing"

	"stonewrit/report"
)

// pictureKinds are PNG and JPEG files of the kinds that the encoders make.
func pictureKinds(t *testing.T) [][]byte {
	t.Helper()
	r := image.Rect(0, 0, 20, 14)
	deep := image.NewNRGBA64(r)
	palette := image.NewPaletted(r, color.Palette{color.White, color.Black, color.NRGBA{200, 0, 0, 255}})
	clear := image.NewNRGBA(r)
	grey, grey16 := image.NewGray(r), image.NewGray16(r)
	for y := range 14 {
		for x := range 20 {
			deep.SetNRGBA64(x, y, color.NRGBA64{uint16(x * 3000), 9000, uint16(y * 4000), 0xffff})
			palette.SetColorIndex(x, y, uint8((x+y)%3))
			clear.SetNRGBA(x, y, color.NRGBA{90, uint8(12 * x), 30, uint8(18 * y)})
			grey.SetGray(x, y, color.Gray{Y: uint8(12 * x)})
			grey16.SetGray16(x, y, color.Gray16{Y: uint16(3000 * x)})
		}
	}
	var out [][]byte
	for _, img := range []image.Image{deep, palette, clear, grey, grey16} {
		var b bytes.Buffer
		if err := png.Encode(&b, img); err != nil {
			t.Fatal(err)
		}
		out = append(out, b.Bytes())
	}
	for _, img := range []image.Image{clear, grey} {
		var b bytes.Buffer
		if err := jpeg.Encode(&b, img, nil); err != nil {
			t.Fatal(err)
		}
		out = append(out, b.Bytes())
	}
	return out
}

func TestPixels(t *testing.T) {
	for i, data := range pictureKinds(t) {
		if got, err := pixels(&report.Image{Data: data}); err != nil || got != (pixelSize{20, 14}) {
			t.Errorf("kind %d: %v, %v", i, got, err)
		}
	}
	whole := pictureKinds(t)[0]
	for name, data := range map[string][]byte{"nothing": nil, "text": []byte("GIF89a..."), "a cut header": whole[:20]} {
		if _, err := pixels(&report.Image{Data: data}); !errors.Is(err, ErrImage) {
			t.Errorf("%s: got %v, want ErrImage", name, err)
		}
	}
}

// A picture keeps its proportions and is never enlarged over one pixel a point.
func TestFit(t *testing.T) {
	for _, tc := range []struct {
		px       pixelSize
		w, h     Point
		wantWide Point
		wantHigh Point
		why      string
	}{
		{pixelSize{400, 200}, 100, 100, 100, 50, "width binds"},
		{pixelSize{200, 400}, 100, 100, 50, 100, "height binds"},
		{pixelSize{30, 20}, 100, 100, 30, 20, "small: not enlarged"},
		{pixelSize{4000, 1}, 100, 100, 100, 0.025, "a strip"},
	} {
		if w, h := tc.px.fit(tc.w, tc.h); w != tc.wantWide || h != tc.wantHigh {
			t.Errorf("%s: %v by %v, want %v by %v", tc.why, w, h, tc.wantWide, tc.wantHigh)
		}
	}
}
