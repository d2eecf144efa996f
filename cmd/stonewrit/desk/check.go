package desk

import (
	"encoding/json"
	"net/http"
	"net/url"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/stone"
)

// checked is what the page learns while something is entered.
type checked struct {
	Changed bool                    `json:"changed"` // the file was changed elsewhere
	Finding string                  `json:"finding"` // the column beside the form
	Tests   map[int]string          `json:"tests"`   // verdicts by place of the test
	Fields  map[string][]fieldFault `json:"fields"`  // by mark of the field
	Edits   int                     `json:"edits"`   // fields that differ from the file
}

type fieldFault struct {
	Severity stone.Severity `json:"severity"`
	Message  string         `json:"message"`
	Hint     string         `json:"hint"`
}

// checkStone judges what is entered and writes nothing.
func (d *Desk) checkStone(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	was := r.PostForm.Get("digest")
	now := digest(src) != was
	if base := d.version(was); now && base != nil {
		src = base // judge what the page shows, and say that the file differs
	}
	answer, err := d.check(file, src, r.PostForm)
	if err != nil {
		d.refuse(w, r, http.StatusUnprocessableEntity, "refused.yaml")
		return
	}
	answer.Changed = now
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(answer) // the browser may have gone
}

func (d *Desk) check(file string, src []byte, sent url.Values) (*checked, error) {
	bench := d.benchFor(file)
	out, err := d.stone.Apply(src, sent)
	if err != nil {
		return nil, err
	}
	j := d.judge(file, out.Source, bench)
	v := d.viewer(bench)
	f, err := yamledit.Parse(src)
	if err != nil {
		return nil, err
	}
	v.know(d.stone.Fields(f.Root()))
	d.knowNew(v, sent)
	answer := &checked{Tests: map[int]string{}, Fields: map[string][]fieldFault{}, Edits: len(out.Changes)}
	for _, p := range j.Problems {
		if mark := v.nearest(out.Name(p.Path)); mark != "" {
			answer.Fields[mark] = append(answer.Fields[mark], fieldFault{p.Severity, d.words.said(brief(p).Message), d.words.said(p.Hint)})
		}
	}
	for name, err := range out.Failed {
		answer.Fields[htmlID(name)] = append(answer.Fields[htmlID(name)], fieldFault{stone.Error, err.Error(), ""})
	}
	for i, verdict := range verdictsOf(j, out, d.words) {
		if answer.Tests[i], err = d.part("verdict", verdict); err != nil {
			return nil, err
		}
	}
	answer.Finding, err = d.part("finding", d.finding(j, v, out))
	return answer, err
}

// knowNew makes the fields of tests known that are entered and not in the file.
func (d *Desk) knowNew(v *viewer, sent url.Values) {
	for name := range sent {
		if name[:min(1, len(name))] != "v" {
			continue
		}
		p, err := yamledit.ParsePointer(name[1:])
		if err != nil || len(p) != 3 || p[0] != "tests" || p[2] != "test" {
			continue
		}
		if i, ok := p[1].(int); ok {
			v.know([]*form.Field{d.stone.NewTest(sent.Get(name), i)})
		}
	}
}
