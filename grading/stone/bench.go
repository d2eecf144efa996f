package stone

import (
	"reflect"
	"strings"

	"gopkg.in/yaml.v3"
)

// Bench is a bench file: the practice, its examiners and its instruments.
type Bench struct {
	Format      int                   `yaml:"stonewrit" range:"1..1" doc:"version of this format"`
	Practice    Practice              `yaml:"practice" doc:"the practice, for the letterhead"`
	Examiners   map[string]Examiner   `yaml:"examiners" doc:"who examines"`
	Numbers     Numbers               `yaml:"numbers" doc:"report numbers and the register"`
	Instruments map[string]Instrument `yaml:"instruments" doc:"the instruments and their checks"`
	Terms       Terms                 `yaml:"terms" doc:"standing caveats and language"`
	TimeZone    string                `yaml:"time_zone" doc:"time zone of the practice, for the year of a number" eg:"Europe/Berlin"`
	Rounding    string                `yaml:"weight_rounding" words:"nearest|down except 9" doc:"rule by which weights are rounded to two decimals"`
	Page        string                `yaml:"page" words:"A4|Letter" doc:"page size"`
	Accent      string                `yaml:"accent" doc:"accent colour, #rrggbb"`
	Font        List[string]          `yaml:"font" doc:"TrueType files beside the bench file for characters that the built-in typeface lacks" eg:"fonts/armenian.ttf"`
	Keep        string                `yaml:"keep" doc:"how long records are kept"`
	Safety      Safety                `yaml:"safety" doc:"what protection is in place"`

	source
}

// Practice is who issues the documents.
type Practice struct {
	Name    string `yaml:"name" need:"yes" doc:"name"`
	Address string `yaml:"address" doc:"address"`
	Contact string `yaml:"contact" doc:"telephone, mail"`
	Logo    string `yaml:"logo" doc:"picture beside the bench file"`
}

// Examiner is a person who may sign.
type Examiner struct {
	Name        string `yaml:"name" need:"yes" doc:"name"`
	Credentials string `yaml:"credentials" doc:"qualifications"`
	Signature   string `yaml:"signature" doc:"picture of the signature"`
}

// Numbers is how report numbers are made and where they are kept.
type Numbers struct {
	Prefix   string `yaml:"prefix" doc:"letters before the number" eg:"HL"`
	Register string `yaml:"register" doc:"register file, or a postgres:// address" eg:"register.db"`
	Office   string `yaml:"office" doc:"which of several offices with one register this is" eg:"north"`
}

// Instrument is one instrument of the bench.
type Instrument struct {
	Kind        string       `yaml:"kind" need:"yes" eg:"refractometer" doc:"what it is, in the words of the tests; also balance, scales, gauge, lamp, spectroscope, loupe, microscope"`
	Type        string       `yaml:"type" words:"prism|grating|spectrometer" doc:"kind of spectroscope"`
	Maker       string       `yaml:"maker" doc:"maker"`
	Serial      string       `yaml:"serial" doc:"serial number"`
	Software    string       `yaml:"software" doc:"software and firmware version"`
	Limit       Index        `yaml:"limit" range:"1.3..2.2" doc:"highest index the contact liquid allows"`
	Readability Readability  `yaml:"readability" doc:"smallest step shown"`
	Wavelengths []Wavelength `yaml:"wavelengths" range:"100..800" doc:"of a lamp"`
	Checks      []Check      `yaml:"checks" doc:"checks against something known, or none"`
	CheckEvery  Days         `yaml:"check_every" range:"1..4000" doc:"how long a check holds"`
	Certificate *Certificate `yaml:"certificate" doc:"calibration certificate, or none"`
	Service     []Service    `yaml:"service" doc:"repairs and services"`
	Owned       *bool        `yaml:"owned" doc:"false for an instrument one thinks of buying"`
}

// Check is one check of an instrument.
type Check struct {
	Date      Date        `yaml:"date" need:"yes" doc:"when" eg:"2026-10-01"`
	Reference string      `yaml:"reference" need:"yes" doc:"a material of the table, or a mass such as 5 g mass" eg:"quartz"`
	Readings  List[Edges] `yaml:"readings" range:"1.2..3.2" doc:"what it read, as in a test"`
	Reading   Anything    `yaml:"reading" doc:"what it read: 5.0003 g, 694.5 nm"`
	Known     Anything    `yaml:"known" doc:"the known value, if the reference has none in the table"`
	By        string      `yaml:"by" doc:"who checked"`
	Light     string      `yaml:"light" doc:"light used"`
	Result    string      `yaml:"result" words:"passed|failed" doc:"result of a check without a number"`
	Note      string      `yaml:"note" doc:"remark"`
	Expires   Date        `yaml:"reference_valid_until" doc:"until when the reference is valid"`
}

// Certificate is a calibration certificate. None says that there is none, which
// is printed.
type Certificate struct {
	None   bool
	Number string   `yaml:"number" need:"yes" doc:"its number"`
	U      Anything `yaml:"u" doc:"its uncertainty, with unit"`
	Date   Date     `yaml:"date" doc:"its date"`
	By     string   `yaml:"by" doc:"who issued it"`
}

// plainCertificate reads the mapping form without coming back to decode.
type plainCertificate Certificate

func (c *Certificate) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind == yaml.ScalarNode && strings.EqualFold(n.Value, "none") {
		c.None = true
		return
	}
	var p plainCertificate
	d.structure(n, &p, path, depth)
	*c = Certificate(p)
}

func (c *Certificate) schema(m *schemaMaker, _ fieldTags) object {
	return anyOf(object{{"const", "none"}}, m.structure(reflect.TypeFor[plainCertificate]()))
}

// Service is a repair.
type Service struct {
	Date Date   `yaml:"date" need:"yes" doc:"when"`
	What string `yaml:"what" need:"yes" doc:"what"`
}

// Terms are what the practice prints on all documents.
type Terms struct {
	Caveats  []string `yaml:"caveats" doc:"sentences added to the limits"`
	Language string   `yaml:"language" words:"en|de" doc:"language of the documents"`
	Copies   string   `yaml:"copies" doc:"to whom the practice shows a document beside the client, where the stone file does not say"`
	Validity string   `yaml:"validity" doc:"how long and for whom a document is valid"`
}

// Safety is what protection the practice has.
type Safety struct {
	Eyes bool `yaml:"eye protection" doc:"UV goggles or a closed cabinet are used"`
}
