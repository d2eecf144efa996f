package stone

import (
	"regexp"
	"stonewrit/grading/phrase"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Decimal is an exact decimal number kept as its text; money is never a binary
// fraction.
type Decimal string

var decimalText = regexp.MustCompile(`^-?[0-9]{1,15}(\.[0-9]{1,6})?$`)

func (a *Decimal) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	if !decimalText.MatchString(text) {
		d.wrong(n, path, phrase.Say("%q is not an amount", text), "write digits with a decimal point and no currency, in quotes: \"1850.00\"")
		return
	}
	*a = Decimal(text)
}

// Money is an amount with its currency: "1200.00 EUR".
type Money struct {
	Amount   Decimal
	Currency string // ISO 4217
}

var moneyText = regexp.MustCompile(`^([0-9]{1,15}(?:\.[0-9]{1,6})?) ([A-Z]{3})$`)

func (m *Money) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	g := moneyText.FindStringSubmatch(text)
	if g == nil {
		d.wrong(n, path, phrase.Say("%q is not an amount with its currency", text), "for example \"1200.00 EUR\"")
		return
	}
	m.Amount, m.Currency = Decimal(g[1]), g[2]
}

// Given reports whether an amount was written.
func (m Money) Given() bool { return m.Amount != "" }

func (m Money) String() string { return string(m.Amount) + " " + m.Currency }

// Adjustments are named parts of the price in the order written.
type Adjustments []Adjustment

// An Adjustment changes a comparable toward the subject: by a per cent, or by a
// fraction such as -1/3 where a per cent would not be exact.
type Adjustment struct {
	What     string
	By       quantity.Measure[quantity.Percent]
	Fraction string
}

var fraction = regexp.MustCompile(`^[+-]?[0-9]{1,4}/[1-9][0-9]{0,3}$`)

func (a *Adjustments) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, _ int) {
	if n.Kind != yaml.MappingNode {
		d.wrong(n, path, phrase.Say("found %s, names with per cents were expected", describeNode(n)), "for example {colour: \"-5 %\"}")
		return
	}
	for _, e := range d.entries(n, path) {
		one := Adjustment{What: e.key}
		if e.value.Kind == yaml.ScalarNode && fraction.MatchString(e.value.Value) {
			one.Fraction, _ = d.text(e.value, e.path)
		} else {
			d.quantity(e.value, &one.By, e.path, fieldTags{bound: bounds{-100, 1000, true}})
		}
		*a = append(*a, one)
	}
}
