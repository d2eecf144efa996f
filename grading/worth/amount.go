package worth

import (
	"fmt"
	"math/big"
	"strings"

	"github.com/bojanz/currency"

	"stonewrit/grading/phrase"
)

// carat is 0.2 g (16 CFR 23.18(b) note).
const gramsPerCarat = "0.2"

// exact reads decimal digits, or a fraction such as 1/3. Powers of ten are not
// read: a few letters would ask for gigabytes.
func exact(text string) (*big.Rat, error) {
	if strings.Trim(text, "+-0123456789./") == "" {
		if r, ok := new(big.Rat).SetString(text); ok {
			return r, nil
		}
	}
	return nil, fmt.Errorf("%q is not a decimal number", text)
}

// must reads a number of this package's own.
func must(text string) *big.Rat {
	r, err := exact(text)
	if err != nil {
		panic("worth: " + err.Error())
	}
	return r
}

// mint rounds to the smallest unit of a currency.
type mint struct{ digits int }

func mintOf(code string) (mint, bool) {
	digits, ok := currency.GetDigits(code)
	return mint{int(digits)}, ok && code != ""
}

// print is an amount in the currency's decimals, rounded half away from zero.
func (m mint) print(r *big.Rat) string {
	text := r.FloatString(m.digits) // rounds halves away from zero
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

// round is the amount that print shows.
func (m mint) round(r *big.Rat) *big.Rat { return must(m.print(r)) }

// digits writes a number that ends, with all its decimals.
func digits(r *big.Rat) string {
	n, _ := r.FloatPrec()
	return r.FloatString(n)
}

func times(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func plus(a, b *big.Rat) *big.Rat  { return new(big.Rat).Add(a, b) }
func minus(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func over(a, b *big.Rat) *big.Rat  { return new(big.Rat).Quo(a, b) }

// onePlus is 1 + p/100.
func onePlus(percent *big.Rat) *big.Rat {
	return plus(big.NewRat(1, 1), over(percent, big.NewRat(100, 1)))
}

// signed writes terms as a sum, a term below zero with its minus.
func signed(terms ...string) phrase.Line {
	var sum phrase.Line
	for i, t := range terms {
		rest, negative := strings.CutPrefix(t, "-")
		switch {
		case i == 0:
			sum = figure(t)
		case negative:
			sum = phrase.Say("%s - %s", sum, phrase.Figure(rest))
		default:
			sum = phrase.Say("%s + %s", sum, phrase.Figure(t))
		}
	}
	return sum
}

// figure is a figure alone, as a line.
func figure[S ~string](digits S) phrase.Line { return phrase.Say("%s", phrase.Figure(digits)) }
