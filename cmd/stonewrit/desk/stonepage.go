package desk

import (
	"cmp"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// stonePage shows a stone.
func (d *Desk) stonePage(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	d.showStone(w, r, http.StatusOK, stoneState{file: file, src: src, was: digest(src), notice: noticeOf(r), addedKind: r.URL.Query().Get("add")})
}

// noticeOf is what the page tells once, after something was done.
func noticeOf(r *http.Request) string {
	if done := r.URL.Query().Get("done"); slices.Contains([]string{"saved", "same", "photo", "new"}, done) {
		return "notice." + done
	}
	return ""
}

// stoneState is what a page of a stone is made of.
type stoneState struct {
	file      string
	src       []byte // the text that is shown
	was       string // digest of the file
	notice    string
	clashes   []clash // entries that are not saved yet, since the file changed
	failed    map[string]error
	addedKind string // a test to be added
	answer    *Answer
}

// sectionView is one part of the page.
type sectionView struct {
	Name, Title string
	Fields      []*fieldView
	Seldom      bool
	Open        bool
	Keys        string // of the file that stand in it
	Part, All   string // where its fields are fetched from, if they are not on the page yet
}

func (d *Desk) showStone(w http.ResponseWriter, r *http.Request, status int, s stoneState) {
	d.begin(w, r, status, "stone", cmp.Or(stone.Head(s.src).Reference, s.file))
	bench := d.benchFor(s.file)
	j := d.judge(s.file, s.src, bench)
	d.remember(s.src)
	v := d.viewer(d.voice(r), bench)
	v.file, v.state, v.all = s.file, digest(s.src), r.URL.Query().Get("all") != ""
	data := map[string]any{
		"Title": j.Stone.Reference, "File": s.file, "Digest": s.was, "Notice": s.notice, "Clashes": s.clashes, "Stone": j.Stone,
		"Kinds": stone.TestKinds(), "People": v.people(), "Piece": j.sort == stone.SortPiece, "Holder": d.index.holder(s.file),
		"Lines": linesOf(j), "Drawings": v.drawings(j),
	}
	f, err := yamledit.Parse(s.src)
	if err != nil { // no form can be made: the text alone is shown
		data["Finding"] = d.finding(j, v, &form.Outcome{})
		data["Answer"] = v.answer(s.answer)
		d.goOn(w, r, "unreadable", data)
		return
	}
	v.verdicts = v.verdictsOf(j, &form.Outcome{})
	fields := d.formOf(s.src).Fields(f.Root())
	v.know(fields)
	for _, p := range j.Problems {
		name := v.nearestField(form.NameOf(p.Path))
		v.problems[name] = append(v.problems[name], brief(p))
	}
	for name, err := range s.failed {
		v.problems[name] = append(v.problems[name], stone.Problem{Severity: stone.Error, Message: phrase.Say("%s", err.Error())})
	}
	data["Answer"] = v.answer(s.answer)
	data["Sections"] = v.sections(sectionsOf(j.sort), fields, s.addedKind)
	data["Finding"] = d.finding(j, v, &form.Outcome{})
	d.goOn(w, r, "stone", data)
}

// sections puts the fields in the order of the bench.
func (v *viewer) sections(order []section, fields []*form.Field, added string) []sectionView {
	byKey := map[string]*form.Field{}
	for _, f := range fields {
		byKey[f.Key] = f
	}
	placed := map[string]bool{formatKey: true}
	for _, s := range order {
		for _, key := range s.keys {
			placed[key] = true
		}
	}
	var list []sectionView
	for _, s := range order {
		if s.name == unplaced {
			for _, f := range fields {
				if !placed[f.Key] {
					s.keys = append(slices.Clone(s.keys), f.Key)
				}
			}
		}
		list = append(list, v.sectionOf(s, byKey, added))
	}
	return list
}

// sectionOf makes one part of the page. One that is seldom filled in and holds
// nothing is fetched when it is opened.
func (v *viewer) sectionOf(s section, byKey map[string]*form.Field, added string) sectionView {
	out := sectionView{Name: s.name, Title: v.voice.word("section." + s.name), Keys: strings.Join(s.keys, " "), Seldom: s.seld, Open: !s.seld || v.all}
	for _, key := range s.keys {
		if f := byKey[key]; f != nil {
			out.Open = out.Open || f.Set || v.troubled(f.Name())
		}
	}
	if !out.Open && !v.all {
		out.Part, out.All = v.part(s.name, "section"), v.whole("s-"+s.name)
		return out
	}
	for _, key := range s.keys {
		f := byKey[key]
		if f == nil {
			continue
		}
		view := v.field(f)
		if f.Shape == form.Tests && slices.Contains(stone.TestKinds(), added) {
			one := v.d.stone.NewTest(added, len(view.Below))
			v.prefill(one)
			whole := *v
			whole.all = true
			view.Below = append(view.Below, whole.field(one))
		}
		out.Fields = append(out.Fields, view)
	}
	return out
}

// testPart is the form of one more test.
func (d *Desk) testPart(w http.ResponseWriter, r *http.Request) {
	kind := r.PathValue("kind")
	index, err := strconv.Atoi(r.URL.Query().Get("at"))
	if err != nil || index < 0 || index > 5000 || !slices.Contains(stone.TestKinds(), kind) {
		d.missing(w, r)
		return
	}
	file := r.URL.Query().Get("file")
	if _, err := d.readStone(file); err != nil {
		d.missing(w, r)
		return
	}
	v := d.viewer(d.voice(r), d.benchFor(file))
	v.all = true
	f := d.stone.NewTest(kind, index)
	v.prefill(f)
	d.showPart(w, r, "test", v.field(f))
}

// prefill names the instrument of a new test where the bench has only one of its
// kind.
func (v *viewer) prefill(f *form.Field) {
	if v.bench == nil {
		return
	}
	only := ""
	for id, in := range v.bench.Bench.Instruments {
		if in.Kind != f.Kind && in.Kind != instrumentFor(f.Kind) {
			continue
		}
		if only != "" {
			return
		}
		only = id
	}
	for _, k := range f.Kids {
		if k.Key == "instrument" {
			k.Text = only
		}
	}
}

// instrumentFor is the kind of instrument that a test is usually made with where
// it is called otherwise.
func instrumentFor(test string) string {
	return map[string]string{stone.KindGravity: "balance", stone.KindUltraviolet: "lamp", stone.KindMagnification: "microscope", stone.KindThermal: "thermal probe"}[test]
}

// saveStone writes what was entered.
func (d *Desk) saveStone(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	if digest(src) != r.PostForm.Get("digest") {
		d.showClash(w, r, file, src)
		return
	}
	out, err := d.formOf(src).Apply(src, r.PostForm)
	switch {
	case err != nil:
		d.refuse(w, r, http.StatusUnprocessableEntity, "refused.yaml")
		return
	case len(out.Failed) > 0:
		d.showStone(w, r, http.StatusUnprocessableEntity, stoneState{file: file, src: out.Source, was: digest(src), notice: "notice.failed", failed: out.Failed})
		return
	}
	if err := d.write(file, digest(src), out.Source); isChanged(err) {
		if src, err = d.readStone(file); err == nil {
			d.showClash(w, r, file, src)
			return
		}
		d.missing(w, r)
		return
	} else if err != nil {
		d.broken(w, r, err)
		return
	}
	done := "saved"
	if len(out.Changes) == 0 {
		done = "same"
	}
	d.after(w, r, file, done)
}

// after leads to the page of a stone once something is done, so that loading it
// again does not do it twice.
func (d *Desk) after(w http.ResponseWriter, r *http.Request, file, done string) {
	to := "/stone/" + escaped(file) + "?done=" + done
	if kind := r.PostForm.Get("add"); slices.Contains(stone.TestKinds(), kind) && r.PostForm.Get("action") == "add" {
		to = "/stone/" + escaped(file) + "?add=" + url.QueryEscape(kind) + "#s-tests"
	}
	http.Redirect(w, r, to, http.StatusSeeOther)
}

// broken tells an error of the system.
func (d *Desk) broken(w http.ResponseWriter, r *http.Request, err error) {
	d.show(w, r, http.StatusInternalServerError, "refused", map[string]any{"Title": d.voice(r).word("refused.title"), "Text": d.voice(r).word("refused.broken") + " " + err.Error()})
}
