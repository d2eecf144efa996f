package reading

import (
	"maps"
	"slices"
)

// Due lists the instruments, by name, whose last check no longer holds on the
// bench's day: it is overdue, or was marked as failed. Instruments that are only
// thought of buying and those that were never checked are left out; many need no
// check. Whether the readings of a check were good enough is told where a test is
// reduced.
func (b Bench) Due() []Check {
	var list []Check
	for _, id := range slices.Sorted(maps.Keys(b.Instruments)) {
		in := b.Instruments[id]
		if in.Owned != nil && !*in.Owned {
			continue
		}
		if _, _, c := b.last(id, b.Figures[checkDays(in.Kind)]); c.State == CheckOverdue || c.State == CheckFailed {
			list = append(list, c)
		}
	}
	return list
}

// checkDays names the figure that says how long a check holds where the bench
// file does not.
func checkDays(kind string) string {
	switch kind {
	case "refractometer":
		return "days refractometer"
	case "balance", "scales in ct":
		return "days balance"
	}
	return "days other"
}
