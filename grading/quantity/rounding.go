package quantity

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// A Rounding is a rule by which a weight in carats is brought to two decimals.
type Rounding string

// The rules. Nearest rounds a half up. DownExceptNine is the trade's rule that
// the third decimal counts only when it is 9 (SOURCES.md).
const (
	Nearest        Rounding = "nearest"
	DownExceptNine Rounding = "down except 9"
)

var plainDecimal = regexp.MustCompile(`^([0-9]+)(?:\.([0-9]+))?$`)

// Round brings a weight in carats, written as decimal digits, to two decimals
// by the rule; the empty rule is Nearest. A weight written with two decimals or
// fewer stays as written: a nought put behind it would claim what nobody read.
// It works on the digits, so no binary fraction comes in between. It returns
// an error for text that is not a decimal number from 0 and for an unknown
// rule.
func (r Rounding) Round(weight string) (string, error) {
	g := plainDecimal.FindStringSubmatch(weight)
	switch {
	case g == nil:
		return "", fmt.Errorf("quantity: %q is not a weight in decimal digits", weight)
	case r != "" && r != Nearest && r != DownExceptNine:
		return "", fmt.Errorf("quantity: %q is not a rule of rounding", string(r))
	case len(g[2]) <= 2:
		return weight, nil
	}
	digits, third := g[1]+g[2][:2], g[2][2]
	if third == '9' || r != DownExceptNine && third >= '5' {
		digits = addOne(digits)
	}
	return digits[:len(digits)-2] + "." + digits[len(digits)-2:], nil
}

// addOne counts a string of digits up by one.
func addOne(digits string) string {
	b := []byte(digits)
	for i := len(b) - 1; i >= 0; i-- {
		if b[i] != '9' {
			b[i]++
			return string(b)
		}
		b[i] = '0'
	}
	return "1" + string(b)
}

// ClaimHolds reports whether a weight claimed in decimal carats is true to its
// last decimal, a claim with one decimal to the second: .5 carat means 0.495 to
// 0.504 (16 CFR 23.18(c)). Both are decimal digits; measured is the reading
// before any rounding of the trade.
func ClaimHolds(claim, measured string) bool {
	if strings.HasPrefix(claim, ".") {
		claim = "0" + claim
	}
	c, m := plainDecimal.FindStringSubmatch(claim), plainDecimal.FindStringSubmatch(measured)
	if c == nil || m == nil {
		return false
	}
	places := max(len(c[2]), 2)
	claimed := c[1] + pad(c[2], places)
	rounded := m[1] + pad(m[2], places)[:places]
	if len(m[2]) > places && m[2][places] >= '5' {
		rounded = addOne(rounded)
	}
	return strings.TrimLeft(claimed, "0") == strings.TrimLeft(rounded, "0")
}

func pad(decimals string, places int) string {
	return decimals + strings.Repeat("0", max(places-len(decimals), 0))
}

// Decimal writes a value with so many decimals, ties up: a small push keeps one
// such as 1.76125 from falling down because it has no exact binary form.
func Decimal(value float64, decimals int) string {
	return strconv.FormatFloat(value+1e-9, 'f', decimals, 64)
}
