package worth_test

import (
	"slices"
	"testing"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

func TestProblems(t *testing.T) {
	const comparable = `- {source: "an offer", date: 2026-09-20, weight: 1.48 ct, amount: "2790.00"}`
	for _, tt := range []struct {
		name, block   string
		subject       worth.Subject
		severity      stone.Severity
		path, message string
		why           string
	}{
		{"no weight", `lines: [{what: centre stone, per_carat: "1850"}]`, worth.Subject{}, stone.Error,
			"worth.lines[0]", `a price a carat needs a weight, and the line "centre stone" has none`, "a piece has no single weight"},
		{"per cent of nothing", `lines: [{what: markup, percent: 10 %, of: labour}]`, worth.Subject{}, stone.Error,
			"worth.lines[0].of[0]", "no line stands above", ""},
		{"per cent of a line below", "lines:\n- {what: a, amount: \"1\"}\n- {what: markup, percent: 10 %, of: labour}\n- {what: labour, amount: \"1\"}", worth.Subject{}, stone.Error,
			"worth.lines[1].of[0]", `the line "labour" does not stand above`, "the order is the order of the pencil"},
		{"per cent of itself", "lines:\n- {what: a, amount: \"1\"}\n- {what: markup, percent: 10 %, of: markup}", worth.Subject{}, stone.Error,
			"worth.lines[1].of[0]", `the line "markup" does not stand above`, "no circle"},
		{"per cent of an unknown line", "lines:\n- {what: labour, amount: \"1\"}\n- {what: markup, percent: 10 %, of: labor}", worth.Subject{}, stone.Error,
			"worth.lines[1].of[0]", `no line above is called "labor", there are: labour`, ""},
		{"two lines of a name", "lines:\n- {what: labour, amount: \"1\"}\n- {what: labour, amount: \"2\"}\n- {what: markup, percent: 10 %, of: labour}", worth.Subject{}, stone.Error,
			"worth.lines[2].of[0]", `2 lines above are called "labour"`, ""},
		{"gross without stones", `lines: [{what: metal, mass: 4.53 g, mass_is: gross, fineness: 750, per_gram_fine: "71"}]`, worth.Subject{}, stone.Error,
			"worth.lines[0].mass_is", "a gross mass cannot be lessened: the weight of the stones is not known", ""},
		{"stones heavier than the piece", `lines: [{what: metal, mass: 1 g, mass_is: gross, fineness: 750, per_gram_fine: "71"}]`, worth.Subject{Stones: "5.00"}, stone.Error,
			"worth.lines[0].mass", "the stones of 5.00 ct weigh more than the gross mass of 1 g", "5 ct are 1 g"},
		{"comparison without a weight", "comparables:\n" + comparable, worth.Subject{}, stone.Error,
			"worth.comparables[0]", "the comparison by carat needs the weight of both", ""},
		{"more than a quarter", "comparables:\n" + comparable, worth.Subject{Weight: "1.18"}, stone.Finding,
			"worth.comparables[0].weight", "its weight of 1.48 ct differs by more than a quarter from 1.18 ct", "0.30 is above 0.295"},
		{"a price step between", "price_steps: [1.50 ct]\ncomparables:\n" + comparable, worth.Subject{Weight: "1.50"}, stone.Finding,
			"worth.comparables[0].weight", "the price step at 1.50 ct lies between its weight of 1.48 ct and 1.50 ct", "a stone of 1.50 ct is on the upper side"},
		{"stale", "effective: 2027-10-14\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Warning,
			"worth.comparables[0].date", `the comparable "an offer" is 389 days old at the effective date, more than 365`, "24 days and a year"},
		{"stale by the file", "effective: 2026-10-14\ncomparables_valid: 14 days\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Warning,
			"worth.comparables[0].date", `the comparable "an offer" is 24 days old at the effective date, more than 14`, ""},
		{"after the effective date", "effective: 2026-09-01\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Warning,
			"worth.comparables[0].date", `the comparable "an offer" is dated 2026-09-20, after the effective date 2026-09-01`, ""},
		{"two comparables", "comparables:\n" + comparable + "\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Missing,
			"worth.conclusion", "2 comparables show 2865.41 to 2865.41: the value is the appraiser's to name, nothing is averaged", "nothing is averaged"},
		{"both", "conclusion: {from: both}\nlines: [{what: a, amount: \"2800\"}]\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Missing,
			"worth.conclusion", "a value from both approaches is the appraiser's to name, nothing is averaged", ""},
		{"open choice", "lines: [{what: a, amount: \"2800\"}]\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Warning,
			"worth.conclusion", "lines and comparables are there, and nothing says which the value follows: it follows cost", ""},
		{"another amount", "conclusion: {from: cost, amount: \"2900\"}\nlines: [{what: a, amount: \"2800\"}]", worth.Subject{}, stone.Finding,
			"worth.conclusion.amount", "the amount 2900.00 is not what the cost approach shows, 2800.00", ""},
		{"outside what both show", "conclusion: {from: both, amount: \"3000\"}\nlines: [{what: a, amount: \"2800\"}]\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Finding,
			"worth.conclusion.amount", "the amount 3000.00 is not what the two approaches show, 2800.00 to 2865.41", ""},
		{"range the wrong way", "conclusion: {low: \"3000\", high: \"2000\"}\nlines: [{what: a, amount: \"2800\"}]", worth.Subject{}, stone.Finding,
			"worth.conclusion.low", "the low end 3000.00 lies above the high end 2000.00", ""},
		{"half a range", "conclusion: {low: \"3000\"}\nlines: [{what: a, amount: \"2800\"}]", worth.Subject{}, stone.Finding,
			"worth.conclusion", "a range has two ends", ""},
		{"amount outside its range", "conclusion: {low: \"2000\", amount: \"2800\", high: \"2500\"}\nlines: [{what: a, amount: \"2800\"}]", worth.Subject{}, stone.Finding,
			"worth.conclusion.amount", "the amount 2800.00 lies outside its range of 2000.00 to 2500.00", ""},
		{"no multiple", "round_to: \"50\"\nconclusion: {amount: \"2790\"}\nlines: [{what: a, amount: \"2800\"}]", worth.Subject{}, stone.Warning,
			"worth.conclusion.amount", "2790.00 is no multiple of round_to 50", ""},
		{"rounds to nothing", "round_to: \"500\"\nlines: [{what: a, amount: \"200\"}]", worth.Subject{}, stone.Finding,
			"worth.round_to", "200.00 rounds to nothing at a step of 500", ""},
		{"step below the smallest unit", "round_to: \"0.005\"\nlines: [{what: a, amount: \"200\"}]", worth.Subject{}, stone.Error,
			"worth.round_to", "a step of 0.005 cannot be paid in EUR, whose smallest unit is 0.01", ""},
		{"nothing at all", "purpose: insurance", worth.Subject{}, stone.Missing,
			"worth", "there is nothing to conclude a value from", ""},
		{"tax without footing", "tax: {rate: 19 %}\nlines: [{what: a, amount: \"200\"}]", worth.Subject{}, stone.Error,
			"worth.tax", "the tax does not say whether the lines are with or without it", ""},
		{"cost called used", "approaches: {cost: used}\ncomparables:\n" + comparable, worth.Subject{Weight: "1.52"}, stone.Finding,
			"worth.approaches.cost", "the cost approach is called used, and nothing of it stands in the file", ""},
		{"concludes from what was left out", "approaches: {cost: left out because it misleads}\nlines: [{what: a, amount: \"200\"}]", worth.Subject{}, stone.Finding,
			"worth.approaches.cost", "the cost approach is left out, and the conclusion follows it", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, problems := worth.Appraise(worthOf(t, "currency: EUR\n"+tt.block), tt.subject)
			if len(problems) != 1 {
				t.Fatalf("got %d problems, want one: %+v", len(problems), problems)
			}
			if p := problems[0]; p.Severity != tt.severity || p.Path != tt.path || p.Message.String() != tt.message {
				t.Errorf("got %s %s: %s\nwant %s %s: %s (%s)", p.Severity, p.Path, p.Message, tt.severity, tt.path, tt.message, tt.why)
			}
		})
	}
}

