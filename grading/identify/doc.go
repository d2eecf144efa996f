// Package identify asks of each recorded test whether it agrees with what the
// examiner says the stone is, which other materials the same tests would also
// allow, and what that makes of the four claims: species, variety, growth and
// treatment.
//
// # The rule
//
// With d the distance from a value v to a material's published range (0 inside
// it) and u the standard uncertainty of v: a test conflicts when d > 3u, and
// agrees when d <= 2u and v is sharp enough to mean something; all else cannot
// tell. It is a rule of compatibility with guarded rejection in the words of
// JCGM 106: it bounds the risk of contradicting a right name, not that of
// agreeing with a wrong one, which is why the rivals are named.
//
// The four claims never borrow from each other. Index, birefringence and
// specific gravity are evidence of a species alone; growth and treatment rest
// on signs, each of which proves, suggests or excludes something in a named
// material.
package identify

import (
	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// Verdict is what one test says of one material.
type Verdict string

// The verdicts.
const (
	Agrees     Verdict = "agrees"
	CannotTell Verdict = "cannot tell"
	Conflicts  Verdict = "conflicts"
)

// Standing is what all tests say of one claim.
type Standing string

// The standings.
const (
	Supported    Standing = "supported"
	Undecided    Standing = "undecided"
	Contradicted Standing = "contradicted"
)

// Kind is a kind of evidence; two kinds are independent of each other.
type Kind string

// Kinds that count toward a supported species when they agree tellingly.
const (
	KindIndex        Kind = "refractive index"
	KindOptic        Kind = "optic structure"
	KindDensity      Kind = "density"
	KindAbsorption   Kind = "absorption"
	KindLuminescence Kind = "luminescence"
	KindInclusions   Kind = "what magnification shows"
	KindReport       Kind = "another laboratory's report"
	KindOther        Kind = "heat, electricity, magnetism, hardness" // never counts
)

// A Case is one stone with its reduced readings.
type Case struct {
	Stone   *stone.Stone
	Values  reading.Values
	Implied *Implied // from weight and dimensions; nil if not to be had
}

// Implied is the specific gravity that weight and dimensions imply.
type Implied struct {
	SG         quantity.Value
	Consistent bool // the dimensions agree with one another
}

// A Result is what identification comes to.
type Result struct {
	Species, Variety, Growth, Treatment Claim
	Tests                               []TestResult
	Rivals                              []Rival
	Findings                            []Finding // disagreements between tests and the like
	Noted                               []string  // features that are printed and prove nothing
	Opinion                             Opinion
	Caveats                             []phrase.Line
}

// A Claim is one of the four.
type Claim struct {
	Opinion  string // as written; "" if there is none
	Standing Standing
	Because  []phrase.Line
	Issuer   string // of the laboratory report that is the first reason of a supported claim, or ""
}

// TestResult is one test against the opinion.
type TestResult struct {
	Test     stone.Test
	Kind     Kind
	Verdict  Verdict
	Value    phrase.Line // the reduced value, printable
	Expected phrase.Line // what the table says of the opinion
	Because  phrase.Line
	Telling  bool // the same reading speaks against a third of the materials
}

// A Rival is another material that the tests do not exclude.
type Rival struct {
	Material *gem.Material
	Because  phrase.Line
}

// A Finding is something that the tests show of each other.
type Finding struct {
	Path    string
	Message phrase.Line
	Hint    phrase.Line
}
