package yamledit_test

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"

	"stonewrit/cmd/stonewrit/desk/yamledit"
)

const sample = `# a stone
stonewrit: 1   # the format
stone: "HL-1"

opinion: {species: corundum, variety: ruby}   # as stated
size:
  shape: oval      # outline
  # the gauge was cold
  length: 8.00 mm

  # the end of size
tests:
  - test: refractometer   # first
    readings: [[1.762, 1.770], [1.765, 1.770]]
    # over the limit: true
  - test: magnification
    sees:
      - silk      # at the rim
      - needles
empty:
note: >
  two lines
  of text
last: plain words
  over two lines
`

func path(t *testing.T, text string) yamledit.Path {
	t.Helper()
	p, err := yamledit.ParsePointer(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func order(p yamledit.Path) []string {
	switch p.String() {
	case "":
		return []string{"stonewrit", "stone", "opinion", "size", "weight", "tests"}
	case "size":
		return []string{"shape", "cut", "length", "width"}
	}
	return nil
}

func TestEdit(t *testing.T) {
	for _, c := range []struct {
		name, at string
		value    *yaml.Node // nil deletes
		old, new string     // the one difference to be seen in the text
	}{
		{"a plain value", "/size/shape", yamledit.Plain("pear"), "shape: oval      # outline", "shape: pear      # outline"},
		{"a quoted one keeps its quotes", "/stone", yamledit.Text("HL-2"), `stone: "HL-1"`, `stone: "HL-2"`},
		{"in brackets", "/opinion/variety", yamledit.Text("pink sapphire"), "variety: ruby}", "variety: pink sapphire}"},
		{"a new key in brackets", "/opinion/growth", yamledit.Text("natural"), "variety: ruby}", "variety: ruby, growth: natural}"},
		{"a text with marks is quoted", "/opinion/variety", yamledit.Text("red, or so: #1"), "variety: ruby}", `variety: "red, or so: #1"}`},
		{"no is a word", "/opinion/variety", yamledit.Text("no"), "variety: ruby}", `variety: "no"}`},
		{"a per cent needs no quotes", "/size/table", yamledit.Plain("57 %"), "  shape: oval      # outline\n  # the gauge was cold\n  length: 8.00 mm\n\n  # the end of size\n", "  shape: oval      # outline\n  # the gauge was cold\n  length: 8.00 mm\n  table: 57 %\n\n  # the end of size\n"},
		{"a new key goes behind those before it", "/size/cut", yamledit.Plain("mixed"), "shape: oval      # outline\n", "shape: oval      # outline\n  cut: mixed\n"},
		{"a new block", "/weight/measured", yamledit.Plain("1.5 ct"), "  length: 8.00 mm\n", "  length: 8.00 mm\nweight:\n  measured: 1.5 ct\n"},
		{"a nested entry", "/tests/#0/readings/#1/#0", yamledit.Plain("1.766"), "[1.765, 1.770]", "[1.766, 1.770]"},
		{"a longer list in brackets", "/tests/#0/readings", yamledit.List(pair("1.762", "1.770"), pair("1.765", "1.770"), pair("1.768", "1.770")), "[1.765, 1.770]]", "[1.765, 1.770], [1.768, 1.770]]"},
		{"a shorter list", "/tests/#0/readings", yamledit.List(pair("1.762", "1.770")), "[[1.762, 1.770], [1.765, 1.770]]", "[[1.762, 1.770]]"},
		{"an entry of a list keeps what stands beside it", "/tests/#1/sees", yamledit.List(yamledit.Text("silk"), yamledit.Text("crystals"), yamledit.Text("haze")), "      - needles\n", "      - crystals\n      - haze\n"},
		{"a new test", "/tests/#2", yamledit.Map(yamledit.Text("test"), yamledit.Text("magnet"), yamledit.Text("shows"), yamledit.Text("none")), "      - needles\n", "      - needles\n  - test: magnet\n    shows: none\n"},
		{"a value where there was none", "/empty", yamledit.Text("full"), "empty:\n", "empty: full\n"},
		{"a folded text", "/note", yamledit.Text("one line\nand two"), "note: >\n  two lines\n  of text\n", `note: "one line\nand two"` + "\n"},
		{"a plain text over two lines", "/last", yamledit.Text("short"), "last: plain words\n  over two lines\n", "last: short\n"},
		{"deleting keeps the remark", "/size/shape", nil, "  shape: oval      # outline\n", "  # outline\n"},
		{"deleting in brackets", "/opinion/variety", nil, "{species: corundum, variety: ruby}", "{species: corundum}"},
		{"deleting the first in brackets", "/opinion/species", nil, "{species: corundum, variety: ruby}", "{variety: ruby}"},
		{"deleting an entry of a list", "/tests/#1/sees/#1", nil, "      - needles\n", ""},
		{"deleting a test", "/tests/#0", nil, "  - test: refractometer   # first\n    readings: [[1.762, 1.770], [1.765, 1.770]]\n", ""},
		{"deleting behind the dash", "/tests/#1/test", nil, "  - test: magnification\n    sees:", "  - sees:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if strings.Count(sample, c.old) != 1 {
				t.Fatalf("%q stands %d times in the sample", c.old, strings.Count(sample, c.old))
			}
			want := strings.Replace(sample, c.old, c.new, 1)
			for _, newline := range []string{"\n", "\r\n"} {
				f, err := yamledit.Parse([]byte("\ufeff" + strings.ReplaceAll(sample, "\n", newline)))
				if err != nil {
					t.Fatal(err)
				}
				if c.value == nil {
					err = f.Delete(path(t, c.at))
				} else {
					err = f.Set(path(t, c.at), c.value, order)
				}
				if err != nil {
					t.Fatal(err)
				}
				if d := cmp.Diff("\ufeff"+strings.ReplaceAll(want, "\n", newline), string(f.Bytes())); d != "" {
					t.Errorf("-want +got\n%s", d)
				}
			}
		})
	}
}

