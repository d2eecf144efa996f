package grading

import (
	"time"

	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// ChecksDue lists the instruments of a bench whose last check no longer holds on
// a day, by name.
func (t *Tables) ChecksDue(b *stone.Bench, today time.Time) []reading.Check {
	if b == nil {
		return nil
	}
	return reading.Bench{Instruments: b.Instruments, Figures: t.figures, On: today, Reference: t.reference}.Due()
}
