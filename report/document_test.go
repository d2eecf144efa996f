package report

import (
	"math"
	"testing"
)

// Lengths of the two papers: A4 is 210 mm by 297 mm (ISO 216), Letter 8.5 by
// 11 inches (ANSI/ASME Y14.1, from memory).
func TestPaperSize(t *testing.T) {
	w, h := A4.Size()
	if math.Abs(w.Millimetres()-210) > 1e-9 || math.Abs(h.Millimetres()-297) > 1e-9 {
		t.Errorf("A4 is %.3f by %.3f mm, want 210 by 297", w.Millimetres(), h.Millimetres())
	}
	if w, h = Letter.Size(); w != 8.5*72 || h != 11*72 {
		t.Errorf("Letter is %v by %v pt, want 612 by 792", w, h)
	}
}

func TestTextDoesNotShareItsTail(t *testing.T) {
	base := Plain("a ").Strong("b")
	one, two := base.Plain(" one"), base.Quiet(" two")
	if got := one.String(); got != "a b one" {
		t.Errorf("first text reads %q after a second was made from the same start", got)
	}
	if got := two.String(); got != "a b two" {
		t.Errorf("second text reads %q", got)
	}
	if len(base) != 2 {
		t.Errorf("the start grew to %d runs", len(base))
	}
}

func TestEmptyText(t *testing.T) {
	for _, tc := range []struct {
		text Text
		want bool
	}{{nil, true}, {Plain(""), true}, {Plain("").Strong(""), true}, {Plain("").Strong("x"), false}} {
		if got := tc.text.Empty(); got != tc.want {
			t.Errorf("Empty of %v is %v, want %v", tc.text, got, tc.want)
		}
	}
}

// The marks must differ in shape, not in colour: by what is filled and by how
// many strokes there are.
func TestMarksDifferInShape(t *testing.T) {
	type look struct {
		shapes int
		filled bool
	}
	seen := make(map[look]Mark)
	for _, m := range []Mark{MarkNone, MarkFilled, MarkOpen, MarkStruck} {
		shapes := MarkShapes(m, XY{10, 10}, 3)
		l := look{shapes: len(shapes)}
		for _, s := range shapes {
			if a, ok := s.(Arc); ok && a.Fill.Solid {
				l.filled = true
			}
		}
		if other, ok := seen[l]; ok {
			t.Errorf("marks %d and %d look alike", m, other)
		}
		seen[l] = m
	}
}