func pair(low, high string) *yaml.Node {
	return yamledit.List(yamledit.Plain(low), yamledit.Plain(high))
}

// Deleting the only key of a mapping takes the mapping out too: a key with
// nothing behind it is a mistake in a stone file.
func TestDeleteLeavesNothingEmpty(t *testing.T) {
	f, err := yamledit.Parse([]byte("a: 1\nb: {c: 2}\nd:\n  - e: 3\n"))
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []string{"/b/c", "/d/#0/e"} {
		if err := f.Delete(path(t, at)); err != nil {
			t.Fatal(err)
		}
	}
	if got := string(f.Bytes()); got != "a: 1\n" {
		t.Errorf("got %q", got)
	}
}

func TestRefusesWhatItCannotProve(t *testing.T) {
	src := "a: 1\nb: &x {c: 2}\nd: *x\n"
	f, err := yamledit.Parse([]byte(src))
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Set(path(t, "/d/c"), yamledit.Plain("3"), nil); !errors.Is(err, yamledit.ErrShape) {
		t.Errorf("got %v, want ErrShape", err)
	}
	if string(f.Bytes()) != src {
		t.Errorf("the file was changed: %q", f.Bytes())
	}
	for _, bad := range []string{"", "- a\n", "a: [\n", "a: 1\n---\nb: 2\n"} {
		if _, err := yamledit.Parse([]byte(bad)); !errors.Is(err, yamledit.ErrSyntax) {
			t.Errorf("%q: got %v, want ErrSyntax", bad, err)
		}
	}
}

// TestEveryScalarOfTheDemo changes every single value of the demo files in turn
// and looks that nothing else of the file changed: neither a remark nor a line.
func TestEveryScalarOfTheDemo(t *testing.T) {
	files, err := filepath.Glob("../../../../testdata/demo/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatalf("the demo has %d files: %v", len(files), err)
	}
	changed := 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		f, err := yamledit.Parse(src)
		if err != nil {
			t.Fatal(err)
		}
		var walk func(n *yaml.Node, at yamledit.Path)
		walk = func(n *yaml.Node, at yamledit.Path) {
			switch n.Kind {
			case yaml.MappingNode:
				for i := 0; i < len(n.Content); i += 2 {
					walk(n.Content[i+1], at.With(n.Content[i].Value))
				}
			case yaml.SequenceNode:
				for i, c := range n.Content {
					walk(c, at.With(i))
				}
			case yaml.ScalarNode:
				changed++
				g, _ := yamledit.Parse(src)
				if err := g.Set(at, yamledit.Text("zebra crossing"), nil); err != nil {
					t.Errorf("%s: set: %v", file, err)
				}
				if got, want := comments(g.Bytes()), comments(src); got != want {
					t.Errorf("%s: %s: remarks changed", file, at)
				}
				g, _ = yamledit.Parse(src)
				if err := g.Delete(at); err != nil {
					t.Errorf("%s: delete: %v", file, err)
				}
			}
		}
		walk(f.Root(), nil)
	}
	if changed < 500 {
		t.Errorf("only %d values were changed", changed)
	}
}

var remark = regexp.MustCompile(`(?m)(^|\s)#.*$`)

func comments(src []byte) string { return strings.Join(remark.FindAllString(string(src), -1), "\n") }
