// Package quantity gives the units of the bench a type each and reads what
// people write: a number with its unit and, if they wish, its uncertainty.
//
// Units are converted and rounded here and nowhere else. A value stays
// unrounded until it is printed.
package quantity

// The units a stone file knows.
type (
	// Millimetre is a length.
	Millimetre float64
	// Carat is a mass of exactly 200 mg (16 CFR 23.18(b) note).
	Carat float64
	// Gram is a mass.
	Gram float64
	// Degree is an angle.
	Degree float64
	// Percent is a ratio in hundredths.
	Percent float64
	// Nanometre is a wavelength.
	Nanometre float64
	// Micrometre is the thickness of a layer.
	Micrometre float64
	// Celsius is a temperature.
	Celsius float64
	// Number is a pure number: a refractive index, a specific gravity.
	Number float64
	// Second is a time.
	Second float64
	// Day is a time, for intervals between checks.
	Day float64
)

const (
	caratsPerGram     = 5          // exact: one carat is 200 mg by definition
	gramsPerTroyOunce = 31.1034768 // exact: NIST Handbook 44, App. C
)

// Carats converts grams to carats.
func (g Gram) Carats() Carat { return Carat(g) * caratsPerGram }

// Grams converts carats to grams.
func (c Carat) Grams() Gram { return Gram(c) / caratsPerGram }

// TroyOunces converts grams to troy ounces.
func (g Gram) TroyOunces() float64 { return float64(g) / gramsPerTroyOunce }

// A Value is a reduced physical quantity with its standard uncertainty, both in
// the same unit.
type Value struct{ V, U float64 }
