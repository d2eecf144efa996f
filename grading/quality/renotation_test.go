package quality

import (
	"math"
	"strconv"
	"testing"
)

type chip struct{ x, y, luminance float64 }

// A chart is the published renotation: chromaticity and luminance of chips at
// whole values, even chromas and every 2.5 steps of hue.
type chart map[[3]int]chip // hue in tenths, value, chroma

func renotation(t *testing.T) chart {
	c := chart{}
	for _, r := range rowsOf(t, "renotation.csv") {
		m, err := ParseMunsell(r["hue"] + " " + r["value"] + "/" + r["chroma"])
		if err != nil {
			t.Fatal(err)
		}
		number := func(column string) float64 {
			v, err := strconv.ParseFloat(r[column], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		c[[3]int{int(10 * m.Hue), int(m.Value), int(m.Chroma)}] = chip{number("x"), number("y"), number("Y")}
	}
	return c
}

// srgb interpolates a colour between the eight chips around it, in order of
// hue, value and chroma, and converts it; false where a chip is missing.
func (c chart) srgb(m Munsell) ([3]float64, bool) {
	h, v, k := m.Hue/2.5, m.Value, m.Chroma/2
	var XYZ [3]float64
	for corner := range 8 {
		weight := 1.0
		at := func(x float64, bit int) int {
			low := math.Floor(x)
			if corner>>bit&1 == 1 {
				weight *= x - low
				return int(low) + 1
			}
			weight *= 1 - (x - low)
			return int(low)
		}
		hue, value, chroma := at(h, 0), at(v, 1), at(k, 2)
		if weight == 0 {
			continue
		}
		one, ok := c.at(hue, value, chroma)
		if !ok {
			return [3]float64{}, false
		}
		XYZ[0] += weight * one.x / one.y * one.luminance
		XYZ[1] += weight * one.luminance
		XYZ[2] += weight * (1 - one.x - one.y) / one.y * one.luminance
	}
	return screen(XYZ), true
}

func (c chart) at(hue, value, chroma int) (chip, bool) {
	if hue = (hue + 40) % 40; hue == 0 {
		hue = 40
	}
	if chroma == 0 { // illuminant C, with the luminance of the same value
		one, ok := c[[3]int{25, value, 2}]
		return chip{0.3101, 0.3162, one.luminance}, ok
	}
	one, ok := c[[3]int{25 * hue, value, 2 * chroma}]
	return one, ok
}

// screen converts tristimulus values under illuminant C, relative to magnesium
// oxide, to sRGB from 0 to 255. Adaptation: Bradford matrix from C to D65; sRGB:
// IEC 61966-2-1 (both from memory).
func screen(XYZ [3]float64) [3]float64 {
	const oxide = 102.57 // luminance of value 10 in the renotation
	adapt := [3][3]float64{{0.990448, -0.007168, -0.011615}, {-0.012371, 1.015594, -0.002928}, {-0.003564, 0.006770, 0.918157}}
	linear := [3][3]float64{{3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570}}
	rgb := times(linear, times(adapt, XYZ))
	for i, v := range rgb {
		v = min(max(v/oxide, 0), 1)
		if v <= 0.0031308 {
			v *= 12.92
		} else {
			v = 1.055*math.Pow(v, 1/2.4) - 0.055
		}
		rgb[i] = 255 * v
	}
	return rgb
}

func times(m [3][3]float64, v [3]float64) (out [3]float64) {
	for i := range 3 {
		for j := range 3 {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}
