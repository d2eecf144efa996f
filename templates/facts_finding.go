package templates

// Finding is the one sentence that a document opens with.
type Finding struct {
	Subject Subject
	Name    string // the sentence "name"

	// One of the next five is true.
	Stated       bool // by the owner's word
	Contradicted bool
	Supported    bool // species, and variety if there is one, and no word of the name is open
	Material     bool // the species is supported, and the name holds an open word about growth
	Open         bool // the species is undecided

	Tested  bool     // some test was made
	Against []string // the claims that are contradicted
	Whether []string // what else is undecided, as "whether ..." clauses
	// Reported is what another laboratory's report alone says of the growth: the
	// sentence "reported.growth", or empty.
	Reported string
	Rivals   int // materials of other species that are left
}

// Whether is a clause about one undecided claim.
type Whether struct {
	Variety string // its name, for the claim of the variety
	Growth  string // for the claim of the growth; empty for undetermined
	Either  bool   // the name itself says natural or laboratory-grown
	Subject Subject
}

// Contradiction is a contradicted claim and how the examiner explains it.
type Contradiction struct {
	Claim       string // species, variety, growth, treatment
	Because     []string
	Explanation string // empty where none was given
	Last        bool   // the last of them, beside which the explanation stands
}

// Size is outline, cut and dimensions.
type Size struct {
	Subject    Subject
	Shape, Cut string
	Form       string   // shape and cut in words: "oval mixed cut"
	Measures   []string // "8.00 mm long"
	Sizes      string   // of pearls or a strand: "6.5 mm to 7.0 mm"
	Strand     string   // length of a strand
	InSetting  bool
	Hidden     []string // dimensions that the setting hides
}

// Measure is one dimension, or its two ends.
type Measure struct{ Low, High string }

// Weight is what is known of the weight.
type Weight struct {
	Subject Subject
	Mounted bool

	Measured   string // "1.520 ct", of all stones together
	Grams      string
	Trade      string // to two decimals by Rule; empty where it is the same
	ExceptNine bool   // rule: down, but a nine in the third place up; else to the nearest
	Before     bool   // weighed before it was set

	Estimated, Low, High string // 95 times in 100 between Low and High
	Each                 string // of one of several
	Method, Basis        string
	Agrees               bool // weighed and estimated agree, 2u
	Differs              bool // they differ, 3u

	Stated, StatedBy string
	None             string // why there is no weight
}

// Value is the conclusion of an appraisal.
type Value struct {
	Amount, Low, High string // Amount or the two ends, with the currency
	Purpose           string
	Market            string
	Effective         string
	Tax               string // with, without, or empty
}

// Price is a shop's asking price.
type Price struct {
	Amount  string
	Subject Subject
}

// Assignment is for whom and for what a document was made.
type Assignment struct {
	Kind                     Kind
	Subject                  Subject
	Client, Address, Contact string
	OwnStock                 bool
	StockNumber              string
	Purpose                  string
	Users                    []string
}

// Examination is when, where and by whom the stone was examined.
type Examination struct {
	Subject               Subject
	Tested                bool
	From, To              string // To is empty for one day
	Examiner, Credentials string
	Place                 string // empty for the practice
	Received              string
	Authorised            string // empty where it is the examiner
	OwnAuthority          bool   // the examiner authorised it
	Helpers               []string
	NoHelpers             bool
	Mounted               bool
	Cleaned               bool
	CleanedBy             []string
}

// Amendment is the document that this one takes the place of.
type Amendment struct {
	Number, Date, Because string
	Changes               []string
}

// Change is one field in which an amendment differs: New or Old is "" where it
// is not there; both are for what is no field.
type Change struct{ Field, Old, New string }

// Reported is what a claim rests on that no test made here supports.
type Reported struct {
	Issuer  string
	Growth  string
	Subject Subject
}
