package stone

import (
	"reflect"
	"strings"

	"gopkg.in/yaml.v3"
)

// History is what else moves the value of an item. A key that is left out is
// printed as not determined.
type History struct {
	Style        string `yaml:"style" doc:"style and period"`
	Maker        *Maker `yaml:"maker" doc:"who made it, and by what that is known"`
	Age          string `yaml:"age" doc:"age, or not determined"`
	Provenance   string `yaml:"provenance" doc:"earlier owners and history"`
	Alterations  string `yaml:"alterations" doc:"alterations, or none seen"`
	Restoration  string `yaml:"restoration" doc:"repairs and restoration, or none seen"`
	Obsolescence string `yaml:"obsolescence" doc:"out of fashion or use, or none"`
}

// Maker is who made a piece.
type Maker struct {
	Name string `yaml:"name" need:"yes" doc:"name of the maker"`
	How  string `yaml:"how" need:"yes" words:"signed|mark|papers|attributed|stated" eg:"signed" doc:"by what that is known"`
}

// plainMaker reads the mapping form without coming back to decode.
type plainMaker Maker

func (m *Maker) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind != yaml.ScalarNode {
		var p plainMaker
		d.structure(n, &p, path, depth)
		*m = Maker(p)
		return
	}
	d.scalar(n, reflect.ValueOf(&m.Name).Elem(), path, fieldTags{})
	if m.Name != "" && !m.Undetermined() {
		d.wrong(n, path, "a maker needs what the name rests on", "maker: {name: \""+m.Name+"\", how: signed}, or mark, papers, attributed, stated; or write not determined")
	}
}

func (m *Maker) schema(maker *schemaMaker, _ fieldTags) object {
	return anyOf(object{{"const", undeterminedMaker}}, maker.structure(reflect.TypeFor[plainMaker]()))
}

const undeterminedMaker = "not determined"

// Undetermined reports whether the file says that the maker is not known.
func (m *Maker) Undetermined() bool { return strings.EqualFold(m.Name, undeterminedMaker) }