func TestNoConcern(t *testing.T) {
	for name, subject := range map[string]worth.Subject{"exactly a quarter": {Weight: "1.184"}, "below the step": {Weight: "1.49"}} {
		w := worthOf(t, "currency: EUR\nprice_steps: [1.50 ct, 1.00 ct]\neffective: 2027-09-20\ncomparables:\n- {source: an offer, date: 2026-09-20, weight: 1.48 ct, amount: \"2790.00\"}")
		if _, problems := worth.Appraise(w, subject); len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

func TestUnknownCurrency(t *testing.T) {
	for code, hint := range map[string]string{"EURO": `did you mean "EUR"?`, "eur": `did you mean "EUR"?`, "€": `did you mean "EUR"?`, "UDS": "", "": ""} {
		r, problems := worth.Appraise(&stone.Worth{Currency: code}, worth.Subject{})
		if len(problems) != 1 || problems[0].Severity != stone.Error || problems[0].Path != "worth.currency" || r.Conclusion.Amount != "" {
			t.Errorf("%q: got %+v", code, problems)
			continue
		}
		if hint != "" && problems[0].Hint.String() != hint || problems[0].Hint == "" {
			t.Errorf("%q: got hint %q, want %q", code, problems[0].Hint, hint)
		}
	}
}

func TestConclusionOfTheAppraiser(t *testing.T) {
	w := worthOf(t, `
currency: EUR
round_to: "50"
tax: {rate: "19 %", lines: without, conclusion: with, comparables: with}
lines: [{what: a, amount: "2800"}]
comparables:
  - {source: one, date: 2026-09-20, weight: 1.48 ct, amount: "2790.00"}
  - {source: two, date: 2026-09-20, weight: 1.60 ct, amount: "3400.00", adjust: {colour: "-5 %", cut: "-2.5 %"}}
approaches: {cost: used, market: used, income: "left out because stones bear no income"}
conclusion: {from: both, low: "2850", amount: "3000", high: "3350", because: "the second is the closer match"}`)
	r, problems := worth.Appraise(w, worth.Subject{Weight: "1.52"})
	if len(problems) > 0 {
		t.Fatalf("problems: %v", problems)
	}
	if got := r.Comparables[1].Working[0].String(); got != "3400.00 / 1.60 ct x 0.95 (colour) x 0.975 (cut) x 1.52 ct = 2991.79" {
		t.Errorf("got %q (by hand: 2125 x 0.95 x 0.975 x 1.52 = 2991.7875)", got)
	}
	c := r.Conclusion
	if !c.Own || c.Low != "2850.00" || c.Amount != "3000.00" || c.High != "3350.00" || c.Tax != "with" || c.Because == "" || len(c.Working) > 0 {
		t.Errorf("got %+v", c)
	}
	if a := r.Approaches; len(a) != 3 || !a[0].Used || !a[1].Used || a[2].Used || a[2].Reason != "stones bear no income" {
		t.Errorf("got %+v", a)
	}
}

// Comparables without tax, concluded with it.
func TestComparableTax(t *testing.T) {
	w := worthOf(t, `
currency: EUR
tax: {rate: "19 %", conclusion: with, comparables: without}
comparables: [{source: one, date: 2026-09-20, weight: 1.48 ct, amount: "2790.00", adjust: {colour: "-5 %"}}]`)
	r, problems := worth.Appraise(w, worth.Subject{Weight: "1.52"})
	if len(problems) > 0 {
		t.Fatalf("problems: %v", problems)
	}
	if c := r.Comparables[0]; c.Amount != "3239.35" || len(c.Working) != 3 {
		t.Errorf("got %+v (by hand: 19 %% of 2722.14 = 517.2066)", c)
	}
	want := []string{"2790.00 / 1.48 ct x 0.95 (colour) x 1.52 ct = 2722.14", "tax: 19 % of 2722.14 = 517.21", "2722.14 + 517.21 = 3239.35 with tax"}
	if got := phrase.Strings(r.Comparables[0].Beside()); !slices.Equal(got, want) {
		t.Errorf("beside the amount with tax stand %q, want %q: none of them comes to it alone", got, want)
	}
}
