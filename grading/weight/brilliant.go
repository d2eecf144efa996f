package weight

import "math"

// eighth is the angle between neighbouring mains of a brilliant, and ways how
// many of the ways around a frame that is.
const (
	eighth = math.Pi / 4
	ways   = waysAround / 8
)

// brilliantCrown gives table, eight mains, eight stars and sixteen upper
// halves. All meet as they do on a well-made round stone: the corners of the
// table on the middle lines of the mains, the tips of the stars where two
// mains cross, and the upper halves between tip and girdle. The girdle edge is
// equally high at the mains and midway between them.
func brilliantCrown(f *frame, p proportions, halves bool) []rise {
	slope := p.crown / (1 - p.table) // of the mains, over the radius
	inner := p.table * math.Cos(eighth/2)
	tip := inner + p.star*(1-inner)
	tipHeight := slope * (1 - tip*math.Cos(eighth/2))
	star := (p.crown - tipHeight) / (tip - inner)
	half := tipHeight / (math.Cos(eighth/4) * (1 - tip))
	out := append(make([]rise, 0, 33), level("table", p.crown))
	for main := 0; main < waysAround; main += ways {
		out = append(out, f.facet("main", main, slope, slope))
		if !halves {
			continue
		}
		out = append(out,
			f.facet("star", main+ways/2, p.crown+star*inner, star),
			f.facet("upper half", main+ways/4, half*math.Cos(eighth/4), half),
			f.facet("upper half", main+3*ways/4, half*math.Cos(eighth/4), half))
	}
	return out
}

// brilliantPavilion gives eight mains, sixteen lower halves and a culet if
// there is one.
func brilliantPavilion(f *frame, p proportions, halves bool) []rise {
	slope := p.pavilion / (1 - p.culet)
	tip := 1 - p.lower
	tipDepth := slope * (1 - tip*math.Cos(eighth/2))
	half := tipDepth / (math.Cos(eighth/4) * (1 - tip))
	out := make([]rise, 0, 25)
	if p.culet > 0 {
		out = append(out, level("culet", p.pavilion))
	}
	for main := 0; main < waysAround; main += ways {
		out = append(out, f.facet("pavilion main", main, slope, slope))
		if !halves {
			continue
		}
		out = append(out,
			f.facet("lower half", main+ways/4, half*math.Cos(eighth/4), half),
			f.facet("lower half", main+3*ways/4, half*math.Cos(eighth/4), half))
	}
	return out
}
