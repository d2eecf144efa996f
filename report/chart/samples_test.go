package chart_test

import (
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/grading/weight"
	"stonewrit/report/chart"
)

func span(low, high float64) gem.Range { return gem.Range{Min: low, Max: high} }

func own(name string, ranges ...gem.Range) chart.Material {
	return chart.Material{Name: name, Own: true, Ranges: ranges}
}

func rival(name string, ranges ...gem.Range) chart.Material {
	return chart.Material{Name: name, Ranges: ranges}
}

// Readings and rivals are invented; the ranges are near those of the table.

func rubyIndex() chart.Index {
	return chart.Index{
		Readings:  []chart.IndexReading{{Edges: 2, Low: 1.7613, High: 1.7693, U: 0.00105, Decimals: 4, Birefringence: 0.008}},
		Materials: []chart.Material{own("corundum", span(1.757, 1.770), span(1.765, 1.780))},
	}
}

func quartzIndex() chart.Index {
	return chart.Index{
		Readings: []chart.IndexReading{{Edges: 2, Low: 1.544, High: 1.552, U: 0.0021, Decimals: 4, Birefringence: 0.008}},
		Materials: []chart.Material{
			own("quartz", span(1.5425, 1.546), span(1.5515, 1.5555)),
			rival("scapolite", span(1.531, 1.564), span(1.540, 1.600)),
			rival("labradorite", span(1.554, 1.563), span(1.562, 1.573)),
			rival("oligoclase", span(1.533, 1.543), span(1.542, 1.552)),
			rival("iolite", span(1.522, 1.560), span(1.527, 1.578)),
			rival("glass, made", span(1.44, 1.80)),
			rival("amber", span(1.536, 1.545)),
			rival("ivory"),
			rival("beryllonite", span(1.550, 1.554), span(1.559, 1.564)),
			rival("one more", span(1.55, 1.56)), rival("and another", span(1.55, 1.56)),
		},
	}
}

func overIndex() chart.Index {
	return chart.Index{
		Readings: []chart.IndexReading{{Edges: 0, Limit: 1.81}},
		Materials: []chart.Material{
			own("diamond (natural or laboratory-grown)", span(2.4165, 2.4185)),
			rival("cubic zirconia", span(2.13, 2.20)), rival("zircon", span(1.92, 1.96), span(1.97, 2.02)),
			rival("moissanite", span(2.64, 2.66), span(2.68, 2.70)), rival("glass, made", span(1.44, 1.95)),
		},
	}
}

func doubletIndex() chart.Index {
	return chart.Index{
		Readings: []chart.IndexReading{
			{Place: "crown", Edges: 1, Low: 1.765, High: 1.765, U: 0.0015, Decimals: 3},
			{Place: "pavilion", Edges: 1, Low: 1.518, High: 1.518, U: 0.0015, Decimals: 3},
		},
		Materials: []chart.Material{own("almandine, crown", span(1.76, 1.83)), own("glass, pavilion", span(1.44, 1.80))},
	}
}

func rubyGravity() chart.Gravity {
	return chart.Gravity{
		Value: 3.993, U: 0.016,
		Materials: []chart.Material{
			own("corundum", span(3.94, 4.06)), rival("painite", span(4.00, 4.03)), rival("zircon", span(3.90, 4.73)),
			rival("pyrope-almandine", span(3.74, 4.10)),
		},
	}
}

func sinksGravity() chart.Gravity {
	return chart.Gravity{Above: 3.32, Materials: []chart.Material{own("spinel", span(3.57, 3.70)), rival("pyrope", span(3.58, 3.82))}}
}

func betweenGravity() chart.Gravity {
	return chart.Gravity{Above: 2.62, Below: 2.67, Materials: []chart.Material{own("quartz", span(2.63, 2.68)), rival("scapolite", span(2.50, 2.78))}}
}

func rubyTurns() chart.Turns {
	return chart.Turns{
		Turns: []chart.Turn{{Low: 1.7613, High: 1.7693}, {Low: 1.7643, High: 1.7693}, {Low: 1.7673, High: 1.7693}, {Low: 1.7633, High: 1.7693}},
		U:     0.00105, Decimals: 4,
	}
}

func topazTurns() chart.Turns {
	return chart.Turns{
		Turns: []chart.Turn{
			{Low: 1.610, High: 1.618}, {Low: 1.611, High: 1.617}, {Low: 1.612, High: 1.6165}, {Low: 1.6145}, {Low: 1.612, High: 1.617}, {Low: 1.611, High: 1.618},
			{Low: 1.610, High: 1.619}, {Low: 1.610, High: 1.620},
		},
		U: 0.0011, Decimals: 4,
	}
}

