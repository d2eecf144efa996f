package report

import (
	"regexp"
	"strings"

	"github.com/bojanz/currency"

	"stonewrit/grading/phrase"
)

// money is an amount with its currency's code, as the language groups digits
// (CLDR). Text that is no amount is left as it is.
func (c *composer) money(amount, code string) string {
	return c.amount(amount, code, currency.DisplayCode)
}

// inMargin is an amount without a fraction of noughts, for the narrow margin.
func (c *composer) inMargin(amount, code string, show currency.Display) string {
	whole, fraction, _ := strings.Cut(amount, ".")
	a, err := currency.NewAmount(whole, code)
	if strings.Trim(fraction, "0") != "" || err != nil {
		return c.amount(amount, code, show)
	}
	f := currency.NewFormatter(currency.NewLocale(c.w.Language()))
	f.CurrencyDisplay, f.MinDigits = show, 0
	return f.Format(a)
}

// bareAmount is an amount without its currency.
func (c *composer) bareAmount(amount, code string) string {
	return c.amount(amount, code, currency.DisplayNone)
}

func (c *composer) amount(amount, code string, show currency.Display) string {
	if amount == "" {
		return ""
	}
	a, err := currency.NewAmount(amount, code)
	if err != nil {
		return strings.TrimSpace(amount + "\u00a0" + code)
	}
	f := currency.NewFormatter(currency.NewLocale(c.w.Language()))
	f.CurrencyDisplay = show
	return f.Format(a)
}

var longNumber = regexp.MustCompile(`^-?[0-9]{4,}\.[0-9]+$`)

// working is a step of a calculation with its digits grouped as in the amounts
// beside it.
func (c *composer) working(step phrase.Line, code string) string {
	return c.qualified(signs(strings.ReplaceAll(step.In(grouped{qualifying{c}, code}), " x ", "\u00a0× ")))
}

// grouped says figures as the amounts of a currency are printed.
type grouped struct {
	qualifying
	code string
}

func (g grouped) Figure(english string) string {
	if longNumber.MatchString(english) {
		return g.c.bareAmount(english, g.code)
	}
	return g.qualifying.Figure(english)
}
