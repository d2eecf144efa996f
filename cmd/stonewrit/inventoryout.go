package main

import (
	"bufio"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"stonewrit/report"
	lists "stonewrit/report/export"
)

// An output is one form of the list, and where it goes.
type output struct {
	file     string // "-" for standard output
	write    func(io.Writer) error
	pictures bool
}

// outputs are the forms that the flags ask for: the printed list where they ask
// for none.
func (v *inventory) outputs(f inventoryFlags) ([]output, error) {
	var list []output
	add := func(asked bool, ending string, pictures bool, write func(io.Writer) error) {
		if asked {
			list = append(list, output{"inventory" + ending, write, pictures})
		}
	}
	add(f.csv, ".csv", false, func(w io.Writer) error { return lists.CSV(w, v.items) })
	add(f.xlsx, ".xlsx", false, func(w io.Writer) error { return lists.XLSX(w, v.items) })
	add(f.json, ".json", false, func(w io.Writer) error { return lists.JSON(w, v.items, v.limits) })
	add(len(list) == 0, ".pdf", true, v.print)
	switch {
	case f.out == "":
	case len(list) > 1:
		return nil, failing("leave --out out, or ask for one form at a time", "--out names one file, and %d were asked for", len(list))
	default:
		list[0].file = f.out
	}
	return list, nil
}

// write writes one form of the list, whole or not at all.
func (v *inventory) write(o output, force bool) error {
	if o.file == "-" {
		return o.write(v.p.out)
	}
	if !force {
		if _, err := os.Lstat(o.file); err == nil {
			return failing("choose another name with --out, or write over it with --force", "%s is there already", o.file)
		} else if !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	if err := replaceWith(o.file, o.write); err != nil {
		return err
	}
	v.p.print("%s  %s\n", o.file, count(len(v.items), "file", "files"))
	return nil
}

// replaceWith writes a file whole or not at all, for its owner alone: beside its
// place first, then renamed.
func replaceWith(file string, write func(io.Writer) error) (err error) {
	if info, err := os.Stat(file); err == nil && !info.Mode().IsRegular() {
		return notAFile(file, info)
	}
	f, err := os.CreateTemp(filepath.Dir(file), ".inventory-*.part")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	out := bufio.NewWriterSize(f, 1<<16)
	if err = write(out); err == nil {
		err = out.Flush()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), file)
}

// print makes the printed list.
func (v *inventory) print(w io.Writer) error {
	shop, err := newWorkshops().of(v.bench)
	if err != nil {
		return err
	}
	o := lists.ListOptions{Limits: v.limits, Made: v.bench.local(v.p.now()), Filter: v.filter, Left: v.left, Program: name + " " + version()}
	if b := v.bench.record(); b != nil {
		o.Practice = report.Practice{Name: b.Practice.Name, Address: textLines(b.Practice.Address), Contact: textLines(b.Practice.Contact), Logo: shop.image(b.Practice.Logo)}
		o.Instruments = v.r.tables.ChecksDue(b, v.limits.Today)
		if b.Page == "Letter" {
			o.Paper = report.Letter
		}
	}
	doc, err := lists.List(v.items, o)
	if err != nil {
		return err
	}
	pages, err := shop.press.Layout(doc)
	if err != nil {
		return err
	}
	return shop.press.Write(w, doc, pages)
}

// textLines cuts text of a bench file into its lines.
func textLines(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == '\n' })
}
