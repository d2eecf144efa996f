package main

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"gopkg.in/yaml.v3"
)

// A draftFile is a stone file in the making, of one line of a list.
type draftFile struct {
	row     int
	root    *yaml.Node
	from    map[string]int // key to the column that filled it
	remarks []string       // columns without a key, a line each
	errs    []error
	file    string // where it goes
	src     []byte
}

// draftFile makes the file of one line: what stands in every file, then what its
// cells say. An empty cell says nothing.
func (i *importer) draftFile(row int) *draftFile {
	d := &draftFile{row: row, root: &yaml.Node{Kind: yaml.MappingNode}, from: map[string]int{}}
	d.set("stonewrit", scalar("1"))
	for _, a := range i.columns.always {
		if err := d.set(a.key, a.value); err != nil {
			d.errs = append(d.errs, failing("", "%s:%d: always: %s: %v", i.columns.file, a.line, a.key, err))
		}
	}
	for column, head := range i.table.heads {
		text := i.table.rows[row].cells[column]
		m := i.to[column]
		switch {
		case text == "":
		case m == nil || m.key == ignored:
			d.remarks = append(d.remarks, head+": "+text)
		default:
			value, err := i.columns.value(m, text)
			if err == nil {
				err = d.set(m.key, value)
			}
			if err != nil {
				d.errs = append(d.errs, &failure{i.table.at(row, column) + ": " + m.key + ": " + err.Error(), hintOf(err), err})
			}
			d.from[m.key] = column
		}
	}
	return d
}

// value is the cell of a column as stone files write it.
func (c *columnMap) value(m *mapped, text string) (*yaml.Node, error) {
	if m.several == "" {
		one, err := c.text(m, text)
		return scalar(one), err
	}
	list := &yaml.Node{Kind: yaml.SequenceNode, Style: yaml.FlowStyle}
	for part := range strings.SplitSeq(text, m.several) {
		one, err := c.text(m, strings.TrimSpace(part))
		if err != nil {
			return nil, err
		}
		list.Content = append(list.Content, scalar(one))
	}
	return list, nil
}

func (c *columnMap) text(m *mapped, text string) (string, error) {
	if word, ok := m.words[text]; ok {
		return word, nil
	}
	if c.comma && isNumber(strings.Replace(text, ",", ".", 1)) {
		text = strings.Replace(text, ",", ".", 1)
	}
	if m.unit != "" && isNumber(text) {
		return text + " " + m.unit, nil
	}
	if c.dates != "" && c.dates != time.DateOnly && isDateKey(m.key) {
		day, err := time.Parse(c.dates, text)
		if err != nil {
			return "", failing("the map says how dates are written", "%q is no date of the form %s", text, c.datesName())
		}
		return day.Format(time.DateOnly), nil
	}
	return text, nil
}

func (c *columnMap) datesName() string {
	for name, layout := range dateLayouts() {
		if layout == c.dates {
			return name
		}
	}
	return ""
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil && strings.Trim(text, "+-.0123456789") == ""
}

// isDateKey tells the keys of stone files that hold a day.
func isDateKey(key string) bool {
	switch last := key[strings.LastIndexByte(key, '.')+1:]; last {
	case "received", "date", "effective", "from", "until", "taken", "issued":
		return true
	default:
		return last == "examined" || strings.HasPrefix(last, "examined[")
	}
}

// scalar is text as a value of YAML: quoted where a reader would take it for
// something else than the stone file's reader does.
func scalar(text string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Value: text, Tag: "!!str"}
	switch {
	case strings.Contains(text, "\n"):
		n.Style = yaml.DoubleQuotedStyle // a block would lose what stands at its ends
	case plainDay.MatchString(text):
		n.Tag = "!!timestamp"
	case plainCount.MatchString(text):
		n.Tag = "!!int"
	}
	return n
}

