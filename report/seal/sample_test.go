package seal_test

import (
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"testing"
	"time"

	"stonewrit/report"
	"stonewrit/report/pdf"
	"stonewrit/report/seal"
)

const (
	sampleNumber = "KL-2026-000419-56"
	sampleUUID   = "5f0c6d1e-8a37-4c52-9d6b-3f2e1a0b4c7d"
	stoneFile    = "stone: KL-0098\nreport: note\n"
	stoneJSON    = `{"stone":"KL-0098"}` + "\n"
)

func issued() time.Time { return time.Date(2026, 10, 14, 9, 30, 0, 0, time.UTC) }

// sample is a document of two pages, with change made to it first.
func sample(t testing.TB, change func(*report.Document)) []byte {
	t.Helper()
	doc := report.Document{
		Kind: "note", Title: "Stone note", Language: "en", Number: sampleNumber, UUID: sampleUUID,
		Date: issued(), DateText: "14 October 2026", Practice: report.Practice{Name: "Kestrel Lane Gem Room (Größe)"},
		Sections: []report.Section{{Name: "How to verify"}},
		Metadata: report.Metadata{Program: "test", Digest: digest(stoneFile), Examined: digest(stoneJSON)},
		Attachments: []report.Attachment{
			{Name: "KL-0098.yaml", Type: "application/yaml", Description: "the stone file", Data: []byte(stoneFile)},
			{Name: "KL-0098.json", Type: "application/json", Description: "the examined stone", Data: []byte(stoneJSON)},
		},
	}
	for range 60 { // over the page
		doc.Sections[0].Blocks = append(doc.Sections[0].Blocks, report.Paragraph{Text: report.Plain("Its second name is " + sampleUUID + ". The SHA-256 of the stone file is " + digest(stoneFile) + ".")})
	}
	if change != nil {
		change(&doc)
	}
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	data, err := press.Print(doc)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func digest(s string) string {
	d := seal.Sum([]byte(s))
	return hex.EncodeToString(d[:])
}

func open(t *testing.T, data []byte) *seal.Document {
	t.Helper()
	doc, err := seal.Open(data, "")
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// tool runs a program that others wrote, or skips the test.
func tool(t *testing.T, stdin []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed", name)
	}
	cmd := exec.Command(name, args...)
	cmd.Stdin = bytes.NewReader(stdin)
	out, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return string(out)
}

// replace puts other text in the place of old everywhere in the shown text of
// a PDF, as an editor of PDFs would: qpdf unpacks, fix-qdf mends the lengths.
func replace(t *testing.T, data []byte, old, other string) []byte {
	t.Helper()
	if _, err := exec.LookPath("fix-qdf"); err != nil {
		t.Skip("qpdf is not installed")
	}
	file := t.TempDir() + "/in.pdf"
	write(t, file, data)
	plain := tool(t, nil, "qpdf", "--qdf", "--object-streams=disable", file, "-")
	changed := strings.ReplaceAll(plain, utf16(old), utf16(other))
	if changed == plain {
		t.Fatalf("%q is not in the file", old)
	}
	return []byte(tool(t, []byte(changed), "fix-qdf"))
}

// utf16 is ASCII text as qpdf writes our strings.
func utf16(s string) string {
	var b strings.Builder
	for _, c := range []byte(s) {
		fmt.Fprintf(&b, "%04x", c)
	}
	return b.String()
}
