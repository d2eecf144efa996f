package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The stone file of the contract, through the command: one line of JSON with
// the keys and the figures that the contract prints for it.
func TestContractExample(t *testing.T) {
	dir := t.TempDir()
	for _, file := range []string{"bench.yaml", "hl-0412.yaml"} {
		src, err := os.ReadFile(filepath.Join("..", "..", "grading", "testdata", "contract", file))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, file), src, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var out, errs bytes.Buffer
	now := func() time.Time { return time.Date(2026, 11, 1, 12, 0, 0, 0, time.UTC) }
	got := run([]string{"check", "--json", filepath.Join(dir, "hl-0412.yaml")}, world{strings.NewReader(""), &out, &errs, now, nil})
	if got != statusFindings {
		t.Errorf("exit status %d, want 1: the picture that the example names is not there", got)
	}
	if errs.Len() > 0 {
		t.Errorf("on standard error: %s", errs.String())
	}
	if n := strings.Count(out.String(), "\n"); n != 1 {
		t.Fatalf("%d lines, want one", n)
	}
	var object map[string]any
	if err := json.Unmarshal(out.Bytes(), &object); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]any{
		"stone": "HL-0412", "claims.species.opinion": "corundum", "claims.species.standing": "supported",
		"values.ri.low": 1.7613, "values.ri.high": 1.7693, "values.ri.u": 0.001, "values.birefringence.value": 0.0080,
		"values.optic.character": "uniaxial", "values.optic.sign": "negative", "values.sg.value": 3.993,
		"weight.measured_ct": 1.52, "weight.estimated_ct": 1.49, "weight.low_ct": 1.40, "weight.high_ct": 1.58, "weight.implied_sg": 4.09,
	} {
		if at := lookup(object, path); at != want {
			t.Errorf("%s = %v, want %v as in the contract", path, at, want)
		}
	}
	for _, key := range []string{"file", "tests", "caveats", "problems", "claims.variety.because", "claims.growth.standing", "claims.treatment.standing"} {
		if lookup(object, key) == nil {
			t.Errorf("the object has no %s", key)
		}
	}
}

// lookup follows a path of keys.
func lookup(object map[string]any, path string) any {
	key, rest, more := strings.Cut(path, ".")
	if !more {
		return object[key]
	}
	below, _ := object[key].(map[string]any)
	return lookup(below, rest)
}
