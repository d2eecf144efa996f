package report_test

import (
	"testing"

	"stonewrit/report"
)

// BenchmarkCompose writes the document of an appraisal with seven tests.
func BenchmarkCompose(b *testing.B) {
	in := input(b, "ruby.yaml")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := report.Compose(in); err != nil {
			b.Fatal(err)
		}
	}
}
