package desk_test

import (
	"bytes"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

var printed = flag.String("printed", "", "keep the printed pages in this folder, to be looked at")

// TestPrintInTheBrowser prints pages as PDF: what they say is on the paper, and
// what is there to be clicked is not.
func TestPrintInTheBrowser(t *testing.T) {
	ctx := browser(t)
	b := newBench(t)
	b.enter(ctx)
	for _, c := range []struct {
		path          string
		says, saysnot []string
	}{
		{"/?sort=name", []string{"HL-0401", "species supported", "HL-0500"}, []string{"last changed first", "new stone"}},
		{"/stone/hl-0412.yaml", []string{"What it comes to", "refractive index 1.7613", "1.762 / 1.770", "Hedda Pellowin"}, []string{"save", "how it is done well", "more fields", "choose pictures"}},
		{"/stone/hl-0500.yaml", []string{"Its stones", "4.53 g with the stones"}, []string{"more fields"}},
		{"/bench", []string{"refractometer-1", "holds"}, []string{"save"}},
		{"/help", []string{"refractometer", "How it misleads"}, nil},
	} {
		b.visit(ctx, c.path)
		pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF())
		if err != nil {
			t.Fatal(err)
		}
		if *printed != "" {
			name := strings.NewReplacer("/", "_", "?", "_").Replace(c.path) + ".pdf"
			if err := os.WriteFile(filepath.Join(*printed, name), pdf, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		read := exec.Command("pdftotext", "-layout", "-", "-")
		read.Stdin = bytes.NewReader(pdf)
		said, err := read.Output()
		if err != nil {
			t.Skipf("pdftotext is needed: %v", err)
		}
		text := string(bytes.Join(bytes.Fields(said), []byte(" ")))
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the print does not say %q", c.path, want)
			}
		}
		for _, not := range c.saysnot {
			if strings.Contains(text, not) {
				t.Errorf("%s: the print says %q", c.path, not)
			}
		}
	}
}
