package seal_test

import (
	"bytes"
	"encoding/hex"
	"errors"
	"os/exec"
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

// claiming is a PDF whose metadata say another number, of the same length, than
// its pages print.
func claiming(t *testing.T, data []byte, printed, number string) []byte {
	t.Helper()
	from, to := []byte("<stonewrit:number>"+printed+"<"), []byte("<stonewrit:number>"+number+"<")
	if !bytes.Contains(data, from) || len(from) != len(to) {
		t.Fatalf("%q is not in the metadata", printed)
	}
	return bytes.Replace(data, from, to, 1)
}
