package templates

import "testing"

// BenchmarkLoad reads and checks the built-in wording.
func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load(nil); err != nil {
			b.Fatal(err)
		}
	}
}
