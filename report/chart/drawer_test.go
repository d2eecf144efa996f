package chart

import (
	"strings"
	"testing"

	"github.com/go-fonts/liberation/liberationserifregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"
)

// TestGuessIsNotTooNarrow: without a measure, each letter of Latin, Greek and
// Cyrillic is taken for at least as wide as the typeface of documents sets it.
func TestGuessIsNotTooNarrow(t *testing.T) {
	f, err := sfnt.Parse(liberationserifregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	var buf sfnt.Buffer
	count := 0
	for r := rune(' '); r < 0x0530; r++ {
		i, err := f.GlyphIndex(&buf, r)
		if err != nil || i == 0 {
			continue
		}
		w, err := f.GlyphAdvance(&buf, i, fixed.I(1000), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		count++
		if got, want := guess(string(r)), pt(w)/64*sizeSmall/1000; got < want {
			t.Errorf("%q (%U) is taken for %.2f wide, it is %.2f", r, r, got, want)
		}
	}
	if count < 700 {
		t.Errorf("only %d characters", count)
	}
}

// TestWrapped: no line is too wide, and no character but spaces is lost.
func TestWrapped(t *testing.T) {
	d := Drawer{}
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringMatching(`[a-zA-Z0-9 ÄßЖω\n]{0,120}`).Draw(rt, "text")
		most := pt(rapid.Float64Range(12, 372).Draw(rt, "most"))
		lines := d.wrapped(text, most)
		for _, line := range lines {
			if d.width(line) > most {
				rt.Fatalf("%q is wider than %v", line, most)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if squeeze(strings.Join(lines, "")) != squeeze(text) {
			rt.Fatalf("%q became %q", text, lines)
		}
	})
}

func TestWords(t *testing.T) {
	comma := Words{Number: func(s string) string { return strings.Replace(s, ".", ",", 1) }}
	for _, tc := range []struct{ got, want, why string }{
		{Words{}.number(1.76125, 4), "1.7613", "a tie falls up, as in the table of tests"},
		{comma.valued(3.9934, 0.0316, 3), "3,993\u00a0±\u00a00,032", "the decimal sign of the language"},
		{Words{}.valued(3.9934, 0, 3), "3.993", "no uncertainty, no sign"},
		{fill("{a} and {b}", "a", "{b}", "b", "x"), "{b} and x", "what is put in is not read again"},
	} {
		if tc.got != tc.want {
			t.Errorf("%q, want %q: %s", tc.got, tc.want, tc.why)
		}
	}
}
