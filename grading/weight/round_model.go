package weight

import (
	"fmt"
	"math"

	"stonewrit/grading/phrase"
)

// A roundModel gives the volume of a round brilliant diamond from its
// diameters, depth and table. It is the solid of a round brilliant; what was
// not measured is taken from the parameters of round_diamond.csv, each a
// property of the stones: the usual angles, the usual girdle and how it grows
// with size, and how crown, girdle and pavilion share what a stone is deeper
// than usual.
type roundModel struct {
	crownAngle    float64 // degrees, at a table of 57 %
	crownPerTable float64 // degrees for each per cent of table
	pavilionAngle float64 // degrees
	girdle        float64 // per cent of the diameter at the mains, at 6 mm
	girdlePerSize float64 // per cent for each doubling of the diameter
	crownU        float64 // per cent: how far crown heights scatter ...
	girdleU       float64 // ... and girdles ...
	pavilionU     float64 // ... and pavilion depths, at one table

	crownFill    [4]float64 // crown volume over height, length and width; powers of the table share
	pavilionFill float64

	usualTable    float64 // per cent
	usualTableU   float64
	spread        float64 // per cent of the volume, k = 1, at usual table and depth
	spreadTable   float64 // more for each per cent of table above 57
	spreadDepth   float64 // more for each per cent of depth away from usual
	usualDepth    float64 // per cent
	shallow, deep float64 // per cent: the depths of the stones it was fitted to
	small, large  float64 // mm: their diameters

	source string
}

// fields names the parameters in the order of the file.
func (m *roundModel) fields() []struct {
	name string
	at   *float64
} {
	type field = struct {
		name string
		at   *float64
	}
	return []field{
		{"crown_angle", &m.crownAngle}, {"crown_angle_per_table", &m.crownPerTable},
		{"pavilion_angle", &m.pavilionAngle},
		{"girdle", &m.girdle}, {"girdle_per_doubling", &m.girdlePerSize},
		{"crown_scatter", &m.crownU}, {"girdle_scatter", &m.girdleU}, {"pavilion_scatter", &m.pavilionU},
		{"crown_fill_0", &m.crownFill[0]}, {"crown_fill_1", &m.crownFill[1]},
		{"crown_fill_2", &m.crownFill[2]}, {"crown_fill_3", &m.crownFill[3]},
		{"pavilion_fill", &m.pavilionFill},
		{"usual_table", &m.usualTable}, {"usual_table_scatter", &m.usualTableU},
		{"spread", &m.spread}, {"spread_per_table", &m.spreadTable}, {"spread_per_depth", &m.spreadDepth},
		{"usual_depth", &m.usualDepth},
		{"shallowest", &m.shallow}, {"deepest", &m.deep}, {"smallest", &m.small}, {"largest", &m.large},
	}
}

func readRoundModel(src []byte) (roundModel, error) {
	var m roundModel
	at := map[string]*float64{}
	for _, f := range m.fields() {
		at[f.name] = f.at
	}
	err := eachRow("round_diamond.csv", src, func(r *record) {
		name := r.text("name")
		p, ok := at[name]
		if !ok {
			r.fail("name", "unknown or given twice: "+name)
			return
		}
		delete(at, name)
		*p = r.number("value", -10, 100)
		m.source = "G1"
	})
	if err == nil && len(at) > 0 {
		err = fmt.Errorf("weight: round_diamond.csv: %d parameters are missing", len(at))
	}
	return m, err
}

// The places of the inputs of the fitted solid.
const (
	inLength = iota
	inWidth
	inDepth
	inTable
	inShape
)

// heights are crown, girdle and pavilion in per cent of the mean diameter (mm)
// for a table and a total depth in per cent.
func (m roundModel) heights(diameter, table, depth float64) (crown, girdle, pavilion float64) {
	crown = crownFromAngle(table, m.crownAngle+m.crownPerTable*(table-57))
	girdle = m.girdle + m.girdlePerSize*math.Log2(diameter/6)
	pavilion = pavilionFromAngle(0, m.pavilionAngle)
	lack := depth - crown - girdle - pavilion
	c, g, p := m.crownU*m.crownU, m.girdleU*m.girdleU, m.pavilionU*m.pavilionU
	all := c + g + p
	return crown + lack*c/all, girdle + lack*g/all, pavilion + lack*p/all
}

