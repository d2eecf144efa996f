package export

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// An Age is a time counted in years, months or days of the calendar. The zero
// age sets no limit.
type Age struct{ Years, Months, Days int }

var ageText = regexp.MustCompile(`^([1-9][0-9]{0,4}) ?(years?|months?|days?)$`)

// ParseAge reads "3 years", "18 months", "400 days", and "none" for no limit.
func ParseAge(text string) (Age, error) {
	if text == "none" {
		return Age{}, nil
	}
	g := ageText.FindStringSubmatch(text)
	if g == nil {
		return Age{}, fmt.Errorf("%q is no age", text)
	}
	n, _ := strconv.Atoi(g[1])
	switch g[2][0] {
	case 'y':
		return Age{Years: n}, nil
	case 'm':
		return Age{Months: n}, nil
	}
	return Age{Days: n}, nil
}

// before is the day on which something of that age on the given day began.
func (a Age) before(day time.Time) time.Time { return day.AddDate(-a.Years, -a.Months, -a.Days) }

func (a Age) String() string {
	var parts []string
	for _, p := range []struct {
		n    int
		unit string
	}{{a.Years, "year"}, {a.Months, "month"}, {a.Days, "day"}} {
		switch {
		case p.n == 1:
			parts = append(parts, "1 "+p.unit)
		case p.n > 1:
			parts = append(parts, fmt.Sprintf("%d %ss", p.n, p.unit))
		}
	}
	return strings.Join(parts, " ")
}
