package stone

import (
	"reflect"

	"gopkg.in/yaml.v3"
)

// TreatmentClaim is one treatment of an opinion: a bare name, or a name with
// place and amount.
type TreatmentClaim struct {
	Name   string `yaml:"name" need:"yes" doc:"a treatment of the table"`
	Where  string `yaml:"where" doc:"where it is seen"`
	Amount string `yaml:"amount" words:"few|several|most" doc:"in few, in several or in most fissures"`
}

// plainClaim reads the mapping form without coming back to decode.
type plainClaim TreatmentClaim

func (t *TreatmentClaim) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind == yaml.ScalarNode {
		d.scalar(n, reflect.ValueOf(&t.Name).Elem(), path, fieldTags{})
		return
	}
	var p plainClaim
	d.structure(n, &p, path, depth)
	*t = TreatmentClaim(p)
}
