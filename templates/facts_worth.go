package templates

// Worth is what is to be said of a value beside its figures.
type Worth struct {
	Purpose               string
	Users                 []string
	Restrictions          string
	Type, Source          string
	Replacement, Market   string
	Sellers               string // who sells on that market
	Ownership             string // full, or what share
	Receipt               string // none, or where it is
	Exposure              string
	Effective, Issued     string
	Past, Current, Future bool // the effective date against the date of issue
	Currency, Terms       string
	TaxRate               string
	TaxConclusion         string // with, without
	PriorSales            string
	Inspected, Researched []string
	LeftOut               []string // "worth.leftout"
	Helpers               []string
	NoHelpers             bool
	InItem, Prior, Fee    string
	NoInterest, NoPrior   bool
	Sold, NotSold         bool
	Treated               []string
	Standards             []string // that the signer states to have followed
	Oath                  string
	GiftDate, GiftTo      string
}

// Court is what a court asks for beside the rest; an empty list was looked for.
type Court struct {
	Exhibits, Publications, Testimony []string
	Pay                               string
}

// Approach is one of the ways to a value.
type Approach struct {
	Name   string // cost, market, income
	Used   bool
	Reason string // why it was left out
}

// Comparison is one comparable.
type Comparison struct{ Source, Note string }

// Conclusion is what is concluded.
type Conclusion struct {
	Amount, Low, High string // with the currency
	From              string // cost, market, both
	Own               bool   // the appraiser's choice, not worked out
	Tax               string // with, without, or empty
	Because           string
}

// Line is a line of a calculation.
type Line struct{ What, Note string }

// Span is the lowest and the highest of something.
type Span struct{ Low, High string }
