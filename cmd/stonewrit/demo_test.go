package main

import (
	"bytes"
	"crypto/rand"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// demo copies a folder of testdata, so that a register may be made in it.
func demo(t *testing.T, folder string) string {
	t.Helper()
	dir := copied(t, folder)
	t.Chdir(dir)
	return dir
}

// copied is a copy of a folder of testdata as it was cloned: without the register
// that somebody made who tried the README's commands there.
func copied(t *testing.T, folder string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Join("..", "..", "testdata", folder))); err != nil {
		t.Fatal(err)
	}
	books, err := filepath.Glob(filepath.Join(dir, "*.db*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, book := range books {
		if err := os.Remove(book); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// command runs a command line at a fixed time, and returns what it printed.
func command(t *testing.T, want int, args ...string) (stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	now := func() time.Time { return time.Date(2026, 11, 20, 12, 0, 0, 0, time.UTC) }
	if got := run(args, world{strings.NewReader(""), &out, &errs, now, rand.Reader}); got != want {
		t.Errorf("%s %s: exit status %d, want %d\n%s%s", name, strings.Join(args, " "), got, want, out.String(), errs.String())
	}
	return out.String(), errs.String()
}

// The demo, as the README shows it: every stone gets a number and a document
// that readers of PDF accept, and its own again when it is issued again.
func TestIssueDemo(t *testing.T) {
	demo(t, "demo")
	stones, err := filepath.Glob("hl-*.yaml")
	if err != nil || len(stones) < 10 {
		t.Fatalf("%d stones, %v", len(stones), err)
	}
	stones = slices.DeleteFunc(stones, func(f string) bool { return f == "hl-0501.yaml" }) // told of in the ring HL-0500
	out, errs := command(t, statusGood, "issue", "--out", "issued", ".")
	if errs != "" {
		t.Errorf("on standard error: %s", errs)
	}
	if n := strings.Count(out, "\n"); n != len(stones) {
		t.Errorf("%d lines for %d stones:\n%s", n, len(stones), out)
	}
	pdfs, err := filepath.Glob("issued/*.pdf")
	if err != nil || len(pdfs) != len(stones) {
		t.Fatalf("%d documents of %d stones, %v", len(pdfs), len(stones), err)
	}
	for _, pdf := range pdfs {
		accepted(t, pdf)
	}
	first, err := os.ReadFile(pdfs[0])
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(pdfs[0]); err != nil {
		t.Fatal(err)
	}
	again, _ := command(t, statusGood, "issue", ".")
	if strings.Count(again, "(unchanged") != len(stones) || strings.Count(again, "put back") != 1 {
		t.Errorf("issued again:\n%s", again)
	}
	if restored, err := os.ReadFile(pdfs[0]); err != nil || !bytes.Equal(restored, first) {
		t.Errorf("the restored document differs, %v", err)
	}
	command(t, statusGood, "register", "audit")
}

// accepted asks readers of PDF that we did not write: the file is sound, its
// fonts are embedded, and its number is on every page.
func accepted(t *testing.T, pdf string) {
	t.Helper()
	if text, ok := tool(t, "qpdf", "--check", pdf); ok && strings.Contains(text, "WARNING") {
		t.Errorf("%s: %s", pdf, text)
	}
	if text, ok := tool(t, "pdffonts", pdf); ok {
		for _, line := range strings.Split(strings.TrimSpace(text), "\n")[2:] {
			if fields := strings.Fields(line); len(fields) < 5 || fields[len(fields)-5] != "yes" {
				t.Errorf("%s: a font is not embedded: %s", pdf, line)
			}
		}
	}
	if text, ok := tool(t, "pdftotext", "-layout", pdf, "-"); ok {
		number := strings.TrimSuffix(filepath.Base(pdf), ".pdf")
		for i, page := range strings.Split(strings.TrimSuffix(text, "\f"), "\f") {
			if !strings.Contains(page, number) {
				t.Errorf("%s: page %d does not bear the number", pdf, i+1)
			}
		}
	}
}

// tool runs a program that may not be installed.
func tool(t *testing.T, program string, args ...string) (string, bool) {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		t.Logf("not checked: %s is not installed", program)
		return "", false
	}
	out, err := exec.Command(program, args...).CombinedOutput()
	if err != nil {
		t.Errorf("%s %s: %v\n%s", program, strings.Join(args, " "), err, out)
	}
	return string(out), err == nil
}

// No stone whose name the readings contradict gets a number.
func TestIssueWrong(t *testing.T) {
	demo(t, "wrong")
	stones, err := filepath.Glob("*.yaml")
	if err != nil || len(stones) < 10 {
		t.Fatalf("%d files, %v", len(stones), err)
	}
	checked, _ := command(t, statusFindings, "check", ".")
	issued, told := command(t, statusFindings, "issue", ".")
	for _, stone := range stones {
		if stone == benchName {
			continue
		}
		if !strings.Contains(told, name+": "+stone+": not issued, no number was taken\n") {
			t.Errorf("%s: nothing says that it was not issued", stone)
		}
	}
	if issued != "" {
		t.Errorf("issued: %s", issued)
	}
	if n := strings.Count(checked, ": contradicted\n"); n < len(stones)-1 {
		t.Errorf("%d claims of %d stones are contradicted", n, len(stones)-1)
	}
	for _, left := range []string{"issued", "register.db"} {
		if _, err := os.Stat(left); err == nil {
			t.Errorf("%s was made", left)
		}
	}
}
