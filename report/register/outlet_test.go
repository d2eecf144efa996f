package register

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// TestPlace names a staged PDF in both ways, with and without hard links.
func TestPlace(t *testing.T) {
	const name = "HL-2026-000001-16.pdf"
	for _, row := range []struct {
		name  string
		place func(*outlet) error
	}{
		{"link", func(o *outlet) error { return o.place(name) }},
		{"rename", func(o *outlet) error { return o.rename(name) }},
	} {
		o, err := makeOutlet(filepath.Join(t.TempDir(), "a", "b"))
		if err != nil {
			t.Fatal(err)
		}
		defer o.close()
		if err := o.stage(name, []byte("issued")); err != nil {
			t.Fatal(err)
		}
		if err := row.place(o); err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		if err := o.stage(name, []byte("second")); err != nil {
			t.Fatal(err)
		}
		if err := row.place(o); !errors.Is(err, fs.ErrExist) {
			t.Errorf("%s: the name is taken: got %v, want fs.ErrExist", row.name, err)
		}
		if got, err := os.ReadFile(o.path(name)); err != nil || string(got) != "issued" {
			t.Errorf("%s: the file holds %q, %v", row.name, got, err)
		}
	}
}

func TestPartNames(t *testing.T) {
	for _, row := range []struct {
		name string
		want bool
	}{
		{partName("HL-2026-000001-16.pdf"), true},
		{"HL-2026-000001-16.pdf.part", false},
		{".HL-2026-000001-17.pdf.part", false}, // check digits of no number
		{".download.pdf.part", false},          // somebody else's
	} {
		if got := isPart(row.name); got != row.want {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
}
