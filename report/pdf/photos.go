package pdf

import (
	"fmt"
	"math"

	"stonewrit/report"
)

// betweenPhotos is the white between two photos of a row.
const betweenPhotos Point = 14

// photoHigh is the greatest height of a photo, by the number in a row.
func photoHigh(columns int) Point {
	return [...]Point{0, 300, 170, 130, 100}[columns]
}

// photos sets rows of pictures: the picture, the scale bar where the scale is
// known, and the caption.
func (s *setter) photos(b report.Photos) []strip {
	columns := min(max(b.Columns, 0), 4)
	if columns == 0 {
		columns = 2
	}
	wide := (s.main - betweenPhotos*Point(columns-1)) / Point(columns)
	var out []strip
	for from := 0; from < len(b.Photos); from += columns {
		row := b.Photos[from:min(from+columns, len(b.Photos))]
		strips := s.photoRow(row, wide, photoHigh(columns))
		if from > 0 && len(strips) > 0 {
			strips[0].before = 10
		}
		out = append(out, strips...)
	}
	return out
}

// photoRow sets the pictures of one row with their captions. A caption stands
// right below its picture; only a very long one may go on on the next page, and
// then all captions of the row begin below the highest picture.
func (s *setter) photoRow(row []report.Photo, wide, high Point) []strip {
	pictures := strip{}
	captions := make([]cell, len(row))
	below := make([]Point, len(row))
	var longest Point
	for i := range row {
		photo := &row[i]
		x := s.mainLeft() + Point(i)*(wide+betweenPhotos)
		captions[i] = cell{x: x, width: wide, lines: s.captionLines(photo, wide)}
		longest = max(longest, height(captions[i].lines))
		px, err := pixels(&photo.Image)
		if err != nil {
			continue // Check reports it
		}
		w, h := px.fit(wide, high)
		pictures.items = append(pictures.items, Picture{Image: &photo.Image, Box: Rect{x, 0, w, h}})
		bar, tall := s.scaleBar(photo, px, w, x)
		pictures.items = append(pictures.items, moveAll(bar, 0, h)...)
		below[i] = h + tall + 3
		pictures.height = max(pictures.height, below[i])
	}
	if longest > splitAbove {
		pictures.keepNext = true
		return append([]strip{pictures}, s.sideBySide(captions, 0)...)
	}
	for i, c := range captions {
		pictures.items = append(pictures.items, c.put(s.press, 0, len(c.lines), below[i])...)
		pictures.height = max(pictures.height, below[i]+height(c.lines))
	}
	return []strip{pictures}
}

// captionLines are the caption, then date and digest in the quiet voice.
func (s *setter) captionLines(photo *report.Photo, width Point) []line {
	lines := s.press.lines(photo.Caption, sizeSmall, width)
	sources := photo.Taken
	if photo.SHA256 != "" {
		if sources != "" {
			sources += "\n"
		}
		sources += "SHA-256\u00a0" + photo.SHA256[:min(16, len(photo.SHA256))]
	}
	return append(lines, s.press.lines(report.Quiet(sources), sizeSmall, width)...)
}

// scaleBar draws a bar of a round number of millimetres as they appear in the
// photo, which is w wide and starts at x; nothing if the scale is not known.
// It returns the height it takes below the photo.
func (s *setter) scaleBar(photo *report.Photo, px pixelSize, w, x Point) ([]Placed, Point) {
	if !(photo.MMPerPixel > 0) || math.IsInf(photo.MMPerPixel, 1) {
		return nil, 0
	}
	perMM := w / Point(float64(px.w)*photo.MMPerPixel)
	mm := roundLength(float64(w/perMM) * 0.4)
	if mm < 0.001 || mm > 10_000 { // no stone, and no label, has such a scale
		return nil, 0
	}
	long := Point(mm) * perMM
	label := s.press.measure(lengthText(mm), voice{FaceRegular, sizeSmall, InkBlack})
	const y, tick = 8, 2
	bar := path(report.Pen{Width: report.Thin},
		part(report.XY{X: x, Y: y - tick}, report.XY{X: x, Y: y + tick}),
		part(report.XY{X: x, Y: y}, report.XY{X: x + long, Y: y}),
		part(report.XY{X: x + long, Y: y - tick}, report.XY{X: x + long, Y: y + tick}))
	return []Placed{bar, s.press.text(label, x+long+4, y+Point(s.press.faces[FaceRegular].capitals)*sizeSmall/2)}, 13
}

// roundLength returns the greatest 1, 2 or 5 times a power of ten that is not
// above limit.
func roundLength(limit float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(limit)))
	for _, m := range []float64{5, 2} {
		if m*power <= limit {
			return m * power
		}
	}
	return power
}

// lengthText writes a round length without a decimal sign, which differs
// between languages.
func lengthText(mm float64) string {
	if mm < 1 {
		return fmt.Sprintf("%.0f\u00a0µm", mm*1000)
	}
	return fmt.Sprintf("%.0f\u00a0mm", mm)
}
