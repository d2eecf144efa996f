package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"stonewrit/grading/gem"
)

// gemsCommand shows the reference table: its names, one entry, or what fits two
// figures.
func (p *program) gemsCommand() *cobra.Command {
	var ri, sg string
	c := &cobra.Command{
		Use: "gems", Args: cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, words []string) error {
			tables, err := p.tables()
			if err != nil {
				return err
			}
			filtered := ri != "" || sg != ""
			switch {
			case filtered && len(words) > 0:
				return failing("leave one of them out", "gems shows either an entry or what fits --ri and --sg")
			case filtered:
				return p.gemsFitting(tables.Gems, ri, sg)
			case len(words) == 0:
				p.gemsList(tables.Gems)
				return nil
			}
			return p.gemsEntry(tables.Gems, strings.Join(words, " "))
		},
	}
	c.Flags().StringVar(&ri, "ri", "", "")
	c.Flags().StringVar(&sg, "sg", "", "")
	return c
}

// classes are the headings of the list, in the order printed.
func classes() [][2]string {
	return [][2]string{
		{"mineral", "Minerals"}, {"rock", "Rocks"}, {"organic", "Organic materials"}, {"glass", "Glasses"},
		{"plastic", "Plastics"}, {"crystal", "Crystals without natural counterpart"}, {"composite", "Composites"},
	}
}

// gemsList prints every name by class, group and species.
func (p *program) gemsList(table *gem.Table) {
	l := lister{p, table}
	all := table.Materials()
	for _, class := range classes() {
		p.print("%s\n", class[1])
		for _, m := range all {
			if m.Parent == "" && l.classOf(m) == class[0] {
				l.under(m, "  ")
			}
		}
		p.print("\n")
	}
	p.print("%s", wrapped("", "", count(len(all), "entry", "entries")+"; "+name+" gems NAME shows one with its sources; data version "+table.Version()[:min(12, len(table.Version()))]))
}

// A lister prints names below one another.
type lister struct {
	p     *program
	table *gem.Table
}

// classOf is the class of a material, or of the first below it that has one: a
// group has none of its own.
func (l lister) classOf(m *gem.Material) string {
	if m.Class != "" {
		return m.Class
	}
	for _, below := range l.table.Members(m) {
		if class := l.classOf(below); class != "" {
			return class
		}
	}
	return ""
}

// under prints a material with what stands below it: groups and species on
// lines of their own, varieties and grown counterparts behind their species.
func (l lister) under(m *gem.Material, indent string) {
	var lines []*gem.Material
	var names, grown []string
	for _, below := range l.table.Members(m) {
		switch below.Level {
		case gem.Group, gem.Species:
			lines = append(lines, below)
		case gem.Counterpart:
			grown = append(grown, below.Name)
		default:
			names = append(names, l.withBelow(below, &grown)...)
		}
	}
	text := m.Name
	if len(names) > 0 {
		text += ": " + strings.Join(names, ", ")
	}
	if len(grown) > 0 {
		slices.Sort(grown)
		text += "; grown: " + strings.Join(grown, ", ")
	}
	l.p.print("%s", wrapped(indent, indent+"    ", text))
	for _, below := range lines {
		l.under(below, indent+"  ")
	}
}

// withBelow is a variety's name and those of the varieties below it; grown
// counterparts are collected apart.
func (l lister) withBelow(m *gem.Material, grown *[]string) []string {
	names := []string{m.Name}
	for _, below := range l.table.Members(m) {
		if below.Level == gem.Counterpart {
			*grown = append(*grown, below.Name)
			continue
		}
		names = append(names, l.withBelow(below, grown)...)
	}
	return names
}
