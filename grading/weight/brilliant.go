package weight

import "math"

// eighth is the angle between neighbouring mains of a brilliant.
const eighth = math.Pi / 4

// brilliantCrown gives table, eight mains, eight stars and sixteen upper
// halves. All meet as they do on a well-made round stone: the corners of the
// table on the middle lines of the mains, the tips of the stars where two
// mains cross, and the upper halves between tip and girdle. The girdle edge is
// equally high at the mains and midway between them.
func brilliantCrown(f frame, p proportions, halves bool) []halfSpace {
	slope := p.crown / (1 - p.table) // of the mains, over the radius
	inner := p.table * math.Cos(eighth/2)
	tip := inner + p.star*(1-inner)
	tipHeight := slope * (1 - tip*math.Cos(eighth/2))
	star := (p.crown - tipHeight) / (tip - inner)
	half := tipHeight / (math.Cos(eighth/4) * (1 - tip))
	out := []halfSpace{horizontal("table", p.crown, 1)}
	for k := range 8 {
		phi := eighth * float64(k)
		out = append(out, f.plane("main", phi, slope, slope, 1))
		if !halves {
			continue
		}
		out = append(out,
			f.plane("star", phi+eighth/2, star, p.crown+star*inner, 1),
			f.plane("upper half", phi+eighth/4, half, half*math.Cos(eighth/4), 1),
			f.plane("upper half", phi+3*eighth/4, half, half*math.Cos(eighth/4), 1))
	}
	return out
}

// brilliantPavilion gives eight mains, sixteen lower halves and a culet if
// there is one. edge is the height of the lower girdle edge at the mains.
func brilliantPavilion(f frame, p proportions, edge float64, halves bool) []halfSpace {
	slope := p.pavilion / (1 - p.culet)
	tip := 1 - p.lower
	tipDepth := slope * (1 - tip*math.Cos(eighth/2))
	half := tipDepth / (math.Cos(eighth/4) * (1 - tip))
	out := []halfSpace{}
	if p.culet > 0 {
		out = append(out, horizontal("culet", edge-p.pavilion, -1))
	}
	for k := range 8 {
		phi := eighth * float64(k)
		out = append(out, f.plane("pavilion main", phi, slope, slope-edge, -1))
		if !halves {
			continue
		}
		out = append(out,
			f.plane("lower half", phi+eighth/4, half, half*math.Cos(eighth/4)-edge, -1),
			f.plane("lower half", phi+3*eighth/4, half, half*math.Cos(eighth/4)-edge, -1))
	}
	return out
}
