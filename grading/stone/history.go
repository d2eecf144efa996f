package stone

import "strings"

// History is what else moves the value of an item. A key that is left out is
// printed as not determined.
type History struct {
	Style        string `yaml:"style" doc:"style and period"`
	Maker        string `yaml:"maker" doc:"who made it, or not determined"`
	MakerBy      string `yaml:"maker_known_by" words:"signature|mark|papers|attribution|stated" doc:"by what the maker is known"`
	Age          string `yaml:"age" doc:"age, or not determined"`
	Provenance   string `yaml:"provenance" doc:"earlier owners and history"`
	Alterations  string `yaml:"alterations" doc:"alterations, or none seen"`
	Restoration  string `yaml:"restoration" doc:"repairs and restoration, or none seen"`
	Obsolescence string `yaml:"obsolescence" doc:"out of fashion or use, or none"`
}

// NamesMaker reports whether a maker is named at all.
func (h History) NamesMaker() bool {
	return h.Maker != "" && !strings.EqualFold(h.Maker, "not determined")
}

func (v *validator) history(h *History) {
	switch {
	case h == nil:
	case h.NamesMaker() && h.MakerBy == "" && !v.unread("history.maker_known_by"):
		v.wrong("history.maker", "maker_known_by: signature, mark, papers, attribution or stated; or maker: not determined", "a maker needs by what he is known")
	case h.MakerBy != "" && !h.NamesMaker() && !v.unread("history.maker"):
		v.wrong("history.maker_known_by", "name the maker, or leave it out", "maker_known_by stands beside no maker")
	}
}
