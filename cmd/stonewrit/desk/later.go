package desk

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/stone"
)

// A page of a stone holds what its file says and what everybody fills in. Folded
// groups that hold nothing are fetched when they are opened; without scripts a
// link in each leads to the page with all fields.

// later reports whether a group need not be on the page yet.
func (v *viewer) later(f *form.Field, name string) bool {
	return !v.all && name != v.open && (foldable(f) || f.New && f.Kind == "") && !v.troubled(name)
}

// troubled reports whether something is to be said of a field or one below it.
func (v *viewer) troubled(name string) bool {
	for n, list := range v.problems {
		if len(list) > 0 && (n == name || strings.HasPrefix(n, name+"/")) {
			return true
		}
	}
	return false
}

// terse tells the groups of which only what is filled in stands on the page at
// first: those that hold something, and are not what everybody fills in.
func terse(f *form.Field) bool {
	if f.Shape != form.Group || !f.Set || f.New || f.Foreign {
		return false
	}
	return len(f.Path) > 1 || !always(f.Key)
}

// empty reports whether a field says nothing, and nothing is to be said of it.
func (v *viewer) empty(k *fieldView) bool {
	return !k.Set && !k.Need && !k.Foreign && !v.troubled(k.Name)
}

// part is where the fields of a group are fetched from.
func (v *viewer) part(name, what string) string {
	return "/part/" + escaped(v.file) + "?" + url.Values{"at": {name}, "what": {what}, "of": {v.state}}.Encode()
}

// whole is the page with all fields, at one of them.
func (v *viewer) whole(mark string) string {
	page := "/stone/" + escaped(v.file)
	if v.file == benchName {
		page = "/bench"
	}
	return page + "?all=1#" + url.PathEscape(mark)
}

// groupPart is what a folded group holds, for a page that shows the file in a
// certain state.
func (d *Desk) groupPart(w http.ResponseWriter, r *http.Request) {
	file, ask := r.PathValue("file"), r.URL.Query()
	src := d.version(ask.Get("of"))
	if src == nil {
		var err error
		if src, err = d.readStone(file); err != nil {
			d.missing(w, r)
			return
		}
	}
	f, err := yamledit.Parse(src)
	if err != nil {
		d.missing(w, r)
		return
	}
	v := d.viewer(d.voice(r), d.benchFor(file))
	v.file, v.state = file, ask.Get("of")
	made := d.formOf(src)
	fields := made.Fields(f.Root())
	name := "inside"
	var data any
	switch ask.Get("what") {
	case "section":
		data = v.section(ask.Get("at"), src, fields)
		name = "sectionfields"
	case "rest":
		v.only = ask.Get("at")
		if field := named(fields, v.only); field != nil {
			data = v.field(field)
		}
	case "seldom":
		name = "seldomfields"
		fallthrough
	default:
		v.open = ask.Get("at")
		if field := named(fields, v.open); field != nil {
			data = v.field(field)
		}
	}
	if data == nil {
		d.missing(w, r)
		return
	}
	d.showPart(w, r, name, data)
}

// named finds a field among those below.
func named(list []*form.Field, name string) *form.Field {
	for _, f := range list {
		here := f.Name()
		if here == name {
			return f
		}
		if strings.HasPrefix(name, here+"/") {
			return named(f.Kids, name)
		}
	}
	return nil
}

// section makes the fields of a part of the page.
func (v *viewer) section(name string, src []byte, fields []*form.Field) any {
	for _, s := range sectionsOf(stone.Sniff(src)) {
		if s.name == name {
			var views []*fieldView
			if len(s.keys) == 1 { // opened once, not twice
				v.open = "v/" + s.keys[0]
			}
			for _, key := range s.keys {
				if i := slices.IndexFunc(fields, func(f *form.Field) bool { return f.Key == key }); i >= 0 {
					views = append(views, v.field(fields[i]))
				}
			}
			return views
		}
	}
	return nil
}

// howPart is what to know of a kind of test.
func (d *Desk) howPart(w http.ResponseWriter, r *http.Request) {
	help, ok := d.voice(r).help[r.PathValue("kind")]
	if !ok {
		d.missing(w, r)
		return
	}
	d.showPart(w, r, "how", help)
}

// listsPart is the words that free texts are chosen from. They are not needed to
// show a page, and are the same on every page.
func (d *Desk) listsPart(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Cache-Control", "private, max-age=86400, immutable")
	d.showPart(w, r, "lists", d.lists)
}

// showPart writes a piece of a page.
func (d *Desk) showPart(w http.ResponseWriter, r *http.Request, name string, data any) {
	part, err := d.voice(r).part(name, data)
	if err != nil {
		d.broken(w, r, err)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write([]byte(part)) // the browser may have gone
}
