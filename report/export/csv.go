package export

import (
	"encoding/csv"
	"io"
	"strings"
)

// CSV writes a table: a line of heads, and a line for each item (RFC 4180, in
// UTF-8 with its mark, by which spreadsheets know the encoding).
func CSV(w io.Writer, items []Item) error {
	columns, err := Columns()
	if err != nil {
		return err
	}
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	row := make([]string, len(columns))
	for i, c := range columns {
		row[i] = c.Head
	}
	if err := out.Write(row); err != nil {
		return err
	}
	for _, item := range items {
		for i, c := range columns {
			at := item.cell(c.Key)
			row[i] = at.text
			if at.kind == words {
				row[i] = Harmless(at.text)
			}
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// Harmless keeps text that begins like a formula from being reckoned by a
// spreadsheet, by an apostrophe before it. [Plain] takes it off again.
func Harmless(text string) string {
	if likeFormula(strings.TrimLeft(text, "'")) {
		return "'" + text
	}
	return text
}

// Plain is the text that Harmless was given.
func Plain(text string) string {
	if rest, ok := strings.CutPrefix(text, "'"); ok && likeFormula(strings.TrimLeft(rest, "'")) {
		return rest
	}
	return text
}

// likeFormula tells text that a spreadsheet would reckon.
func likeFormula(text string) bool {
	return text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0]))
}
