package stone

import (
	"slices"
	"stonewrit/grading/phrase"
	"strings"

	"github.com/bojanz/currency"
)

// CheckCurrency reports whether a code is a currency of ISO 4217; if not, the
// hint names the code that is likely meant.
func CheckCurrency(code string) (hint phrase.Line, ok bool) {
	if code != "" && currency.IsValid(code) {
		return "", true
	}
	switch strings.TrimSpace(code) {
	case "€":
		return `did you mean "EUR"?`, false
	case "£":
		return `did you mean "GBP"?`, false
	case "$":
		return `write the code of the country's dollar: "USD", "CAD", "AUD"`, false
	case "¥":
		return `did you mean "JPY" or "CNY"?`, false
	}
	codes := slices.Sorted(slices.Values(currency.GetCurrencyCodes()))
	if hint := didYouMean(code, codes); hint != "" {
		return hint, false
	}
	return `write the code of three letters: "EUR"`, false
}
