package grading_test

import (
	"testing"

	"stonewrit/grading/identify"
)

// BenchmarkIdentify judges a stone against the whole table: the contract's
// example with its sixteen tests, and a demo stone with the six that a bench
// usually makes.
func BenchmarkIdentify(b *testing.B) {
	tables := load(b)
	for _, c := range []struct{ name, file string }{
		{"six tests", "../testdata/demo/hl-0401.yaml"},
		{"sixteen tests", "testdata/contract/hl-0412.yaml"},
	} {
		e := examine(b, tables, c.file)
		kase := identify.Case{Stone: e.Stone, Values: e.Values}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				tables.Identifier().Identify(kase)
			}
		})
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
