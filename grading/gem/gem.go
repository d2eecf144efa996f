// Package gem is the reference table of the program: gem materials with the
// natural spread of their constants, their usual treatments, the features seen
// in them and what those features can and cannot show, and the care they need.
//
// All figures stand in the CSV files under data, one row a fact, each row with
// a source column that names an entry of data/SOURCES.md or says "from memory"
// or "common practice". This package reads them, refuses rows without a source
// and answers questions of name and kinship; it does not judge a stone.
package gem

import "math"

// A Range is a closed interval of a published figure. The zero Range means
// that the table does not have the figure.
type Range struct{ Min, Max float64 }

// Known reports whether the table has the figure.
func (r Range) Known() bool { return r != Range{} }

// Mid is the middle of the range.
func (r Range) Mid() float64 { return (r.Min + r.Max) / 2 }

// Distance is how far v lies outside the range; 0 inside it.
func (r Range) Distance(v float64) float64 {
	return max(r.Min-v, v-r.Max, 0)
}

// Union is the smallest range that holds both; an unknown range adds nothing.
func (r Range) Union(s Range) Range {
	switch {
	case !r.Known():
		return s
	case !s.Known():
		return r
	}
	return Range{math.Min(r.Min, s.Min), math.Max(r.Max, s.Max)}
}

// Level says how narrow a name is.
type Level string

// The levels of the table, from the widest name to the narrowest. A
// counterpart is a product made by people with the constants of its parent
// species: laboratory-grown corundum by flame fusion, for example.
const (
	Group       Level = "group"
	Species     Level = "species"
	Variety     Level = "variety"
	Counterpart Level = "counterpart"
)

// Growth says how a material came to be.
type Growth string

// The kinds of growth of a stone file.
const (
	Natural         Growth = "natural"
	Cultured        Growth = "cultured"
	LaboratoryGrown Growth = "laboratory-grown"
	Artificial      Growth = "artificial"
	Composite       Growth = "composite"
)

// Optic is the optic structure of a material as the bench meets it.
type Optic string

// The optic structures. Aggregate stands for fine-grained material that stays
// light between crossed polars, opaque for material that lets no light through.
const (
	Isotropic Optic = "isotropic"
	Uniaxial  Optic = "uniaxial"
	Biaxial   Optic = "biaxial"
	Aggregate Optic = "aggregate"
	Opaque    Optic = "opaque"
)

// A Material is one entry of the table.
type Material struct {
	Name     string
	Synonyms []string // other right names, by name
	Level    Level
	Parent   string // one level up: the species of a variety or counterpart, the group of a species; "" at the top
	Class    string // mineral, rock, organic, glass, plastic, crystal (grown, no natural counterpart), composite
	Growth   Growth // what material of this row is; natural for a species that also has grown counterparts
	Method   string // of a counterpart: flame fusion, pulled, flux, hydrothermal, high pressure, vapour, ...

	// GrownMet tells, of a species, whether laboratory-grown material of gem
	// quality is met in the trade ("yes", "no", "" unknown), and GrownAsOf the
	// year of that statement.
	GrownMet, GrownAsOf string

	Optic           Optic
	Sign            string // "+", "-", "+/-" or "" for none or unknown
	SmallAxialAngle bool   // biaxial, and its figure may pass for uniaxial
	Strain          bool   // strain often imitates double refraction in it or, if it is uniaxial, opens its cross to a biaxial figure

	// Low and High are the ranges of the lower and of the higher index edge at
	// the sodium line; equal for isotropic material; for aggregates the ends of
	// the range in which a spot reading falls.
	Low, High     Range
	Birefringence Range
	SG            Range
	Hardness      Range // Mohs
	Dispersion    Range // B to G
	// Joint, if not empty, is the line or polygon of end members in index and
	// specific gravity for solid solutions and glass, and JointSG the half
	// width in specific gravity around it. JointShape is "line" for a line
	// through the corners in their order, "hull" for the area they enclose.
	Joint      []Corner
	JointShape string
	JointSG    float64

	Thermal    string // of a thermal tester: "diamond", "not diamond", "" unknown
	Electrical string // "insulator", "conductor", "either", ""
	Magnet     string // "none", "weak", "strong", "either", ""
	Filter     []string
	Cleavage   string
	Porous     bool
	Colours    []string
	Looks      []string // usual transparency: transparent, translucent, opaque

	Absorption  []Absorption
	Glow        []Glow
	Pleochroism []Pleochroism
	Treatments  []TreatmentUse
	Imitations  []string // materials it is usually confused with or imitated by
	Care        Care
	Note        string // what a reader of the row must know, "" if nothing

	OpticsSource, SGSource, Source string
}

