package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
)

// importCommand makes stone files of a list.
func (p *program) importCommand() *cobra.Command {
	var columns, out string
	var suggest bool
	c := &cobra.Command{
		Use: "import", Args: needsOne("a list", "for example import stones.csv --map map.yaml"),
		RunE: func(_ *cobra.Command, words []string) error {
			if suggest {
				return p.suggestMap(words[0])
			}
			return p.importList(words[0], columns, out)
		},
	}
	c.Flags().StringVar(&columns, "map", "", "")
	c.Flags().StringVar(&out, "out", ".", "")
	c.Flags().BoolVar(&suggest, "suggest", false, "")
	return c
}

// An importer makes stone files of the lines of a list.
type importer struct {
	p       *program
	r       *reader
	columns *columnMap
	table   *table
	to      []*mapped // by column of the table; nil for one that is kept as a remark
	bench   *benchFile
	out     string
}

// importList makes all files, or none where anything is wrong: everything wrong
// is told at once.
func (p *program) importList(file, columns, out string) error {
	if columns == "" {
		return failing(name+" import "+file+" --suggest prints one to begin with", "import needs a map of the columns: --map map.yaml")
	}
	r, err := p.reader()
	if err != nil {
		return err
	}
	i := &importer{p: p, r: r, out: out}
	var errMap, errTable error
	i.columns, errMap = readMap(columns)
	i.table, errTable = readTable(file)
	if err := errors.Join(errMap, errTable); err != nil {
		return err
	}
	if i.table.guess != "" {
		p.note("%s is not in UTF-8 and was read as Windows-1252: look whether %s is right", file, i.table.guess)
	}
	if err := i.match(); err != nil {
		return err
	}
	i.bench = r.benches.above(filepath.Join(out, "x.yaml"))
	files, err := i.files()
	if err != nil {
		return err
	}
	return i.write(files)
}

// match finds the columns that the map names, and tries their keys.
func (i *importer) match() error {
	var errs []error
	i.to = make([]*mapped, len(i.table.heads))
	for n := range i.columns.columns {
		m := &i.columns.columns[n]
		at := slices.Index(i.table.heads, m.head)
		if at < 0 {
			hint := "its columns: " + strings.Join(i.table.heads, ", ")
			if near := nearest(m.head, i.table.heads); near != "" {
				hint = "did you mean " + near + "?"
			}
			errs = append(errs, failing(hint, "%s:%d: the list has no column %q", i.columns.file, m.line, m.head))
			continue
		}
		i.to[at] = m
		if m.key != ignored {
			errs = append(errs, i.known(m.key, fmt.Sprintf("%s:%d: %s", i.columns.file, m.line, m.head)))
		}
	}
	for _, a := range i.columns.always {
		errs = append(errs, i.known(a.key, fmt.Sprintf("%s:%d: always", i.columns.file, a.line)))
	}
	if !slices.ContainsFunc(i.columns.columns, func(m mapped) bool { return m.key == "stone" }) {
		errs = append(errs, failing("for example columns: {Ref: stone}", "%s: no column gives the reference, which is the key stone", i.columns.file))
	}
	return errors.Join(errs...)
}

// known tries a key in a file of its own: reading says whether there is such a
// key.
func (i *importer) known(key, at string) error {
	d := &draftFile{root: scalarMap()}
	if err := d.set(key, scalar("x")); err != nil {
		return failing("", "%s: %s: %v", at, key, err)
	}
	if err := d.write(""); err != nil {
		return err
	}
	_, problems := i.r.stones.Stone("", d.src)
	for _, q := range problems {
		if strings.HasPrefix(q.Message.String(), "unknown key ") || strings.Contains(q.Message.String(), "keys with values were expected") && strings.HasPrefix(key, q.Path+".") {
			return failing(q.Hint.String(), "%s: %s: %s", at, key, q.Message)
		}
	}
	return nil
}

// files makes the files of all lines and reads them as check would.
func (i *importer) files() ([]*draftFile, error) {
	var files []*draftFile
	var errs []error
	without := map[string]int{} // problems that no cell is to blame for, with the number of lines
	var order []string
	seen, hints := map[string]int{}, map[string]string{}
	for row := range i.table.rows {
		d := i.draftFile(row)
		if err := d.write(fmt.Sprintf("From %s, line %d.", filepath.Base(i.table.file), i.table.line(row))); err != nil {
			return nil, err
		}
		s, problems := i.r.stones.Stone(d.file, d.src)
		if i.bench == nil || i.bench.usable() {
			problems = append(problems, stone.Against(s, i.bench.record(), i.bench.today(i.p.now()))...)
		}
		for _, q := range problems {
			if q.Severity != stone.Error || q.Path == "stone" && s.Reference == "" { // place tells of that
				continue
			}
			if column, ok := d.blame(q.Path); ok {
				d.errs = append(d.errs, failing(q.Hint.String(), "%s: %s: %s", i.table.at(row, column), q.Path, q.Message))
				continue
			}
			text := strings.TrimPrefix(q.Path+": "+q.Message.String(), ": ")
			if without[text] == 0 {
				order = append(order, text)
			}
			without[text]++
			hints[text] = q.Hint.String()
		}
		errs = append(errs, append(d.errs, i.place(d, s.Reference, seen))...)
		files = append(files, d)
	}
	for _, text := range order {
		errs = append(errs, failing(hints[text], "%s: %s (%s)", i.columns.file, text, count(without[text], "line", "lines")))
	}
	return files, errors.Join(errs...)
}

// blame finds the column that filled a key, one above it, or one below it.
func (d *draftFile) blame(path string) (int, bool) {
	for p := path; p != ""; p = p[:max(strings.LastIndexAny(p, ".["), 0)] {
		if column, ok := d.from[p]; ok {
			return column, true
		}
	}
	for _, key := range sortedKeys(d.from) {
		if path != "" && strings.HasPrefix(key, path+".") {
			return d.from[key], true
		}
	}
	return 0, false
}

// place finds the name of a file that is not taken, neither in the folder nor by
// another line.
func (i *importer) place(d *draftFile, reference string, seen map[string]int) error {
	column := slices.IndexFunc(i.to, func(m *mapped) bool { return m != nil && m.key == "stone" })
	at := i.table.at(d.row, column)
	base := fileName(reference)
	if base == "" {
		if reference == "" {
			return failing("give each stone a reference of its own", "%s: the line has no reference", at)
		}
		return failing("for example HL-0412", "%s: %q is no reference: it has no letter and no digit", at, reference)
	}
	d.file = filepath.Join(i.out, base+".yaml")
	if line, taken := seen[base]; taken {
		return failing("give each stone a reference of its own", "%s: line %d has this reference, or one like it, too", at, line)
	}
	seen[base] = i.table.line(d.row)
	if _, err := os.Lstat(d.file); err == nil {
		return failing("choose another folder with --out; nothing is written over", "%s: %s is there already", at, d.file)
	}
	return nil
}

// write writes the files, of which none is there yet.
func (i *importer) write(files []*draftFile) error {
	if err := os.MkdirAll(i.out, 0o700); err != nil {
		return err
	}
	for _, d := range files {
		if err := create(d.file, d.src); err != nil {
			return err
		}
		i.p.print("%s\n", d.file)
	}
	var kept []string
	for column, m := range i.to {
		if m == nil {
			kept = append(kept, i.table.heads[column])
		}
	}
	if len(kept) > 0 {
		i.p.note("kept as remarks at the end of each file: %s", strings.Join(kept, ", "))
	}
	i.p.note("look at what is missing: %s check %s", name, i.out)
	return nil
}
