package stone

import (
	"reflect"
	"slices"
	"stonewrit/grading/phrase"

	"gopkg.in/yaml.v3"
)

// A Test is one recorded test: a *Refractometer, a *Polariscope and so on.
type Test interface {
	// Header is what every test has in common.
	Header() *TestHeader
}

// TestHeader holds the keys common to all tests.
type TestHeader struct {
	Kind        string `yaml:"test" need:"yes" doc:"which test"`
	Instrument  string `yaml:"instrument" doc:"instrument of the bench file"`
	Place       string `yaml:"place" doc:"where on the stone: table, crown, pavilion, girdle, side, back, stone 3 of 7"`
	Date        Date   `yaml:"date" doc:"day of the test, if not the day of the examination"`
	By          string `yaml:"by" doc:"who tested, if not the examiner of the file"`
	Light       string `yaml:"light" doc:"light used"`
	Temperature Warmth `yaml:"temperature" range:"-20..60" doc:"temperature"`
	SetAside    string `yaml:"set_aside" doc:"why this reading is kept and printed but not judged"`
	Note        string `yaml:"note" doc:"printed, proves nothing"`
	Index       int    // place in the list, from 0
}

// Header gives the common keys.
func (h *TestHeader) Header() *TestHeader { return h }

// Kinds of test, as a file writes them.
const (
	KindRefractometer = "refractometer"
	KindDigital       = "digital refractive index"
	KindReflectivity  = "reflectivity"
	KindPolariscope   = "polariscope"
	KindDichroscope   = "dichroscope"
	KindSpectroscope  = "spectroscope"
	KindUltraviolet   = "ultraviolet"
	KindGravity       = "specific gravity"
	KindHardness      = "hardness"
	KindThermal       = "thermal conductivity"
	KindElectrical    = "electrical conductivity"
	KindMagnet        = "magnet"
	KindFilter        = "colour filter"
	KindMagnification = "magnification"
	KindReport        = "laboratory report"
	KindScreening     = "diamond screening"
	KindRadioactivity = "radioactivity"
	KindCarbonate     = "carbonate flash"
	KindDoubling      = "doubling"
	KindDrillHole     = "pearl drill hole"
	KindSurfaceFeel   = "surface feel"
	KindImmersion     = "immersion"
	KindInfrared      = "infrared spectrum"
	KindRaman         = "Raman spectrum"
)

// A testKind is a kind of test and what makes a fresh record of it.
type testKind struct {
	kind string
	make func() Test
}

// testKinds lists the kinds with a fresh record each, in the order told to
// people.
func testKinds() []testKind {
	return []testKind{
		{KindRefractometer, func() Test { return &Refractometer{} }},
		{KindDigital, func() Test { return &Digital{} }},
		{KindReflectivity, func() Test { return &Digital{} }},
		{KindPolariscope, func() Test { return &Polariscope{} }},
		{KindDichroscope, func() Test { return &Dichroscope{} }},
		{KindSpectroscope, func() Test { return &Spectroscope{} }},
		{KindUltraviolet, func() Test { return &Ultraviolet{} }},
		{KindGravity, func() Test { return &Gravity{} }},
		{KindHardness, func() Test { return &Hardness{} }},
		{KindThermal, func() Test { return &Thermal{} }},
		{KindElectrical, func() Test { return &Electrical{} }},
		{KindMagnet, func() Test { return &Magnet{} }},
		{KindFilter, func() Test { return &Filter{} }},
		{KindMagnification, func() Test { return &Magnification{} }},
		{KindReport, func() Test { return &LaboratoryReport{} }},
		{KindScreening, func() Test { return &Screening{} }},
		{KindRadioactivity, func() Test { return &Radioactivity{} }},
		{KindCarbonate, func() Test { return &CarbonateFlash{} }},
		{KindDoubling, func() Test { return &Doubling{} }},
		{KindDrillHole, func() Test { return &Features{} }},
		{KindSurfaceFeel, func() Test { return &Features{} }},
		{KindImmersion, func() Test { return &Features{} }},
		{KindInfrared, func() Test { return &OwnSpectrum{} }},
		{KindRaman, func() Test { return &OwnSpectrum{} }},
	}
}

// TestKinds lists the kinds of test a file may record.
func TestKinds() []string {
	var kinds []string
	for _, k := range testKinds() {
		kinds = append(kinds, k.kind)
	}
	return kinds
}

// AnyTest reads the record that its test: key names.
type AnyTest struct{ Test }

