package form

import (
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/cmd/stonewrit/desk/yamledit"
)

// read tells a node in the notation of the field. ok is false for a node of
// another make, which the form shows and does not change.
func (s Spec) read(n *yaml.Node) (text string, ok bool) {
	switch {
	case n == nil:
		return "", true
	case n.Tag == "!!null" && n.Style == 0 && n.Kind == yaml.ScalarNode:
		return "", true
	}
	switch s.Shape {
	case Choices, Lines, Quantities, Days, Edges, Spans, Claims:
		return s.readList(n)
	case Pairs:
		return readPairs(n)
	case Afterglow:
		if n.Kind == yaml.MappingNode {
			return readAfterglow(n)
		}
	}
	return n.Value, n.Kind == yaml.ScalarNode
}

// none is what an empty list is told as.
const none = "none"

func (s Spec) readList(n *yaml.Node) (string, bool) {
	if n.Kind == yaml.ScalarNode {
		return n.Value, true
	}
	if n.Kind != yaml.SequenceNode {
		return "", false
	}
	if len(n.Content) == 0 {
		return none, true
	}
	var lines []string
	for _, c := range n.Content {
		line, ok := s.readItem(c)
		if !ok {
			return "", false
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n"), true
}

// readItem tells one entry of a list on one line.
func (s Spec) readItem(n *yaml.Node) (string, bool) {
	switch {
	case n.Kind == yaml.ScalarNode:
		return n.Value, !strings.Contains(n.Value, "\n")
	case s.Shape == Claims && n.Kind == yaml.MappingNode:
		return readClaim(n)
	case n.Kind != yaml.SequenceNode || s.Shape != Edges && s.Shape != Spans:
		return "", false
	}
	var parts []string
	for _, c := range n.Content {
		if c.Kind != yaml.ScalarNode {
			return "", false
		}
		parts = append(parts, c.Value)
	}
	return strings.Join(parts, map[Shape]string{Edges: " / ", Spans: " to "}[s.Shape]), true
}

func readClaim(n *yaml.Node) (string, bool) {
	parts := make([]string, 3)
	for i := 0; i+1 < len(n.Content); i += 2 {
		at := map[string]int{"name": 0, "where": 1, "amount": 2}
		place, known := at[n.Content[i].Value]
		if !known || strings.Contains(n.Content[i+1].Value, ",") {
			return "", false
		}
		parts[place] = n.Content[i+1].Value
	}
	return strings.TrimRight(strings.Join(parts, ", "), ", "), true
}

func readPairs(n *yaml.Node) (string, bool) {
	if n.Kind != yaml.MappingNode {
		return "", false
	}
	var lines []string
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i+1].Kind != yaml.ScalarNode || strings.Contains(n.Content[i].Value, ":") {
			return "", false
		}
		lines = append(lines, n.Content[i].Value+": "+n.Content[i+1].Value)
	}
	return strings.Join(lines, "\n"), true
}

func readAfterglow(n *yaml.Node) (string, bool) {
	var colour, seconds string
	for i := 0; i+1 < len(n.Content); i += 2 {
		switch n.Content[i].Value {
		case "colour":
			colour = n.Content[i+1].Value
		case "seconds":
			seconds = n.Content[i+1].Value + " s"
		default:
			return "", false
		}
	}
	return strings.TrimSpace(colour + " " + seconds), true
}

// write turns what was entered into a node. text is trimmed and not empty.
func (s Spec) write(text string) *yaml.Node {
	switch s.Shape {
	case Choices, Lines, Quantities, Days, Edges, Spans, Claims:
		return s.writeList(text)
	case Pairs:
		return writePairs(text)
	case Afterglow:
		return writeAfterglow(text)
	case Quantity:
		return yamledit.Plain(s.withUnit(text))
	case Amount:
		return yamledit.Quoted(text)
	case Whole, Day, YesNo:
		return yamledit.Plain(text)
	}
	return yamledit.Text(text)
}

func (s Spec) writeList(text string) *yaml.Node {
	entries := s.split(text)
	if len(entries) == 1 && strings.EqualFold(entries[0], none) {
		return yamledit.List()
	}
	var items []*yaml.Node
	for _, e := range entries {
		items = append(items, s.writeItem(e))
	}
	if s.Single && len(items) == 1 && (s.Shape == Days || s.Shape == Quantities) {
		return items[0]
	}
	return yamledit.List(items...)
}

// plain is what was entered without what makes no difference.
func (s Spec) plain(text string) string {
	switch s.Shape {
	case Lines, Quantities, Days, Edges, Spans, Claims, Pairs:
		return strings.Join(s.split(text), "\n")
	}
	return text
}

