package report

import (
	"regexp"
	"strings"

	"github.com/bojanz/currency"
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

var longNumber = regexp.MustCompile(`[0-9]{4,}\.[0-9]+`)

// working is a step of a calculation with its digits grouped as in the amounts
// beside it, and without the result that stands there.
func (c *composer) working(step, result, code string) string {
	step = strings.TrimSuffix(step, " = "+result)
	step = strings.ReplaceAll(step, " x ", "\u00a0× ")
	step = longNumber.ReplaceAllStringFunc(step, func(n string) string { return c.bareAmount(n, code) })
	return c.prose(step)
}
