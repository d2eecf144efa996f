package main

import (
	"strings"

	"stonewrit/grading/gem"
)

// gemsFitting lists the materials whose published ranges meet the figures.
func (p *program) gemsFitting(table *gem.Table, ri, sg string) error {
	index, err := asked("--ri", ri, "1.62..1.64")
	if err != nil {
		return err
	}
	gravity, err := asked("--sg", sg, "3.0..3.1")
	if err != nil {
		return err
	}
	p.note("two figures alone prove little: write the readings in a stone file, and check and next judge all of them with their uncertainty")
	n := 0
	for _, m := range table.Materials() {
		if !hasOwnFigures(table, m) || !meets(index, indexRange(m)) || !meets(gravity, m.SG) {
			continue
		}
		n++
		p.print("%s%s%s%s\n", pad(m.Name, 34), pad(indexText(m), 36), pad("SG "+orUnknown(figures(m.SG, 2)), 18), opticText(m))
	}
	p.print("%s\n", count(n, "material fits", "materials fit"))
	return nil
}

// asked reads a range of the command line; the zero range asks for nothing.
func asked(flag, text, example string) (gem.Range, error) {
	if text == "" {
		return gem.Range{}, nil
	}
	low, high, err := parseRange(text)
	if err != nil {
		return gem.Range{}, failing("write "+flag+" "+example, "%s %s: %v", flag, text, err)
	}
	return gem.Range{Min: low, Max: high}, nil
}

// meets reports whether a published range and the one asked for have anything
// in common. A figure that the table lacks never meets one that is asked for.
func meets(ask, published gem.Range) bool {
	if !ask.Known() {
		return true
	}
	return published.Known() && published.Min <= ask.Max && ask.Min <= published.Max
}

// indexRange spans the rays of a material.
func indexRange(m *gem.Material) gem.Range { return m.Low.Union(m.High) }

// hasOwnFigures leaves out varieties and counterparts that repeat the figures
// of what they belong to.
func hasOwnFigures(table *gem.Table, m *gem.Material) bool {
	if !m.Low.Known() && !m.SG.Known() {
		return false
	}
	if m.Level != gem.Variety && m.Level != gem.Counterpart {
		return true
	}
	parent, err := table.Find(m.Parent)
	return err != nil || parent.Low != m.Low || parent.High != m.High || parent.SG != m.SG
}

// indexText words the indices of a material: one range, or one for each ray.
func indexText(m *gem.Material) string {
	switch {
	case !m.Low.Known():
		return "index not in the table"
	case m.Low == m.High:
		return figures(m.Low, 3)
	case m.Optic == gem.Aggregate:
		return "spot " + figures(indexRange(m), 2)
	}
	return figures(m.Low, 3) + " and " + figures(m.High, 3)
}

// opticText words optic character and sign.
func opticText(m *gem.Material) string {
	sign := map[string]string{"+": "positive", "-": "negative", "+/-": "positive or negative"}[m.Sign]
	return strings.TrimSpace(string(m.Optic) + " " + sign)
}

// figures prints a range; "" where it is not known.
func figures(r gem.Range, decimals int) string {
	if !r.Known() {
		return ""
	}
	return rangeText(r.Min, r.Max, decimals)
}

func orUnknown(s string) string {
	if s == "" {
		return "unknown"
	}
	return s
}
