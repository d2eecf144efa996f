package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"stonewrit/grading/stone"
	"stonewrit/grading/weight"
)

// resultColumns are those that weigh --file puts behind the columns of the list.
func resultColumns() []string {
	return []string{"estimated_ct", "low_ct", "high_ct", "method", "factor_ct", "solid_ct", "fitted_solid_ct", "findings"}
}

// A weighList is a list of stones in CSV, one a line.
type weighList struct {
	file string
	rows [][]string // the first holds the names of the columns
	line []int      // of each row in the file
	flag []string   // the flag that each column stands for; "" for one that is only passed on
}

// weighFile weighs every stone of a list, and writes the list with the results
// behind it. A line that cannot be weighed is told and does not stop the others.
func (p *program) weighFile(ctx context.Context, file string, w weigher) error {
	l, err := p.readList(file)
	if err != nil {
		return err
	}
	out := csv.NewWriter(p.out)
	if err := out.Write(append(slices.Clone(l.rows[0]), resultColumns()...)); err != nil {
		return err
	}
	p.start(len(l.rows)-1, "weighing")
	defer p.end()
	for i := 1; i < len(l.rows); i++ {
		if ctx.Err() != nil {
			return failing("", "stopped")
		}
		results := p.weighLine(w, l, i)
		out.Write(append(slices.Clone(l.rows[i]), results...)) // told by Error below
		p.bar.step()
	}
	out.Flush()
	return out.Error()
}

// weighLine weighs one stone of the list.
func (p *program) weighLine(w weigher, l *weighList, i int) []string {
	given := map[string][]string{}
	for k, cell := range l.rows[i] {
		if flag := l.flag[k]; flag != "" && strings.TrimSpace(cell) != "" {
			given[flag] = append(given[flag], strings.TrimSpace(cell))
		}
	}
	result, problems, err := w.weigh(given)
	at := fmt.Sprintf("%s:%d: ", l.file, l.line[i])
	for _, q := range problems {
		p.say(string(q.Severity), at+q.Message.String(), q.Hint.String())
	}
	if err != nil {
		p.fail(&failure{at + err.Error(), hintOf(err), err})
	}
	if err != nil || problems.Has(stone.Error) {
		p.met(statusFailed)
		return make([]string, len(resultColumns()))
	}
	if len(result.slips) > 0 {
		p.met(statusFindings)
	}
	return result.cells()
}

// cells are the results for the columns of resultColumns.
func (w *weighing) cells() []string {
	c := w.Chosen
	cells := []string{figure(c.Carats.Value), figure(c.Low), figure(c.High), string(c.Method)}
	for _, m := range []weight.Method{weight.ByFactor, weight.BySolid, weight.ByFittedSolid} {
		cell := ""
		for _, other := range w.Candidates {
			if other.Method == m {
				cell = figure(other.Carats.Value)
			}
		}
		cells = append(cells, cell)
	}
	var slips []string
	for _, s := range w.slips {
		slips = append(slips, s.Dimension+": "+s.Message.String())
	}
	return append(cells, strings.Join(slips, "; "))
}

// readList reads a list; - is standard input.
func (p *program) readList(file string) (*weighList, error) {
	src, err := p.readAll(file)
	if err != nil {
		return nil, err
	}
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	l := &weighList{file: file}
	r := csv.NewReader(bytes.NewReader(src))
	if head, _, _ := bytes.Cut(src, []byte("\n")); bytes.Contains(head, []byte(";")) && !bytes.Contains(head, []byte(",")) {
		r.Comma = ';'
	}
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, failing("every line needs as many cells as the first", "%s: %v", file, err)
		}
		line, _ := r.FieldPos(0)
		l.rows, l.line = append(l.rows, row), append(l.line, line)
	}
	if len(l.rows) < 2 {
		return nil, failing("the first line names the columns: shape,cut,length,width,depth,species", "%s holds no stones", file)
	}
	return l, p.columns(l)
}

// mostList bounds a list that is read into memory.
const mostList = 64 << 20

func (p *program) readAll(file string) ([]byte, error) {
	in := p.stdin
	if file != "-" {
		info, err := os.Stat(file)
		if err != nil {
			return nil, err
		}
		if !info.Mode().IsRegular() {
			return nil, notAFile(file, info)
		}
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	src, err := io.ReadAll(io.LimitReader(in, mostList+1))
	if err == nil && len(src) > mostList {
		return nil, failing("split the list", "%s has more than %d bytes", file, mostList)
	}
	return src, err
}

// columns finds the flag that each column stands for. A column that is none is
// passed on, unless its name looks like a misspelt one.
func (p *program) columns(l *weighList) error {
	var flags, others []string
	for _, f := range sizeFlags() {
		flags = append(flags, f.flag)
	}
	for _, name := range l.rows[0] {
		flag := strings.ToLower(strings.NewReplacer("_", "-", " ", "-").Replace(strings.TrimSpace(name)))
		if !slices.Contains(flags, flag) {
			if near := nearest(flag, flags); near != "" {
				return failing(fmt.Sprintf("did you mean %s?", near), "%s:1: there is no column %q", l.file, name)
			}
			others, flag = append(others, name), ""
		}
		l.flag = append(l.flag, flag)
	}
	if len(others) == len(l.flag) {
		return failing("the columns are named as the flags: shape,cut,length,width,depth,species", "%s:1: no column is known", l.file)
	}
	return nil
}
