package register

import (
	"fmt"
	"time"
)

// A Day is a calendar date without time or zone. Days are comparable; the
// zero Day is none.
type Day struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDay reads a date written as 2026-10-14.
func ParseDay(s string) (Day, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Day{}, fmt.Errorf("date %q is not written as 2026-10-14", s)
	}
	return DayOf(t), nil
}

// DayOf returns the date that t shows in its own zone.
func DayOf(t time.Time) Day {
	y, m, d := t.Date()
	return Day{Year: y, Month: m, Day: d}
}

// IsZero reports whether d is none.
func (d Day) IsZero() bool { return d == Day{} }

// String returns the date as 2026-10-14, and "" for none.
func (d Day) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
}

// MarshalText returns the written form.
func (d Day) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the written form; the empty text is none.
func (d *Day) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Day{}
		return nil
	}
	parsed, err := ParseDay(string(text))
	if err == nil {
		*d = parsed
	}
	return err
}

// A Span is the time over which a stone was examined. First and Last are the
// same where it was one day.
type Span struct {
	First Day `json:"first"`
	Last  Day `json:"last"`
}

// String returns one date, or two with "to" between.
func (s Span) String() string {
	if s.First == s.Last {
		return s.First.String()
	}
	return s.First.String() + " to " + s.Last.String()
}