func (a *AnyTest) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind != yaml.MappingNode {
		d.wrong(n, path, phrase.Say("found %s, a test with its keys was expected", describeNode(n)), "start it with \"- test: \" and one of the kinds")
		return
	}
	var name *yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == "test" {
			name = n.Content[i+1]
		}
	}
	if name == nil {
		d.wrong(n, path, "the key \"test\" is missing", "for example test: refractometer")
		return
	}
	var kind string
	kinds, words := d.layouts.testKinds()
	d.scalar(name, reflect.ValueOf(&kind).Elem(), path+".test", fieldTags{words: words})
	at := slices.Index(words, kind)
	if at < 0 {
		return // told already
	}
	a.Test = kinds[at].make()
	d.mapping(n, reflect.ValueOf(a.Test).Elem(), path, depth)
	a.Header().Kind = kind
}

// Refractometer readings: one entry a turn of the stone.
type Refractometer struct {
	TestHeader
	Method   string      `yaml:"method" words:"facet|spot" doc:"flat facet or spot reading; facet if left out"`
	Readings List[Edges] `yaml:"readings" range:"1.2..2.2" doc:"one entry a turn, [low, high], or one number where one edge was seen; over for an edge beyond the limit"`
	Over     bool        `yaml:"over the limit" doc:"no edge below the contact liquid's limit"`
	Filter   bool        `yaml:"filter" doc:"the polarising filter was turned at each step"`
	FullTurn bool        `yaml:"full_turn" doc:"the stone was turned all round, and the readings are the lowest and the highest edge seen"`
	Contact  string      `yaml:"contact" words:"good|poor" doc:"optical contact"`
	Liquid   Index       `yaml:"liquid" range:"1.3..2.2" doc:"index of the contact liquid, if not the instrument's limit"`
}

// Digital is an index by an instrument without edges, by reflection.
type Digital struct {
	TestHeader
	Readings List[Index] `yaml:"readings" range:"1.0..3.2" doc:"indices shown"`
}

// Polariscope is what crossed polars show.
type Polariscope struct {
	TestHeader
	Sees         string `yaml:"sees" words:"stays dark|blinks|stays light|strain pattern" doc:"while the stone is turned"`
	Figure       string `yaml:"figure" words:"uniaxial|biaxial|open centre|bull's-eye|none seen" doc:"interference figure"`
	Orientations int    `yaml:"orientations" range:"1..50" doc:"directions looked along"`
}

// Dichroscope is what the dichroscope shows.
type Dichroscope struct {
	TestHeader
	Colours    List[string] `yaml:"colours" doc:"colours seen, none for none"`
	Strength   string       `yaml:"strength" words:"none|weak|distinct|strong" doc:"difference between the colours"`
	Directions int          `yaml:"directions" range:"1..50" doc:"directions looked along"`
}

// Spectroscope is what the spectroscope shows.
type Spectroscope struct {
	TestHeader
	Type     string           `yaml:"kind" words:"prism|grating|spectrometer" doc:"kind of instrument; prism if left out"`
	Lines    List[Wavelength] `yaml:"lines" range:"350..800" doc:"dark lines; [] for looked, none seen"`
	Bands    List[Span]       `yaml:"bands" range:"350..800" doc:"dark bands, from and to"`
	Cutoff   Wavelength       `yaml:"cutoff" range:"350..800" doc:"all is dark below"`
	Bright   List[Wavelength] `yaml:"bright_lines" range:"350..800" doc:"emission lines"`
	Strength string           `yaml:"strength" words:"weak|moderate|strong" doc:"how clearly they were seen"`
	Pattern  string           `yaml:"pattern" doc:"what the spectrum is called, if it is known by a name"`
}

// Ultraviolet is what the stone does under the lamp.
type Ultraviolet struct {
	TestHeader
	Long      Fluorescence `yaml:"long" doc:"none, weak, moderate, strong or very strong, with a colour"`
	Short     Fluorescence `yaml:"short" doc:"the same, short wave"`
	Afterglow Afterglow    `yaml:"afterglow" doc:"none, or colour and seconds"`
	Pattern   List[string] `yaml:"pattern" words:"even|zoned|chalky|along fractures|surface only|at the join" doc:"how it is spread"`
}

// Gravity is a specific gravity by weighing, by liquid or as a value.
type Gravity struct {
	TestHeader
	Method    string     `yaml:"method" need:"yes" words:"hydrostatic|liquid|value" doc:"by weighing, by a liquid, or already reduced"`
	InAir     List[Mass] `yaml:"in_air" range:"0.0001..100000" doc:"mass in air"`
	InWater   List[Mass] `yaml:"in_water" range:"0.0001..100000" doc:"reading in water"`
	InLiquid  List[Mass] `yaml:"in_liquid" range:"0.0001..100000" doc:"reading in another bath"`
	After     Mass       `yaml:"in_air_after" range:"0.0001..100000" doc:"mass in air afterwards, for porous stones"`
	Water     Warmth     `yaml:"water" range:"0..60" doc:"temperature of the water"`
	Bath      *Bath      `yaml:"bath" doc:"a bath other than water"`
	Air       Pure       `yaml:"air_density" range:"0..0.01" doc:"density of the air in g/cm3, 0.0012 if left out"`
	Liquid    Pure       `yaml:"liquid" range:"0.5..6" doc:"specific gravity of the liquid"`
	Stone     string     `yaml:"stone" words:"sinks|sinks slowly|floats|floats slowly|suspended" doc:"what the stone does in it"`
	CheckedBy string     `yaml:"checked_with" doc:"indicator that the liquid was checked with"`
	Given     Pure       `yaml:"value" range:"0.5..25" doc:"the value"`
}