var (
	plainDay   = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}$`)
	plainCount = regexp.MustCompile(`^[1-9][0-9]{0,8}$`)
)

// topOrder is the order in which stone files have their keys; what it does not
// name comes behind.
func topOrder() []string {
	return []string{
		"stonewrit", "stone", "report", "received", "examined", "examiner", "authorised_by", "place", "client", "location", "prepared", "mounted",
		"opinion", "origin", "appearance", "size", "weight", "tests", "quality", "inscription", "marks",
		"worth", "stock", "sold_by_issuer", "owned", "insured", "valued", "history", "use", "scope", "photos",
	}
}

// sort brings the keys at the top into their order.
func (d *draftFile) sort() {
	type pair struct{ key, value *yaml.Node }
	var pairs []pair
	for i := 0; i+1 < len(d.root.Content); i += 2 {
		pairs = append(pairs, pair{d.root.Content[i], d.root.Content[i+1]})
	}
	order := topOrder()
	place := func(p pair) int {
		if i := slices.Index(order, p.key.Value); i >= 0 {
			return i
		}
		return len(order)
	}
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(place(a), place(b)) })
	for i, p := range pairs {
		d.root.Content[2*i], d.root.Content[2*i+1] = p.key, p.value
	}
}

// set gives the value of a key such as "opinion.species" or "photos[0].file".
func (d *draftFile) set(key string, value *yaml.Node) error {
	at := d.root
	for step := range strings.SplitSeq(strings.NewReplacer("[", ".[", "]", "").Replace(key), ".") {
		var err error
		if at, err = child(at, step); err != nil {
			return err
		}
	}
	if at.Kind != 0 {
		return failing("a key is filled once", "it is filled twice")
	}
	*at = *value
	return nil
}

// child is what stands below a node, made if it is not there.
func child(n *yaml.Node, step string) (*yaml.Node, error) {
	if digits, ok := strings.CutPrefix(step, "["); ok {
		at, err := strconv.Atoi(digits)
		switch {
		case err != nil || at < 0 || at > len(n.Content):
			return nil, fmt.Errorf("the entries of a list are counted from 0, one after another")
		case n.Kind != 0 && n.Kind != yaml.SequenceNode:
			return nil, fmt.Errorf("it is a list and something else at the same time")
		}
		n.Kind = yaml.SequenceNode
		if at == len(n.Content) {
			n.Content = append(n.Content, &yaml.Node{})
		}
		return n.Content[at], nil
	}
	if n.Kind != 0 && n.Kind != yaml.MappingNode {
		return nil, fmt.Errorf("it has keys and a value at the same time")
	}
	n.Kind = yaml.MappingNode
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == step {
			return n.Content[i+1], nil
		}
	}
	key, value := scalar(step), &yaml.Node{}
	n.Content = append(n.Content, key, value)
	return value, nil
}

// write makes the bytes of the file. What no key takes stands in remarks at its
// end, so that nothing of the list is lost.
func (d *draftFile) write(source string) error {
	d.sort()
	var b bytes.Buffer
	fmt.Fprintf(&b, "# %s\n", oneLine(source))
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	if err := e.Encode(d.root); err != nil {
		return err
	}
	if err := e.Close(); err != nil {
		return err
	}
	if len(d.remarks) > 0 {
		b.WriteString("\n# What the list says besides:\n")
	}
	for _, remark := range d.remarks {
		for i, line := range strings.Split(strings.ReplaceAll(remark, "\r\n", "\n"), "\n") {
			indent := ""
			if i > 0 {
				indent = "  "
			}
			b.WriteString("# " + indent + printable(line) + "\n")
		}
	}
	d.src = b.Bytes()
	return nil
}

// printable writes characters that a YAML file may not hold as their number.
func printable(line string) string {
	var b strings.Builder
	for _, r := range line {
		if r < ' ' && r != '\t' || r == 0x7f || r >= 0x80 && r < 0xa0 || r == '\u2028' || r == '\u2029' || r == '\ufeff' {
			fmt.Fprintf(&b, "\\u%04x", r)
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}
