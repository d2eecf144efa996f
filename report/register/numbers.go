package register

import (
	"fmt"
	"strconv"
	"strings"
)

const (
	yearDigits    = 4
	ordinalDigits = 6
	maxOrdinal    = 999_999
	maxPrefix     = 8
)

// A Number is a report number: a prefix, the year of issue, the place in the
// series of that year, and two check digits. It is printed in four groups,
//
//	HL-2026-000001-16
//
// The check digits are those of ISO/IEC 7064 MOD 97-10 over the ten digits of
// year and place; they do not cover the prefix. They reveal every single
// wrong digit and every swap of neighbours among the twelve.
//
// Numbers are comparable; the zero Number is no number.
type Number struct {
	prefix  string
	year    int
	ordinal int
}

// NewNumber returns the number of a prefix of one to eight capital letters
// and digits that starts with a letter, a year from 1000 to 9999 and a place
// from 1 to 999999. Its errors match [ErrNumber], and [ErrSeriesFull] where
// the place is beyond the last.
func NewNumber(prefix string, year, ordinal int) (Number, error) {
	if err := checkPrefix(prefix); err != nil {
		return Number{}, err
	}
	if year < 1000 || year > 9999 {
		return Number{}, fmt.Errorf("%w: year %d is not of four digits", ErrNumber, year)
	}
	if ordinal > maxOrdinal {
		return Number{}, fmt.Errorf("%w: %d numbers of %d are used up", ErrSeriesFull, maxOrdinal, year)
	}
	if ordinal < 1 {
		return Number{}, fmt.Errorf("%w: the series of a year starts at 1, not %d", ErrNumber, ordinal)
	}
	return Number{prefix: prefix, year: year, ordinal: ordinal}, nil
}

// ParseNumber reads a number as printed. Small letters, spaces around it and
// the dashes that word processors put for hyphens are accepted. Its errors
// match [ErrNumber] and say which part is wrong.
func ParseNumber(s string) (Number, error) {
	fail := func(format string, args ...any) (Number, error) {
		return Number{}, fmt.Errorf("%w: %q: %s", ErrNumber, s, fmt.Sprintf(format, args...))
	}
	plain := strings.NewReplacer("\u2010", "-", "\u2011", "-", "\u2013", "-").Replace(strings.TrimSpace(s))
	groups := strings.Split(strings.ToUpper(plain), "-")
	if len(groups) != 4 {
		return fail("expected prefix-year-number-check, as in HL-2026-000001-16")
	}
	for i, want := range []struct {
		name   string
		digits int
	}{1: {"year", yearDigits}, 2: {"number", ordinalDigits}, 3: {"check digits", 2}} {
		if want.name == "" {
			continue
		}
		if len(groups[i]) != want.digits || !allDigits(groups[i]) {
			return fail("%s: %q is not %d digits", want.name, groups[i], want.digits)
		}
	}
	if !checkDigitsFit(groups[1] + groups[2] + groups[3]) {
		return fail("the check digits do not fit: a digit is wrong or two are swapped")
	}
	year, _ := strconv.Atoi(groups[1])    // four digits
	ordinal, _ := strconv.Atoi(groups[2]) // six digits
	n, err := NewNumber(groups[0], year, ordinal)
	if err != nil {
		return Number{}, fmt.Errorf("%q: %w", s, err)
	}
	return n, nil
}

// Prefix returns the practice's letters in front.
func (n Number) Prefix() string { return n.prefix }

// Year returns the year of issue in the practice's time zone.
func (n Number) Year() int { return n.year }

// Ordinal returns the place in the series of the year, from 1.
func (n Number) Ordinal() int { return n.ordinal }

// CheckDigits returns the two check digits.
func (n Number) CheckDigits() string { return checkDigits(n.digits()) }

// IsZero reports whether n is no number.
func (n Number) IsZero() bool { return n == Number{} }

// String returns the printed form, and "" for the zero Number.
func (n Number) String() string {
	if n.IsZero() {
		return ""
	}
	return fmt.Sprintf("%s-%0*d-%0*d-%s", n.prefix, yearDigits, n.year, ordinalDigits, n.ordinal, n.CheckDigits())
}

// MarshalText returns the printed form.
func (n Number) MarshalText() ([]byte, error) { return []byte(n.String()), nil }

// UnmarshalText reads the printed form; the empty text is no number.
func (n *Number) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*n = Number{}
		return nil
	}
	parsed, err := ParseNumber(string(text))
	if err != nil {
		return err
	}
	*n = parsed
	return nil
}

func (n Number) digits() string {
	return fmt.Sprintf("%0*d%0*d", yearDigits, n.year, ordinalDigits, n.ordinal)
}

func checkPrefix(prefix string) error {
	if len(prefix) < 1 || len(prefix) > maxPrefix {
		return fmt.Errorf("%w: prefix %q is not of 1 to %d characters", ErrNumber, prefix, maxPrefix)
	}
	for i, c := range []byte(prefix) {
		letter, digit := c >= 'A' && c <= 'Z', c >= '0' && c <= '9'
		if !letter && (!digit || i == 0) {
			return fmt.Errorf("%w: prefix %q: expected capital letters A to Z and digits, a letter first", ErrNumber, prefix)
		}
	}
	return nil
}

func allDigits(s string) bool {
	for _, c := range []byte(s) {
		if c < '0' || c > '9' {
			return false
		}
	}
	return true
}
