package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// Whatever a list says, the file that is made of it is YAML, its values are those
// of the list, and its remarks change nothing.
func FuzzDraftFile(f *testing.F) {
	for _, s := range []string{"a", "two\nlines", "a: b # c", "- x", "\"'", "\x00\x1b", "\u2028x\u0085y\ufeff", " spaces ", "\t", "yes", "~", "0412", "1e5", "{[", "%", "|\n x"} {
		f.Add(s, s)
	}
	f.Fuzz(func(t *testing.T, value, remark string) {
		if !utf8.ValidString(value) || !utf8.ValidString(remark) || strings.TrimSpace(value) == "" {
			t.Skip() // refused when the list is read, or an empty cell
		}
		d := &draftFile{root: scalarMap(), from: map[string]int{}, remarks: []string{"Head: " + remark}}
		for _, key := range []string{"quality.description", "photos[0].file"} {
			if err := d.set(key, scalar(value)); err != nil {
				t.Fatal(err)
			}
		}
		if err := d.write("From list.csv, line 2."); err != nil {
			t.Fatal(err)
		}
		var got struct {
			Quality struct{ Description string }
			Photos  []struct{ File string }
		}
		if err := yaml.Unmarshal(d.src, &got); err != nil {
			t.Fatalf("%v\n%s", err, d.src)
		}
		if got.Quality.Description != value || len(got.Photos) != 1 || got.Photos[0].File != value {
			t.Errorf("%q comes back as %q\n%s", value, got.Quality.Description, d.src)
		}
		for _, line := range strings.Split(strings.ReplaceAll(remark, "\r\n", "\n"), "\n") {
			if !strings.Contains(string(d.src), printable(line)) {
				t.Errorf("the remark %q is lost\n%s", line, d.src)
			}
		}
	})
}

func TestSetRefusesWhatDoesNotFit(t *testing.T) {
	for _, keys := range [][]string{{"a", "a"}, {"a", "a.b"}, {"a.b", "a"}, {"a[1]"}, {"a[0]", "a.b"}, {"a[x]"}, {"a.b", "a[0]"}} {
		d := &draftFile{root: scalarMap()}
		var err error
		for _, key := range keys {
			if err == nil {
				err = d.set(key, scalar("x"))
			}
		}
		if err == nil {
			t.Errorf("%q are all set", keys)
		}
	}
}
