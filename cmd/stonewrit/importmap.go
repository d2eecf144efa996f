package main

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"gopkg.in/yaml.v3"
)

// A columnMap says where the columns of a list go in stone files.
type columnMap struct {
	file    string
	columns []mapped // in the order of the map
	always  []fixed  // what stands in every file
	dates   string   // layout of dates, as package time writes it; "" for year-month-day
	comma   bool     // numbers have a decimal comma
}

// A mapped column is a column of the list and the key that it fills.
type mapped struct {
	head, key string
	unit      string            // put behind a number
	several   string            // what parts the entries of a cell
	words     map[string]string // what stands in the list, and the word of these files
	line      int               // of the map
}

// A fixed key has the same value in every file.
type fixed struct {
	key   string
	value *yaml.Node
	line  int
}

// The layouts of dates that a map may name.
func dateLayouts() map[string]string {
	return map[string]string{"year-month-day": time.DateOnly, "day.month.year": "2.1.2006", "day/month/year": "2/1/2006", "month/day/year": "1/2/2006"}
}

// ignored is where a column goes that is kept as a remark.
const ignored = "note"

// mapReader reads a column map and gathers what is wrong with it.
type mapReader struct {
	columnMap
	errs []error
}

// readMap reads a column map. The error joins all that is wrong with it.
func readMap(file string) (*columnMap, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	src, err := slurp(f)
	if err != nil {
		return nil, err
	}
	r := &mapReader{columnMap: columnMap{file: file}}
	var root yaml.Node
	if err := yaml.Unmarshal(src, &root); err != nil {
		return nil, failing("the command import --suggest writes a map to begin with", "%s: %s", file, strings.TrimPrefix(err.Error(), "yaml: "))
	}
	if len(root.Content) == 1 {
		r.top(root.Content[0])
	}
	if len(r.columns) == 0 && len(r.errs) == 0 {
		r.fail(&root, "the map names no columns", "for example columns: {Ref: stone, Gem: opinion.species}")
	}
	return &r.columnMap, errors.Join(r.errs...)
}

func (r *mapReader) fail(n *yaml.Node, message, hint string) {
	r.errs = append(r.errs, failing(hint, "%s:%d:%d: %s", r.file, max(n.Line, 1), max(n.Column, 1), message))
}

// pairs lists the keys of a mapping with their values.
func (r *mapReader) pairs(n *yaml.Node, what string) [][2]*yaml.Node {
	if n.Kind != yaml.MappingNode {
		r.fail(n, what+" should be keys with values", "")
		return nil
	}
	var list [][2]*yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		list = append(list, [2]*yaml.Node{n.Content[i], n.Content[i+1]})
	}
	return list
}

func (r *mapReader) top(n *yaml.Node) {
	for _, p := range r.pairs(n, "the map") {
		switch key, value := p[0], p[1]; key.Value {
		case "columns":
			for _, c := range r.pairs(value, "columns") {
				r.column(c[0], c[1])
			}
		case "always":
			for _, c := range r.pairs(value, "always") {
				r.always = append(r.always, fixed{c[0].Value, c[1], c[0].Line})
			}
		case "dates":
			layout, ok := dateLayouts()[value.Value]
			if !ok {
				r.fail(value, fmt.Sprintf("%q is no order of dates", value.Value), "one of: "+listed(sortedKeys(dateLayouts())))
			}
			r.dates = layout
		case "decimal":
			if value.Value != "comma" && value.Value != "point" {
				r.fail(value, fmt.Sprintf("%q is no decimal sign", value.Value), "comma or point")
			}
			r.comma = value.Value == "comma"
		default:
			r.fail(key, fmt.Sprintf("unknown key %q", key.Value), "a map has columns, always, dates and decimal")
		}
	}
}

// column reads where one column goes: a key, or a key with what it needs.
func (r *mapReader) column(head, to *yaml.Node) {
	m := mapped{head: head.Value, line: head.Line}
	if i := slices.IndexFunc(r.columns, func(c mapped) bool { return c.head == m.head }); i >= 0 {
		r.fail(head, fmt.Sprintf("the column %q stands twice", m.head), "")
		return
	}
	if to.Kind == yaml.ScalarNode {
		m.key = to.Value
	} else {
		for _, p := range r.pairs(to, "what stands behind a column") {
			switch key, value := p[0], p[1]; key.Value {
			case "key":
				m.key = value.Value
			case "unit":
				m.unit = value.Value
			case "several":
				m.several = value.Value
			case "words":
				m.words = map[string]string{}
				for _, w := range r.pairs(value, "words") {
					m.words[w[0].Value] = w[1].Value
				}
			default:
				r.fail(key, fmt.Sprintf("unknown key %q", key.Value), "a column has key, unit, several and words")
			}
		}
	}
	if m.key == "" {
		r.fail(to, fmt.Sprintf("the column %q goes nowhere", m.head), "name a key of stone files, or "+ignored+" for a remark")
		return
	}
	r.columns = append(r.columns, m)
}
