package weight

import (
	"regexp"
	"testing"

	"stonewrit/grading/phrase"
	"stonewrit/grading/phrase/phrasetest"
)

// sayable fails the test if a part of a line is out of reach of a translation.
func sayable(t *testing.T, line phrase.Line) {
	t.Helper()
	if left := regexp.MustCompile(`[A-Za-z]+`).FindString(line.In(phrasetest.Masked{})); left != "" {
		t.Errorf("of %q stays %q", line, left)
	}
}

// Every sentence of an estimate can be said in another language.
func TestEstimatesInAnotherLanguage(t *testing.T) {
	e := newEstimator(t)
	usual := func(v float64) Measure { return Measure{Value: v, U: 0.5} }
	measured := func(v float64) Measure { return Measure{v, 0.01} }
	check := func(line phrase.Line) { sayable(t, line) }
	checkError := func(err error) {
		if err != nil {
			check(Says(err))
		}
	}
	for _, shape := range []string{"round", "heart", "drop"} {
		for _, cut := range []string{"brilliant", "briolette", "rough"} {
			for _, depth := range []float64{0, 0.9, 3.9, 39} {
				for _, width := range []float64{0, 6.4, 8.1} {
					d := Dimensions{Shape: shape, Cut: cut, AsDiamond: width > 5, Length: measured(6.5), Width: measured(width), Depth: measured(depth), Table: usual(57), TotalDepth: usual(60), CrownAngle: usual(34.5), CrownHeight: usual(22)}
					if depth == 0 || depth == 39 {
						d.TotalDepth, d.Table = Measure{}, usual(5.7)
					}
					est, err := e.Estimate(d, Gravity{Low: 3.5, High: 3.54})
					checkError(err)
					check(est.Because)
					for _, c := range est.Candidates {
						check(c.Basis)
						for _, w := range c.Warnings {
							check(w)
						}
					}
					for _, w := range est.Warnings {
						check(w)
					}
					_, err = e.Body(d)
					checkError(err)
					for _, f := range e.Contradictions(d, Measure{Value: 0.97, U: 0.005}, Gravity{Low: 3.5, High: 3.54}) {
						check(f.Message)
					}
				}
			}
		}
	}
}
