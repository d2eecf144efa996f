package form

import (
	"strconv"
	"strings"
)

// steps parts a path as problems tell it: tests[0].readings[1].
func steps(path string) []any {
	var list []any
	for _, part := range strings.Split(path, ".") {
		key, rest, _ := strings.Cut(part, "[")
		if key != "" {
			list = append(list, key)
		}
		for _, index := range strings.Split(rest, "[") {
			if i, err := strconv.Atoi(strings.TrimSuffix(index, "]")); err == nil {
				list = append(list, i)
			}
		}
	}
	return list
}

// NameOf is the name of the field that a problem of an unedited file is about.
func NameOf(problem string) string { return (&Outcome{}).Name(problem) }
