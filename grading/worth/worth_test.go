package worth_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// worthOf reads the worth of a stone file whose block is given without its
// indentation.
func worthOf(t *testing.T, block string) *stone.Worth {
	t.Helper()
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	file := "stonewrit: 1\nstone: T-1\nreport: appraisal\nexamined: 2026-10-14\nexaminer: okafor\nopinion: {species: corundum}\nworth:\n  " +
		strings.ReplaceAll(strings.TrimSpace(block), "\n", "\n  ") + "\n"
	s, problems := stone.Read("worth.yaml", []byte(file), table)
	for _, p := range problems {
		t.Fatalf("%s: %s (%s)", p.Where("worth.yaml"), p.Message, p.Hint)
	}
	return s.Worth
}

const contractLines = `
currency: EUR
lines:
  - {what: centre stone, per_carat: "1850.00"}
  - {what: metal, mass: 4.20 g, fineness: 750, per_gram_fine: "71.40"}
  - {what: labour, amount: "240.00"}
round_to: "50"
`

// The figures 2812.00 + 224.91 + 240.00 = 3276.91 and 3900 or 3300 by footing
// stand in the project's contract; 3899.52 is by hand: 622.6129 rounds to 622.61.
func TestContractExample(t *testing.T) {
	for _, tt := range []struct {
		name, tax                    string
		taxAmount, onFooting, amount string
		warnings                     int
		why                          string
	}{
		{"no tax", "", "", "", "3300.00", 0, "3276.91 to the nearest 50"},
		{"older form", `tax: {rate: "19 %", included: false}`, "", "", "3300.00", 1, "the older form leaves the conclusion open; it is told"},
		{"taken with tax", `tax: {rate: "19 %", lines: without, conclusion: with}`, "622.61", "3899.52", "3900.00", 0, "19 % of 3276.91 added once"},
		{"with stays with", `tax: {rate: "19 %", lines: with, conclusion: with}`, "", "", "3300.00", 0, "nothing to add"},
		{"taken out", `tax: {rate: "19 %", lines: with, conclusion: without}`, "523.20", "2753.71", "2750.00", 0, "3276.91 / 1.19 = 2753.7059, and the rest is tax"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r, problems := worth.Appraise(worthOf(t, contractLines+tt.tax), worth.Subject{Weight: "1.520"})
			want := []struct {
				says, beside []string
				amount       string
			}{
				{[]string{"1.520 ct x 1850.00 = 2812.00"}, []string{"1.520 ct x 1850.00"}, "2812.00"},
				{[]string{"4.20 g x 750/1000 x 71.40 = 224.91"}, []string{"4.20 g x 750/1000 x 71.40"}, "224.91"},
				{nil, nil, "240.00"},
			}
			for i, w := range want {
				if got := r.Lines[i].Step; got.Amount != w.amount || !slices.Equal(phrase.Strings(got.Says()), w.says) || !slices.Equal(phrase.Strings(got.Beside()), w.beside) {
					t.Errorf("line %d: got %q, want %q", i, got, w)
				}
			}
			if got := phrase.Strings(r.Cost.Says()); !slices.Equal(got, []string{"2812.00 + 224.91 + 240.00 = 3276.91"}) {
				t.Errorf("sum: got %q", got)
			}
			if tt.onFooting == "" != (r.CostTaxed == nil) || r.CostTaxed != nil && (r.CostTaxed.Amount != tt.onFooting || r.Tax.Amount != tt.taxAmount) {
				t.Errorf("tax: got %+v, %+v, want %s to %s: %s", r.CostTaxed, r.Tax, tt.taxAmount, tt.onFooting, tt.why)
			}
			if r.Conclusion.Amount != tt.amount || r.Conclusion.From != "cost" || r.Conclusion.Own {
				t.Errorf("conclusion: got %+v, want %s: %s", r.Conclusion, tt.amount, tt.why)
			}
			if len(problems) != tt.warnings {
				t.Errorf("problems: got %v, want %d", problems, tt.warnings)
			}
		})
	}
}

