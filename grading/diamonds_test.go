package grading_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
)

func diamonds(t *testing.T, file string) [][]string {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// file is one row of the open dataset as a stone file: row, carat, x, y, z, depth, table.
func file(row []string) string {
	low, high := row[2], row[3]
	if len(low) > len(high) || len(low) == len(high) && low > high {
		low, high = high, low
	}
	return fmt.Sprintf("opinion: {species: diamond, growth: natural}\nsize: {shape: round, cut: brilliant, diameter: [%s mm, %s mm], depth: %s mm, total_depth: %s %%, table: %s %%}\nweight: {measured: %s ct}\n", low, high, row[4], row[5], row[6], row[1])
}

func told(e *grading.Examined) bool {
	for _, p := range e.Problems {
		if p.Severity == stone.Finding && (strings.HasPrefix(p.Path, "size") || strings.HasPrefix(p.Path, "weight")) {
			return true
		}
	}
	return false
}

// Good round diamonds of the open dataset `diamonds` (R package ggplot2) pass as
// stone files with hardly a finding; rows whose dimensions contradict one
// another do not pass.
func TestDiamondsAsStoneFiles(t *testing.T) {
	tables := load(t)
	good, flagged := diamonds(t, "weight/testdata/round-diamonds.csv"), 0
	step := 4
	for i := 0; i < len(good); i += step {
		e := read(t, tables, file(good[i]))
		if e.Verdict.Species.Standing == identify.Contradicted {
			t.Errorf("row %s: diamond is contradicted: %v", good[i][0], e.Verdict.Species.Because)
		}
		if told(e) {
			flagged++
		}
	}
	tried := (len(good) + step - 1) / step
	bad, noticed := diamonds(t, "weight/testdata/round-diamonds-misread.csv"), 0
	for _, row := range bad {
		src := "stonewrit: 1\nstone: T-1\nreport: note\nexamined: 2026-10-14\nexaminer: okafor\n" + file(row)
		s, problems := stone.Read("t.yaml", []byte(src), tables.Gems)
		if problems.Has(stone.Error) || told(tables.Examine(s, nil, today)) {
			noticed++
		}
	}
	t.Logf("%d of %d good rows told (%.2f %%), %d of %d misread rows noticed", flagged, tried, 100*float64(flagged)/float64(tried), noticed, len(bad))
	if noticed < 90 {
		t.Errorf("%d misread rows noticed, want 90 at the least", noticed)
	}
	if flagged*200 > tried {
		t.Errorf("%d of %d good rows told, want a half per cent at the most", flagged, tried)
	}
}
