package grading_test

import (
	"testing"

	"stonewrit/grading/identify"
)

// BenchmarkIdentify judges the contract's example stone, sixteen tests, against
// the whole table.
func BenchmarkIdentify(b *testing.B) {
	tables := load(b)
	e := examine(b, tables, "testdata/contract/hl-0412.yaml")
	c := identify.Case{Stone: e.Stone, Values: e.Values}
	b.ReportAllocs()
	for b.Loop() {
		tables.Identifier().Identify(c)
	}
}

// BenchmarkExamine reads nothing: record in, examined stone out.
func BenchmarkExamine(b *testing.B) {
	tables := load(b)
	e := examine(b, tables, "testdata/contract/hl-0412.yaml")
	b.ReportAllocs()
	for b.Loop() {
		tables.Examine(e.Stone, e.Bench, today)
	}
}
