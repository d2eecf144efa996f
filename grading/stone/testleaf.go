package stone

import (
	"fmt"
	"reflect"
	"slices"
	"stonewrit/grading/phrase"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Fluorescence is how strongly a stone glows, and in what colour.
type Fluorescence struct {
	Strength string // none, weak, moderate, strong, very strong
	Colour   string
	Text     string
}

func fluorescenceWords() []string {
	return []string{"none", "weak", "moderate", "strong", "very strong"}
}

func (f *Fluorescence) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	lower := strings.ToLower(strings.Join(strings.Fields(text), " "))
	words := fluorescenceWords()
	slices.Reverse(words) // "very strong" before "strong"
	for _, w := range words {
		if rest, found := strings.CutPrefix(lower, w); found && (rest == "" || rest[0] == ' ') {
			*f = Fluorescence{w, strings.TrimSpace(rest), text}
			return
		}
	}
	first, _, _ := strings.Cut(lower, " ")
	d.wrong(n, path, phrase.Say("%q does not begin with one of: %s", text, strings.Join(fluorescenceWords(), ", ")), didYouMean(first, fluorescenceWords()))
}

// Given reports whether the lamp was tried.
func (f Fluorescence) Given() bool { return f.Text != "" }

// Afterglow is what remains when the lamp goes off.
type Afterglow struct {
	Colour  string
	Seconds Seconds
	None    bool
	Looked  bool
}

// afterglowKeys is how an afterglow is written.
type afterglowKeys struct {
	Colour  string `yaml:"colour" need:"yes" eg:"red" doc:"colour"`
	Seconds int    `yaml:"seconds" range:"1..36000" doc:"for how many seconds"`
}

func (a *Afterglow) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	a.Looked = true
	if n.Kind == yaml.ScalarNode {
		text, ok := d.text(n, path)
		switch {
		case !ok:
		case strings.EqualFold(text, "none"):
			a.None = true
		default:
			d.wrong(n, path, phrase.Say("found %q, none or colour and seconds were expected", text), "for example {colour: red, seconds: 12}")
		}
		return
	}
	var t afterglowKeys
	d.structure(n, &t, path, depth)
	a.Colour = t.Colour
	if t.Seconds > 0 {
		a.Seconds = Seconds{V: quantity.Second(t.Seconds), Text: fmt.Sprintf("%d s", t.Seconds)}
	}
}

// Statement is what a laboratory report states. Prose is kept as Words and
// proves nothing, since no program can judge it.
type Statement struct {
	Species    string               `yaml:"species" doc:"species"`
	Variety    string               `yaml:"variety" doc:"variety"`
	Growth     string               `yaml:"growth" words:"natural|cultured|laboratory-grown|artificial|composite|undetermined" doc:"growth"`
	Method     string               `yaml:"method" doc:"method of growth"`
	Treatments List[TreatmentClaim] `yaml:"treatments" doc:"treatments"`
	Origin     string               `yaml:"origin" doc:"country"`
	Weight     Weight               `yaml:"weight" range:"0.0001..100000" doc:"weight"`
	Length     Length               `yaml:"length" range:"0.1..500" doc:"length"`
	Width      Length               `yaml:"width" range:"0.1..500" doc:"width"`
	Depth      Length               `yaml:"depth" range:"0.1..500" doc:"depth"`
	Diameter   List[Length]         `yaml:"diameter" range:"0.1..500" doc:"diameter"`
	Colour     string               `yaml:"colour" doc:"colour grade"`
	Clarity    string               `yaml:"clarity" doc:"clarity grade"`
	Words      string               `yaml:"words" doc:"anything else, word by word"`
}

type plainStatement Statement

func (s *Statement) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, depth int) {
	if n.Kind == yaml.ScalarNode {
		d.scalar(n, reflect.ValueOf(&s.Words).Elem(), path, fieldTags{})
		return
	}
	var p plainStatement
	d.structure(n, &p, path, depth)
	*s = Statement(p)
}
