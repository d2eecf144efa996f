package main

import (
	"fmt"
	"slices"
	"strings"

	"stonewrit/grading/gem"
)

// gemsEntry prints one entry with everything that the table says of it, and
// where each figure comes from.
func (p *program) gemsEntry(table *gem.Table, word string) error {
	m, err := table.Find(word)
	if err != nil {
		return nameError(err)
	}
	e := &entry{table: table, m: m}
	e.title()
	e.optics()
	e.bench()
	e.spectrum()
	e.light()
	e.names()
	e.treatments()
	e.care()
	if m.Note != "" {
		e.line("note", m.Note)
	}
	if m.Source != "" {
		e.line("all else", sourced("", e.from(m.Source)))
	}
	p.print("%s%s", e.text.String(), e.sources())
	return nil
}

// An entry is the text of one material while it is written, with the sources
// met on the way.
type entry struct {
	table *gem.Table
	m     *gem.Material
	text  strings.Builder
	met   []string // source cells, in the order met
}

func (e *entry) line(label, text string) { e.text.WriteString(labelled(label, text)) }

// from notes a source cell and gives it back.
func (e *entry) from(cell string) string {
	if cell != "" && !slices.Contains(e.met, cell) {
		e.met = append(e.met, cell)
	}
	return cell
}

// sourced sets the source behind a text, in square brackets.
func sourced(text, source string) string {
	if source == "" {
		return text
	}
	return strings.TrimSpace(text + " [" + source + "]")
}

func (e *entry) title() {
	m := e.m
	kind := string(m.Level)
	if m.Class != "" {
		kind += ", " + m.Class
	}
	fmt.Fprintf(&e.text, "%s (%s)\n", m.Name, kind)
	if len(m.Synonyms) > 0 {
		e.line("also", strings.Join(m.Synonyms, ", "))
	}
	if m.Parent != "" {
		e.line("within", m.Parent)
	}
	growth := string(m.Growth)
	if m.Method != "" {
		growth += ", " + m.Method
	}
	e.line("growth", growth)
	e.below()
}

// below lists what stands under the entry, and its grown counterparts.
func (e *entry) below() {
	var below, grown []string
	for _, sub := range e.table.Members(e.m) {
		if sub.Level != gem.Counterpart {
			below = append(below, sub.Name)
		}
	}
	for _, sub := range e.table.CounterpartsOf(e.m) {
		grown = append(grown, sub.Name)
	}
	if len(below) > 0 {
		e.line("holds", strings.Join(below, ", "))
	}
	if len(grown) > 0 {
		e.line("grown", strings.Join(grown, ", "))
	}
	switch e.m.GrownMet {
	case "yes":
		e.line("", "laboratory-grown material is met in the trade ("+e.m.GrownAsOf+")")
	case "no":
		e.line("", "no laboratory-grown material is met in the trade ("+e.m.GrownAsOf+")")
	}
}

func (e *entry) optics() {
	m := e.m
	if m.Optic != "" {
		text := opticText(m)
		if m.SmallAxialAngle {
			text += ", with a small axial angle"
		}
		if m.Strain {
			text += ", often with strain"
		}
		e.line("optics", text)
	}
	if m.Low.Known() {
		text := "index " + indexText(m)
		if m.Birefringence.Known() {
			text += "; birefringence " + figures(m.Birefringence, 3)
		}
		e.line("", sourced(text, e.from(m.OpticsSource)))
	}
	if m.Dispersion.Known() {
		e.line("dispersion", figures(m.Dispersion, 3)+" (B to G)")
	}
	for _, c := range m.Joint {
		e.line("end member", sourced(fmt.Sprintf("%s: index %.3f, specific gravity %.2f", c.Name, c.Index, c.SG), e.from(c.Source)))
	}
}

// bench is what scales, scratch, probe and magnet find.
func (e *entry) bench() {
	m := e.m
	if m.SG.Known() {
		e.line("gravity", sourced(figures(m.SG, 2), e.from(m.SGSource)))
	}
	if m.Hardness.Known() {
		e.line("hardness", figures(m.Hardness, 1)+" (Mohs)")
	}
	var parts []string
	for _, f := range []struct{ what, value string }{
		{"thermal tester shows ", m.Thermal}, {"electricity: ", m.Electrical}, {"magnet: ", m.Magnet},
		{"colour filter: ", strings.Join(m.Filter, " or ")}, {"cleavage: ", m.Cleavage},
	} {
		if f.value != "" {
			parts = append(parts, f.what+f.value)
		}
	}
	if m.Porous {
		parts = append(parts, "porous")
	}
	if len(parts) > 0 {
		e.line("bench", strings.Join(parts, "; "))
	}
}
