package templates

// Limits is what is said of what a document cannot say.
type Limits struct {
	NotMade        []string
	ToldByOthers   []string
	Program, Table string
	Validity       string
	Copies         string
	Keep           string
}

// Spoken is an opinion given by word of mouth.
type Spoken struct{ Date, To, What string }

// LeftOut is a step left out and why.
type LeftOut struct{ What, Why string }

// Caption is what stands below a photo.
type Caption struct {
	Text     string
	Light    string
	GreyCard bool
	Number   int
	Subject  Subject
}

// Keeping is where a stone is kept, what was paid, and who insures it.
type Keeping struct {
	Subject                       Subject
	Location                      string
	From, Seller, Paid, Receipt   string
	Interest, Provenance          string
	Restrictions                  string
	With, Policy, Sum, Until      string
	Date, By, Amount, Type, Paper string // of an earlier valuation
}

// Verify is how a document can be checked.
type Verify struct {
	Number, Check string // Check is the two check digits
	UUID, Digest  string
	File, JSON    string   // names of the attached files
	Stones        []string // of a piece: the names of its stone files
}

// Ending is the last line of a document.
type Ending struct{ Title, Number string }
