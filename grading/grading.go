// Package grading examines one stone: a record in, an examined stone out. It
// reduces the readings, identifies, estimates the weight and does the value
// arithmetic, each in its own package, and hands their results on unrounded.
//
// Nothing in it reads a file, a clock or the environment: the same record,
// bench and day give the same answer.
package grading

import (
	"stonewrit/grading/phrase"
	"time"

	"stonewrit/grading/gem"
	"stonewrit/grading/identify"
	"stonewrit/grading/quality"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
	"stonewrit/grading/weight"
	"stonewrit/grading/worth"
)

// Tables hold everything that examining looks up. They are loaded once and may
// be shared by several goroutines.
type Tables struct {
	Gems     *gem.Table
	Quality  *quality.Grader
	identify *identify.Identifier
	weights  *weight.Estimator
	figures  reading.Figures
	lists
}

// Load reads the embedded tables. An error means that they are faulty.
func Load() (*Tables, error) {
	gems, err := gem.Load()
	if err != nil {
		return nil, err
	}
	weights, err := weight.New()
	if err != nil {
		return nil, err
	}
	figures, err := reading.LoadFigures()
	if err != nil {
		return nil, err
	}
	grader, err := quality.New(gems)
	if err != nil {
		return nil, err
	}
	lists, err := readLists()
	if err != nil {
		return nil, err
	}
	return &Tables{gems, grader, identify.New(gems), weights, figures, lists}, nil
}

// Identifier is the judge that the tables were loaded for.
func (t *Tables) Identifier() *identify.Identifier { return t.identify }

// Weights estimates weights from dimensions.
func (t *Tables) Weights() *weight.Estimator { return t.weights }

// Examined is a stone with all that follows from its record.
type Examined struct {
	Stone    *stone.Stone
	Bench    *stone.Bench // nil without a bench file
	Values   reading.Values
	Verdict  identify.Result
	Weight   Weight
	Worth    *worth.Result // nil without worth in the stone file
	Told     Told          // what documents tell of such a stone
	Problems stone.Problems
	Caveats  []phrase.Line
}

// Told is what documents tell of a stone beside what was measured and judged.
type Told struct {
	Name       quality.Name
	Colour     quality.Colour
	Care       quality.Advice
	Restricted []quality.Restriction // what may limit its sale or its crossing of a border
	Safety     []gem.Caution         // for whoever works on it
}

// Examine examines a record that was read without errors, for a document of its
// own. today is the calendar day at the practice.
func (t *Tables) Examine(s *stone.Stone, b *stone.Bench, today time.Time) *Examined {
	e := t.judge(s, b, today)
	if e.Problems.Has(stone.Error) {
		return e
	}
	e.value()
	e.Problems = append(e.Problems, t.required(t.alone(e, today))...)
	e.Problems.Sort()
	return e
}

// ExamineSet examines the record of a stone that is set in a piece and told of
// in the document of the piece: what a document says once, such as client and
// value, is asked of the piece alone.
func (t *Tables) ExamineSet(s *stone.Stone, p *stone.Piece, b *stone.Bench, today time.Time) *Examined {
	e := t.judge(s, b, today)
	if e.Problems.Has(stone.Error) {
		return e
	}
	if s.Worth != nil {
		e.Problems = append(e.Problems, s.Problem(stone.Warning, "worth", phrase.Say("this value is not printed: the piece %s, which holds the stone, has one appraisal", p.Reference), "leave it out here"))
	}
	e.Problems = append(e.Problems, t.required(t.set(e, p, today))...)
	e.Problems.Sort()
	return e
}

// judge makes all of a record that does not depend on the document.
func (t *Tables) judge(s *stone.Stone, b *stone.Bench, today time.Time) *Examined {
	e := &Examined{Stone: s, Bench: b}
	e.Problems = append(e.Problems, stone.Against(s, b, today)...)
	if e.Problems.Has(stone.Error) {
		e.Problems.Sort()
		return e
	}
	bench := t.bench(s, b)
	e.Values = reading.Reduce(s, bench)
	e.Weight = t.measure(s, b, bench)
	e.Verdict = t.identify.Identify(identify.Case{Stone: s, Values: e.Values, Implied: e.Weight.implied()})
	t.estimate(e)
	e.Told = t.told(s)
	e.Caveats = caveats(e)
	e.Problems = append(e.Problems, findings(e)...)
	e.Problems.Sort()
	return e
}

// bench is what reducing the readings needs of the bench file.
func (t *Tables) bench(s *stone.Stone, b *stone.Bench) reading.Bench {
	r := reading.Bench{Figures: t.figures, On: s.Examined.Items[len(s.Examined.Items)-1].Time, Reference: t.reference}
	if b != nil {
		r.Instruments = b.Instruments
	}
	return r
}

func (t *Tables) reference(name string) (low, high float64, ok bool) {
	r, ok := t.Gems.Reference(name)
	return r.Low, r.High, ok
}
