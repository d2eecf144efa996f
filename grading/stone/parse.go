package stone

import (
	"bytes"
	_ "embed"
	"encoding/binary"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"regexp"
	"stonewrit/grading/phrase"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// parse turns the file into YAML nodes, or tells why it cannot. It returns nil
// where nothing of it can be read.
func (d *decoder) parse(src []byte) *yaml.Node {
	if len(src) > maxFile {
		d.problem("", Position{1, 1}, phrase.Say("the file has more than the %d bytes that are read", maxFile), "pictures and papers are named by their path, not put into the file")
		return nil
	}
	src, ok := d.textOf(src)
	if !ok {
		return nil
	}
	d.lines = 1 + bytes.Count(src, []byte("\n"))
	root, err := firstDocument(src)
	switch {
	case errors.Is(err, io.EOF):
		d.problem("", Position{1, 1}, "the file is empty", startHint)
		return nil
	case err != nil:
		d.syntax(err, src)
		return nil
	case root.Tag == "!!null":
		d.problem("", d.position(root), "the file is empty", startHint)
		return nil
	case root.Kind != yaml.MappingNode:
		d.problem("", d.position(root), phrase.Say("the file is %s, keys with values were expected", describeNode(root)), startHint)
		return nil
	}
	return root
}

const startHint = "start with \"stonewrit: 1\""

// secondDocument is the error of a file with more than one document.
type secondDocument struct{ at Position }

func (secondDocument) Error() string { return "a second document begins here" }

// firstDocument parses src, which must hold one document. The parser's own
// faults come back as errors.
func firstDocument(src []byte) (root *yaml.Node, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			root, err = nil, fmt.Errorf("yaml: %v", fault)
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader(src))
	var first, second yaml.Node
	if err := dec.Decode(&first); err != nil {
		return nil, err
	}
	switch err := dec.Decode(&second); {
	case err == nil:
		return nil, secondDocument{Position{second.Line, second.Column}}
	case !errors.Is(err, io.EOF):
		return nil, err
	}
	return first.Content[0], nil
}

var yamlLine = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)`)

// syntax tells a mistake of YAML itself. The parser stops at the first one.
func (d *decoder) syntax(err error, src []byte) {
	var second secondDocument
	if errors.As(err, &second) {
		d.problem("", d.inside(second.at), "a second document begins here, one file describes one thing", "put it into a file of its own")
		return
	}
	at, message := Position{1, 1}, err.Error()
	if g := yamlLine.FindStringSubmatch(message); g != nil {
		message = g[2]
		if line, err := strconv.Atoi(g[1]); err == nil {
			at.Line = line
		}
		if grammar(message) {
			at.Line++
		}
	}
	if g := unknownAnchor.FindStringSubmatch(message); g != nil {
		at = firstPlace(src, "*"+g[1])
	}
	at = d.inside(at)
	if line, column, ok := leadingTab(src); ok {
		d.problem("", Position{line, column}, "the line is indented with a tab", "indent with spaces")
		return
	}
	meaning, hint := explainYAML(message)
	d.problem("", at, phrase.Say("this is not YAML: %s (%s)", meaning, message), hint)
}

// grammar reports whether a message comes from the parser proper, which counts
// lines from 0, and not from the scanner below it, which counts them from 1
// (yaml.v3, func (p *parser) fail). Both know only the line in which the
// construct began.
func grammar(message string) bool {
	for _, m := range []string{
		"did not find expected node content", "did not find expected key", "did not find expected '-' indicator",
		"did not find expected ',' or", "did not find expected <", "undefined tag handle", "duplicate %",
	} {
		if strings.Contains(message, m) {
			return true
		}
	}
	return false
}

var unknownAnchor = regexp.MustCompile(`^unknown anchor '(.*)' referenced$`)

// firstPlace is where a text first stands in the file.
func firstPlace(src []byte, text string) Position {
	i := bytes.Index(src, []byte(text))
	if i < 0 {
		return Position{1, 1}
	}
	before := src[:i]
	lineStart := bytes.LastIndexByte(before, '\n') + 1
	return Position{1 + bytes.Count(before, []byte("\n")), 1 + utf8.RuneCount(before[lineStart:])}
}

// leadingTab finds the first line that is indented with a tab.
func leadingTab(src []byte) (line, column int, ok bool) {
	for i, l := range bytes.Split(src, []byte("\n")) {
		indent := l[:len(l)-len(bytes.TrimLeft(l, " \t"))]
		if tab := bytes.IndexByte(indent, '\t'); tab >= 0 && len(bytes.TrimSpace(l)) > 0 {
			return i + 1, tab + 1, true
		}
	}
	return 0, 0, false
}

//go:embed yamlwords.csv
var yamlWordsCSV string

// explainYAML says in plain words what a message of the YAML parser means.
func explainYAML(message string) (meaning, hint phrase.Line) {
	rows, err := csv.NewReader(strings.NewReader(yamlWordsCSV)).ReadAll()
	if err == nil {
		for _, row := range rows[1:] {
			if strings.Contains(message, row[0]) {
				return phrase.Line(row[1]), phrase.Line(row[2])
			}
		}
	}
	return "something stands in the wrong place", "indent with spaces, and put text with a colon or a # into quotes"
}

// textOf is the file as UTF-8 without its mark. A file of another encoding, or
// one that is no text at all, is a problem.
func (d *decoder) textOf(src []byte) ([]byte, bool) {
	text := sameBreaks(plainUTF8(src))
	line, column := 1, 1
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			d.problem("", Position{line, column}, phrase.Say("the byte 0x%02x is no text in UTF-8", text[i]), "save the file as plain text in UTF-8")
			return nil, false
		case r < ' ' && r != '\n' && r != '\r' && r != '\t' || r == 0x7f:
			d.problem("", Position{line, column}, phrase.Say("the byte 0x%02x does not belong in a text file", r), "is this a picture or a spreadsheet? the files are plain text")
			return nil, false
		}
		i += size
		column++
		if r == '\n' {
			line, column = line+1, 1
		}
	}
	return text, true
}

// sameBreaks ends every line alike. The parser knows several ends (YAML 1.1,
// 4.2), and counts lines by all of them.
func sameBreaks(text []byte) []byte {
	if !bytes.ContainsAny(text, lineBreaks) {
		return text
	}
	return []byte(strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n").Replace(string(text)))
}

const lineBreaks = "\r\u0085\u2028\u2029"

// plainUTF8 takes the byte order mark off and turns UTF-16 with such a mark,
// which some editors write, into UTF-8.
func plainUTF8(src []byte) []byte {
	if text, ok := bytes.CutPrefix(src, []byte("\ufeff")); ok {
		return text
	}
	order := binary.ByteOrder(nil)
	switch {
	case bytes.HasPrefix(src, []byte{0xff, 0xfe}):
		order = binary.LittleEndian
	case bytes.HasPrefix(src, []byte{0xfe, 0xff}):
		order = binary.BigEndian
	default:
		return src
	}
	units := make([]uint16, 0, len(src)/2)
	for b := src[2:]; len(b) >= 2; b = b[2:] {
		units = append(units, order.Uint16(b))
	}
	return []byte(string(utf16.Decode(units)))
}
