package main

import (
	"bytes"
	"crypto/rand"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The README shows real output and a real page: the demo is issued on a fixed
// day, and its lines and the first page of one appraisal are those shown. The
// page is written anew with UPDATE_SCRIPTS set.
func TestReadme(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	demo := copied(t, "demo")
	out := filepath.Join(demo, "issued")
	day := func() time.Time { return time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC) }
	var stdout, stderr bytes.Buffer
	if code := run([]string{"issue", "--out", out, demo}, world{strings.NewReader(""), &stdout, &stderr, day, rand.Reader}); code != 0 {
		t.Fatalf("issue gave %d: %s", code, stderr.String())
	}
	printed := strings.Split(strings.ReplaceAll(stdout.String(), out, "issued"), "\n")
	var shown []string
	for line := range strings.Lines(string(readme)) {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, "HL-2026-") {
			shown = append(shown, line)
		}
	}
	if len(shown) == 0 {
		t.Fatal("the README shows no output")
	}
	for i, line := range shown {
		if printed[i] != line {
			t.Errorf("the README shows %q, the program prints %q", line, printed[i])
		}
	}
	for _, line := range printed {
		if number, _, ok := strings.Cut(line, " "); ok && strings.HasSuffix(line, "HL-0412") {
			comparePage(t, filepath.Join(out, number+".pdf"), "../../testdata/demo/pages/HL-0412.png")
		}
	}
}

// comparePage renders the first page and compares it with the picture of the
// README; small differences of rendering are allowed.
func comparePage(t *testing.T, pdf, picture string) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm of poppler is not installed: the page of the README is not compared")
	}
	got, err := exec.Command("pdftoppm", "-r", "60", "-png", "-f", "1", "-l", "1", pdf).Output()
	if err != nil {
		t.Fatal(err)
	}
	if os.Getenv("UPDATE_SCRIPTS") != "" {
		if err := os.WriteFile(picture, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(picture)
	if err != nil {
		t.Fatal(err)
	}
	a, err := png.Decode(bytes.NewReader(got))
	if err != nil {
		t.Fatal(err)
	}
	b, err := png.Decode(bytes.NewReader(want))
	if err != nil {
		t.Fatal(err)
	}
	if a.Bounds() != b.Bounds() {
		t.Fatalf("the page is %v, the picture of the README %v", a.Bounds(), b.Bounds())
	}
	sum := 0.0
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			r1, g1, b1, _ := a.At(x, y).RGBA()
			r2, g2, b2, _ := b.At(x, y).RGBA()
			sum += math.Abs(float64(r1)-float64(r2)) + math.Abs(float64(g1)-float64(g2)) + math.Abs(float64(b1)-float64(b2))
		}
	}
	if mean := sum / 3 / 65535 / float64(a.Bounds().Dx()*a.Bounds().Dy()); mean > 0.01 {
		t.Errorf("the page differs from the picture of the README by %.1f %% on the mean; UPDATE_SCRIPTS=1 renews it", 100*mean)
	}
}
