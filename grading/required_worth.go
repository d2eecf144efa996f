package grading

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// worthRows are asked of the value of an appraisal and of how it was reached.
func worthRows() []requirement {
	w := func(m *matter) stone.Worth {
		if m.Worth == nil {
			return stone.Worth{}
		}
		return *m.Worth
	}
	return []requirement{
		{id: "value-type", path: "worth", lacks: func(m *matter) bool { return m.appraisal() && w(m).Type == "" },
			needed: "an appraisal needs its value with the type of value and its definition", hint: "worth: {type_of_value: \"…\", currency: EUR, lines: [{what: …, amount: \"…\"}]}"},
		{id: "value-type", path: "worth", lacks: func(m *matter) bool { return m.appraisal() && w(m).Type != "" && w(m).Source == "" },
			needed: "the type of value needs where its definition comes from", hint: "worth: {definition_source: \"terms of the practice, section 2\"}"},
		{id: "value-type", each: untypedValuations},
		{id: "value-fits-use", path: "worth.type_of_value", lacks: clashes,
			needed: "the type of value does not fit what the document is for", hint: "insurance goes with replacement value, taxes and gifts with fair market value"},
		{id: "value-new-or-used", path: "worth", lacks: func(m *matter) bool {
			return m.appraisal() && w(m).Replacement == "" && strings.Contains(strings.ToLower(w(m).Type+m.purpose()), "replace")
		}, needed: "a replacement value needs by what the item would be replaced", hint: "worth: {replacement: new}, second-hand, copy or online"},
		{id: "value-actual-price", path: "worth", lacks: func(m *matter) bool { return m.appraisal() && (w(m).Market == "" || w(m).Sellers == "") },
			needed: "the value needs its market and who sells there", hint: "worth: {market: retail, sellers: \"jewellers with a shop\"}"},
		{id: "value-cash-terms", path: "worth", lacks: func(m *matter) bool { return m.appraisal() && (w(m).Terms == "" || w(m).Tax == nil) },
			needed: "the value needs its terms and whether tax is in it", hint: "worth: {terms: in cash, tax: {rate: \"19 %\", lines: without, conclusion: with}}"},
		{id: "date-effective", path: "worth.effective", lacks: func(m *matter) bool { return m.appraisal() && !w(m).Effective.Given() },
			needed: "an appraisal needs the day on which the value holds", hint: "worth: {effective: 2026-10-14}"},
		{id: "exposure-time", path: "worth", lacks: func(m *matter) bool {
			return strings.Contains(strings.ToLower(w(m).Type), "exposure") && w(m).Exposure == ""
		}, needed: "the definition of the value speaks of exposure time, and none is given", hint: "worth: {exposure_time: \"six months\"}"},
		{id: "approaches", each: unsaidApproaches},
		{id: "comparables", path: "worth", lacks: func(m *matter) bool { return m.Worth != nil && len(w(m).Lines) == 0 && len(w(m).Comparables) == 0 },
			needed: "the value needs the evidence it rests on", hint: "worth: {comparables: [{source: …, date: …, weight: …, amount: …}]}, or lines: of a cost"},
		{id: "cost-build", path: "worth.lines", lacks: func(m *matter) bool { return m.piece != nil && len(w(m).Lines) == 1 },
			needed: "the cost of a piece should show stones, metal and labour apart", hint: "one line for each"},
		{id: "prior-sales", path: "worth", lacks: func(m *matter) bool { return w(m).PriorSales == "" },
			needed: "earlier sales of the item should be told, or that none is known", hint: "worth: {prior_sales: none known}"},
		{id: "scope-of-work", path: "scope", lacks: func(m *matter) bool { return !m.Scope.Inspected.Given || !m.Scope.Researched.Given },
			needed: "an appraisal needs what was inspected and what was researched", hint: "scope: {inspected: [stone], researched: [sales], left_out: [{what: radiography, why: \"…\"}]}"},
		{id: "extraordinary", path: "assumptions", lacks: func(m *matter) bool { return !m.file.Has("assumptions") },
			needed: "an appraisal needs the uncertain facts that it takes as true", hint: "assumptions: [\"that the fineness is as the mark says\"], or none"},
		{id: "hypothetical", path: "hypothetical", lacks: func(m *matter) bool { return !m.file.Has("hypothetical") },
			needed: "an appraisal needs what it assumes against better knowledge, or that it assumes nothing so", hint: "hypothetical: none"},
		{id: "value-features", path: "history", lacks: func(m *matter) bool { return m.History == nil },
			needed: "the document needs what else moves the value; what is left out is printed as not determined", hint: "history: {style: plain, age: not determined, alterations: none seen}"},
		{id: "interest", path: "owned.interest", lacks: func(m *matter) bool { return m.Owned == nil || m.Owned.Interest == "" },
			needed: "the document needs whether the client owns the item in full", hint: "owned: {interest: full}"},
		{id: "interest", path: "use.restrictions", lacks: func(m *matter) bool { return m.Use.Restrictions == "" },
			needed: "the document needs what restricts the item, or that nothing is known to", hint: "use: {restrictions: none}"},
		{id: "court-expert", each: courtLacks},
		{id: "court-market", path: "worth", lacks: func(m *matter) bool { return m.forUse("court", "estate", "donation", "charit") && w(m).Market == "" },
			needed: "the value needs the market where such goods are commonly sold to the public", hint: "worth: {market: \"auction\"}"},
		{id: "estate-oath", path: "oath", lacks: func(m *matter) bool {
			return m.forUse("estate") && w(m).Currency == "USD" && m.Oath == "" && m.concluded() > m.limit("estate total")
		}, needed: "articles of an estate worth more than 3,000 USD need a sworn appraisal", hint: "oath: \"sworn before … on …\""},
		{id: "donation", each: giftLacks},
	}
}

