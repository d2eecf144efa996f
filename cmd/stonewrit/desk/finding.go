package desk

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading/stone"
)

// findingView is what a stone comes to, told beside its form.
type findingView struct {
	Claims   []claimView
	Rivals   []rivalView
	More     int // rivals not shown
	Next     []nextView
	Weight   []string
	Values   []string
	Problems []problemView
	Stops    int // problems that keep it from being issued
	Unread   bool
	Untested bool
	Lines    []lineView
	Drawings []drawingView
}

type claimView struct {
	Name, Opinion, Standing string
	Because                 []string
}

type rivalView struct{ Name, Because string }

type nextView struct {
	Test, Caution string
	Excludes      []string
	Owned         bool
}

type problemView struct {
	stone.Problem
	Mark  string // of the field in the page
	Label string
}

// verdictView is what one test says.
type verdictView struct {
	Verdict, Value, Expected, Because string
	Telling                           bool
	SetAside                          bool
}

// lineView is one line of the file.
type lineView struct {
	Number   int
	Text     string
	Severity stone.Severity // of the worst problem on it
}

// mostRivals is how many rivals are told at once (the rest is counted).
const mostRivals = 8

// finding tells what a judged file comes to. Problems are led to their fields
// by place, which knows where the form shows what.
func (d *Desk) finding(j *judged, v *viewer, place *form.Outcome) findingView {
	f := findingView{Unread: j.unread(), Lines: linesOf(j)}
	for _, p := range j.Problems {
		f.Problems = append(f.Problems, problemView{brief(p), v.nearest(place.Name(p.Path)), d.words.label(lastKey(p.Path))})
		if p.Severity == stone.Error || p.Severity == stone.Missing {
			f.Stops++
		}
	}
	slices.SortStableFunc(f.Problems, func(a, b problemView) int { return cmp.Compare(weightOf(a.Severity), weightOf(b.Severity)) })
	if j.unread() {
		return f
	}
	e := j.Examined
	for _, c := range e.Claims() {
		f.Claims = append(f.Claims, claimView{d.words.text("claim." + c.Name), c.Claim.Opinion, string(c.Claim.Standing), d.words.saidAll(c.Claim.Because)})
	}
	if e.Contradicted() && strings.TrimSpace(e.Stone.Explanation) == "" {
		f.Stops++
	}
	for _, r := range e.Verdict.Rivals {
		f.Rivals = append(f.Rivals, rivalView{r.Material.Name, d.words.said(r.Because)})
	}
	f.More = max(0, len(f.Rivals)-mostRivals)
	f.Rivals = f.Rivals[:min(len(f.Rivals), mostRivals)]
	f.Untested = len(e.Verdict.Tests) == 0
	for _, n := range d.next(j) {
		f.Next = append(f.Next, nextView{n.Test, d.words.said(n.Caution), n.Excludes, n.Owned})
	}
	f.Next = f.Next[:min(len(f.Next), 4)]
	f.Weight, f.Values = d.weightText(j), d.valueText(j)
	f.Drawings = d.drawings(j)
	return f
}

// weightOf orders problems by what they do.
func weightOf(s stone.Severity) int {
	return slices.Index([]stone.Severity{stone.Error, stone.Finding, stone.Missing, stone.Warning, stone.Note}, s)
}

func lastKey(path string) string {
	path = path[strings.LastIndexByte(path, '.')+1:]
	key, _, _ := strings.Cut(path, "[")
	return key
}

func (d *Desk) weightText(j *judged) []string {
	w := j.Examined.Weight
	var list []string
	if w.Measured > 0 {
		list = append(list, d.words.text("weight.measured", w.Measured, 2*w.MeasuredU))
	}
	if w.Estimate != nil {
		c := w.Estimate.Chosen
		list = append(list, d.words.text("weight.estimated", c.Carats.Value, c.Low, c.High, string(c.Method)))
	} else if w.NoEstimate != "" && w.Measured == 0 {
		list = append(list, d.words.text("weight.none", d.words.said(w.NoEstimate)))
	}
	if w.ImpliedSG.V > 0 {
		list = append(list, d.words.text("weight.implied", w.ImpliedSG.V))
	}
	return list
}

func (d *Desk) valueText(j *judged) []string {
	var list []string
	e := j.Examined
	if v := e.Values.Best(); v != nil && v.Edges > 0 {
		text := fmt.Sprintf("%.4f", v.Low)
		if v.Edges == 2 {
			text = fmt.Sprintf("%.4f – %.4f", v.Low, v.High)
		}
		list = append(list, d.words.text("value.index", text, 2*v.U))
		if v.Edges == 2 {
			list = append(list, d.words.text("value.birefringence", v.Birefringence, 2*v.BirefringenceU))
		}
	}
	if c := e.Values.Character; c.Kind != "" || c.Sign != "" {
		sign := map[string]string{"+": d.words.text("sign.positive"), "-": d.words.text("sign.negative")}[c.Sign]
		list = append(list, d.words.text("value.optic", strings.TrimSpace(c.Kind+" "+sign)))
	}
	if g := e.Values.BestGravity(); g != nil {
		list = append(list, d.words.text("value.gravity", g.V, 2*g.U))
	}
	return list
}

// verdicts tells what each test says, by its place in the form.
func verdictsOf(j *judged, place *form.Outcome, w *words) map[int]*verdictView {
	list := map[int]*verdictView{}
	if j.unread() {
		return list
	}
	for _, t := range j.Examined.Verdict.Tests {
		h := t.Test.Header()
		list[place.Place("tests", h.Index)] = &verdictView{string(t.Verdict), w.said(t.Value), w.said(t.Expected), w.said(t.Because), t.Telling, h.SetAside != ""}
	}
	return list
}

// linesOf shows the file line by line.
func linesOf(j *judged) []lineView {
	worst := map[int]stone.Severity{}
	for _, p := range j.Problems {
		if s, ok := worst[p.Line]; p.Path != "" && (!ok || weightOf(p.Severity) < weightOf(s)) {
			worst[p.Line] = p.Severity
		}
	}
	var lines []lineView
	text := strings.TrimSuffix(strings.ReplaceAll(string(j.Src), "\r\n", "\n"), "\n")
	for i, l := range strings.Split(text, "\n") {
		lines = append(lines, lineView{i + 1, l, worst[i+1]})
	}
	return lines
}
