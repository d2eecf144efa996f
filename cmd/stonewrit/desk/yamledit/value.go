package yamledit

import (
	"bytes"
	"encoding/json"
	"strings"

	"gopkg.in/yaml.v3"
)

// Text is a value that a reader must take as text.
func Text(s string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: s} }

// Plain is a value that is written bare where YAML allows it: a number, a
// quantity, a date, true or false.
func Plain(s string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: s} }

// Quoted is a value that stands in quotes.
func Quoted(s string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Value: s, Style: yaml.DoubleQuotedStyle}
}

// List is a list of values.
func List(items ...*yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: yaml.SequenceNode, Content: items}
}

// Map is a mapping of keys, each followed by its value.
func Map(content ...*yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: yaml.MappingNode, Content: content}
}

// flow writes a value on one line.
func flow(n *yaml.Node) string {
	var parts []string
	switch n.Kind {
	case yaml.SequenceNode:
		for _, c := range n.Content {
			parts = append(parts, flow(c))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			parts = append(parts, scalar(n.Content[i])+": "+flow(n.Content[i+1]))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return scalar(n)
}

// scalar writes a single value, in quotes where it needs them.
func scalar(n *yaml.Node) string {
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0 || !bare(n.Value, n.Tag == "!!str") {
		return quote(n.Value)
	}
	return n.Value
}

// quote writes a text in double quotes. JSON strings are YAML; only the letters
// that JSON leaves bare and YAML takes for line breaks are written out.
func quote(s string) string {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		return `""` // a string always encodes
	}
	return strings.NewReplacer("\u0085", `\N`, "\u007f", `\x7f`, "\ufeff", `\uFEFF`).Replace(strings.TrimSuffix(b.String(), "\n"))
}

// bare reports whether a value may stand without quotes wherever it stands,
// and is then read as itself. A text must also not look like a truth value,
// nothing or a sentence with marks in it.
func bare(s string, text bool) bool {
	if s == "" || strings.ContainsAny(s, "\n\t,[]{}#&*!|>'\"%@`") && !percent(s) || strings.Contains(s, ": ") || strings.HasSuffix(s, ":") || strings.TrimSpace(s) != s {
		return false
	}
	if text {
		switch strings.ToLower(s) {
		case "yes", "no", "on", "off", "true", "false", "null", "~", "y", "n":
			return false
		}
	}
	root, err := parse([]byte("k: [" + s + "]\n"))
	if err != nil || root.Content[1].Kind != yaml.SequenceNode || len(root.Content[1].Content) != 1 {
		return false
	}
	one := root.Content[1].Content[0]
	return one.Kind == yaml.ScalarNode && one.Value == s && one.Style == 0
}

// percent reports whether the only mark of a value is a per cent sign behind a
// number, which needs no quotes.
func percent(s string) bool {
	return !strings.ContainsAny(s, "\n\t,[]{}#&*!|>'\"@`") && !strings.HasPrefix(s, "%")
}

// block writes a mapping as lines, each key at the indentation.
func block(n *yaml.Node, indent int, newline string) string {
	var lines []string
	for i := 0; i+1 < len(n.Content); i += 2 {
		lines = append(lines, entry(n.Content[i].Value, n.Content[i+1], indent, newline))
	}
	return strings.Join(lines, newline+strings.Repeat(" ", indent))
}

// entry writes a key with its value; what stands below it is indented further.
func entry(key string, n *yaml.Node, indent int, newline string) string {
	name, inner := scalar(Text(key)), strings.Repeat(" ", indent+2)
	switch {
	case n.Kind == yaml.MappingNode && len(n.Content) > 0:
		return name + ":" + newline + inner + block(n, indent+2, newline)
	case n.Kind == yaml.SequenceNode && len(n.Content) > 0 && n.Content[0].Kind == yaml.MappingNode:
		out := name + ":"
		for _, c := range n.Content {
			out += newline + inner + item(c, indent+2, newline)
		}
		return out
	}
	return name + ": " + flow(n)
}

// item writes one entry of a list, with its dash.
func item(n *yaml.Node, indent int, newline string) string {
	if n.Kind == yaml.MappingNode && len(n.Content) > 0 {
		return "- " + block(n, indent+2, newline)
	}
	return "- " + flow(n)
}
