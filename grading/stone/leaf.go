package stone

import (
	"fmt"
	"reflect"
	"regexp"
	"stonewrit/grading/phrase"
	"strings"
	"time"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// A List is written as one entry or as several in brackets, and "none" or []
// say that somebody looked and found nothing. A list that is not in the file
// has Given false: nobody looked.
type List[T any] struct {
	Items []T
	Given bool
}

func (l *List[T]) decode(d *decoder, n *yaml.Node, path string, tags fieldTags, depth int) {
	l.Given = true
	if n.Kind == yaml.SequenceNode {
		d.sequence(n, reflect.ValueOf(&l.Items).Elem(), path, tags, depth)
		return
	}
	if n.Kind == yaml.ScalarNode && strings.EqualFold(n.Value, "none") {
		return
	}
	l.Items = make([]T, 1)
	d.value(n, reflect.ValueOf(&l.Items).Elem().Index(0), path, tags, depth+1)
}

// A Date is a day of the calendar, without a time zone.
type Date struct{ time.Time }

func (t *Date) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	parsed, err := time.Parse(time.DateOnly, text)
	if err != nil {
		d.wrong(n, path, phrase.Say("%q is not a date", text), dateHint(text))
		return
	}
	if y := parsed.Year(); y < 1900 || y > 2200 {
		d.wrong(n, path, phrase.Say("%q is not a likely date", text), "")
		return
	}
	t.Time = parsed
}

var otherDate = regexp.MustCompile(`^([0-9]{1,2})([./-])([0-9]{1,2})[./-]([0-9]{4})$`)

// dateHint turns a date in day.month.year round; with slashes it cannot be
// known which is the day.
func dateHint(text string) phrase.Line {
	if g := otherDate.FindStringSubmatch(text); g != nil && g[2] == "." {
		if t, err := time.Parse("2.1.2006", g[1]+"."+g[3]+"."+g[4]); err == nil {
			return phrase.Say("did you mean %s?", t.Format(time.DateOnly))
		}
	}
	return "write year-month-day, for example 2026-10-14"
}

// Given reports whether the date stands in the file.
func (t Date) Given() bool { return !t.IsZero() }

func (t Date) String() string { return t.Format(time.DateOnly) }

// Index is a refractive index with the writer's own uncertainty, if any.
type Index = quantity.Measure[quantity.Number]

// Edges is what one turn of the refractometer showed.
type Edges struct {
	Seen []Index // one edge or two, the lower one first
	Over bool    // an upper edge lies beyond the contact liquid's limit
}

func (e *Edges) decode(d *decoder, n *yaml.Node, path string, tags fieldTags, _ int) {
	parts := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		parts = n.Content
	}
	if len(parts) < 1 || len(parts) > 2 {
		d.wrong(n, path, phrase.Say("has %d edges, one or two were expected", len(parts)), "write one entry a turn: [1.762, 1.770], or 1.718 where one edge was seen")
		return
	}
	for i, p := range parts {
		at := path
		if n.Kind == yaml.SequenceNode {
			at = fmt.Sprintf("%s[%d]", path, i)
		}
		d.positions[at] = d.position(p)
		if p.Kind == yaml.ScalarNode && strings.EqualFold(p.Value, "over") {
			e.over(d, p, at, i)
			continue
		}
		var index Index
		d.quantity(p, &index, at, tags)
		if index.Given() {
			e.Seen = append(e.Seen, index)
		}
	}
	if len(e.Seen) == 2 && e.Seen[0].V > e.Seen[1].V {
		d.wrong(n, path, phrase.Say("the edges %s and %s stand in falling order", e.Seen[0], e.Seen[1]), phrase.Say("write the lower one first: [%s, %s]", e.Seen[1], e.Seen[0]))
	}
}

// over notes an edge beyond the limit, which can only be the upper one.
func (e *Edges) over(d *decoder, n *yaml.Node, path string, i int) {
	if i == 0 {
		d.wrong(n, path, "over stands for the upper of two edges", "write [1.757, over]; where no edge at all was seen, over the limit: true beside the readings")
		return
	}
	e.Over = true
}

// A Span is a stretch of the spectrum, from shorter to longer wavelength.
type Span struct {
	From, To quantity.Measure[quantity.Nanometre]
}

func (s *Span) decode(d *decoder, n *yaml.Node, path string, tags fieldTags, _ int) {
	if n.Kind != yaml.SequenceNode || len(n.Content) != 2 {
		d.wrong(n, path, phrase.Say("found %s, two wavelengths were expected", describeNode(n)), "for example [500 nm, 610 nm]")
		return
	}
	for i, end := range []*quantity.Measure[quantity.Nanometre]{&s.From, &s.To} {
		at := fmt.Sprintf("%s[%d]", path, i)
		d.positions[at] = d.position(n.Content[i])
		d.quantity(n.Content[i], end, at, tags)
	}
	if s.From.Given() && s.To.Given() && s.From.V >= s.To.V {
		d.wrong(n, path, phrase.Say("the band ends at %s before it begins at %s", s.To, s.From), "write the shorter wavelength first")
	}
}

// WordOrPercent is a word of a list or a per cent, such as the girdle.
type WordOrPercent struct {
	Word    string
	Percent quantity.Measure[quantity.Percent]
}

func (w *WordOrPercent) decode(d *decoder, n *yaml.Node, path string, tags fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	if strings.ContainsAny(text, "0123456789") {
		d.quantity(n, &w.Percent, path, fieldTags{bound: bounds{0, 100, true}})
		return
	}
	d.word(n, path, text, tags.words, reflect.ValueOf(&w.Word).Elem())
}

// Given reports whether either was written.
func (w WordOrPercent) Given() bool { return w.Word != "" || w.Percent.Given() }

func (w WordOrPercent) String() string { return w.Word + w.Percent.Text }