// A Corner is one end member of a solid solution. Index is the mean of its
// lowest and highest index, so the middle of the two edges of a reading is what
// compares with it.
type Corner struct {
	Name      string
	Index, SG float64
	// Birefringence at this corner, where it follows composition; unknown
	// elsewhere.
	Birefringence Range
	Source        string
}

// Frequency says how dependable a published sign of a material is.
type Frequency string

// How often material of the row shows the sign.
const (
	Always    Frequency = "always"
	Often     Frequency = "often"
	Sometimes Frequency = "sometimes"
	Never     Frequency = "never"
)

// Absorption is one line, band, cutoff or emission line of a spectrum, in nm.
type Absorption struct {
	Kind      string // line, band, cutoff, emission
	From, To  float64
	Cause     string
	Frequency Frequency
	Colours   []string // the colours of stone it applies to; empty: all
	Source    string
}

// Glow is what a lamp makes a material do.
type Glow struct {
	Wave      string // long, short
	Colours   []string
	Frequency Frequency
	Cause     string
	Source    string
}

// Pleochroism is what the dichroscope shows in stones of one body colour.
type Pleochroism struct {
	Body     string // body colour
	Colours  []string
	Strength string // weak, distinct, strong
	Source   string
}

// TreatmentUse says of one material how usual a treatment is and where it can
// be seen at all.
type TreatmentUse struct {
	Treatment string
	Seen      string    // bench, laboratory, nowhere
	Customary Frequency // always, often, sometimes
	Source    string
}

// A Treatment is one of the words that a stone file may use. A treatment can
// be a kind of another one, which Within names: "oil" is a kind of "fracture
// filled". What proves the narrower word proves the wider one; what excludes
// the wider word excludes the narrower one.
type Treatment struct {
	Name          string
	Within        string // the wider word, "" if none
	Synonyms      []string
	Permanence    string // permanent, may fade, not permanent
	Disclosure    string // general, specific
	Wording       string // the plain sentence that discloses it
	Care          string // special care in words, "" if none
	Radioactivity string // what is to be said of radioactivity, "" if nothing
	Source        string
}

// A Feature is a term for something that speaks of species, growth or
// treatment: an inclusion or mark seen under magnification, a pattern of lines
// in the spectrum, or a pattern of glow under a lamp.
type Feature struct {
	Term     string
	Synonyms []string
	SeenBy   string // magnification, spectrum, luminescence
	Place    string // of what magnification shows: body, filler, surface, join; nowhere for nothing seen
	NotGlass bool   // glass cannot hold it

	// A spectrum shows the feature when it shows every one of Lines, in nm; a
	// feature without lines is only ever named by the examiner.
	LineKind string // line, band
	Lines    []float64

	// A lamp shows the feature when the glow has all of these that are not
	// empty; a feature with none of them is only ever named by the examiner.
	Wave      string   // long, short
	Glow      []string // one of these colours
	Strength  string
	Pattern   string // even, zoned, chalky, along fractures, surface only, at the join
	Afterglow string // its colour

	Note   string
	Source string
}

// Force says how strongly a sign speaks.
type Force string

// Only Proves and Excludes move a standing; Suggests is printed. Allows says
// that the feature is at home in the material and tells nothing about the
// claim; such a row stands where a wider one would say too much.
const (
	Proves   Force = "proves"
	Suggests Force = "suggests"
	Excludes Force = "excludes"
	Allows   Force = "allows"
)

// A Sign says what one feature shows about one claim in one material.
type Sign struct {
	Feature  string
	Material string // a name of the table (its parents' signs apply to it), or "any"
	Claim    string // species, growth, treatment
	Force    Force
	About    string // a growth, "laboratory-grown: flux", a treatment, or a material with all that stands below it
	Because  string // a sentence without capital and full stop, to be printed
	Source   string
}

// Care is how a material is kept and cleaned. Words: yes, no, care.
type Care struct {
	Ultrasonic, Steam, Heat, Solvents, Light, Knocks string
	Note                                             string
	Source                                           string
}

// A Rule is one fact that a variety name needs.
type Rule struct {
	Variety    string
	Fact       string   // colour, colour change, phenomenon, absorption, transparency, feature
	Allowed    []string // any one fits: a word, "yes" for a change, nm for an absorption, a term of the features table
	Convention string   // by what convention the line is drawn, printed when it matters
	Source     string
}
