package stone

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// account checks every currency and amount of the file, and that its pictures
// lie beside it.
func (v *validator) account(s Account, file string) {
	for i, p := range s.Photos {
		v.beside(fmt.Sprintf("photos[%d].file", i), p.File, file)
	}
	v.history(s.History)
	v.money(s)
}

func (v *validator) money(s Account) {
	if s.Worth != nil {
		v.worth(s.Worth)
	}
	if s.Stock != nil && s.Stock.Price != nil {
		v.currency("stock.price.currency", s.Stock.Price.Currency)
		v.aboveNought("stock.price.amount", s.Stock.Price.Amount)
	}
	if s.Owned != nil {
		v.currency("owned.paid", s.Owned.Paid.Currency)
	}
	if s.Insured != nil {
		v.currency("insured.sum", s.Insured.Sum.Currency)
	}
	for i, valued := range s.Valued {
		v.currency(fmt.Sprintf("valued[%d].amount", i), valued.Amount.Currency)
	}
}

func (v *validator) currency(at, code string) {
	if code == "" {
		return
	}
	if hint, ok := CheckCurrency(code); !ok {
		v.wrong(at, hint, "%q is not a currency of ISO 4217", code)
	}
}

func (v *validator) aboveNought(at string, d Decimal) {
	if d != "" && (strings.HasPrefix(string(d), "-") || strings.Trim(string(d), "0.") == "") {
		v.wrong(at, "", "%s is not above 0", d)
	}
}

func (v *validator) worth(w *Worth) {
	v.currency("worth.currency", w.Currency)
	v.aboveNought("worth.round_to", w.RoundTo)
	for i, l := range w.Lines {
		v.worthLine(fmt.Sprintf("worth.lines[%d]", i), l)
	}
	for i, c := range w.Comparables {
		at := fmt.Sprintf("worth.comparables[%d]", i)
		v.aboveNought(at+".amount", c.Amount)
		if c.By == "" && !c.Weight.Given() {
			v.wrong(at, "add weight: 1.48 ct, or by: piece to compare it as a whole", "a comparable needs its weight")
		}
	}
	v.tax(w.Tax)
	v.approaches(w)
}

func (v *validator) worthLine(at string, l WorthLine) {
	var ways []string
	for _, way := range []struct {
		key   string
		given bool
	}{
		{"amount", l.Amount != ""}, {"per_carat", l.PerCarat != ""},
		{"per_gram_fine", l.PerGramFine != ""}, {"percent", l.Percent.Given()},
	} {
		if way.given {
			ways = append(ways, way.key)
		}
	}
	const one = "use exactly one of amount, per_carat, per_gram_fine, percent"
	switch {
	case len(ways) == 0:
		v.wrong(at, one, "the line %q has no amount", l.What)
		return
	case len(ways) > 1:
		v.wrong(at, one, "the line %q has %d ways to its amount: %s", l.What, len(ways), strings.Join(ways, ", "))
		return
	}
	v.aboveNought(at+".per_carat", l.PerCarat)
	v.aboveNought(at+".per_gram_fine", l.PerGramFine)
	switch {
	case l.PerGramFine != "" && (!l.Mass.Given() || l.Fineness == 0):
		v.wrong(at, "for example mass: 4.20 g, fineness: 750", "a price of fine metal needs mass and fineness")
	case l.PerGramFine == "" && (l.Mass.Given() || l.Fineness != 0):
		v.wrong(at, "add per_gram_fine, or leave mass and fineness out", "mass and fineness stand beside %s, which does not use them", ways[0])
	case l.PerCarat == "" && l.Weight.Given():
		v.wrong(at+".weight", "add per_carat, or leave the weight out", "a weight stands beside %s, which does not use it", ways[0])
	case l.PerCarat == "" && l.Item != 0:
		v.wrong(at+".item", "add per_carat, or leave the item out", "an item stands beside %s, which does not use it", ways[0])
	case l.Weight.Given() && l.Item != 0:
		v.wrong(at+".item", "keep one of the two", "item and weight both say how much the price applies to")
	case l.Percent.Given() && len(l.Of.Items) == 0:
		v.wrong(at, "for example of: [labour]", "a per cent needs the lines it is of")
	case !l.Percent.Given() && l.Of.Given:
		v.wrong(at+".of", "add percent, or leave it out", "of stands beside %s, which does not use it", ways[0])
	}
}

func (v *validator) tax(t *Tax) {
	if t == nil {
		return
	}
	if !t.Rate.Given() && (t.Lines != t.Conclusion || t.Comparables != "") {
		v.wrong("worth.tax", "for example rate: \"19 %\"", "a tax needs its rate")
	}
	if t.Included != nil && t.Lines != "" && *t.Included != (t.Lines == "with") {
		v.wrong("worth.tax.included", "leave included out", "included: %v contradicts lines: %s", *t.Included, t.Lines)
	}
}

// approaches checks that each of the three ways to a value is used or left out
// with a reason.
func (v *validator) approaches(w *Worth) {
	known := []string{"cost", "market", "income"}
	for _, key := range slices.Sorted(maps.Keys(w.Approaches)) {
		at, text := "worth.approaches."+key, w.Approaches[key]
		reason, out := strings.CutPrefix(text, "left out")
		switch {
		case !slices.Contains(known, key):
			v.wrong(at, didYouMean(key, known), "%q is not one of: %s", key, strings.Join(known, ", "))
		case text == "used":
		case !out:
			v.wrong(at, "write used, or \"left out because …\"", "found %q, used or left out was expected", text)
		case strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(reason), "because")) == "":
			v.wrong(at, "write \"left out because …\"", "the reason for leaving it out is missing")
		}
	}
}
