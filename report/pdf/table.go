package pdf

import "stonewrit/report"

// White between the columns of a table, and above and below a row's lines.
const (
	betweenColumns Point = 10
)

// table sets a head and rows with a pale line between them.
func (s *setter) table(b report.Table) []strip {
	if len(b.Columns) == 0 || len(b.Rows) == 0 {
		return nil
	}
	left, width := s.column(b.Wide)
	columns := s.columnCells(b, left, width)
	head := s.tableHead(b, columns, left, width)
	out := []strip{}
	for i, row := range b.Rows {
		strips := s.tableRow(b, row, columns, left, width)
		if len(strips) == 0 {
			continue
		}
		if i > 0 {
			strips[0].over = append(strips[0].over, rule(left, 0, width, ruleThin, InkPale))
		}
		// The head never stands over one row alone, nor the last row under a new head.
		if len(strips) == 1 && len(b.Rows) > 1 && (i == 0 || i == len(b.Rows)-2) {
			strips[0].keepNext = true
		}
		out = append(out, strips...)
	}
	if len(out) == 0 {
		return nil
	}
	for i := range out {
		out[i].wide = b.Wide
		if head != nil {
			out[i].repeat = head
		}
	}
	return append(keepAll(head), out...)
}

// keepAll marks all strips to stay with the next, in a copy.
func keepAll(strips []strip) []strip {
	out := append([]strip(nil), strips...)
	for i := range out {
		out[i].keepNext = true
	}
	return out
}

// tableHead is the row of the columns' names, over a line.
func (s *setter) tableHead(b report.Table, columns []cell, left, width Point) []strip {
	cells := make([]cell, len(columns))
	for i, c := range b.Columns {
		cells[i] = columns[i]
		cells[i].lines = s.press.lines(report.Quiet(c.Head), sizeSmall, cells[i].width)
	}
	out := s.sideBySide(cells, 2)
	for i := range out {
		out[i].wide = b.Wide
	}
	if n := len(out); n > 0 {
		// A head of one line stands on the line, also beside heads of two.
		out[n-1].items = append(out[n-1].items, rule(left, out[n-1].height, width, ruleThick, InkBlack))
	}
	return out
}

func (s *setter) tableRow(b report.Table, row report.Row, columns []cell, left, width Point) []strip {
	size := sizeOf(b.Small)
	cells := make([]cell, len(columns))
	for i := range columns {
		cells[i] = columns[i]
		if i >= len(row.Cells) {
			continue
		}
		c := row.Cells[i]
		room := cells[i].width
		if c.Mark != report.MarkNone && !cells[i].right {
			room -= markRoom
		}
		cells[i].mark = c.Mark
		cells[i].lines = s.press.lines(c.Text, size, room)
		if c.Mark != report.MarkNone && len(cells[i].lines) == 0 {
			cells[i].lines = []line{{lead: s.leading(size)}}
		}
	}
	strips := s.rowPictures(s.sideBySide(cells, s.rowPad), row, columns)
	note := s.flow(inked(s.press.lines(row.Note, sizeSmall, width), InkGrey), left)
	if len(note) == 0 {
		return strips
	}
	if len(strips) == 1 && strips[0].height+note[0].height < splitAbove && len(note) == 1 {
		st := &strips[0]
		st.height -= s.rowPad - 0.5
		st.items = append(st.items, moveAll(note[0].items, 0, st.height)...)
		st.height += note[0].height + s.rowPad
		return strips
	}
	if n := len(strips); n > 0 {
		strips[n-1].keepNext = true
	}
	note[len(note)-1].height += s.rowPad
	return append(strips, note...)
}

// The box of a picture in a row.
const (
	rowPictureWide Point = 44
	rowPictureHigh Point = 36
)

// rowPictures places the pictures of a row beside its first lines.
func (s *setter) rowPictures(strips []strip, row report.Row, columns []cell) []strip {
	for i, c := range row.Cells {
		if c.Picture == nil || i >= len(columns) {
			continue
		}
		px, err := pixels(c.Picture)
		if err != nil {
			continue // Check reports it
		}
		if len(strips) == 0 {
			strips = []strip{{height: 2 * s.rowPad}}
		}
		w, h := px.fit(min(rowPictureWide, columns[i].width), rowPictureHigh)
		strips[0].items = append(strips[0].items, Picture{Image: c.Picture, Box: Rect{columns[i].x, s.rowPad, w, h}})
		strips[0].height = max(strips[0].height, h+2*s.rowPad)
	}
	return strips
}

// columnCells divides the width: a column without a share takes its longest
// cell, up to two fifths of the table; those with one divide the rest.
func (s *setter) columnCells(b report.Table, left, width Point) []cell {
	n := len(b.Columns)
	cells := make([]cell, n)
	room := width - betweenColumns*Point(n-1)
	var shares float64
	var fitted Point
	for i, c := range b.Columns {
		cells[i].right = c.Align == report.AlignRight
		if c.Width > 0 {
			shares += c.Width
			continue
		}
		cells[i].width = min(s.fitted(b, i), room*0.4)
		fitted += cells[i].width
	}
	// What the shared columns need at the least; the fitted ones give way to it.
	least := room * 0.4
	if shares == 0 {
		least = 0
	}
	if fitted > room-least {
		for i := range cells {
			cells[i].width *= (room - least) / fitted
		}
		fitted = room - least
	}
	x := left
	for i, c := range b.Columns {
		if c.Width > 0 {
			cells[i].width = (room - fitted) * Point(c.Width/shares)
		}
		cells[i].x = x
		x += cells[i].width + betweenColumns
	}
	return cells
}

// fitted is the width of the longest cell of a column, its head's longest word
// included.
func (s *setter) fitted(b report.Table, i int) Point {
	widest := s.press.longest(report.Quiet(b.Columns[i].Head), sizeSmall)
	for _, row := range b.Rows {
		if i >= len(row.Cells) {
			continue
		}
		w := s.press.natural(row.Cells[i].Text, sizeOf(b.Small))
		if row.Cells[i].Picture != nil {
			w = max(w, rowPictureWide)
		}
		if row.Cells[i].Mark != report.MarkNone {
			w += markRoom
		}
		widest = max(widest, w)
	}
	return widest + 0.01 // rounding must not break what just fits
}
