package worth

import "stonewrit/grading/phrase"

// A Subject is what the worth is of, as far as the arithmetic needs it.
type Subject struct {
	Weight    string // carats as printed, decimal digits; "" where no single weight is
	Estimated bool   // the weight is an estimate, and the working says so
	// Stones is the carats of all stones set, to lessen a gross mass: decimal
	// digits, those of several joined by " + "; "" where not known.
	Stones string
	Items  []Item // of a piece, in the order of the document
}

// An Item is one stone of a piece, or several alike.
type Item struct {
	Carats    string // as printed, of all of them together; "" where not known
	Estimated bool
}

// A Step is an amount and the working that leads to it.
type Step struct {
	Working []Reckoning
	Amount  string
}

// Says is the whole working: "1.520 ct x 1850.00 = 2812.00".
func (s Step) Says() []phrase.Line {
	var list []phrase.Line
	for _, r := range s.Working {
		list = append(list, r.Says())
	}
	return list
}

// Beside is the working to stand beside the amount: what comes to the amount is
// told without it, "1.520 ct x 1850.00".
func (s Step) Beside() []phrase.Line {
	var list []phrase.Line
	for _, r := range s.Working {
		said := r.Says()
		if r.Result == figure(s.Amount) {
			said = r.Of
		}
		list = append(list, said)
	}
	return list
}

// A Reckoning is one line of a working.
type Reckoning struct {
	Of     phrase.Line // "1.520 ct x 1850.00"
	Result phrase.Line // "2812.00", "4.252 g net", "3899.52 with tax"
}

// Says is the line with its result.
func (r Reckoning) Says() phrase.Line { return phrase.Say("%s = %s", r.Of, r.Result) }

// String is the line in English.
func (r Reckoning) String() string { return r.Says().String() }

// Result is the arithmetic of an appraisal, ready to print. Amounts are decimal
// text in the decimals of the currency.
type Result struct {
	Currency     string // ISO 4217
	SmallestUnit string // of the currency: "0.01"
	Lines        []Line
	Cost         *Step // sum of the lines; nil without lines
	CostTaxed    *Step // the sum on the footing of the conclusion; nil where tax changes nothing
	Tax          *Tax
	Comparables  []Comparison
	Low, High    string // lowest and highest that the comparables show; "" without
	Approaches   []Approach
	Conclusion   Conclusion
}

// A Line is one line of the cost build-up.
type Line struct {
	What string
	Step
	Note string
}

// Tax tells how tax was treated.
type Tax struct {
	Rate       string // per cent
	Lines      string // with, without
	Conclusion string // with, without
	Amount     string // tax added or taken out; "" where neither
}

// A Comparison is one comparable taken to the subject.
type Comparison struct {
	Source, Date, Weight, Price string // as written
	ByPiece                     bool
	PerCarat                    string // its price a carat, rounded; "" by piece
	Step
	Days     int // days before the effective date; below zero after it
	Stale    bool
	Concerns []phrase.Line // why a reader should look twice
	Note     string
}

// An Approach is one of the three ways to a value.
type Approach struct {
	Name   string // cost, market, income
	Used   bool
	Reason string // why it was left out, as written; "" where nobody said
}

// A Conclusion is the value concluded: an amount, a range, or both.
type Conclusion struct {
	From              string // cost, market, both
	Amount, Low, High string
	Working           []Reckoning // that leads to Amount
	Own               bool        // the amount or range is the appraiser's choice, not computed
	Tax               string      // with, without, or "" where no tax is mentioned
	Because           string
}
