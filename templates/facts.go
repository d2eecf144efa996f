package templates

// The structs of this file and of the files facts_*.go are what sentences are
// filled with. Every figure is text that is ready to print, with its unit, a
// no-break space between the two and the decimal sign of the language; every
// date is text; a field that nothing is known of is empty and counts as false
// in an if. Words of the stone file (an outline, a light) come as the file has
// them; the function word turns them into words of the language.

// None is for sentences that need nothing.
type None struct{}

// List is for the joining of a list of two or more: all but the last, and the
// last.
type List struct {
	Before []string
	Last   string
}

// Day is a day of the calendar, for the sentence that prints one.
type Day struct{ Year, Month, Day int }

// Subject is what the document is about, for grammar: one stone or several, or
// pearls.
type Subject struct {
	Many  bool // more than one
	Count int  // how many, 1 for one
	// Pearl is set for pearls of nature or culture. The word alone would mean
	// natural ones, so sentences speak of items.
	Pearl bool
	// Piece is the kind of a piece of jewellery, "ring"; empty for a stone.
	Piece string
	Items int // of a piece
	// Reference is the stone file's own reference.
	Reference string
}

// Kind is the kind of document: one of the three is true.
type Kind struct {
	Appraisal, Note, Record bool
	Sold                    bool // an appraisal by the one who sold the stone
}

// Name is what a stone is called.
type Name struct {
	Species, Variety string // Variety is empty where only the species is named
	Narrow           string // the narrower of the two
	Diamond, Pearl   bool

	// Growth is one of natural, cultured, laboratory-grown, artificial,
	// composite, or empty for undetermined. Natural material is called natural
	// only where Shown is true, but a diamond always.
	Growth, Method, Water string
	Shown                 bool // the tests support the growth

	// Facets is the number of facets, or the shape, of a diamond that has too few
	// facets for the bare word.
	Facets     string
	Imitates   string  // what it is sold or worn as
	Layers     []Layer // of an assembled stone
	Bound      bool    // held together by glass
	Treatments []string
	Subject    Subject
}

// Layer is one part of an assembled stone.
type Layer struct{ Part, Material string }
