package grading

import (
	"fmt"
	"strconv"
	"strings"

	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// Printed is the weight in carats as documents state it, decimal digits with
// the two decimals of the trade: the weighed figure brought to them by the
// bench's rule, else the estimate. It is "" where neither is to be had.
func (e *Examined) Printed() (carats string, estimated bool) {
	rule := quantity.Nearest
	if e.Bench != nil && e.Bench.Rounding != "" {
		rule = quantity.Rounding(e.Bench.Rounding)
	}
	if m := e.Stone.Weight.Measured; m.Given() {
		digits, _, _ := strings.Cut(m.Text, " ")
		digits = strings.TrimSuffix(digits, "ct")
		if rounded, err := rule.Round(digits); err == nil {
			return rounded, false
		}
		return strconv.FormatFloat(m.Float(), 'f', 2, 64), false
	}
	if e.Weight.Estimate != nil {
		return fmt.Sprintf("%.2f", e.Weight.Estimate.Chosen.Carats.Value), true
	}
	return "", false
}

// value does the arithmetic of the appraisal.
func (e *Examined) value() {
	if e.Stone.Worth == nil {
		return
	}
	carats, estimated := e.Printed()
	result, problems := worth.Appraise(e.Stone.Worth, worth.Subject{Weight: carats, Estimated: estimated, Stones: carats})
	e.Worth = result
	e.Problems = append(e.Problems, stone.Problems(problems).At(e.Stone.Position)...)
}
