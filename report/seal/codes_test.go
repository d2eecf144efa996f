package seal

import "testing"

// TestText reads content as several programs write it.
func TestText(t *testing.T) {
	const cmap = `1 begincodespacerange <0000> <FFFF> endcodespacerange
2 beginbfchar
<0003> <0041>
<0004> <00660069>
endbfchar
2 beginbfrange
<0010> <0019> <0030>
<0020> <0022> [<0058> <0059> <005A>]
endbfrange`
	fonts := map[string]*codes{"F1": readCodes([]byte(cmap)), "all": readCodes([]byte("1 beginbfrange\n<0000> <FFFF> <0000>\nendbfrange"))}
	for _, row := range []struct{ name, content, want, why string }{
		{"bytes", `BT /other 12 Tf (A b\)\101\n) Tj ET`, "Ab)A\n", "a font that is not known: a byte is a letter; spaces are left out"},
		{"two bytes", "BT /other 12 Tf (\x00K\x00L) Tj ET", "KL\n", "the noughts are no letters"},
		{"glyphs", `BT /F1 9 Tf <00030010 0019>Tj <0004> Tj ET`, "A09\nfi\n", "bfchar and bfrange"},
		{"list", `/F1 9 Tf [<0020> -20 <0022>] TJ`, "X\nZ\n", "a range with a list"},
		{"unknown glyph", `/F1 9 Tf <00990003> Tj`, "A\n", "left out"},
		{"every code", `/all 9 Tf <004B004C20AC> Tj`, "KL\n", "one range for all; beyond ASCII is left out"},
		{"two fonts", `/F1 9 Tf <0003> Tj /all 9 Tf <0042> Tj`, "A\nB\n", "each by its own map"},
		{"dictionary and remark", "/Span <</Alt <0041>>> BDC % (no)\n/all 9 Tf <0043> Tj EMC", "A\nC\n", "only strings count, those of descriptions too"},
		{"cut short", `/all 9 Tf <0043`, "C\n", "the end of the content ends it"},
	} {
		if got := text([]byte(row.content), fonts); got != row.want {
			t.Errorf("%s: got %q, want %q: %s", row.name, got, row.want, row.why)
		}
	}
}
