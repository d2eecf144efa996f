package stone

// Worth is the value of an appraisal and the way to it. All prices are the
// user's; the program has none.
type Worth struct {
	Purpose     string            `yaml:"purpose" doc:"purpose of the valuation"`
	Type        string            `yaml:"type_of_value" doc:"type of value with its definition"`
	Source      string            `yaml:"definition_source" doc:"where the definition comes from"`
	Replacement string            `yaml:"replacement" words:"new|second-hand|copy|online" doc:"what kind of replacement"`
	Market      string            `yaml:"market" doc:"market level"`
	Sellers     string            `yaml:"sellers" doc:"who sells such goods on that market: jewellers with a shop"`
	Effective   Date              `yaml:"effective" doc:"day on which the value holds"`
	Currency    string            `yaml:"currency" need:"yes" doc:"ISO 4217 currency" eg:"EUR"`
	Lines       []WorthLine       `yaml:"lines" doc:"cost build-up, line by line"`
	Comparables []Comparable      `yaml:"comparables" doc:"sales and offers compared"`
	Tax         *Tax              `yaml:"tax" doc:"tax in or out"`
	RoundTo     Decimal           `yaml:"round_to" doc:"step that the conclusion is rounded to, once"`
	Approaches  map[string]string `yaml:"approaches" doc:"cost, market, income: used, or left out because"`
	Conclusion  *Conclusion       `yaml:"conclusion" doc:"what is concluded, and from what"`
	PriceSteps  []Weight          `yaml:"price_steps" doc:"weights at which prices a carat step"`
	Stale       Days              `yaml:"comparables_valid" doc:"age at which a comparable is called stale"`
	PriorSales  string            `yaml:"prior_sales" doc:"earlier sales of the item, or none known"`
	Terms       string            `yaml:"terms" doc:"in cash, or the terms"`
	Exposure    string            `yaml:"exposure_time" doc:"exposure time, if the definition contains it"`
}

// WorthLine is one amount of the cost build-up.
type WorthLine struct {
	What        string       `yaml:"what" need:"yes" doc:"what the line is for"`
	Amount      Decimal      `yaml:"amount" doc:"a plain amount"`
	PerCarat    Decimal      `yaml:"per_carat" doc:"price a carat, times the printed weight"`
	Weight      Weight       `yaml:"weight" range:"0.0001..100000" doc:"weight the price applies to, if not the stone's"`
	Item        int          `yaml:"item" range:"1..1000" doc:"piece: the stone, by its place in the list, whose weight the price applies to"`
	PerGramFine Decimal      `yaml:"per_gram_fine" doc:"price of a gram of fine metal"`
	Mass        Mass         `yaml:"mass" range:"0.001..100000" doc:"mass of the metal"`
	MassIs      string       `yaml:"mass_is" words:"net|gross" doc:"without or with stones"`
	Fineness    int          `yaml:"fineness" range:"1..1000" doc:"parts in a thousand"`
	Percent     Ratio        `yaml:"percent" range:"-100..1000" doc:"a markup or reduction"`
	Of          List[string] `yaml:"of" doc:"the lines that the per cent is of"`
	Note        string       `yaml:"note" doc:"printed"`
}

// Comparable is one sale or offer that the value is compared with.
type Comparable struct {
	Source string      `yaml:"source" need:"yes" doc:"where it was seen"`
	Date   Date        `yaml:"date" need:"yes" doc:"when" eg:"2026-09-20"`
	Weight Weight      `yaml:"weight" range:"0.0001..100000" doc:"its weight"`
	Amount Decimal     `yaml:"amount" need:"yes" doc:"its price" eg:"\"2790.00\""`
	Adjust Adjustments `yaml:"adjust" doc:"named per cents, one after another"`
	By     string      `yaml:"by" words:"carat|piece" doc:"compare by carat or as a whole"`
	Note   string      `yaml:"note" doc:"printed"`
}

