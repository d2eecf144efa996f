package stone

import (
	"reflect"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Piece is a piece file: a piece of jewellery that holds stones.
type Piece struct {
	Format    int    `yaml:"stonewrit" need:"yes" range:"1..1" eg:"1" doc:"version of this format"`
	Reference string `yaml:"piece" need:"yes" eg:"HL-0500" doc:"own reference, unique in the folder"`
	Kind      string `yaml:"kind" need:"yes" words:"ring|pendant|brooch|earrings|bracelet|bangle|necklace|strand|chain|cufflinks|pin|clasp|watch|other" doc:"what sort of piece it is"`
	Assignment

	Marks        []Mark        `yaml:"marks" doc:"marks, letter by letter, and whether they were struck, read or tested"`
	Metals       []Metal       `yaml:"metals" doc:"the metal of each part"`
	Mass         PieceMass     `yaml:"mass" doc:"mass of the piece, with and without its stones"`
	Stones       []SetStone    `yaml:"stones" doc:"the stones: a stone file each, or small ones counted together"`
	Size         PieceSize     `yaml:"size" doc:"size of the piece"`
	Construction *Construction `yaml:"construction" doc:"how the piece is made"`
	Condition    string        `yaml:"condition" doc:"wear and damage"`
	Description  string        `yaml:"description" doc:"words by which anybody knows the piece again"`
	Inscription  *Mark         `yaml:"inscription" doc:"words engraved"`
	Account

	source
}

// PieceKinds are the words for what a piece is.
func PieceKinds() []string {
	f, _ := fieldsOf(reflect.TypeFor[Piece]()).find("kind")
	return f.tags.words
}

// Named is the piece under another name of its file.
func (p *Piece) Named(name string) *Piece {
	named := *p
	named.file = name
	return &named
}

// Head is what a piece file has in common with a stone file, at its places in
// the piece file: reference, assignment, account and marks.
func (p *Piece) Head() *Stone {
	return &Stone{Format: p.Format, Reference: p.Reference, Assignment: p.Assignment, Marks: p.Marks, Account: p.Account, source: p.source}
}

// Files lists the stone files that the piece names, as written and in their
// order.
func (p *Piece) Files() []string {
	var files []string
	for _, s := range p.Stones {
		if s.File != "" {
			files = append(files, s.File)
		}
	}
	return files
}

// Metal is the metal of one part.
type Metal struct {
	Part     string      `yaml:"part" need:"yes" doc:"which part: shank, head, chain, clasp" eg:"shank and head"`
	Metal    string      `yaml:"metal" need:"yes" words:"gold|silver|platinum|palladium|copper|brass|bronze|steel|titanium|tungsten|aluminium|tin|other|undetermined" doc:"the metal that leads the alloy"`
	Colour   string      `yaml:"colour" words:"yellow|white|red|rose|green|grey|black|multicoloured" doc:"colour of the metal"`
	Fineness int         `yaml:"fineness" range:"1..1000" doc:"parts of the leading metal in a thousand"`
	Karat    int         `yaml:"karat" range:"1..24" doc:"gold: parts of 24 as marked or told; another claim than the fineness"`
	KnownBy  string      `yaml:"known_by" words:"mark|touchstone|acid|specific gravity|X-ray fluorescence|assay|paper|stated|undetermined" doc:"by what metal and fineness are known"`
	Result   string      `yaml:"result" doc:"what a test of the metal showed, with instrument and date"`
	Measured Pure        `yaml:"measured" range:"1..1000" doc:"fineness that a test found, parts in a thousand"`
	Consent  string      `yaml:"consent" doc:"who agreed to a test that marks the metal, and when"`
	Plated   *Plating    `yaml:"plated" doc:"none, or the layer on top"`
	Alloy    []AlloyPart `yaml:"alloy" doc:"other metals of the alloy, with parts in a thousand"`
	Mass     Mass        `yaml:"mass" range:"0.001..100000" doc:"mass of this part"`
	Exempt   string      `yaml:"exempt" words:"spring|pin|joint|catch|post|wire|peg|solder" doc:"a working part that an assay leaves out"`
	Note     string      `yaml:"note" doc:"printed"`
}

// AlloyPart is another metal of an alloy.
type AlloyPart struct {
	Metal    string `yaml:"metal" need:"yes" doc:"the metal" eg:"iridium"`
	Fineness int    `yaml:"fineness" need:"yes" range:"1..1000" doc:"parts in a thousand" eg:"50"`
}

// Plating is a layer of another metal. None says that somebody looked and found
// no layer.
type Plating struct {
	None     bool
	Metal    string                                `yaml:"metal" need:"yes" doc:"metal of the layer" eg:"rhodium"`
	Fineness int                                   `yaml:"fineness" range:"1..1000" doc:"its fineness"`
	Depth    quantity.Measure[quantity.Micrometre] `yaml:"thickness" range:"0.01..1000" doc:"its thickness"`
	Worn     bool                                  `yaml:"worn" doc:"worn through somewhere"`
}

// plainPlating reads the mapping form without coming back to decode.
type plainPlating Plating

func (l *Plating) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind == yaml.ScalarNode {
		if strings.EqualFold(n.Value, "none") {
			l.None = true
			return
		}
		d.scalar(n, reflect.ValueOf(&l.Metal).Elem(), path, fieldTags{})
		return
	}
	var p plainPlating
	d.structure(n, &p, path, depth)
	*l = Plating(p)
}

func (l *Plating) schema(m *schemaMaker, _ fieldTags) object {
	return anyOf(wordSchema(nil), m.structure(reflect.TypeFor[plainPlating]()))
}

// PieceMass is the mass of a piece.
type PieceMass struct {
	Gross      Mass   `yaml:"gross" range:"0.001..100000" doc:"weighed as it is, with its stones"`
	Net        Mass   `yaml:"net" range:"0.001..100000" doc:"of the metal alone"`
	How        string `yaml:"how" doc:"how the net mass was found: less 1.64 ct of stones, weighed before setting"`
	Instrument string `yaml:"instrument" doc:"balance of the bench file"`
}

// PieceSize is the size of a piece.
type PieceSize struct {
	Ring      string `yaml:"ring" doc:"ring size: 54 mm inside circumference"`
	Length    Length `yaml:"length" range:"0.1..5000" doc:"length"`
	Width     Length `yaml:"width" range:"0.1..2000" doc:"width"`
	Height    Length `yaml:"height" range:"0.1..2000" doc:"height"`
	Diameter  Length `yaml:"diameter" range:"0.1..2000" doc:"diameter"`
	Thickness Length `yaml:"thickness" range:"0.05..500" doc:"thickness"`
}

// Given reports whether any of it was written.
func (s PieceSize) Given() bool {
	return s.Ring != "" || s.Length.Given() || s.Width.Given() || s.Height.Given() || s.Diameter.Given() || s.Thickness.Given()
}

// Construction is how a piece is made.
type Construction struct {
	Words  string `yaml:"words" need:"yes" doc:"cast, stamped, raised, soldered" eg:"cast, the head soldered on"`
	ByHand string `yaml:"by_hand" doc:"what shows that it was made by hand; without it nothing is said of hand work"`
}
