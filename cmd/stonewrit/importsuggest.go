package main

import (
	_ "embed"
	"encoding/csv"
	"maps"
	"slices"
	"strings"
	"time"
	"unicode"

	"gopkg.in/yaml.v3"
)

// The heads that lists of stones often have, with the key that is likely meant.
//
//go:embed importnames.csv
var importNames string

// suggestMap prints a map for a list, to be looked over: what each column is
// likely to be, judged by its head.
func (p *program) suggestMap(file string) error {
	t, err := readTable(file)
	if err != nil {
		return err
	}
	rows, err := csv.NewReader(strings.NewReader(importNames)).ReadAll()
	if err != nil {
		return err
	}
	columns := &yaml.Node{Kind: yaml.MappingNode}
	taken := map[string]bool{}
	for _, head := range t.heads {
		key, unit := ignored, ""
		for _, row := range rows[1:] {
			if row[0] == plainHead(head) && !taken[row[1]] {
				key, unit = row[1], row[2]
			}
		}
		taken[key] = key != ignored
		value := scalar(key)
		if unit != "" {
			value = &yaml.Node{Kind: yaml.MappingNode, Style: yaml.FlowStyle, Content: []*yaml.Node{scalar("key"), scalar(key), scalar("unit"), scalar(unit)}}
		}
		columns.Content = append(columns.Content, scalar(head), value)
	}
	always := &yaml.Node{Kind: yaml.MappingNode}
	for _, a := range [][2]string{{"report", "record"}, {"examined", p.now().Format(time.DateOnly)}, {"examiner", "me"}, {"opinion.basis", "stated"}} {
		if !taken[a[0]] {
			always.Content = append(always.Content, scalar(a[0]), scalar(a[1]))
		}
	}
	if taken["weight.stated"] && !taken["weight.by"] {
		always.Content = append(always.Content, scalar("weight.by"), scalar("the list"))
	}
	text, err := yaml.Marshal(&yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{scalar("columns"), columns, scalar("always"), always}})
	if err != nil {
		return err
	}
	p.print("# Where the columns of the list go: keys of stone files, or note for a remark at the end of\n# each file. Look over each line; the command schema lists the keys.\n%s", text)
	p.print("# How the list writes dates and decimals, if not as 2026-10-14 and 1.52:\n#dates: day.month.year\n#decimal: comma\n")
	return nil
}

// plainHead is a head in small letters without signs.
func plainHead(head string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(head), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// scalarMap is an empty mapping.
func scalarMap() *yaml.Node { return &yaml.Node{Kind: yaml.MappingNode} }
