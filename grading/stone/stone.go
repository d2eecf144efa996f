// Package stone holds the records that people write, the stone file, the piece
// file and the bench file, and reads them strictly from YAML: every problem of a file is
// told at once, with line, column, the key's path, what was found, what is
// allowed and the nearest known word.
//
// The Go types are the description of the files. Their tags name the key
// (yaml), the allowed words (words), the allowed numbers (range), what may not
// be left out (need) and the sentence that the schema prints (doc); reading and
// the JSON Schema are both made from them, so they cannot differ.
package stone

import (
	"reflect"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Short names for the quantities of the records.
type (
	Length     = quantity.Measure[quantity.Millimetre]
	Weight     = quantity.Measure[quantity.Carat]
	Angle      = quantity.Measure[quantity.Degree]
	Ratio      = quantity.Measure[quantity.Percent]
	Wavelength = quantity.Measure[quantity.Nanometre]
	Warmth     = quantity.Measure[quantity.Celsius]
	Pure       = quantity.Measure[quantity.Number]
	Seconds    = quantity.Measure[quantity.Second]
	Days       = quantity.Measure[quantity.Day]
)

// Kinds of document.
const (
	Appraisal = "appraisal"
	ShortNote = "note"
	Record    = "record"
)

// Stone is a stone file.
type Stone struct {
	Format    int    `yaml:"stonewrit" need:"yes" range:"1..1" eg:"1" doc:"version of this format"`
	Reference string `yaml:"stone" need:"yes" eg:"HL-0412" doc:"own reference, unique in the folder"`
	Assignment
	Mounted bool `yaml:"mounted" doc:"set in a mounting"`

	Opinion    Opinion    `yaml:"opinion" need:"yes" eg:"{species: corundum}" doc:"what the examiner says the stone is"`
	Origin     *Origin    `yaml:"origin" doc:"country of origin, an opinion with its basis"`
	Appearance Appearance `yaml:"appearance" doc:"how the stone looks; verdicts and variety rules need it"`
	Size       Size       `yaml:"size" doc:"outline, cut and dimensions"`
	Weight     WeightOf   `yaml:"weight" doc:"measured or stated weight"`
	Tests      []AnyTest  `yaml:"tests" doc:"the tests in the order done"`

	Quality     Quality     `yaml:"quality" doc:"grading and description, what applies"`
	Inscription Inscription `yaml:"inscription" doc:"words on the stone"`
	Marks       []Mark      `yaml:"marks" doc:"stamps as struck"`
	Account

	source
}

// Client is for whom the document is made.
type Client struct {
	Name    string `yaml:"name" need:"yes" doc:"name of the client, or own stock"`
	Address string `yaml:"address" doc:"address"`
	Contact string `yaml:"contact" doc:"telephone, mail"`
}

// Prepared tells how the stone was cleaned.
type Prepared struct {
	Cleaned bool         `yaml:"cleaned" doc:"cleaned before testing"`
	By      List[string] `yaml:"by" doc:"with what"`
}

// Opinion is what the examiner says the stone is.
type Opinion struct {
	Species    string               `yaml:"species" doc:"species or group; a variety name or a synonym is accepted" eg:"corundum"`
	Variety    string               `yaml:"variety" doc:"variety"`
	Growth     string               `yaml:"growth" words:"natural|cultured|laboratory-grown|artificial|composite|undetermined|imitation" doc:"how it came to be"`
	Method     string               `yaml:"method" words:"flame fusion|pulled|flux|hydrothermal|high pressure|vapour|bead nucleus|without bead|undetermined" doc:"how it was grown or cultured"`
	Water      string               `yaml:"water" words:"saltwater|freshwater|undetermined" doc:"pearls: the water"`
	Imitates   string               `yaml:"imitates" doc:"what it is sold or worn as"`
	Layers     []Layer              `yaml:"layers" doc:"composites: the parts from the crown down"`
	Treatments List[TreatmentClaim] `yaml:"treatments" doc:"treatments seen; [] for none seen; leave out for not examined"`
	Told       List[TreatmentClaim] `yaml:"treatments_stated" doc:"treatments told by seller or owner, not seen here"`
	Origin     string               `yaml:"origin" doc:"country, only with a basis under origin:"`
	Basis      string               `yaml:"basis" words:"tested|stated" doc:"tested here, or as stated by the owner"`
}

// Layer is one part of a composite.
type Layer struct {
	Part     string `yaml:"part" need:"yes" words:"crown|middle|pavilion|top|back|join|coating" doc:"which part"`
	Material string `yaml:"material" need:"yes" doc:"what it is made of"`
}

// Origin is a country of origin as an opinion.
type Origin struct {
	Country string `yaml:"country" need:"yes" doc:"country, or not determined"`
	Basis   string `yaml:"basis" doc:"what the opinion rests on"`
}

// Appearance is how the stone looks before any instrument.
type Appearance struct {
	Colour       string            `yaml:"colour" doc:"plain colour word"`
	Colours      map[string]string `yaml:"colours" doc:"colour by light, for colour-change stones"`
	Transparency string            `yaml:"transparency" words:"transparent|translucent|opaque" doc:"transparency"`
	Lustre       string            `yaml:"lustre" doc:"lustre"`
	Phenomenon   List[string]      `yaml:"phenomenon" words:"asterism|chatoyancy|adularescence|labradorescence|aventurescence|colour change|play of colour|iridescence|none" doc:"phenomenon"`
	Rays         int               `yaml:"rays" range:"4..24" doc:"rays of a star"`
	Heft         string            `yaml:"heft" doc:"light or heavy in the hand"`
	Cleavage     string            `yaml:"cleavage" doc:"cleavage seen"`
	Fracture     string            `yaml:"fracture" doc:"fracture surface seen"`
}

// Inscription is what is written on the stone.
type Inscription struct {
	Text  string `yaml:"text" doc:"the words as written"`
	Where string `yaml:"where" doc:"girdle, ..."`
	Read  string `yaml:"read" doc:"at what magnification it was read"`
}

// Mark is a stamp.
type Mark struct {
	Text  string `yaml:"text" need:"yes" doc:"the mark, letter by letter"`
	Where string `yaml:"where" doc:"where it stands"`
	How   string `yaml:"how" words:"struck|engraved|cast|printed|read only|tested" doc:"how it is made or known"`
}

// plainMark reads the mapping form without coming back to decode.
type plainMark Mark

func (m *Mark) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind == yaml.ScalarNode {
		d.scalar(n, reflect.ValueOf(&m.Text).Elem(), path, fieldTags{})
		return
	}
	var p plainMark
	d.structure(n, &p, path, depth)
	*m = Mark(p)
}

// Photo is one picture.
type Photo struct {
	File     string `yaml:"file" need:"yes" doc:"path below the stone file's folder"`
	Caption  string `yaml:"caption" doc:"what it shows"`
	Scale    Length `yaml:"scale" range:"0.00001..10" doc:"millimetre a pixel, if known"`
	Taken    Date   `yaml:"taken" doc:"day it was taken, if the file does not say"`
	Light    string `yaml:"light" doc:"light it was taken in"`
	GreyCard bool   `yaml:"grey_card" doc:"a grey card set the colour"`
}