// Bath is a weighing liquid other than water.
type Bath struct {
	Name    string `yaml:"name" doc:"the liquid"`
	Density Pure   `yaml:"density" need:"yes" range:"0.5..4" doc:"its density in g/cm3"`
}

// Hardness is a scratch, found or made.
type Hardness struct {
	TestHeader
	Scratches   List[string] `yaml:"scratches" doc:"reference minerals or Mohs numbers that the stone scratches"`
	ScratchedBy List[string] `yaml:"scratched_by" doc:"reference minerals or Mohs numbers that scratch it"`
	Consent     string       `yaml:"consent" doc:"who agreed to the scratch, and when; or an old mark, found on it"`
}

// Thermal is what a thermal tester shows.
type Thermal struct {
	TestHeader
	Shows     string `yaml:"shows" need:"yes" words:"diamond|not diamond|moissanite|metal|unclear" doc:"what the tester shows"`
	Condition string `yaml:"stone" words:"dry|cold|wet|touching metal" doc:"state of the stone, if not dry and at room temperature"`
}

// Electrical is what a conductivity tester shows.
type Electrical struct {
	TestHeader
	Shows string `yaml:"shows" need:"yes" words:"conductor|insulator|unclear" doc:"what the tester shows"`
}

// Magnet is the response to a strong small magnet.
type Magnet struct {
	TestHeader
	Shows string `yaml:"shows" need:"yes" words:"none|weak|strong" doc:"attraction"`
}

// Filter is the colour through a colour filter.
type Filter struct {
	TestHeader
	Shows string `yaml:"shows" need:"yes" doc:"colour seen, or none"`
}

// Features is any test that sees something: drill hole, immersion, feel.
type Features struct {
	TestHeader
	Sees List[string] `yaml:"sees" doc:"what is seen, in terms of the features table"`
}

// Magnification is what loupe or microscope shows.
type Magnification struct {
	TestHeader
	Power     int          `yaml:"power" range:"1..400" doc:"times"`
	Corrected bool         `yaml:"corrected" doc:"triplet or better"`
	Lighting  List[string] `yaml:"lighting" words:"darkfield|brightfield|overhead|fibre optic|diffused|immersion" doc:"lighting"`
	Sees      List[string] `yaml:"sees" doc:"terms of the features table; other words are kept and prove nothing"`
}

// LaboratoryReport quotes somebody else's finding.
type LaboratoryReport struct {
	TestHeader
	Issuer  string       `yaml:"issuer" need:"yes" doc:"who issued it"`
	Number  string       `yaml:"number" doc:"its number"`
	Issued  Date         `yaml:"issued" doc:"its date; date: is read too"`
	States  *Statement   `yaml:"states" doc:"what it states"`
	Matched List[string] `yaml:"matched" words:"weight|size|inscription|photograph|features" doc:"what was compared on the stone in hand"`
	Seen    string       `yaml:"seen" words:"original|copy|issuer's own record looked up" doc:"what was seen of it"`
}

// Screening is a diamond screening device.
type Screening struct {
	TestHeader
	Shows string `yaml:"shows" need:"yes" words:"passes|refer|not diamond" doc:"what the device shows"`
}

// Radioactivity is a counter reading.
type Radioactivity struct {
	TestHeader
	Shows   string `yaml:"shows" words:"background|above background" doc:"against background"`
	Reading string `yaml:"reading" doc:"as shown, with its unit"`
}

// CarbonateFlash is a spot reading that swings between two indices.
type CarbonateFlash struct {
	TestHeader
	Readings List[Index] `yaml:"readings" range:"1.2..2.2" doc:"the two ends of the swing"`
	Shows    string      `yaml:"shows" words:"seen|not seen" doc:"whether it swings"`
}

// Doubling is the doubling of facet edges or inclusions.
type Doubling struct {
	TestHeader
	Shows   string       `yaml:"shows" words:"seen|not seen" doc:"whether it is seen"`
	Sees    string       `yaml:"sees" words:"seen|not seen" doc:"the same"`
	Through List[string] `yaml:"through" doc:"through which facets"`
}

// OwnSpectrum is a reading of the user's own infrared or Raman instrument.
type OwnSpectrum struct {
	TestHeader
	Peaks   List[string] `yaml:"peaks" doc:"peaks, as read, with unit"`
	Matches string       `yaml:"matches" doc:"the reference it matches"`
	Sees    List[string] `yaml:"sees" doc:"terms of the features table"`
}