// volume is the volume in mm3; lengths in mm, table and depth in per cent.
func (m roundModel) volume(length, width, table, depth float64) float64 {
	d := (length + width) / 2
	crown, girdle, pavilion := m.heights(d, table, depth)
	t := table / 100
	fill := m.crownFill[0] + t*(m.crownFill[1]+t*(m.crownFill[2]+t*m.crownFill[3]))
	return length * width * d / 100 * (math.Pi/4*girdle + fill*crown + m.pavilionFill*pavilion)
}

// relativeSpread is the standard uncertainty, over the volume, of a stone whose
// dimensions are known exactly.
func (m roundModel) relativeSpread(table, depth float64) float64 {
	return (m.spread + m.spreadTable*max(0, table-57) + m.spreadDepth*math.Abs(depth-m.usualDepth)) / 100
}

// byFittedSolid gives the volume of a round brilliant cut as a diamond.
func (e *Estimator) byFittedSolid(d Dimensions) (Candidate, error) {
	if d.Shape != "round" || d.Cut != "brilliant" || !d.AsDiamond {
		return Candidate{}, unable(ErrSolid, "proportions do not make a solid: it was fitted to round brilliant diamonds only")
	}
	if !d.Depth.Given() && !d.TotalDepth.Given() {
		return Candidate{}, unable(ErrDimensions, "not enough dimensions: depth is needed")
	}
	if !d.Width.Given() {
		d.Width = d.Length
	}
	m := e.round
	table, basis := d.Table, phrase.Line("round brilliant diamond from diameter, depth and table")
	if !table.Given() {
		table = Measure{m.usualTable, m.usualTableU}
		basis = "round brilliant diamond from diameter and depth; usual table"
	}
	volume, budget := m.model(d, table).measure()
	return Candidate{
		Method: ByFittedSolid, Basis: basis, Source: m.source, Volume: volume, Budget: budget,
		Warnings: m.outside(d.meanDiameter(), depthShare(d).Value),
	}, nil
}

// model is the volume from length, width, depth and table, times the spread.
func (m roundModel) model(d Dimensions, table Measure) model {
	depth := depthShare(d)
	nominal := d.meanDiameter()
	in := []input{
		{"length", d.Length}, {"width", d.Width}, {"depth", depth}, {"table", table},
		{"shape", Measure{1, m.relativeSpread(table.Value, depth.Value)}},
	}
	return model{in, func(x []float64) float64 {
		// A depth in millimetres stays what it is when a diameter changes.
		share := x[inDepth]
		if d.Depth.Given() {
			share *= nominal / ((x[inLength] + x[inWidth]) / 2)
		}
		return m.volume(x[inLength], x[inWidth], x[inTable], share) * x[inShape]
	}}
}

// depthShare is the depth in per cent of the mean diameter: from millimetres,
// from the per cent, or the weighted mean of both. The uncertainty of the
// diameter is not in it.
func depthShare(d Dimensions) Measure {
	var p part
	if d.Depth.Given() {
		ref := d.reference()
		p.add(max(100*d.Depth.U/ref, 1e-6), func([]float64) float64 { return 100 * d.Depth.Value / ref })
	}
	if t := withU(d.TotalDepth); t.Given() {
		p.add(t.U, func([]float64) float64 { return t.Value })
	}
	v, variance := p.mean(nil)
	return Measure{v, math.Sqrt(variance)}
}

// outside warns of stones unlike those that the model was fitted to.
func (m roundModel) outside(diameter, depth float64) []phrase.Line {
	var out []phrase.Line
	if depth < m.shallow || depth > m.deep {
		out = append(out, phrase.Say("depth %.1f %% is outside the %.0f to %.0f %% of the stones that the solid was fitted to", depth, m.shallow, m.deep))
	}
	if diameter < m.small || diameter > m.large {
		out = append(out, phrase.Say("diameter %.2f mm is outside the %.1f to %.1f mm of the stones that the solid was fitted to", diameter, m.small, m.large))
	}
	return out
}
