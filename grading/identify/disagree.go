package identify

import (
	"fmt"
	"math"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// disagreements are tests of one kind that contradict each other, whatever the
// stone is: a slip, another stone, or a composite that reads differently above
// and below.
func (j *judgement) disagreements() []Finding {
	var list []Finding
	list = append(list, j.indexAgainstIndex()...)
	list = append(list, j.gravityAgainstGravity()...)
	for i, e := range j.evidence {
		if t, ok := e.test.(*stone.LaboratoryReport); ok && t.SetAside == "" {
			if good, why := matches(t, j.c.Stone); !good {
				list = append(list, Finding{Path: fmt.Sprintf("tests[%d]", i), Message: phrase.Say("the quoted report proves nothing: %s", why), Hint: "compare weight, size or inscription and list them under matched"})
			}
		}
	}
	return list
}

func (j *judgement) indexAgainstIndex() []Finding {
	var list []Finding
	all := j.c.Values.Index
	for b := range all {
		for a := range b {
			x, y := &all[a], &all[b]
			if x.Test.Header().SetAside != "" || y.Test.Header().SetAside != "" || x.Edges == 0 || y.Edges == 0 || x.Suspect != "" || y.Suspect != "" {
				continue
			}
			u := math.Hypot(x.U, y.U)
			gap := max(x.Low-y.High, y.Low-x.High)
			if gap <= 3*u+atEdge {
				continue
			}
			f := Finding{Path: fmt.Sprintf("tests[%d]", y.Test.Header().Index)}
			px, py := x.Test.Header().Place, y.Test.Header().Place
			f.Message = phrase.Say("index %.3f here and %.3f in test %d differ by %.1f times their uncertainty", y.Low, x.Low, x.Test.Header().Index+1, gap/u)
			f.Hint = "repeat both, and set the mistaken one aside with set_aside"
			if px != py {
				f.Hint = "an assembled stone reads differently above and below: look for a join from the side"
			}
			list = append(list, f)
		}
	}
	return list
}

func (j *judgement) gravityAgainstGravity() []Finding {
	var list []Finding
	all := j.c.Values.Gravity
	for b := range all {
		for a := range b {
			x, y := all[a], all[b]
			if x.Test.Header().SetAside != "" || y.Test.Header().SetAside != "" || x.Void != "" || y.Void != "" {
				continue
			}
			lowX, highX := gravityEnds(x.V, x.Bound, x.Liquid)
			lowY, highY := gravityEnds(y.V, y.Bound, y.Liquid)
			u := math.Hypot(x.U, y.U)
			if gap := max(lowX-highY, lowY-highX); gap > 3*u+atEdge {
				list = append(list, Finding{
					Path:    fmt.Sprintf("tests[%d]", y.Test.Header().Index),
					Message: phrase.Say("this specific gravity and that of test %d exclude each other by %.2f, %.1f times their uncertainty", x.Test.Header().Index+1, gap, gap/u),
					Hint:    "repeat both, and set the mistaken one aside with set_aside",
				})
			}
		}
	}
	return list
}

func gravityEnds(v float64, bound string, liquid float64) (low, high float64) {
	switch bound {
	case "above":
		return liquid, math.Inf(1)
	case "below":
		return math.Inf(-1), liquid
	}
	return v, v
}

// caveats are the printed limits of what was judged.
func (j *judgement) caveats() []phrase.Line {
	list := append([]phrase.Line{}, j.c.Values.Caveats...)
	list = append(list, "Refractive index, birefringence and specific gravity show the material; they never show whether a stone grew in nature or in a laboratory, or whether it was treated.")
	if j.opinion.Stated {
		list = append(list, "As stated by the owner, not tested.")
	}
	if !j.magnified() {
		list = append(list, "The stone was not examined under magnification: growth and treatment are open, and an assembled stone is not excluded.")
	}
	for _, e := range j.evidence {
		if e.test != nil && e.aside != "" {
			list = append(list, phrase.Say("Set aside, %s: %s.", testLabel(e.test), e.aside))
		}
	}
	return list
}
