package desk

import (
	"net/http"
	"net/url"
	"slices"
	"strconv"

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
	d.showStone(w, r, http.StatusOK, stoneState{file: file, src: src, was: digest(src), notice: noticeOf(r)})
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
}

func (d *Desk) showStone(w http.ResponseWriter, r *http.Request, status int, s stoneState) {
	bench := d.benchFor(s.file)
	j := d.judge(s.file, s.src, bench)
	d.remember(s.src)
	data := map[string]any{
		"Title": j.Stone.Reference, "File": s.file, "Digest": s.was, "Notice": s.notice, "Clashes": s.clashes, "Stone": j.Stone,
		"Kinds": stone.TestKinds(), "Answer": s.answer, "People": d.viewer(bench).people(), "Lists": d.lists,
	}
	f, err := yamledit.Parse(s.src)
	if err != nil { // no form can be made: the text alone is shown
		data["Finding"] = d.finding(j, d.viewer(bench), &form.Outcome{})
		d.show(w, r, status, "unreadable", data)
		return
	}
	v := d.viewer(bench)
	v.verdicts = verdictsOf(j, &form.Outcome{}, d.words)
	fields := d.stone.Fields(f.Root())
	v.know(fields)
	for _, p := range j.Problems {
		name := v.nearestField(form.NameOf(p.Path))
		v.problems[name] = append(v.problems[name], brief(p))
	}
	for name, err := range s.failed {
		v.problems[name] = append(v.problems[name], stone.Problem{Severity: stone.Error, Message: phrase.Say("%s", err.Error())})
	}
	data["Sections"] = d.sectionViews(v, fields, s.addedKind)
	data["Finding"] = d.finding(j, v, &form.Outcome{})
	d.show(w, r, status, "stone", data)
}

// sectionViews puts the fields in the order of the bench.
func (d *Desk) sectionViews(v *viewer, fields []*form.Field, added string) []sectionView {
	views := map[string]*fieldView{}
	for _, f := range v.fields(fields) {
		views[f.Key] = f
	}
	if t := views["tests"]; t != nil && slices.Contains(stone.TestKinds(), added) {
		t.Below = append(t.Below, v.field(d.stone.NewTest(added, len(t.Below))))
	}
	var list []sectionView
	for _, s := range sections() {
		section := sectionView{Name: s.name, Title: d.words.text("section." + s.name), Seldom: s.seld, Open: !s.seld}
		for _, key := range s.keys {
			if f := views[key]; f != nil {
				section.Fields = append(section.Fields, f)
				section.Open = section.Open || f.Set || f.Troubled()
				delete(views, key)
			}
		}
		list = append(list, section)
	}
	for i := range list {
		for _, f := range fields {
			if view := views[f.Key]; list[i].Name == unplaced && view != nil {
				list[i].Fields = append(list[i].Fields, view)
			}
		}
	}
	return list
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
	v := d.viewer(d.benchFor(file))
	f := d.stone.NewTest(kind, index)
	d.prefill(v, f)
	part, err := d.part("test", v.field(f))
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write([]byte(part)) // the browser may have gone
}

// prefill names the instrument of a new test where the bench has only one of its
// kind.
func (d *Desk) prefill(v *viewer, f *form.Field) {
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
	out, err := d.stone.Apply(src, r.PostForm)
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
	d.show(w, r, http.StatusInternalServerError, "refused", map[string]any{"Title": d.words.text("refused.title"), "Text": d.words.text("refused.broken") + " " + err.Error()})
}
