package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"

	lists "stonewrit/report/export"
)

// A table is a list of values separated by commas, semicolons or tabs.
type table struct {
	file  string
	heads []string
	rows  []tableRow
	guess string // a word that was read in an encoding that was guessed; "" where nothing was
}

// A tableRow is a line of a table, with the place of each cell.
type tableRow struct {
	cells  []string
	places [][2]int // line and column
}

// readTable reads a table whose first line are the heads of its columns.
func readTable(file string) (*table, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, mostTable+1))
	switch {
	case err != nil:
		return nil, err
	case len(src) > mostTable:
		return nil, failing("cut it in two", "%s: a list of more than %d MB is not read", file, mostTable>>20)
	}
	t := &table{file: file}
	if !utf8.Valid(src) {
		if src, t.guess, err = fromWindows(src); err != nil {
			return nil, failing("save the list as CSV in UTF-8", "%s: %v", file, err)
		}
	}
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	r := csv.NewReader(bytes.NewReader(src))
	r.Comma = separator(src)
	for {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		var wrong *csv.ParseError
		if errors.As(err, &wrong) {
			return nil, failing(tableHint(wrong), "%s:%d:%d: %v", file, wrong.Line, wrong.Column, wrong.Err)
		} else if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		row := tableRow{cells: cells}
		for i := range cells {
			line, column := r.FieldPos(i)
			row.places = append(row.places, [2]int{line, column})
			row.cells[i] = strings.TrimSpace(lists.Plain(cells[i]))
		}
		if len(t.rows) == 0 || strings.Join(row.cells, "") != "" { // spreadsheets write empty lines as separators alone
			t.rows = append(t.rows, row)
		}
	}
	if len(t.rows) < 2 {
		return nil, failing("the first line names the columns, every other line is a stone", "%s: the list has no stones", file)
	}
	t.heads, t.rows = t.rows[0].cells, t.rows[1:]
	return t, t.checkHeads()
}

// fromWindows reads text in Windows-1252, in which spreadsheets write CSV where
// Western languages are spoken, and returns a word that shows whether that was
// right. It fails for other bytes that no such text has.
func fromWindows(src []byte) (text []byte, sample string, err error) {
	if text, err = charmap.Windows1252.NewDecoder().Bytes(src); err != nil {
		return nil, "", err
	}
	if bytes.ContainsAny(text, "\x00\ufffd\u0081\u008d\u008f\u0090\u009d") { // without a meaning there
		return nil, "", errors.New("the list is text neither in UTF-8 nor in Windows-1252")
	}
	words := bytes.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && r < utf8.RuneSelf })
	for _, word := range words {
		if bytes.ContainsFunc(word, func(r rune) bool { return r >= utf8.RuneSelf }) {
			return text, string(word), nil
		}
	}
	return text, "", nil
}

// mostTable is the size of a list that is read, in bytes.
const mostTable = 64 << 20

// separator is the sign that parts the cells: the most frequent in the first line.
func separator(src []byte) rune {
	first, _, _ := bytes.Cut(src, []byte("\n"))
	best, most := ',', bytes.Count(first, []byte(","))
	for _, sign := range []rune{';', '\t'} {
		if n := bytes.Count(first, []byte(string(sign))); n > most {
			best, most = sign, n
		}
	}
	return best
}

func tableHint(err *csv.ParseError) string {
	if errors.Is(err.Err, csv.ErrFieldCount) {
		return "every line has as many cells as the first; text with a separator in it stands in quotes"
	}
	return "text that holds quotes stands in quotes, and those inside are written twice"
}

func (t *table) checkHeads() error {
	for i, head := range t.heads {
		if head != "" && slices.Index(t.heads, head) < i {
			return failing("give each column a name of its own", "%s:1: two columns are called %q", t.file, head)
		}
	}
	return nil
}

// at is the place of a cell as printed before a message.
func (t *table) at(row, column int) string {
	p := t.rows[row].places[column]
	return fmt.Sprintf("%s:%d:%d: %s", t.file, p[0], p[1], t.heads[column])
}

// line is the line that a row begins in.
func (t *table) line(row int) int { return t.rows[row].places[0][0] }
