package desk

import (
	"cmp"
	"slices"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading"
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
	Piece    bool
	Items    []itemView // of a piece
	Worth    string     // of a piece
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
	Mark string // of the field in the page
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
	f := findingView{Unread: j.unread(), Piece: j.sort == stone.SortPiece, Stops: j.stops()}
	for _, p := range j.Problems {
		f.Problems = append(f.Problems, problemView{brief(p), v.nearest(place.Name(p.Path))})
	}
	slices.SortStableFunc(f.Problems, func(a, b problemView) int { return cmp.Compare(weightOf(a.Severity), weightOf(b.Severity)) })
	switch {
	case j.Piece != nil:
		v.tellPiece(&f, j)
		return f
	case j.unread():
		return f
	}
	e := j.Examined
	f.Claims = v.claims(e)
	for _, r := range e.Verdict.Rivals {
		f.Rivals = append(f.Rivals, rivalView{v.voice.term(r.Material.Name), v.voice.line(r.Because)})
	}
	f.More = max(0, len(f.Rivals)-mostRivals)
	f.Rivals = f.Rivals[:min(len(f.Rivals), mostRivals)]
	f.Untested = len(e.Verdict.Tests) == 0
	for _, n := range d.next(j) {
		next := nextView{Test: v.voice.term(n.Test), Caution: v.voice.line(n.Caution), Owned: n.Owned}
		for _, x := range n.Excludes {
			next.Excludes = append(next.Excludes, v.voice.term(x))
		}
		f.Next = append(f.Next, next)
	}
	f.Next = f.Next[:min(len(f.Next), 4)]
	f.Weight, f.Values = v.weightText(e), v.valueText(e)
	return f
}

// claims tells how the claims of a stone stand.
func (v *viewer) claims(e *grading.Examined) []claimView {
	var list []claimView
	for _, c := range e.Claims() {
		one := claimView{Name: v.voice.word("claim." + c.Name), Opinion: v.voice.term(c.Claim.Opinion), Standing: string(c.Claim.Standing)}
		for _, b := range c.Claim.Because {
			one.Because = append(one.Because, v.voice.line(b))
		}
		list = append(list, one)
	}
	return list
}

// weightOf orders problems by what they do.
func weightOf(s stone.Severity) int {
	return slices.Index([]stone.Severity{stone.Error, stone.Finding, stone.Missing, stone.Warning, stone.Note}, s)
}

func (v *viewer) weightText(e *grading.Examined) []string {
	w := e.Weight
	var list []string
	if w.Measured > 0 {
		list = append(list, v.voice.t("weighed %.3f ct, ± %.4f", w.Measured, 2*w.MeasuredU))
	}
	if w.Estimate != nil {
		c := w.Estimate.Chosen
		list = append(list, v.voice.t("from its size %.2f ct, between %.2f and %.2f (95 %%), by %s", c.Carats.Value, c.Low, c.High, v.voice.term(c.Method)))
	} else if w.NoEstimate != "" && w.Measured == 0 {
		list = append(list, v.voice.t("no estimate: %s", v.voice.line(w.NoEstimate)))
	}
	if w.ImpliedSG.V > 0 {
		list = append(list, v.voice.t("weight and size together imply a specific gravity of %.2f", w.ImpliedSG.V))
	}
	return list
}

func (v *viewer) valueText(e *grading.Examined) []string {
	var list []string
	if i := e.Values.Best(); i != nil && i.Edges > 0 {
		text := v.voice.figure(i.Low, 4)
		if i.Edges == 2 {
			text = v.voice.figure(i.Low, 4) + " – " + v.voice.figure(i.High, 4)
		}
		list = append(list, v.voice.t("refractive index %s, ± %.4f", text, 2*i.U))
		if i.Edges == 2 {
			list = append(list, v.voice.t("birefringence %s, ± %.4f", v.voice.figure(i.Birefringence, 4), 2*i.BirefringenceU))
		}
	}
	if c := e.Values.Character; c.Kind != "" || c.Sign != "" {
		sign := map[string]string{"+": v.voice.word("sign.positive"), "-": v.voice.word("sign.negative")}[c.Sign]
		list = append(list, v.voice.t("optic character: %s", strings.TrimSpace(v.voice.term(c.Kind)+" "+sign)))
	}
	if g := e.Values.BestGravity(); g != nil {
		list = append(list, v.voice.t("specific gravity %s, ± %.3f", v.voice.figure(g.V, 3), 2*g.U))
	}
	return list
}

// verdictsOf tells what each test says, by its place in the form.
func (v *viewer) verdictsOf(j *judged, place *form.Outcome) map[int]*verdictView {
	list := map[int]*verdictView{}
	if j.Examined == nil {
		return list
	}
	for _, t := range j.Examined.Verdict.Tests {
		h := t.Test.Header()
		list[place.Place("tests", h.Index)] = &verdictView{string(t.Verdict), v.voice.line(t.Value), v.voice.line(t.Expected), v.voice.line(t.Because), t.Telling, h.SetAside != ""}
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