// 2790.00 / 1.48 x 0.95 x 1.52 = 2722.14 stands in the project's contract.
func TestContractComparable(t *testing.T) {
	w := worthOf(t, `
currency: EUR
effective: 2026-10-14
comparables:
  - {source: "an offer", date: 2026-09-20, weight: 1.48 ct, amount: "2790.00", adjust: {colour: "-5 %"}}`)
	r, problems := worth.Appraise(w, worth.Subject{Weight: "1.52"})
	if len(problems) > 0 {
		t.Errorf("problems: %v", problems)
	}
	c := r.Comparables[0]
	if c.Amount != "2722.14" || c.Working[0].String() != "2790.00 / 1.48 ct x 0.95 (colour) x 1.52 ct = 2722.14" {
		t.Errorf("got %q, %s", c.Working, c.Amount)
	}
	if c.PerCarat != "1885.14" || c.Days != 24 || c.Stale || len(c.Concerns) != 0 {
		t.Errorf("got %+v", c)
	}
	if r.Conclusion.From != "market" || r.Conclusion.Amount != "2722.14" {
		t.Errorf("one comparable alone: got %+v", r.Conclusion)
	}
}

// The court adjusted a comparable by size as a whole and took a third off for
// its metal and small diamonds: rows of testdata/check-values.csv.
func TestCourtComparable(t *testing.T) {
	f, err := os.Open("testdata/check-values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) != 4 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	appraise := func(adjust string) worth.Comparison {
		w := worthOf(t, "currency: USD\ncomparables:\n  - {source: a sale, date: 1992-01-01, weight: 6.275 ct, amount: \"19000\", by: piece"+adjust+"}")
		r, problems := worth.Appraise(w, worth.Subject{Weight: "8.00"})
		if len(problems) > 0 {
			t.Errorf("6.275 ct lies within a quarter of 8 ct: %v", problems)
		}
		return r.Comparables[0]
	}
	for _, row := range rows[1:] {
		source := row[5] + ", " + row[6]
		want, _ := strconv.ParseFloat(row[2], 64)
		var got worth.Comparison
		switch {
		case strings.HasSuffix(row[1], "size adjustment"):
			r, _ := worth.Appraise(worthOf(t, "currency: USD\ncomparables:\n  - {source: a sale, date: 1992-01-01, weight: 6.275 ct, amount: \"100\"}"), worth.Subject{Weight: "8.00"})
			byCarat, _ := strconv.ParseFloat(r.Comparables[0].Amount, 64)
			if tol, _ := strconv.ParseFloat(row[4], 64); byCarat-100 < want-tol || byCarat-100 > want+tol {
				t.Errorf("8 ct by carat from 6.275 ct: got %v %%, want %v (%s)", byCarat-100, want, source)
			}
			continue
		case row[1] == "19000 x 1.275":
			got = appraise(`, adjust: {size: "27.5 %"}`)
		case strings.HasPrefix(row[1], "24225 less one third"):
			got = appraise(`, adjust: {size: "27.5 %", metal and small diamonds: -1/3}`)
			if got.Working[0].String() != "19000 x 1.275 (size) x (1 - 1/3) (metal and small diamonds) = 16150.00" {
				t.Errorf("working: got %q", got.Working)
			}
		default:
			t.Fatalf("nothing checks the row %q", row[1])
		}
		if v, _ := strconv.ParseFloat(got.Amount, 64); v != want || !got.ByPiece {
			t.Errorf("%s: got %s, want %s (%s)", row[1], got.Amount, row[2], source)
		}
	}
}

