package templates

// Turn is what one turn of a refractometer showed.
type Turn struct {
	Low, High string
	Over      bool // an upper edge lies beyond the limit
}

// ReadIndex is a reading of an index.
type ReadIndex struct {
	Turns  []Turn
	Spot   bool
	Over   bool // no edge below the limit
	Filter bool
	Poor   bool // poor contact
}

// ReadPolars is what crossed polars showed.
type ReadPolars struct {
	Sees, Figure string
	Directions   int
}

// ReadColours is what a dichroscope showed.
type ReadColours struct {
	Colours    []string
	Strength   string
	Directions int
}

// ReadSpectrum is what a spectroscope showed.
type ReadSpectrum struct {
	Lines, Bands, Bright []string // without unit
	NoLines              bool     // looked, none seen
	Cutoff               string
	Strength, Pattern    string
}

// ReadLamp is what an ultraviolet lamp showed.
type ReadLamp struct {
	Long, Short    string
	Afterglow      string // its colour
	Seconds        string
	NoAfterglow    bool
	Pattern        []string
	LongNM, ShortN string // wavelengths of the lamp
}

// ReadGravity is a reading of a specific gravity.
type ReadGravity struct {
	Weighed, Liquid, Value     bool // one of them, by the method
	InAir, InWater, InLiquid   []string
	After                      string // mass in air afterwards
	Water                      string // temperature
	Bath, BathDensity          string
	LiquidSG, Stone, CheckedBy string // of a liquid
	Given                      string // of a value
}

// ReadHardness is a scratch found or made.
type ReadHardness struct {
	Scratches, ScratchedBy []string
	Consent                string // to the scratch
}

// ReadShown is what an instrument that shows a word, or a few readings, showed.
type ReadShown struct {
	Shows     string
	Condition string // of the stone: cold, wet
	Readings  []string
	Through   []string
}

// ReadSeen is what somebody saw.
type ReadSeen struct {
	Sees      []string
	Nothing   bool // looked, nothing seen
	Power     int
	Corrected bool
	Lighting  []string
	Peaks     []string
	Matches   string
}

// ReadReport is another laboratory's report, quoted.
type ReadReport struct {
	Issuer, Number, Date string
	States               []string // "species corundum"
	Words                string
	Matched              []string
	Seen                 string // original, copy
}

// Stated is one thing that a quoted report states.
type Stated struct{ What, Text string }

// TestName is a test with the place on the stone where it was made.
type TestName struct {
	Number int // place in the list, from 1
	Kind   string
	Place  string
}

// TestLine is a test with all that is told of it, in the short form.
type TestLine struct {
	Name  string   // the sentence "tests.name"
	Read  string   // as read
	Value string   // reduced, with its uncertainty
	Aside string   // the sentence "tests.aside"
	Parts []string // of the sentences "note.*", the instrument last
	Note  string   // as written
}

// TestNote is the small line below a test.
type TestNote struct {
	Parts []string // of the sentences "note.*"
	Note  string   // as written
}

// Circumstance is one thing about how a test was made.
type Circumstance struct {
	Instrument string // as the bench file calls it
	Check      string // the sentence "tests.check"
	Light      string
	Date       string // if not the day of the examination
	By         string // if not the examiner of the document
}

// Check is the last check of an instrument: one of the four is true.
type Check struct {
	Valid, Overdue, Failed, None bool // none of them where nobody checks such an instrument
	Instrument                   string
	Reference, Date, Due         string
}

// Instrument is one of the bench.
type Instrument struct {
	Name, Kind, Maker, Serial, Software string
	Type                                string // prism, grating; "" for not told
	Limit, Readability                  string
	Wavelengths                         []string
	Check                               string // the sentence "tests.check"
	Certificate, CertificateU           string
	CertificateBy, CertificateDate      string
	NoCertificate                       bool   // there is none
	Service, ServiceDate                string // the last one
}

// Aside is a test that is printed and not judged.
type Aside struct{ Why string }

// Caution is a caution for whoever repeats a test.
type Caution struct{ Wording string }

// Eyes says whether the practice protects eyes from ultraviolet.
type Eyes struct{ Protected bool }