// forUse reports whether the document is for one of the uses.
func (m *matter) forUse(uses ...string) bool {
	purpose := strings.ToLower(m.purpose())
	return slices.ContainsFunc(uses, func(u string) bool { return strings.Contains(purpose, u) })
}

// concluded is the value concluded, or its high end; 0 without.
func (m *matter) concluded() float64 {
	if m.sum == nil {
		return 0
	}
	text := m.sum.Conclusion.High
	if text == "" {
		text = m.sum.Conclusion.Amount
	}
	var v float64
	if _, err := fmt.Sscan(text, &v); err != nil {
		return 0
	}
	return v
}

// clashes reports whether the type of value does not fit the use, by uses.csv:
// the first row that the purpose speaks of decides.
func clashes(m *matter) bool {
	if m.Worth == nil || m.Worth.Type == "" {
		return false
	}
	for _, u := range m.uses {
		if m.forUse(u[0]) {
			return !strings.Contains(strings.ToLower(m.Worth.Type), u[1])
		}
	}
	return false
}

// untypedValuations are what others put on the item in a record without saying
// what type of value it is.
func untypedValuations(m *matter) []lack {
	var list []lack
	for i, v := range m.Valued {
		if m.record() && v.Type == "" {
			list = append(list, lack{fmt.Sprintf("valued[%d]", i), phrase.Say("the figure of %s needs what type of value it is", v.By), "type: retail replacement value, or not told"})
		}
	}
	return list
}

// unsaidApproaches are those neither used nor left out with a reason.
func unsaidApproaches(m *matter) []lack {
	if m.sum == nil {
		return nil
	}
	var list []lack
	for _, a := range m.sum.Approaches {
		if !a.Used && a.Reason == "" {
			list = append(list, lack{"worth.approaches", phrase.Say("the %s approach is neither used nor left out with a reason", phrase.Word(a.Name)), phrase.Say("approaches: {%s: \"left out because …\"}", a.Name)})
		}
	}
	return list
}

// courtLacks are what a court asks for beside.
func courtLacks(m *matter) []lack {
	if !m.forUse("court", "litigation") {
		return nil
	}
	c := m.Court
	if c == nil {
		c = &stone.Court{}
	}
	var list []lack
	for _, part := range []struct {
		key   string
		what  phrase.Line
		given bool
	}{
		{"exhibits", "what will be shown", c.Exhibits.Given},
		{"publications", "what the examiner published in the last ten years", c.Publications.Given},
		{"testimony", "the cases of the last four years with the examiner's testimony", c.Testimony.Given},
		{"pay", "what is paid for study and testimony", c.Pay != ""},
	} {
		if !part.given {
			list = append(list, lack{"court." + part.key, phrase.Say("a court asks for %s", part.what), phrase.Say("court: {%s: …}, or none", part.key)})
		}
	}
	return list
}

// giftLacks are what an appraisal of a gift asks for beside.
func giftLacks(m *matter) []lack {
	if !m.forUse("donation", "charit") {
		return nil
	}
	if m.Gift == nil {
		return []lack{{"gift", "the appraisal of a gift needs the day of the gift", "gift: {date: 2026-12-01, to: \"a museum\"}"}}
	}
	days := int(m.limit("gift days"))
	if m.Worth != nil && m.Worth.Effective.Given() && m.Gift.Date.Sub(m.Worth.Effective.Time) > time.Duration(days)*24*time.Hour {
		return []lack{{"gift.date", phrase.Say("the value holds on a day more than %d days before the gift", days), "value it nearer to the gift"}}
	}
	return nil
}

// certifiedRows are asked of what the signer of an appraisal certifies.
func certifiedRows() []requirement {
	return []requirement{
		{id: "cert-signed", path: "examiner", lacks: func(m *matter) bool { return m.bench == nil || m.bench.Examiners[m.Examiner].Name == "" },
			needed: "an appraisal needs who signs it", hint: "write examiners: {okafor: {name: \"…\"}} in bench.yaml"},
		{id: "cert-interest", path: "interest", lacks: func(m *matter) bool { return m.Interest.InItem == "" },
			needed: "an appraisal needs the issuer's interest in the item", hint: "interest: {in item: none, prior services: none, fee: fixed}"},
		{id: "cert-prior", path: "interest", lacks: func(m *matter) bool { return m.Interest.Prior == "" },
			needed: "an appraisal needs the services done on the item in the last three years, or that there were none", hint: "interest: {prior services: none}"},
		{id: "cert-fee", path: "interest", lacks: func(m *matter) bool { return m.Interest.Fee == "" },
			needed: "an appraisal needs how its fee is set", hint: "interest: {fee: fixed}"},
		{id: "cert-fee", path: "interest.fee", lacks: func(m *matter) bool {
			fee := strings.ToLower(m.Interest.Fee)
			return strings.Contains(fee, "%") || strings.Contains(fee, "per cent") || strings.Contains(fee, "percent")
		}, needed: "a fee that follows the value is not allowed", hint: "a fixed fee, or one by the hour"},
		{id: "seller-conflict", path: "sold_by_issuer", lacks: func(m *matter) bool { return m.Sold == nil },
			needed: "an appraisal needs whether its issuer sold the item", hint: "sold_by_issuer: false"},
	}
}