func stillTurns() chart.Turns {
	return chart.Turns{Turns: []chart.Turn{{Low: 1.718}, {Low: 1.718}, {Over: true}, {Low: 1.757, Over: true}}, U: 0.001, Decimals: 3}
}

func rubySpectrum() chart.Spectrum {
	line := func(nm float64, f gem.Frequency) chart.Absorption {
		return chart.Absorption{Kind: chart.Line, From: nm, To: nm, Frequency: f}
	}
	return chart.Spectrum{
		Seen: []chart.Absorption{
			{Kind: chart.Line, From: 694, U: 2.5}, {Kind: chart.Line, From: 668, U: 2.5}, {Kind: chart.Line, From: 659, U: 2.5}, {Kind: chart.Line, From: 476, U: 1.5},
			{Kind: chart.Band, From: 500, To: 610}, {Kind: chart.Cutoff, From: 450},
		},
		Looked: true, Name: "ruby",
		Published: []chart.Absorption{
			line(692.8, gem.Always), line(694.2, gem.Always), {Kind: chart.Emission, From: 692, To: 694.5, Frequency: gem.Often},
			line(668, gem.Often), line(659.2, gem.Often), line(476.5, gem.Often), line(475, gem.Often), line(468.5, gem.Often),
			{Kind: chart.Band, From: 500, To: 610, Frequency: gem.Often},
		},
	}
}

func zirconSpectrum() chart.Spectrum {
	s := chart.Spectrum{Name: "zircon", Looked: true}
	for _, nm := range []float64{653.5, 691, 683, 662.5, 660.5, 621, 615, 589.5, 562.5, 537.5, 516, 484, 460, 432.7} {
		s.Seen = append(s.Seen, chart.Absorption{Kind: chart.Line, From: nm, Doubtful: nm == 589.5})
		f := gem.Sometimes
		if nm == 653.5 {
			f = gem.Often
		}
		s.Published = append(s.Published, chart.Absorption{Kind: chart.Line, From: nm, Frequency: f})
	}
	s.Seen = append(s.Seen, chart.Absorption{Kind: chart.Emission, From: 735})
	return s
}

func measure(v float64) weight.Measure { return weight.Measure{Value: v, U: 0.01} }

// making finds what can be drawn, as Evidence does.
func making(t testing.TB, d weight.Dimensions) chart.Making {
	t.Helper()
	return chart.MakingOf(loaded(t).Weights(), d)
}

func ovalMixed() weight.Dimensions {
	return weight.Dimensions{
		Shape: "oval", Cut: "mixed", Length: measure(8), Width: measure(6.2), Depth: measure(3.75), Table: measure(57),
		CrownAngle: measure(34.5), CrownHeight: measure(15), PavilionAngle: measure(40.8), PavilionDepth: measure(43), Girdle: "medium",
	}
}

func roundDiamond() weight.Dimensions {
	return weight.Dimensions{
		Shape: "round", Cut: "brilliant", AsDiamond: true, Length: measure(6.52), Width: measure(6.48), Depth: measure(4.02), Table: measure(57),
		CrownAngle: measure(34.5), PavilionAngle: measure(40.9), GirdlePercent: measure(3.2), Star: measure(50), LowerHalves: measure(77),
	}
}

func plainOval() weight.Dimensions {
	return weight.Dimensions{Shape: "oval", Cut: "brilliant", Length: measure(9.1), Width: measure(7), Depth: measure(4.4)}
}

func stepCut() weight.Dimensions {
	return weight.Dimensions{Shape: "cut-corner rectangle", Cut: "step", Length: measure(7.9), Width: measure(5.8), Depth: measure(3.9), Table: measure(62)}
}

func cabochon() weight.Dimensions {
	return weight.Dimensions{Shape: "oval", Cut: "cabochon", Length: measure(11.2), Width: measure(9), Depth: measure(5.1)}
}

func pear() weight.Dimensions {
	return weight.Dimensions{Shape: "pear", Cut: "brilliant", Length: measure(9), Width: measure(6), Depth: measure(3.6), Table: measure(58), PavilionAngle: measure(41)}
}

func heartCut() weight.Dimensions {
	return weight.Dimensions{Shape: "heart", Cut: "brilliant", Length: measure(7), Width: measure(7.4), Depth: measure(4.1)}
}

func bead() weight.Dimensions {
	return weight.Dimensions{Shape: "bead", Cut: "bead", Length: measure(7.25)}
}