// Tax says how tax is treated.
type Tax struct {
	Rate       Ratio  `yaml:"rate" range:"0..100" doc:"rate"`
	Included   *bool  `yaml:"included" doc:"the lines include it; older form of lines"`
	Lines      string `yaml:"lines" words:"with|without" doc:"lines are with or without tax"`
	Conclusion string `yaml:"conclusion" words:"with|without" doc:"the conclusion is with or without tax; like the lines if left out"`
	// Comparables are most often asked with the tax that a buyer pays.
	Comparables string `yaml:"comparables" words:"with|without" doc:"the prices of the comparables are with or without tax; like the conclusion if left out"`
}

// Conclusion says what the value is taken from.
type Conclusion struct {
	From    string  `yaml:"from" words:"cost|market|both" doc:"the approach it follows"`
	Low     Decimal `yaml:"low" doc:"low end of a range"`
	High    Decimal `yaml:"high" doc:"high end of a range"`
	Amount  Decimal `yaml:"amount" doc:"the amount concluded"`
	Because string  `yaml:"because" doc:"why"`
}

// Stock is what a shop knows of its own goods.
type Stock struct {
	Number   string `yaml:"number" doc:"stock number"`
	Supplier string `yaml:"supplier" doc:"supplier"`
	Price    *Price `yaml:"price" doc:"asking price, never called a value"`
}

// Price is an amount and its currency in two keys.
type Price struct {
	Amount   Decimal `yaml:"amount" need:"yes" doc:"amount"`
	Currency string  `yaml:"currency" need:"yes" doc:"ISO 4217 currency"`
}

// Owned is what an owner knows of a purchase.
type Owned struct {
	From       Date   `yaml:"from" doc:"since when"`
	Seller     string `yaml:"seller" doc:"from whom"`
	Paid       Money  `yaml:"paid" doc:"what was paid, with the currency"`
	Receipt    string `yaml:"receipt" doc:"where the receipt is"`
	Interest   string `yaml:"interest" doc:"full, or what share"`
	Provenance string `yaml:"provenance" doc:"history"`
}

// Insured is the policy.
type Insured struct {
	With   string `yaml:"with" doc:"insurer"`
	Policy string `yaml:"policy" doc:"policy number"`
	Sum    Money  `yaml:"sum" doc:"insured sum"`
	Until  Date   `yaml:"until" doc:"until when"`
}

// Valued is an earlier valuation by somebody.
type Valued struct {
	Date   Date   `yaml:"date" need:"yes" doc:"when"`
	By     string `yaml:"by" need:"yes" doc:"by whom"`
	Amount Money  `yaml:"amount" need:"yes" doc:"how much"`
	Type   string `yaml:"type" doc:"type of value"`
	Paper  string `yaml:"paper" doc:"where the paper is"`
}

// Use is what the document is for.
type Use struct {
	Purpose      string       `yaml:"purpose" doc:"intended use"`
	Users        List[string] `yaml:"users" doc:"who may rely on it"`
	Restrictions string       `yaml:"restrictions" doc:"restrictions on the item"`
	Copies       string       `yaml:"copies" doc:"who may have copies"`
}

// Scope is what was done and left out.
type Scope struct {
	Inspected  List[string] `yaml:"inspected" doc:"what was inspected"`
	Researched List[string] `yaml:"researched" doc:"what was researched"`
	LeftOut    []LeftOut    `yaml:"left_out" doc:"what was left out, and why"`
	Helpers    List[string] `yaml:"helpers" doc:"who helped, or none"`
}

// LeftOut is a step left out.
type LeftOut struct {
	What string `yaml:"what" need:"yes" doc:"what"`
	Why  string `yaml:"why" need:"yes" doc:"why"`
}

// Interest is the issuer's interest in the item.
type Interest struct {
	InItem string `yaml:"in item" doc:"none, or what"`
	Prior  string `yaml:"prior services" doc:"services on it in the last three years, or none"`
	Fee    string `yaml:"fee" doc:"how the fee is set"`
}
