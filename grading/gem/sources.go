package gem

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
)

// What a source column says when no published entry stands behind a figure:
// it was recalled, or it is a rule of the trade that nobody wrote down.
const (
	FromMemory     = "from memory"
	CommonPractice = "common practice"
)

// Sources returns the text of data/SOURCES.md.
func Sources() string {
	raw, err := files.ReadFile("data/SOURCES.md")
	if err != nil {
		panic(err) // the file is compiled in
	}
	return string(raw)
}

// readSources returns the ids of SOURCES.md: the first word of each heading of
// the second level, as in "## FTC 16 CFR Part 23".
func readSources(fsys fs.FS) ([]string, error) {
	raw, err := fs.ReadFile(fsys, "data/SOURCES.md")
	if err != nil {
		return nil, err
	}
	var ids []string
	line := 0
	for text := range strings.SplitSeq(string(raw), "\n") {
		line++
		heading, ok := strings.CutPrefix(text, "## ")
		if !ok {
			continue
		}
		words := strings.Fields(heading)
		if len(words) == 0 || slices.Contains(ids, words[0]) {
			return nil, fmt.Errorf("data/SOURCES.md:%d: heading %q is empty or its id is taken", line, text)
		}
		ids = append(ids, words[0])
	}
	return ids, nil
}

// knownSource reports whether one part of a source cell is acceptable: one of
// the two fixed phrases, or an id that may be followed by a page or clause.
func knownSource(s string, ids []string) bool {
	if s == FromMemory || s == CommonPractice {
		return true
	}
	id, _, _ := strings.Cut(s, " ")
	return slices.Contains(ids, id)
}
