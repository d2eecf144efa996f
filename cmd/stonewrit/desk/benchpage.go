package desk

import (
	"maps"
	"net/http"
	"slices"
	"time"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// instrumentView is one line of the list of instruments.
type instrumentView struct {
	ID, Kind, State, Last, Reference, Due string
}

// benchPage shows the instruments, the people and the letterhead.
func (d *Desk) benchPage(w http.ResponseWriter, r *http.Request) {
	b := d.benchFor("x.yaml")
	if b == nil {
		d.refuse(w, r, http.StatusNotFound, "bench.none")
		return
	}
	d.showBench(w, r, http.StatusOK, b.Src, digest(b.Src), noticeOf(r), nil)
}

func (d *Desk) showBench(w http.ResponseWriter, r *http.Request, status int, src []byte, was, notice string, failed map[string]error) {
	now := d.benchFor("x.yaml")
	b := d.parseBench(now.Name, src, now.Outer)
	data := map[string]any{
		"Title": d.voice(r).t("Bench"), "File": b.Name, "Outer": b.Outer, "Digest": was, "Notice": notice,
		"Instruments": d.instruments(b), "Bench": b.Bench, "Problems": b.Problems,
	}
	f, err := yamledit.Parse(src)
	if err != nil {
		d.show(w, r, status, "bench", data)
		return
	}
	v := d.viewer(d.voice(r), b)
	v.all = true
	fields := d.bench.Fields(f.Root())
	v.know(fields)
	for _, p := range b.Problems {
		name := v.nearestField(form.NameOf(p.Path))
		v.problems[name] = append(v.problems[name], p)
	}
	for name, err := range failed {
		v.problems[name] = append(v.problems[name], stone.Problem{Severity: stone.Error, Message: phrase.Say("%s", err.Error())})
	}
	data["Fields"] = v.fields(fields)
	d.show(w, r, status, "bench", data)
}

// instruments tells for each instrument whether its check holds today.
func (d *Desk) instruments(b *benchRecord) []instrumentView {
	var list []instrumentView
	today := d.today(b)
	for _, id := range slices.Sorted(maps.Keys(b.Bench.Instruments)) {
		in := b.Bench.Instruments[id]
		v := instrumentView{ID: id, Kind: in.Kind, State: "none"}
		if last := lastCheck(in, today); last != nil {
			due := last.Date.AddDate(0, 0, d.checkDays(in))
			v.Last, v.Reference, v.Due, v.State = last.Date.String(), last.Reference, due.Format(time.DateOnly), "valid"
			switch {
			case last.Result == "failed":
				v.State = "failed"
			case today.After(due):
				v.State = "overdue"
			case today.After(due.AddDate(0, 0, -7)):
				v.State = "soon"
			}
		} else if !needsCheck(in.Kind) {
			v.State = "unneeded"
		}
		list = append(list, v)
	}
	return list
}

func lastCheck(in stone.Instrument, today time.Time) *stone.Check {
	var last *stone.Check
	for i, c := range in.Checks {
		if !c.Date.After(today) && (last == nil || c.Date.After(last.Date.Time)) {
			last = &in.Checks[i]
		}
	}
	return last
}

// checkDays is how long a check holds: as the bench file says, or as the figures
// of the readings have it for the kind.
func (d *Desk) checkDays(in stone.Instrument) int {
	switch {
	case in.CheckEvery.Given():
		return int(in.CheckEvery.Float())
	case in.Kind == stone.KindRefractometer:
		return int(d.figures["days refractometer"])
	case in.Kind == "balance" || in.Kind == "scales in ct":
		return int(d.figures["days balance"])
	}
	return int(d.figures["days other"])
}

// needsCheck reports whether an instrument shows a figure that a check could
// correct.
func needsCheck(kind string) bool {
	switch kind {
	case "loupe", "microscope", stone.KindMagnet, stone.KindFilter, stone.KindPolariscope, stone.KindDichroscope, "lamp":
		return false
	}
	return true
}

// saveBench writes what was entered.
func (d *Desk) saveBench(w http.ResponseWriter, r *http.Request) {
	b := d.benchFor("x.yaml")
	if b == nil || b.Outer {
		d.refuse(w, r, http.StatusForbidden, "bench.outer")
		return
	}
	if digest(b.Src) != r.PostForm.Get("digest") {
		d.showBench(w, r, http.StatusConflict, b.Src, digest(b.Src), "notice.benchchanged", nil)
		return
	}
	out, err := d.bench.Apply(b.Src, r.PostForm)
	switch {
	case err != nil:
		d.refuse(w, r, http.StatusUnprocessableEntity, "refused.yaml")
		return
	case len(out.Failed) > 0:
		d.showBench(w, r, http.StatusUnprocessableEntity, out.Source, digest(b.Src), "notice.failed", out.Failed)
		return
	}
	if next := d.parseBench(b.Name, out.Source, false); next.Problems.Has(stone.Error) && b.usable() {
		d.showBench(w, r, http.StatusUnprocessableEntity, out.Source, digest(b.Src), "notice.benchfaulty", nil)
		return // no stone could be judged with it
	}
	if err := d.write(b.Name, digest(b.Src), out.Source); err != nil {
		d.broken(w, r, err)
		return
	}
	done := "saved"
	if len(out.Changes) == 0 {
		done = "same"
	}
	http.Redirect(w, r, "/bench?done="+done, http.StatusSeeOther)
}

// helpPage tells of every test how it is done well and how it misleads.
func (d *Desk) helpPage(w http.ResponseWriter, r *http.Request) {
	var tests []testView
	for _, kind := range stone.TestKinds() {
		t := testView{Kind: kind}
		if h, ok := d.voice(r).help[kind]; ok {
			t.Help = &h
		}
		for _, c := range d.o.Tables.Gems.CautionsFor(kind) {
			t.Cautions = append(t.Cautions, c.Wording)
		}
		tests = append(tests, t)
	}
	d.show(w, r, http.StatusOK, "help", map[string]any{"Title": d.voice(r).t("The tests"), "Tests": tests})
}
