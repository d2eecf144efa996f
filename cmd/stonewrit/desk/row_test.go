package desk

import (
	"os"
	"testing"
	"time"

	"stonewrit/grading"
)

// BenchmarkRow reads and judges one stone for the list.
func BenchmarkRow(b *testing.B) {
	dir := b.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../../testdata/demo")); err != nil {
		b.Fatal(err)
	}
	tables, err := grading.Load()
	if err != nil {
		b.Fatal(err)
	}
	now := func() time.Time { return time.Date(2026, 11, 3, 10, 0, 0, 0, time.UTC) }
	d, err := New(Options{Folder: dir, Tables: tables, Now: now})
	if err != nil {
		b.Fatal(err)
	}
	defer d.Close()
	for b.Loop() {
		if r := d.row(row{File: "hl-0412.yaml"}); r.Unread || r.other {
			b.Fatal("not read")
		}
	}
}
