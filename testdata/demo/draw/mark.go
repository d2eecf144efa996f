package main

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// mark adds the scale tick, so many millimetres long, and says what this is.
func mark(m *image.NRGBA, scale float64, tick float64) error {
	const left, base = 48, pageHigh - 44
	ink := image.NewUniform(color.Gray{96})
	wide := int(tick/scale + 0.5)
	for _, r := range []image.Rectangle{
		image.Rect(left, base-1, left+wide, base+1),
		image.Rect(left, base-7, left+2, base+7),
		image.Rect(left+wide-2, base-7, left+wide, base+7),
	} {
		draw.Draw(m, r, ink, image.Point{}, draw.Src)
	}
	parsed, err := opentype.Parse(goregular.TTF)
	if err != nil {
		return err
	}
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 21, DPI: 72})
	if err != nil {
		return err
	}
	write := font.Drawer{Dst: m, Src: ink, Face: face, Dot: fixed.P(left+wide+14, base+7)}
	write.DrawString(fmt.Sprintf("%g mm", tick))
	const said = "drawn, not photographed"
	write.Dot = fixed.P(pageWide-48-font.MeasureString(face, said).Round(), base+7)
	write.DrawString(said)
	return nil
}
