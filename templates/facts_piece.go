package templates

// Piece is a piece of jewellery in short.
type Piece struct {
	Subject Subject
	Metals  []string // each as it may be called: "yellow 18 K gold (750 per mille)"
	ByMass  bool     // they stand by falling mass
	Marked  bool     // the fineness of every metal is taken from marks alone
	Items   []string // the sentences "piece.item"
	NoItems bool     // the file says that there are no stones
}

// Item is one entry of a piece: a stone with a file of its own, or small ones
// counted together.
type Item struct {
	Number, Of int
	Count      int
	Counted    bool
	Name       string // the sentence "name"
	KnownBy    string // what the name of counted ones rests on
	Supported  bool   // species, and variety if there is one
	Against    []string
	Stated     bool
	Tested     bool

	Form, Size string // "round brilliant", "1.98 mm to 2.02 mm across"
	Weight     string // of all of them
	Basis      string // weighed, estimated, stated
	StatedBy   string
	Setting    string
	Place      string
	Colour     string // of counted ones, as graded or described
	Clarity    string
	System     string
	Condition  string
	Note       string
}

// Total is the weight of the stones of one name that stand in several items.
type Total struct {
	Name   string
	Count  int
	Items  []string // their numbers
	Weight string
	Basis  string // of the least certain
}

// Metal is the metal of one part.
type Metal struct {
	Part, Name string
	KnownBy    string
	Result     string
	Consent    string
	Unlisted   bool     // a fineness that is no recommended class
	Classes    []string // the recommended ones
	NoLayer    bool     // looked, none
	Layer      string   // the metal on top
	LayerDepth string
	Worn       bool
	Alloy      []string
	Mass       string
	Exempt     string
	Judged     []string // the sentences "metal.judged"
	Note       string
}

// Judged is what one rule says of a measured fineness.
type Judged struct {
	Law, Measured, Lowest string
	Holds                 bool
}

// Mass is the mass of a piece.
type Mass struct {
	Gross, Net, Stones string
	How                string // how a net mass was found, as written
	Reckoned           bool   // the net mass was worked out here
	Unknown            bool   // the weight of some stone is not known
}

// PieceSize is the size of a piece.
type PieceSize struct{ Parts []string }

// Construction is how a piece is made.
type Construction struct{ Words, ByHand string }
