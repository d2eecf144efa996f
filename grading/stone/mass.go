package stone

import (
	"errors"
	"stonewrit/grading/phrase"
	"strings"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/quantity"
)

// Mass is a mass in grams or, from carat scales, in carats.
type Mass struct {
	Grams float64 // in gram whatever was written
	U     float64 // stated standard uncertainty in gram; 0 for none
	Text  string
}

func (m *Mass) decode(d *decoder, n *yaml.Node, path string, tags fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	var grams quantity.Measure[quantity.Gram]
	var carats Weight
	if strings.Contains(text, "ct") {
		ok = d.quantity(n, &carats, path, fieldTags{})
	} else {
		ok = d.quantity(n, &grams, path, fieldTags{})
	}
	if ok {
		*m = massOf(grams, carats)
		tags.bound.check(d, n, path, m.Grams, text)
	}
}

// massOf is the one of the two that was given.
func massOf(grams quantity.Measure[quantity.Gram], carats Weight) Mass {
	if carats.Given() {
		return Mass{float64(carats.V.Grams()), float64(quantity.Carat(carats.U).Grams()), carats.Text}
	}
	return Mass{float64(grams.V), grams.U, grams.Text}
}

// Given reports whether the mass was written.
func (m Mass) Given() bool { return m.Text != "" }

func (m Mass) String() string { return m.Text }

// Anything is a quantity of any unit: the field's meaning depends on the
// instrument it stands under.
type Anything struct {
	Text   string
	Mass   Mass
	Length Length
	Wave   Wavelength
	Pure   Pure
}

func (a *Anything) decode(d *decoder, n *yaml.Node, path string, _ fieldTags, _ int) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	var grams quantity.Measure[quantity.Gram]
	var carats Weight
	var hint phrase.Line
	for _, q := range []quantityText{&grams, &carats, &a.Length, &a.Wave, &a.Pure} {
		err := q.Set(text)
		if err == nil {
			a.Text, a.Mass = text, massOf(grams, carats)
			return
		}
		var syntax *quantity.SyntaxError
		if hint == "" && errors.As(err, &syntax) && strings.HasPrefix(syntax.Hint, "did you mean") && strings.ContainsAny(text, letters) {
			hint = phrase.Line(syntax.Hint) // the unit is another spelling or size of this one
		}
	}
	if hint == "" {
		hint = "for example 0.0001 g, 0.001 ct, 0.01 mm, 0.5 nm or 0.001"
	}
	d.wrong(n, path, phrase.Say("%q is not a number with one of the units g, ct, mm, nm, or a plain one", text), hint)
}

const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZµ"

// Given reports whether it was written.
func (a Anything) Given() bool { return a.Text != "" }

// Readability is the smallest step an instrument shows.
type Readability = Anything
