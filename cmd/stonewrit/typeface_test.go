package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/go-fonts/dejavu/dejavusans"
)

// A client's name in a script that the built-in typeface lacks is an error that
// names character, line and key, until the bench file names a font that has it.
// The font is embedded as a subset, and the name can be copied from the page.
func TestFontOfTheBench(t *testing.T) {
	demo(t, "demo")
	const armenian = "Արամ Սարյան" // an invented client
	file := "hl-0408.yaml"
	src := edited(t, file, `name: "Benedek Aumery"`, `name: "`+armenian+`"`)
	writeAll(t, file, src)
	_, errs := command(t, statusFailed, "draft", file)
	if !strings.Contains(errs, file+":12:16: client.name: cannot print \"Ա\" (U+0531)") || !strings.Contains(errs, "hint: name a font that has it in bench.yaml, font: fonts/NAME.ttf") {
		t.Errorf("without a font:\n%s", errs)
	}

	bench := read(t, "bench.yaml")
	for _, tc := range []struct{ key, want, why string }{
		{"font: fonts/armenian.ttf", "bench.yaml:1:7: font[0]: fonts/armenian.ttf: no such file", "there is none yet"},
		{"font: hl-0401.yaml", "bench.yaml:1:7: font[0]: font hl-0401.yaml: not a usable TrueType font", "a stone file is no font"},
		{"font: ../armenian.ttf", `"../armenian.ttf" lies outside the folder of the bench file`, "documents are made of what stands beside the bench file"},
	} {
		writeAll(t, "bench.yaml", tc.key+"\n"+bench)
		if _, errs := command(t, statusFailed, "draft", file); !strings.Contains(errs, tc.want) {
			t.Errorf("%s (%s):\n%s\nwant %s", tc.key, tc.why, errs, tc.want)
		}
	}

	if err := os.Mkdir("fonts", 0o755); err != nil {
		t.Fatal(err)
	}
	writeAll(t, "fonts/armenian.ttf", string(dejavusans.TTF))
	writeAll(t, "bench.yaml", "font: [fonts/armenian.ttf]\n"+bench)
	command(t, statusGood, "draft", "--out", "drafts", file)
	pdf := filepath.Join("drafts", "HL-0408-draft.pdf")
	if text, ok := tool(t, "pdftotext", pdf, "-"); ok && !strings.Contains(text, armenian) {
		t.Errorf("the name does not stand in the text of the document")
	}
	if fonts, ok := tool(t, "pdffonts", pdf); ok && !strings.Contains(fonts, "+DejaVuSans ") {
		t.Errorf("the font of the bench is not embedded as a subset:\n%s", fonts)
	}
	if info, err := os.Stat(pdf); err != nil || info.Size() > int64(len(dejavusans.TTF))/2 {
		t.Errorf("the document holds the whole font: %d bytes, %v", info.Size(), err)
	}

	// A character that this font lacks too: Tibetan is not in it, and would need
	// its letters stacked.
	writeAll(t, file, strings.Replace(src, armenian, "བསྟན", 1))
	if _, errs := command(t, statusFailed, "draft", file); !strings.Contains(errs, file+":12:16: client.name: cannot print") || !strings.Contains(errs, "hint: write it in a script whose letters stand one after another") {
		t.Errorf("with a character that no font has:\n%s", errs)
	}
}

func read(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

func writeAll(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// edited is a file with one text replaced.
func edited(t *testing.T, name, from, to string) string {
	t.Helper()
	src := read(t, name)
	if !strings.Contains(src, from) {
		t.Fatalf("%s does not hold %q", name, from)
	}
	return strings.Replace(src, from, to, 1)
}
