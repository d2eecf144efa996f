package stone

import (
	"fmt"
	"path"
	"reflect"
	"slices"
	"stonewrit/grading/phrase"
	"strings"
)

func (v *validator) piece(p *Piece) {
	if p.Reference == "" {
		v.wrong("piece", "give the piece a reference of your own, unique in the folder", "the reference is empty")
	}
	v.dates(p.Assignment)
	for i, m := range p.Metals {
		v.metal(fmt.Sprintf("metals[%d]", i), m)
	}
	v.mass(p.Mass)
	v.setStones(p.Stones)
	v.account(p.Account, "piece file")
}

// PreciousMetals are the metals whose alloys have a fineness.
func PreciousMetals() []string { return []string{"gold", "silver", "platinum", "palladium"} }

func (v *validator) metal(at string, m Metal) {
	precious := slices.Contains(PreciousMetals(), m.Metal)
	switch {
	case m.Metal == "" || v.unread(at+".metal"):
	case m.Fineness > 0 && !precious:
		v.wrong(at+".fineness", phrase.Say("leave it out, or name one of %s", strings.Join(PreciousMetals(), ", ")), "a fineness stands beside %s, which has none", m.Metal)
	case m.Fineness > 0 && m.KnownBy == "" && !v.unread(at+".known_by"):
		v.wrong(at, "for example known_by: mark, or stated", "a fineness needs by what it is known")
	}
	if m.Karat > 0 && m.Metal != "gold" && m.Metal != "" && !v.unread(at+".metal") {
		v.wrong(at+".karat", "karats are for gold alone", "a karat stands beside %s", m.Metal)
	}
	if m.Measured.Given() && !tested(m.KnownBy) && !v.unread(at+".known_by") {
		v.wrong(at+".measured", "name the test under known_by, or leave it out", "a measured fineness stands beside %s", orNone("known_by", m.KnownBy))
	}
	if tested(m.KnownBy) && m.Result == "" {
		v.wrong(at, "for example result: \"750, by instrument xrf-1 on 2026-10-14\"", "%s needs what it showed", m.KnownBy)
	}
	if m.Result != "" && !tested(m.KnownBy) && !v.unread(at+".known_by") {
		v.wrong(at+".result", "name the test under known_by, or leave it out", "the result of a test stands beside %s", orNone("known_by", m.KnownBy))
	}
	total := m.Fineness
	for _, a := range m.Alloy {
		total += a.Fineness
	}
	if len(m.Alloy) > 0 && total > 1000 {
		v.wrong(at+".alloy", "parts are counted in a thousand of the alloy", "the parts of the alloy come to %d in a thousand", total)
	}
}

// tested reports whether the metal was tested, not only its marks read.
func tested(knownBy string) bool {
	return slices.Contains([]string{"touchstone", "acid", "specific gravity", "X-ray fluorescence", "assay"}, knownBy)
}

// Tested reports whether the metal was tested, not only its marks read.
func (m Metal) Tested() bool { return tested(m.KnownBy) }

// Defaces reports whether the test of the metal leaves a trace on the piece.
func (m Metal) Defaces() bool { return m.KnownBy == "touchstone" || m.KnownBy == "acid" }

func (v *validator) mass(m PieceMass) {
	switch {
	case m.Net.Given() && m.Gross.Given() && m.Net.Grams > m.Gross.Grams:
		v.wrong("mass.net", "net is without the stones, gross with them", "the net mass %s is more than the gross mass %s", m.Net, m.Gross)
	case m.Net.Given() && m.How == "" && !v.unread("mass.how"):
		v.wrong("mass", "for example how: \"less 1.64 ct of stones\", or \"weighed before setting\"", "a net mass needs how it was found")
	case m.How != "" && !m.Net.Given() && !v.unread("mass.net"):
		v.wrong("mass.how", "add net: 4.20 g, or leave how out", "how stands beside no net mass")
	}
}

func (v *validator) setStones(list []SetStone) {
	first := map[string]int{}
	for i, s := range list {
		at := fmt.Sprintf("stones[%d]", i)
		switch {
		case s.File != "" && s.What != "":
			v.wrong(at, "what the stone file names is told there: keep one of the two", "file and what stand together")
		case s.File == "" && s.What == "":
			if !v.unread(at+".file") && !v.unread(at+".what") {
				v.wrong(at, "for example file: hl-0501.yaml, or what: diamond with its count", "neither a stone file nor what the stones are is named")
			}
		case s.File != "":
			v.stoneFile(at, s)
			name := cleanPath(s.File)
			if n, twice := first[name]; twice {
				v.wrong(at+".file", "a stone is set once; give each stone a file of its own", "%q is named twice, first in stones[%d]", s.File, n)
				continue
			}
			first[name] = i
		default:
			v.countedLine(at, s)
		}
	}
}

func cleanPath(file string) string { return path.Clean(strings.ReplaceAll(file, `\`, "/")) }

// stoneFile checks an entry with a stone file: only where and how it is set
// belong here.
func (v *validator) stoneFile(at string, s SetStone) {
	v.beside(at+".file", s.File, "piece file")
	if ext := strings.ToLower(path.Ext(s.File)); ext != ".yaml" && ext != ".yml" {
		v.wrong(at+".file", "for example file: hl-0501.yaml", "%q is no stone file, whose name ends in .yaml", s.File)
	}
	here := []string{"file", "setting", "place", "note"}
	value := reflect.ValueOf(s)
	for _, f := range fieldsOf(value.Type()) {
		if !slices.Contains(here, f.key) && !value.FieldByIndex(f.index).IsZero() {
			v.wrong(at+"."+f.key, phrase.Say("write it into %s, or leave it out", s.File), "%s stands beside a stone file, which tells it", f.key)
		}
	}
}

// countedLine checks an entry for small stones counted together.
func (v *validator) countedLine(at string, s SetStone) {
	v.material(at+".what", s.What)
	v.treatments(at+".treatments", s.Treatments.Items)
	if s.Growth == "imitation" && s.Imitates == "" {
		v.wrong(at+".growth", "add what they are sold or worn as, for example imitates: emerald", "an imitation needs the key imitates")
	}
	if s.Diameter.Given && (s.Length.Given || s.Width.Given) {
		v.wrong(at+".diameter", "give the diameter of round stones, length and width of any others", "a diameter stands beside length or width")
	}
	if s.Weight.Measured.Given() && s.Weight.When != "before setting" && !v.unread(at+".weight.when") {
		v.wrong(at+".weight.measured", "add when: before setting, or use stated: with by:", "stones in their mounting cannot be weighed")
	}
}
