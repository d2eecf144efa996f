package reading

import (
	"fmt"
	"testing"
	"time"

	"stonewrit/grading/stone"
)

func TestDue(t *testing.T) {
	figures, err := LoadFigures()
	if err != nil {
		t.Fatal(err)
	}
	day := func(text string) stone.Date {
		d, err := time.Parse(time.DateOnly, text)
		if err != nil {
			t.Fatal(err)
		}
		return stone.Date{Time: d}
	}
	checked := func(kind, date string) stone.Instrument {
		return stone.Instrument{Kind: kind, Checks: []stone.Check{{Date: day(date), Reference: "quartz"}}}
	}
	wished := checked("refractometer", "2020-01-01")
	wished.Owned = new(bool)
	failed := checked("refractometer", "2026-10-30")
	failed.Checks[0].Result = "failed"
	monthly := checked("balance", "2026-09-20")
	if err := monthly.CheckEvery.Set("30 days"); err != nil {
		t.Fatal(err)
	}
	b := Bench{Figures: figures, On: day("2026-11-01").Time, Instruments: map[string]stone.Instrument{
		"a-30-days": checked("refractometer", "2026-10-02"), "b-31-days": checked("refractometer", "2026-10-01"),
		"c-90-days": checked("balance", "2026-08-03"), "d-91-days": checked("scales in ct", "2026-08-02"),
		"e-365-days": checked("spectroscope", "2025-11-01"), "f-366-days": checked("spectroscope", "2025-10-31"),
		"g-never": {Kind: "polariscope"}, "h-wished": wished, "i-failed": failed, "j-own-rule": monthly,
		"k-later": checked("refractometer", "2026-11-02"),
	}}
	got := ""
	for _, c := range b.Due() {
		got += fmt.Sprintf("%s %s; ", c.Instrument, c.State)
	}
	// 30 days for a refractometer, 90 for a balance, 365 for others: common practice, no source.
	const want = "b-31-days overdue; d-91-days overdue; f-366-days overdue; i-failed failed; j-own-rule overdue; "
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
