package desk

import (
	"net/http"
	"net/url"
	"sync"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
)

// A clash is one entry of a form whose file was changed elsewhere meanwhile.
type clash struct {
	Field              string
	Mine, Theirs, Base string
	Mark               string
	Both               bool // the other one changed the same field
}

// versions are the texts that pages were made from, the latest ones.
type versions struct {
	mu    sync.Mutex
	texts map[string][]byte
	order []string
}

// mostVersions is how many texts are kept.
const mostVersions = 200

// remember keeps a text, so that what was entered in a page made from it can
// later be told from what the page showed.
func (d *Desk) remember(src []byte) {
	v := &d.versions
	v.mu.Lock()
	defer v.mu.Unlock()
	if v.texts == nil {
		v.texts = map[string][]byte{}
	}
	name := digest(src)
	if v.texts[name] != nil {
		return
	}
	v.texts[name], v.order = src, append(v.order, name)
	if len(v.order) > mostVersions {
		delete(v.texts, v.order[0])
		v.order = v.order[1:]
	}
}

func (d *Desk) version(name string) []byte {
	d.versions.mu.Lock()
	defer d.versions.mu.Unlock()
	return d.versions.texts[name]
}

// showClash shows a form again whose file was changed elsewhere: what was
// entered is kept and laid over the file as it is now, nothing is saved, and
// each difference is told.
func (d *Desk) showClash(w http.ResponseWriter, r *http.Request, file string, now []byte) {
	merged, clashes, err := d.propose(d.version(r.PostForm.Get("digest")), now, r.PostForm)
	if err != nil {
		d.refuse(w, r, http.StatusConflict, "refused.changed")
		return
	}
	d.showStone(w, r, http.StatusConflict, stoneState{file: file, src: merged, was: digest(now), notice: "notice.changed", clashes: clashes})
}

// propose lays what was entered over the text as it is now. base is what the
// form was made from; nil if that is no longer known.
func (d *Desk) propose(base, now []byte, sent url.Values) ([]byte, []clash, error) {
	if base == nil {
		base = now
	}
	out, err := d.formOf(base).Apply(base, sent)
	if err != nil {
		return nil, nil, err
	}
	f, err := yamledit.Parse(now)
	if err != nil {
		return nil, nil, err
	}
	before, err := yamledit.Parse(base)
	if err != nil {
		return nil, nil, err
	}
	theirs, was := textsOf(d.formOf(now).Fields(f.Root())), textsOf(d.formOf(base).Fields(before.Root()))
	var list []clash
	for _, c := range out.Changes {
		at := moved(c.Path, before, f)
		if c.Value == nil {
			err = f.Delete(at)
		} else {
			err = f.Set(at, c.Value, nil)
		}
		name := (&form.Outcome{}).Name(c.Path.String())
		one := clash{Field: at.String(), Mine: c.Text, Theirs: theirs[name], Base: was[name], Mark: htmlID(name)}
		one.Both = one.Theirs != one.Base
		if err == nil || one.Both {
			list = append(list, one)
		}
	}
	return f.Bytes(), list, nil
}

// moved is where a new entry goes in a list that grew meanwhile.
func moved(p yamledit.Path, before, now *yamledit.File) yamledit.Path {
	if len(p) != 2 {
		return p
	}
	i, isEntry := p[1].(int)
	have, had := now.Get(p[:1]), before.Get(p[:1])
	if !isEntry || have == nil || had != nil && i < len(had.Content) {
		return p
	}
	return p[:1].With(len(have.Content))
}

// textsOf lists what the fields say, by name.
func textsOf(fields []*form.Field) map[string]string {
	texts := map[string]string{}
	var walk func(f *form.Field)
	walk = func(f *form.Field) {
		if len(f.Kids) == 0 {
			texts[f.Name()] = f.Text
		}
		for _, k := range f.Kids {
			walk(k)
		}
	}
	for _, f := range fields {
		walk(f)
	}
	return texts
}
