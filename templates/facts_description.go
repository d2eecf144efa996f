package templates

// ByLight is a colour in one light.
type ByLight struct{ Light, Colour string }

// Colour is the colour of a stone.
type Colour struct {
	Subject              Subject
	Words, Munsell       string
	Plain                string // name worked out from Munsell, where Words say another
	Light, Zoning        string
	Changes              []string // the sentence "description.change"
	Transparency, Lustre string
}

// Clarity is the clarity in plain words.
type Clarity struct {
	Subject Subject
	Words   string
	Seen    []string // what magnification showed
	Power   int
}

// Cut is how a cut performs, and its proportions.
type Cut struct {
	Subject                  Subject
	HasWindow, HasExtinction bool
	Window, Extinction       Tenths   // of the face
	Judged                   []string // "finish good"
	Proportions              []string // "table 57 %"
	Round                    bool     // per cents are of the mean diameter, else of the width
	Edges                    []string // girdle and culet
	Facets                   int
}

// Tenths is a part of the face, in tenths.
type Tenths struct{ Tenths int }

// Diamond is the grades of a diamond.
type Diamond struct {
	Subject              Subject
	Grades               []string // "colour F to H"
	Seen                 []string // what is no grade: fluorescence, girdle, culet
	System, ComparedWith string
	Mounted              bool
}

// Pearl is the description of pearls.
type Pearl struct {
	Subject            Subject
	Parts              []string // "near round", "of high lustre"
	Nacre, NacreMethod string
	Matching, Drilled  string
}

// Opal is the description of an opal.
type Opal struct {
	Body, Play, Base string
	Colours          []string
}

// Phenomenon is a play of light.
type Phenomenon struct {
	Phenomena    []string
	NoPhenomenon bool   // looked for, none seen
	Phenomenon   string // as described
	Rays         int    // of a star
	Sharpness    string
	Centred      bool
	OffCentre    bool
}

// Origin is a country of origin as an opinion.
type Origin struct {
	Country, Basis string
	NotDetermined  bool
}

// Mark is a stamp or an inscription.
type Mark struct {
	Text, Where, How, Read string
}

// Words is free text.
type Words struct{ Text string }

// Treatment is one treatment of the opinion, disclosed.
type Treatment struct {
	Name          string // empty in "treatment.named" where Wording begins with it
	Amount, Where string // few, several, most
	Wording       string // sentences that disclose it
	Care          string
	Radioactivity string
	MayFade       bool // and Wording does not say so
}

// Treatments is what is to be said of all treatments together.
type Treatments struct {
	Subject     Subject
	Name        string   // what such material is called: "corundum"
	Named       []string // treatments of the opinion
	Wordings    []string // what discloses them
	NotExamined bool
	NoneSeen    bool
	Magnified   bool
	Stated      bool // by the owner's word
	Supported   bool
	Issuer      string // of the report that alone supports it, or empty
	Undecided   bool
	Told        []string // told by seller or owner, not seen here
	Customary   []string // commonly done, neither seen nor excluded
}

// Care is how a stone is kept and cleaned.
type Care struct {
	Subject Subject
	Name    string
	No      []string // what is to be kept away from it
	Careful []string
	Yes     []string
	Note    string
	Treated bool // a treatment asks for care of its own
	Unknown bool // the table has no row; the careful answer is no
	Wash    bool // water and soap do no harm
	// Fissures were seen, and make some of the advice stricter.
	Fissures bool
}

// History is what else moves the value of an item.
type History struct {
	Told []string // the sentences "history.*"
	Not  []string // what is not determined, as words "history.*"
}

// Reason is a property that was not graded, and why.
type Reason struct{ What, Why string }
