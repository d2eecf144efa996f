package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Stated is a value with its expanded uncertainty, both rounded for print to
// the same last place: at most two significant digits of uncertainty (JCGM 100,
// 7.2.6). U is empty where no uncertainty is known.
type Stated struct{ Value, U string }

// State rounds a value and k times its standard uncertainty for print. k is 2
// for coverage of about 95 %.
func (v Value) State(k float64) Stated {
	u := k * v.U
	if !(u > 0) || math.IsInf(u, 0) {
		return Stated{Value: strconv.FormatFloat(v.V, 'f', -1, 64)}
	}
	// Two digits with the exponent after rounding: 0.0996 becomes 1.0e-01.
	_, e, _ := strings.Cut(strconv.FormatFloat(u, 'e', 1, 64), "e")
	exponent, _ := strconv.Atoi(e)
	places := 1 - exponent
	return Stated{toPlaces(v.V, places), toPlaces(u, places)}
}

// toPlaces rounds to decimal places; below zero it rounds to tens, hundreds
// and so on.
func toPlaces(v float64, places int) string {
	if places < 0 {
		v = math.Round(v/math.Pow10(-places)) * math.Pow10(-places)
	}
	text := strconv.FormatFloat(v, 'f', max(places, 0), 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

// String is the pair without unit: "3.993 ± 0.032".
func (s Stated) String() string {
	if s.U == "" {
		return s.Value
	}
	return s.Value + " ± " + s.U
}

// With is the pair with its unit, digits in groups of three by no-break spaces
// as the standards print them: "(100.021 47 ± 0.000 70) g". Up to four decimals
// stay together. A pure number has the unit "".
func (s Stated) With(unit string) string {
	grouped := Stated{groupDecimals(s.Value), groupDecimals(s.U)}.String()
	switch {
	case unit == "":
		return grouped
	case s.U == "":
		return grouped + "\u00a0" + unit
	}
	return "(" + grouped + ")\u00a0" + unit
}

func groupDecimals(number string) string {
	whole, decimals, ok := strings.Cut(number, ".")
	if !ok || len(decimals) <= 4 {
		return number
	}
	var groups []string
	for len(decimals) > 3 {
		groups = append(groups, decimals[:3])
		decimals = decimals[3:]
	}
	return whole + "." + strings.Join(append(groups, decimals), "\u00a0")
}
