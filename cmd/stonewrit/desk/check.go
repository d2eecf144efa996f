package desk

import (
	"encoding/json"
	"net/http"
	"net/url"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// checked is what the page learns while something is entered.
type checked struct {
	Changed bool                    `json:"changed"` // the file was changed elsewhere
	Finding string                  `json:"finding"` // the column beside the form
	Source  string                  `json:"source"`  // the text of the file
	Figures string                  `json:"figures"` // the drawings
	Tests   map[int]string          `json:"tests"`   // verdicts by place of the test
	Fields  map[string][]fieldFault `json:"fields"`  // by mark of the field
	Edits   int                     `json:"edits"`   // fields that differ from the file
}

type fieldFault struct {
	Severity stone.Severity `json:"severity"`
	Word     string         `json:"word"` // for the severity
	Message  string         `json:"message"`
	Hint     string         `json:"hint"`
}

func (v *viewer) fault(p stone.Problem) fieldFault {
	return fieldFault{p.Severity, v.voice.word("severity." + string(p.Severity)), v.voice.line(brief(p).Message), v.voice.line(p.Hint)}
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
	answer, err := d.check(d.viewer(d.voice(r), d.benchFor(file)), file, src, r.PostForm)
	if err != nil {
		d.refuse(w, r, http.StatusUnprocessableEntity, "refused.yaml")
		return
	}
	answer.Changed = now
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(answer) // the browser may have gone
}

func (d *Desk) check(v *viewer, file string, src []byte, sent url.Values) (*checked, error) {
	out, err := d.formOf(src).Apply(src, sent)
	if err != nil {
		return nil, err
	}
	j := d.judge(file, out.Source, v.bench)
	v.know(out.Fields)
	d.knowNew(v, sent)
	answer := &checked{Tests: map[int]string{}, Fields: map[string][]fieldFault{}, Edits: len(out.Changes)}
	for _, p := range j.Problems {
		if mark := v.nearest(out.Name(p.Path)); mark != "" {
			answer.Fields[mark] = append(answer.Fields[mark], v.fault(p))
		}
	}
	for name, err := range out.Failed {
		answer.Fields[htmlID(name)] = append(answer.Fields[htmlID(name)], v.fault(stone.Problem{Severity: stone.Error, Message: phrase.Say("%s", err.Error())}))
	}
	for i, verdict := range v.verdictsOf(j, out) {
		if answer.Tests[i], err = v.voice.part("verdict", verdict); err != nil {
			return nil, err
		}
	}
	for _, p := range []struct {
		to   *string
		name string
		data any
	}{{&answer.Finding, "finding", d.finding(j, v, out)}, {&answer.Source, "source", linesOf(j)}, {&answer.Figures, "drawings", v.drawings(j)}} {
		if *p.to, err = v.voice.part(p.name, p.data); err != nil {
			return nil, err
		}
	}
	return answer, nil
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
