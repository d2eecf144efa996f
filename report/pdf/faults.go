package pdf

import (
	"fmt"
	"strings"
)

// Fault is a mistake of layout: two items that overlap, or one that leaves the
// printable part of its page.
type Fault struct {
	Page int // from 1
	Msg  string
}

func (f Fault) String() string { return fmt.Sprintf("page %d: %s", f.Page, f.Msg) }

// Faults looks over placed pages, for tests. Texts may overlap neither one
// another nor pictures; lines and marks outside drawings may cross neither.
// Within a drawing lines may cross labels, since a drawing knows why.
func Faults(pages []Page) []Fault {
	var out []Fault
	for i, page := range pages {
		items := inkOf(page.Items, false)
		for _, a := range items {
			if msg := leaves(page, a.box); msg != "" {
				out = append(out, Fault{i + 1, a.name + " " + msg})
			}
		}
		for j, a := range items {
			for _, b := range items[j+1:] {
				if clash(a, b) {
					out = append(out, Fault{i + 1, fmt.Sprintf("%s overlaps %s", a.name, b.name)})
				}
			}
		}
	}
	return out
}

// inkedBox is an item with what matters to its neighbours.
type inkedBox struct {
	box   Rect
	name  string
	path  bool
	drawn bool // part of a drawing
}

func inkOf(items []Placed, drawn bool) []inkedBox {
	var out []inkedBox
	for _, it := range items {
		switch it := it.(type) {
		case Text:
			if strings.TrimSpace(it.S) != "" && !it.Accent {
				out = append(out, inkedBox{box: it.box, name: fmt.Sprintf("text %q", it.S), drawn: drawn})
			}
		case Path:
			out = append(out, inkedBox{box: it.box, name: fmt.Sprintf("line at %.0f, %.0f", it.box.X, it.box.Y), path: true, drawn: drawn})
		case Picture:
			out = append(out, inkedBox{box: it.Box, name: "picture " + it.Image.Alt, drawn: drawn})
		case Drawing:
			out = append(out, inkOf(it.Items, true)...)
		}
	}
	return out
}

// leaves says how a box leaves the part of the page that may be printed on.
func leaves(page Page, r Rect) string {
	const slack = 0.05
	switch {
	case r.X < safeEdge-slack:
		return "leaves the page on the left"
	case r.X+r.W > page.Width-safeEdge+slack:
		return "leaves the page on the right"
	case r.Y < safeEdge-slack:
		return "leaves the page at the top"
	case r.Y+r.H > page.Height-safeEdge+slack:
		return "leaves the page at the bottom"
	}
	return ""
}

// clash reports whether two items may not stand as they do.
func clash(a, b inkedBox) bool {
	const slack = 0.3 // less than a hairline is no overlap
	if a.path && b.path || (a.drawn && b.drawn && (a.path || b.path)) {
		return false
	}
	return a.box.overlaps(b.box, slack)
}
