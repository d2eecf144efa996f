package export

import (
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// XLSX writes a workbook: a sheet of the items, sheets of what they come to, and
// a sheet that says what the columns mean.
func XLSX(w io.Writer, items []Item) (err error) {
	columns, err := Columns()
	if err != nil {
		return err
	}
	b := &book{file: excelize.NewFile()}
	defer func() {
		if closing := b.file.Close(); err == nil {
			err = closing
		}
	}()
	if err := b.styles(); err != nil {
		return err
	}
	s := Summarise(items)
	b.items(columns, items)
	b.groups("by species", "species", s.Species)
	b.groups("by place", "kept at", s.Location)
	b.values(s.Values)
	b.meanings(columns)
	if b.err != nil {
		return b.err
	}
	return b.file.Write(w)
}

// book is a workbook in the making. The first fault ends it.
type book struct {
	file       *excelize.File
	bold, days int // styles
	err        error
}

func (b *book) styles() (err error) {
	if b.bold, err = b.file.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}}); err != nil {
		return err
	}
	isoDate := "yyyy-mm-dd"
	b.days, err = b.file.NewStyle(&excelize.Style{CustomNumFmt: &isoDate})
	return err
}

// sheet writes the rows that next gives until it gives none. The head stays in
// sight.
func (b *book) sheet(name string, heads []string, widths []float64, next func() []any) {
	if b.err != nil {
		return
	}
	if b.file.SheetCount == 1 && name == itemsSheet {
		b.err = b.file.SetSheetName(b.file.GetSheetName(0), name)
	} else {
		_, b.err = b.file.NewSheet(name)
	}
	if b.err != nil {
		return
	}
	stream, err := b.file.NewStreamWriter(name)
	if err != nil {
		b.err = err
		return
	}
	for i, width := range widths {
		b.try(stream.SetColWidth(i+1, i+1, width))
	}
	b.try(stream.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}))
	row := make([]any, len(heads))
	for i, head := range heads {
		row[i] = excelize.Cell{StyleID: b.bold, Value: head}
	}
	for line := 1; row != nil && b.err == nil; line++ {
		b.try(stream.SetRow("A"+strconv.Itoa(line), row))
		row = next()
	}
	b.try(stream.Flush())
}

func (b *book) try(err error) {
	if b.err == nil {
		b.err = err
	}
}

// itemsSheet is the sheet that a new workbook begins with, renamed.
const itemsSheet = "items"

func (b *book) items(columns []Column, items []Item) {
	heads, widths := make([]string, len(columns)), make([]float64, len(columns))
	for i, c := range columns {
		heads[i], widths[i] = c.Head, float64(max(10, len(c.Head)+2))
		if c.Key == "name" {
			widths[i] = 40
		}
	}
	n := 0
	b.sheet(itemsSheet, heads, widths, func() []any {
		if n == len(items) {
			return nil
		}
		row := make([]any, len(columns))
		for i, c := range columns {
			row[i] = b.value(items[n].cell(c.Key))
		}
		n++
		return row
	})
}

// value is a cell of a workbook. Text is never taken for a formula there.
func (b *book) value(c cell) any {
	switch {
	case c.text == "":
		return nil
	case c.kind == number:
		return figure(c.text)
	case c.kind == date:
		if day, err := time.Parse(time.DateOnly, c.text); err == nil {
			return excelize.Cell{StyleID: b.days, Value: day}
		}
	}
	return c.text
}

// exactDigits is how many digits a workbook's numbers keep: they are binary64
// fractions, which are told apart by fifteen.
const exactDigits = 15

// figure is a number as a workbook keeps it, or the text of one with more digits
// than it would keep.
func figure(text string) any {
	if len(strings.Trim(text, "-.")) > exactDigits {
		return text
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return text
	}
	return v
}

func (b *book) groups(sheet, head string, list []Group) {
	n, currency := 0, 0
	b.sheet(sheet, []string{head, "files", "stones", "carats", "files without a weight", "files with a value", "value", "currency"}, []float64{28, 10, 10, 12, 20, 18, 14, 10}, func() []any {
		if n == len(list) {
			return nil
		}
		g := list[n]
		row := []any{g.Of, g.Files, g.Stones, b.value(cell{g.Carats, number}), g.Unweighed, g.Valued, nil, nil}
		if currency > 0 { // a line of its own for each further currency
			row = []any{g.Of, nil, nil, nil, nil, nil, nil, nil}
		}
		if currency < len(g.Values) {
			row[6], row[7] = figure(g.Values[currency].Amount), g.Values[currency].Currency
		}
		if currency++; currency >= len(g.Values) {
			n, currency = n+1, 0
		}
		return row
	})
}

func (b *book) values(list []ValueSum) {
	n := 0
	b.sheet("by value", []string{"what the amounts are", "files", "sum", "currency"}, []float64{28, 10, 16, 10}, func() []any {
		if n == len(list) {
			return nil
		}
		v := list[n]
		n++
		return []any{v.Kind, v.Files, figure(v.Amount), v.Currency}
	})
}

func (b *book) meanings(columns []Column) {
	n := 0
	b.sheet("columns", []string{"column", "meaning"}, []float64{28, 80}, func() []any {
		if n == len(columns) {
			return nil
		}
		c := columns[n]
		n++
		return []any{c.Head, c.Meaning}
	})
}
