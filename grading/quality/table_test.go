package quality

import (
	"strings"
	"testing"
	"testing/fstest"
)

// A faulty table is refused, with file and line.
func TestFaultyTables(t *testing.T) {
	for name, c := range map[string]struct{ table, want string }{
		"good":           {"name,value,source\na,1,LAW 23.1\n", ""},
		"two sources":    {"name,value,source\na,1,LAW 23.1; common practice\n", ""},
		"no source":      {"name,value,source\na,1,\n", "t.csv:2: source"},
		"unknown source": {"name,value,source\na,1,HEARSAY\n", "t.csv:2: source"},
		"no number":      {"name,value,source\na,1,LAW\nb,x,LAW\n", "t.csv:3: value"},
		"too large":      {"name,value,source\na,11,LAW\n", "t.csv:2: value"},
		"column missing": {"name,source\na,LAW\n", "value is missing"},
		"ragged":         {"name,value,source\na,1\n", "t.csv"},
		"empty":          {"", "t.csv"},
	} {
		fsys := fstest.MapFS{"data/t.csv": {Data: []byte(c.table)}, "data/SOURCES.md": {Data: []byte("# Sources\n\n## LAW\nA law.\n")}}
		err := eachOf(fsys, "t.csv", func(r *row) { r.number("value", 0, 10) }, "name", "value")
		if (err != nil) != (c.want != "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
