package stone

import (
	"bytes"
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"
)

// Sort of file by the keys at its top.
const (
	SortStone = "stone"
	SortPiece = "piece"
	SortBench = "bench"
	SortOther = "" // YAML that is none of ours
)

// A Heading is what a YAML file says of itself at its top.
type Heading struct {
	Sort      string
	Reference string // of a stone or piece; "" where it cannot be told
}

// Sniff tells what a YAML file is, as Head does.
func Sniff(src []byte) string { return Head(src).Sort }

// Head tells what a YAML file is by its top keys. A file with a mistake that
// YAML does not forgive is told by the keys at its margin, so that the mistake
// is told where it belongs.
func Head(src []byte) Heading {
	if g := usualHead.FindSubmatch(src); g != nil {
		return Heading{SortStone, string(g[1])}
	}
	keys := topKeys(src)
	has := func(key string) bool { _, ok := keys[key]; return ok }
	ofBench := has("practice") || has("instruments") || has("examiners")
	switch {
	case !has("stonewrit") && !has("stone") && !has("piece") && ofBench:
		return Heading{Sort: SortBench}
	case !has("stonewrit"):
		return Heading{Sort: SortOther}
	case has("piece") && !has("stone"):
		return Heading{SortPiece, keys["piece"]}
	case !has("stone") && ofBench:
		return Heading{Sort: SortBench}
	}
	return Heading{SortStone, keys["stone"]}
}

// usualHead is how most stone files begin: version and reference, a line each,
// below comments. It spares them from being parsed twice. The reference is one
// that YAML reads as it stands, and the next line does not go on with it.
var usualHead = regexp.MustCompile(`\A\x{feff}?(?:[ \t]*(?:#[^\n]*)?\r?\n)*` +
	`stonewrit:[ \t]+[0-9]+[ \t]*(?:[ \t]#[^\n]*)?\r?\n(?:[ \t]*(?:#[^\n]*)?\r?\n)*` +
	`stone:[ \t]+([A-Za-z0-9][A-Za-z0-9._/-]*)[ \t]*(?:[ \t]#[^\n]*)?\r?\n(?:[ \t]*\r?\n)*[^ \t\r\n]`)

// sniffed is how much of a file that is not YAML is looked at to tell what it is.
const sniffed = 64 << 10

// topKeys finds the keys of the outermost mapping, with the values of those that
// have a plain one.
func topKeys(src []byte) map[string]string {
	text := plainUTF8(src)
	keys := map[string]string{}
	if len(text) <= maxFile {
		if root, err := firstDocument(text); err == nil {
			if root.Kind == yaml.MappingNode {
				for i := 0; i < len(root.Content); i += 2 {
					keys[root.Content[i].Value] = strings.TrimSpace(root.Content[i+1].Value)
				}
			}
			return keys
		}
	}
	for _, g := range marginKey.FindAllSubmatch(text[:min(len(text), sniffed)], -1) {
		keys[string(bytes.Trim(g[1], `"'`))] = ""
	}
	return keys
}

// marginKey is a key that begins a line.
var marginKey = regexp.MustCompile(`(?m)^\{?("[^"\n]*"|'[^'\n]*'|[^\s#"'{}\[\]:][^\n:#]*?)[ \t]*:(?:\s|$)`)