// split parts a list. Quantities and dates may also stand behind one another
// with commas; a decimal comma is left for the reader to find.
func (s Spec) split(text string) []string {
	if s.Shape == Quantities || s.Shape == Days {
		text = commaBetween.ReplaceAllString(text, "\n")
	}
	var list []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			list = append(list, line)
		}
	}
	return list
}

var commaBetween = regexp.MustCompile(`[,;]\s+`)

func (s Spec) writeItem(text string) *yaml.Node {
	switch s.Shape {
	case Edges:
		return writeEdges(text)
	case Spans:
		parts := spanBetween.Split(text, 2)
		var ends []*yaml.Node
		for _, p := range parts {
			ends = append(ends, yamledit.Plain(s.withUnit(strings.TrimSpace(p))))
		}
		return yamledit.List(ends...)
	case Claims:
		return writeClaim(text)
	case Quantities:
		return yamledit.Plain(s.withUnit(text))
	case Days:
		return yamledit.Plain(text)
	}
	return yamledit.Text(text)
}

var (
	spanBetween = regexp.MustCompile(`\s+to\s+|\s*[-–/]\s*`)
	edgeMark    = regexp.MustCompile(`[^\s,/;\[\]]+`)
)

// writeEdges reads one turn: "1.762 / 1.770", "1.762 1.770", "1.757 over", each
// edge with its uncertainty if there is one.
func writeEdges(text string) *yaml.Node {
	var edges []string
	join := false
	for _, mark := range edgeMark.FindAllString(text, -1) {
		extends := strings.HasPrefix(mark, "+-") || strings.HasPrefix(mark, "±") || mark == "u"
		if (extends || join) && len(edges) > 0 {
			edges[len(edges)-1] += " " + mark
		} else {
			edges = append(edges, mark)
		}
		join = mark == "+-" || mark == "±" || mark == "u"
	}
	if len(edges) == 1 {
		return yamledit.Plain(edges[0])
	}
	list := yamledit.List()
	for _, e := range edges {
		list.Content = append(list.Content, yamledit.Plain(e))
	}
	return list
}

func writeClaim(text string) *yaml.Node {
	parts := strings.SplitN(text, ",", 3)
	if len(parts) == 1 {
		return yamledit.Text(text)
	}
	claim := yamledit.Map()
	for i, key := range []string{"name", "where", "amount"}[:len(parts)] {
		if value := strings.TrimSpace(parts[i]); value != "" {
			claim.Content = append(claim.Content, yamledit.Text(key), yamledit.Text(value))
		}
	}
	return claim
}

func writePairs(text string) *yaml.Node {
	pairs := yamledit.Map()
	for _, line := range strings.Split(text, "\n") {
		name, value, _ := strings.Cut(strings.TrimSpace(line), ":")
		if name != "" {
			pairs.Content = append(pairs.Content, yamledit.Text(strings.TrimSpace(name)), yamledit.Text(strings.TrimSpace(value)))
		}
	}
	return pairs
}

var glowing = regexp.MustCompile(`^(.*?),?\s*(?:for\s+)?([0-9]+)\s*(?:s|seconds?)$`)

func writeAfterglow(text string) *yaml.Node {
	if g := glowing.FindStringSubmatch(text); g != nil && g[1] != "" {
		return yamledit.Map(yamledit.Text("colour"), yamledit.Text(g[1]), yamledit.Text("seconds"), yamledit.Plain(g[2]))
	}
	if strings.EqualFold(text, none) {
		return yamledit.Text(none)
	}
	return yamledit.Map(yamledit.Text("colour"), yamledit.Text(text))
}

var bareNumber = regexp.MustCompile(`^([+-]?[0-9]+(?:\.[0-9]*)?)((?:\s*(?:\+-|±|u)\s*[0-9.]+)?)$`)

// withUnit gives a bare number the unit that stands beside its field. Where two
// units are possible the reader asks which.
func (s Spec) withUnit(text string) string {
	if !s.oneUnit() {
		return text
	}
	return bareNumber.ReplaceAllStringFunc(text, func(all string) string {
		g := bareNumber.FindStringSubmatch(all)
		return g[1] + " " + s.Units[0] + g[2]
	})
}

// oneUnit reports whether the field has one unit, however it may be spelled.
func (s Spec) oneUnit() bool { return len(s.Units) > 0 && !(len(s.Units) > 1 && s.Units[1] == "ct") }
