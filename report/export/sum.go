package export

import (
	"cmp"
	"math/big"
	"slices"
	"strings"
)

// sum adds decimal numbers exactly, with as many decimals as the finest of them.
type sum struct {
	total    big.Rat
	decimals int
	count    int
}

// add adds decimal text; what is none is left out.
func (s *sum) add(text string) {
	v, ok := new(big.Rat).SetString(text)
	if text == "" || !ok {
		return
	}
	s.total.Add(&s.total, v)
	s.count++
	if _, decimals, ok := strings.Cut(text, "."); ok {
		s.decimals = max(s.decimals, len(decimals))
	}
}

// String is the sum, "" where nothing was added.
func (s *sum) String() string {
	if s.count == 0 {
		return ""
	}
	return s.total.FloatString(s.decimals)
}

// Money is an amount in decimal text and its currency (ISO 4217).
type Money struct {
	Amount   string `json:"amount"`
	Currency string `json:"currency"`
}

// Given reports whether there is an amount.
func (m Money) Given() bool { return m.Amount != "" }

func (m Money) String() string {
	if !m.Given() {
		return ""
	}
	return m.Amount + " " + m.Currency
}

// purse adds amounts, each currency apart.
type purse map[string]*sum

func (p purse) add(m Money) {
	if !m.Given() {
		return
	}
	if p[m.Currency] == nil {
		p[m.Currency] = &sum{}
	}
	p[m.Currency].add(m.Amount)
}

// amounts lists the sums by currency.
func (p purse) amounts() []Money {
	list := []Money{}
	for currency, s := range p {
		list = append(list, Money{s.String(), currency})
	}
	slices.SortFunc(list, func(a, b Money) int { return cmp.Compare(a.Currency, b.Currency) })
	return list
}
