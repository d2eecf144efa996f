package pdf

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stonewrit/report"
)

func lineTexts(lines []line) []string {
	var out []string
	for _, l := range lines {
		var s string
		for _, pc := range l.pieces {
			s += pc.text
		}
		out = append(out, s)
	}
	return out
}

// TestNoBreak: at no width do these texts break elsewhere than at the places
// marked by a bar.
func TestNoBreak(t *testing.T) {
	press := newPress(t)
	for _, tc := range []struct{ name, text, why string }{
		{"no-break space", "weighs |1.520\u00a0ct |loose", "a number stays with its unit"},
		{"narrow no-break space", "worth |6\u202f400\u202fEUR |today", "a number is one"},
		{"thin space", "weighs |1.520\u2009ct |loose", "set between number and unit"},
		{"date", "on |2026-10-14 |here", "a hyphen between digits"},
		{"range", "from |1.762–1.770 |read", "a dash between digits"},
		{"ratio", "edges |1.762/1.770 |read", "a slash between digits"},
		{"number", "number |KL-2026-000417-62 |here", "a hyphen before or after a digit"},
		{"compound", "a |laboratory-|grown |stone", "a hyphen between letters"},
		{"slash", "ruby/|sapphire", "a slash between letters"},
		{"no-break hyphen", "a |laboratory\u2011grown |stone", "asked for"},
		{"word joiner", "ruby/\u2060sapphire |here", "asked for"},
		{"minus", "at |-5\u00a0°C |kept", "a sign is no hyphen"},
		{"zero-width space", "Donau\u200b|dampf\u200b|schiff", "asked for"},
	} {
		want := strings.Split(tc.text, "|")
		var got []string
		text := report.Plain(strings.Join(want, ""))
		for _, w := range press.words(text, sizeBody) {
			s := ""
			for _, pc := range w.pieces {
				s += pc.text
			}
			got = append(got, s)
		}
		for i := range want {
			want[i] = strings.NewReplacer("\u200b", "", "\u2060", "", "\u2011", "\u2010").Replace(strings.TrimSuffix(want[i], " "))
		}
		if strings.Join(got, "|") != strings.Join(want, "|") {
			t.Errorf("%s: words %q, want %q: %s", tc.name, got, want, tc.why)
		}
	}
}

func TestSoftHyphenShowsOnlyWhereItBreaks(t *testing.T) {
	press := newPress(t)
	text := report.Plain("Doppel\u00adbrechung")
	if got := lineTexts(press.lines(text, sizeBody, 500)); len(got) != 1 || got[0] != "Doppelbrechung" {
		t.Errorf("in a wide line: %q", got)
	}
	half := press.measure("Doppelbre", voice{FaceRegular, sizeBody, InkBlack}).width
	if got := lineTexts(press.lines(text, sizeBody, half)); len(got) != 2 || got[0] != "Doppel\u2010" || got[1] != "brechung" {
		t.Errorf("in a narrow line: %q", got)
	}
}

// TestLinesFit: whatever the text and the width, no line is wider than it may
// be, and no letter is lost.
func TestLinesFit(t *testing.T) {
	press := newPress(t)
	rapid.Check(t, func(t *rapid.T) {
		width := Point(rapid.Float64Range(20, 400).Draw(t, "width"))
		var text report.Text
		for range rapid.IntRange(1, 4).Draw(t, "runs") {
			text = append(text, report.Run{
				Text:  rapid.StringOfN(rapid.RuneFrom([]rune("abcWÅжω –-/\u00a0\u00ad\u200b\n1.5\u0301")), 0, 80, -1).Draw(t, "text"),
				Style: report.Style(rapid.IntRange(0, 3).Draw(t, "style")),
			})
		}
		size := rapid.SampledFrom([]Point{sizeSmall, sizeBody, sizeLarge}).Draw(t, "size")
		lines := press.lines(text, size, width)
		for _, l := range lines {
			if l.width > width+0.001 {
				t.Fatalf("line of %.2f in a width of %.2f", l.width, width)
			}
		}
		got, want := letters(strings.Join(lineTexts(lines), "")), letters(text.String())
		if got != want {
			t.Fatalf("letters %q, want %q", got, want)
		}
	})
}

