// Package reading reduces what instruments showed to physical values with
// their uncertainty.
//
// Every value is v with a standard uncertainty u, combined as root sum of
// squares of its independent parts (JCGM 100, 5.1.2): readability and method,
// repeat readings, and the instrument's check. A check against a stone of known
// index gives an offset, which is subtracted; a check of a balance gives a
// factor. Without a valid check nothing is subtracted and u grows.
//
// The package knows no gem: it does not say whether a value fits.
package reading

import (
	"math"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// A Reference gives the known edges of a reference stone, equal for a singly
// refractive one; ok is false when it has no known values.
type Reference func(name string) (low, high float64, ok bool)

// A Bench is what reducing needs to know beside the stone file.
type Bench struct {
	Instruments map[string]stone.Instrument
	Reference   Reference
	Figures     Figures
	On          time.Time // the day of the examination
}

// Values are the reduced readings of one stone, test by test.
type Values struct {
	Index     []IndexValue
	Gravity   []GravityValue
	Spectrum  []SpectrumValue
	Character Character
	Caveats   []phrase.Line
}

// Reduce reduces all readings of a stone.
func Reduce(s *stone.Stone, b Bench) Values {
	var v Values
	for _, any := range s.Tests {
		switch t := any.Test.(type) {
		case *stone.Refractometer:
			v.Index = append(v.Index, b.Refractometer(t))
		case *stone.Digital:
			v.Index = append(v.Index, b.Digital(t))
		case *stone.Gravity:
			v.Gravity = append(v.Gravity, b.Gravity(t))
		case *stone.Spectroscope:
			v.Spectrum = append(v.Spectrum, b.Spectrum(t))
		}
	}
	v.Character = characterOf(s, v.Index)
	v.Caveats = b.caveats(s, v)
	return v
}

func rootSum(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}

// meanOf returns the mean of readings and the standard uncertainty of the mean
// from their scatter, 0 for fewer than three readings, whose scatter says too
// little.
func meanOf(readings []float64) (mean, u float64) {
	for _, r := range readings {
		mean += r
	}
	n := float64(len(readings))
	mean /= n
	if len(readings) < 3 {
		return mean, 0
	}
	sum := 0.0
	for _, r := range readings {
		sum += (r - mean) * (r - mean)
	}
	return mean, math.Sqrt(sum / (n - 1) / n)
}