func TestLines(t *testing.T) {
	for _, tt := range []struct {
		name, currency, line string
		subject              worth.Subject
		working              []string
		amount               string
		why                  string
	}{
		{"estimated weight", "EUR", `per_carat: "1850.00"`, worth.Subject{Weight: "1.49", Estimated: true},
			[]string{"1.49 ct (estimated) x 1850.00 = 2756.50"}, "2756.50", "an estimated weight says so"},
		{"own weight", "EUR", `per_carat: "420.00", weight: 0.36 ct`, worth.Subject{Weight: "1.52"},
			[]string{"0.36 ct x 420.00 = 151.20"}, "151.20", "the line's weight, not the stone's"},
		{"gross metal", "EUR", `mass: 4.53 g, mass_is: gross, fineness: 750, per_gram_fine: "71.40"`, worth.Subject{Stones: "1.64"},
			[]string{"4.53 g gross - 1.64 ct of stones x 0.2 g = 4.202 g net", "4.202 g x 750/1000 x 71.40 = 225.02"}, "225.02", "by hand: 4.202 x 0.75 x 71.4 = 225.0171"},
		{"net metal", "EUR", `mass: 4.20 g, mass_is: net, fineness: 585, per_gram_fine: "71.40"`, worth.Subject{},
			[]string{"4.20 g x 585/1000 x 71.40 = 175.43"}, "175.43", "by hand: 2.457 x 71.4 = 175.4298"},
		{"mass in carat", "EUR", `mass: 21 ct, fineness: 750, per_gram_fine: "71.40"`, worth.Subject{},
			[]string{"4.2 g x 750/1000 x 71.40 = 224.91"}, "224.91", "a carat is 0.2 g"},
		{"half up", "EUR", `per_carat: "0.25", weight: 0.50 ct`, worth.Subject{},
			[]string{"0.50 ct x 0.25 = 0.13"}, "0.13", "0.125 rounds away from zero; to even it would be 0.12"},
		{"half down below zero", "EUR", `amount: "-0.125"`, worth.Subject{},
			[]string{"-0.125 = -0.13"}, "-0.13", "away from zero on either side"},
		{"no binary fraction", "EUR", `per_carat: "1.005", weight: 1 ct`, worth.Subject{},
			[]string{"1 ct x 1.005 = 1.01"}, "1.01", "as a binary fraction 1.005 lies below the half"},
		{"no decimals", "JPY", `per_carat: "185000", weight: 1.523 ct`, worth.Subject{},
			[]string{"1.523 ct x 185000 = 281755"}, "281755", "the yen has no smaller unit (ISO 4217)"},
		{"three decimals", "KWD", `amount: "12.5"`, worth.Subject{}, nil, "12.500", "the dinar of Kuwait has 1000 fils (ISO 4217)"},
		{"amount as written", "EUR", `amount: "240"`, worth.Subject{}, nil, "240.00", "nothing was rounded, so there is no working"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r, problems := worth.Appraise(worthOf(t, "currency: "+tt.currency+"\nlines: [{what: a line, "+tt.line+"}]"), tt.subject)
			if len(problems) > 0 {
				t.Fatalf("problems: %v", problems)
			}
			if l := r.Lines[0]; l.Amount != tt.amount || !slices.Equal(phrase.Strings(l.Says()), tt.working) {
				t.Errorf("got %q = %s, want %q = %s: %s", l.Working, l.Amount, tt.working, tt.amount, tt.why)
			}
			if r.Cost.Amount != tt.amount || r.Cost.Working != nil {
				t.Errorf("the sum of one line: got %+v", r.Cost)
			}
		})
	}
}

func TestPercentOfLines(t *testing.T) {
	r, problems := worth.Appraise(worthOf(t, contractLines+`
`), worth.Subject{Weight: "1.520"})
	if len(problems) > 0 || r.Cost == nil {
		t.Fatal(problems)
	}
	w := worthOf(t, strings.Replace(contractLines, "round_to: \"50\"", "", 1)+`
  - {what: markup, percent: 10 %, of: [metal, labour]}
  - {what: discount, percent: -5 %, of: centre stone}`)
	r, problems = worth.Appraise(w, worth.Subject{Weight: "1.520"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for i, want := range []string{"10 % of 464.91 (metal 224.91 + labour 240.00) = 46.49", "-5 % of 2812.00 (centre stone 2812.00) = -140.60"} {
		if got := phrase.Strings(r.Lines[3+i].Says()); !slices.Equal(got, []string{want}) {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if want := "2812.00 + 224.91 + 240.00 + 46.49 - 140.60 = 3182.80"; r.Cost.Working[0].String() != want {
		t.Errorf("got %q, want %q", r.Cost.Working, want)
	}
}