// TestAccentIsCentred: an accent that has no character with its letter stands
// over the middle of the letter, clear of it.
func TestAccentIsCentred(t *testing.T) {
	press := newPress(t)
	for _, s := range []string{"m\u0300", "T\u0304", "x\u0302", "\u0431\u0301"} {
		r := []rune(s)
		f := press.faces[FaceRegular]
		shift := f.accentShift(r[0], nil, r[1], 2048)
		letter, _ := f.extent(r[0])
		accent, _ := f.extent(r[1])
		end := float64(f.font.advance(f.glyph[r[0]]))
		middle := end + float64(shift.X) + float64(accent.xMin+accent.xMax)/2
		if want := float64(letter.xMin+letter.xMax) / 2; math.Abs(middle-want) > 1 {
			t.Errorf("%q: accent over %.0f, middle of the letter %.0f", s, middle, want)
		}
		if low := float64(accent.yMin) - float64(shift.Y); low <= float64(letter.yMax) {
			t.Errorf("%q: accent begins at %.0f, the letter ends at %d", s, low, letter.yMax)
		}
	}
	// An accent that goes with its letter as one character is set as that.
	if words := press.words(report.Plain("e\u0301"), sizeBody); len(words) != 1 || len(words[0].pieces) != 1 || words[0].pieces[0].text != "é" {
		t.Errorf("e and acute are set as %+v", words)
	}
}

func TestBalancedLinesAreNoMore(t *testing.T) {
	press := newPress(t)
	text := report.Plain("A sapphire in a ring of gold, for which we conclude an insurance replacement value of 6\u202f400 euros on 14 October 2026.")
	for width := Point(120); width < 420; width += 7 {
		w := func(Point) Point { return width }
		full, even := press.fill(press.words(text, sizeLarge), sizeLarge, w), press.balanced(text, sizeLarge, w)
		if len(even) != len(full) {
			t.Errorf("width %.0f: %d lines balanced, %d as full as possible", width, len(even), len(full))
		}
		if spread(even) > spread(full)+0.01 {
			t.Errorf("width %.0f: balanced lines differ by %.0f, full ones by %.0f", width, spread(even), spread(full))
		}
	}
}

func spread(lines []line) Point {
	lo, hi := Point(1e9), Point(0)
	for _, l := range lines {
		lo, hi = min(lo, l.width), max(hi, l.width)
	}
	return hi - lo
}

// A pale accent is darkened. Reference: grey #767676 on white has a contrast of
// 4.54 to 1, #777777 of 4.48 (from memory, as commonly quoted for WCAG 2).
func TestAccentIsPrintable(t *testing.T) {
	for _, tc := range []struct {
		grey uint8
		want float64
	}{{0x76, 4.54}, {0x77, 4.48}, {0, 21}} {
		if got := contrast(report.Color{R: tc.grey, G: tc.grey, B: tc.grey}); math.Abs(got-tc.want) > 0.005 {
			t.Errorf("contrast of grey %#x is %.3f, want %.2f", tc.grey, got, tc.want)
		}
	}
	for _, c := range []report.Color{{R: 255, G: 255}, {R: 255, G: 255, B: 255}, {}, {R: 120, G: 10, B: 30}, {G: 200, B: 180}} {
		if p := printable(c); contrast(p) < 4.5 {
			t.Errorf("accent %v is printed as %v, contrast %.2f", c, p, contrast(p))
		}
	}
	if c := (report.Color{R: 120, G: 10, B: 30}); printable(c) != c {
		t.Error("an accent dark enough is changed")
	}
	if got := contrast(InkGrey.rgb(report.Color{})); got < 4.5 {
		t.Errorf("grey text has a contrast of %.2f", got)
	}
}
