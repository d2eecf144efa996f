package stone

import (
	"bytes"
	"regexp"

	"gopkg.in/yaml.v3"
)

// Sort of file by the keys at its top.
const (
	SortStone = "stone"
	SortPiece = "piece"
	SortBench = "bench"
	SortOther = "" // YAML that is none of ours
)

// Sniff tells what a YAML file is by its top keys. A file with a mistake that
// YAML does not forgive is told by the keys at its margin, so that the mistake
// is told where it belongs.
func Sniff(src []byte) string {
	keys := topKeys(src)
	switch {
	case !keys["stonewrit"] && !keys["stone"] && !keys["piece"] && (keys["practice"] || keys["instruments"] || keys["examiners"]):
		return SortBench
	case !keys["stonewrit"]:
		return SortOther
	case keys["piece"] && !keys["stone"]:
		return SortPiece
	case keys["stone"]:
		return SortStone
	case keys["practice"] || keys["instruments"] || keys["examiners"]:
		return SortBench
	}
	return SortStone
}

// sniffed is how much of a file is read to tell what it is.
const sniffed = 64 << 10

// topKeys finds the keys of the outermost mapping.
func topKeys(src []byte) map[string]bool {
	text := plainUTF8(src)
	keys := map[string]bool{}
	if len(text) <= sniffed {
		if root, err := firstDocument(text); err == nil {
			if root.Kind == yaml.MappingNode {
				for i := 0; i < len(root.Content); i += 2 {
					keys[root.Content[i].Value] = true
				}
			}
			return keys
		}
	}
	for _, g := range marginKey.FindAllSubmatch(text[:min(len(text), sniffed)], -1) {
		keys[string(bytes.Trim(g[1], `"'`))] = true
	}
	return keys
}

// marginKey is a key that begins a line.
var marginKey = regexp.MustCompile(`(?m)^\{?("[^"\n]*"|'[^'\n]*'|[^\s#"'{}\[\]:][^\n:#]*?)[ \t]*:(?:\s|$)`)
