package export

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
)

// Sorts of item.
const (
	SortStone = "stone"
	SortPiece = "piece"
)

// An Item is one line of a list. Text is as it is printed; what is not known is
// empty.
type Item struct {
	File      string
	Reference string
	Sort      string // SortStone, SortPiece
	Document  string // appraisal, note, record

	Name       string // in full, with what may not be parted from it
	Species    string
	Variety    string
	Growth     string
	Treatments string
	Standing   Standings
	Count      int    // stones alike in one file; of a piece its stones
	Carats     string // of all of them together
	WeightIs   string // weighed, estimated, stated
	Shape, Cut string
	Colour     string

	Location string
	Piece    string // reference of the piece it is set in
	Examined string
	Examiner string
	Client   string

	Value        Value
	Asking       Money
	Insured      Money
	InsuredUntil string
	Paid         Money
	Since        string // of ownership
	Receipt      string
	Stock        string

	Undecided    []string // claims that the tests leave open
	Contradicted []string // claims that they contradict
	OutOfDate    []string
	ToMend       int // findings and missing statements
	Picture      string
	Thumbnail    []byte // JPEG, or nil

	material *gem.Material
	within   bool // its value is part of that of its piece
}

// Standings are those of the four claims; of a piece they are empty.
type Standings struct {
	Species   string `json:"species,omitempty"`
	Variety   string `json:"variety,omitempty"`
	Growth    string `json:"growth,omitempty"`
	Treatment string `json:"treatment,omitempty"`
}

// Limits say what is out of date.
type Limits struct {
	Today  time.Time // the calendar day at the practice
	Values Age       // a value older than this is out of date
}

// Stone is the item of an examined stone. piece is the one that it is set in, or
// nil.
func Stone(e *grading.Examined, piece *stone.Piece, l Limits) Item {
	s := e.Stone
	i := Item{
		Sort: SortStone, Reference: s.Reference, Name: e.Told.Name.String(),
		Species: s.Opinion.Species, Variety: s.Opinion.Variety, Growth: s.Opinion.Growth,
		Count: s.Size.Number(), Shape: s.Size.Shape, Cut: s.Size.Cut, Colour: colour(s),
		Standing: Standings{
			string(e.Verdict.Species.Standing), string(e.Verdict.Variety.Standing), string(e.Verdict.Growth.Standing), string(e.Verdict.Treatment.Standing),
		},
		material: e.Verdict.Opinion.Narrow,
	}
	if m := e.Verdict.Opinion.Species; m != nil {
		i.Species = m.Name
	}
	if m := e.Verdict.Opinion.Variety; m != nil && m.Level != gem.Counterpart {
		i.Variety = m.Name
	}
	i.Treatments = treatments(s.Opinion.Treatments)
	i.weight(e)
	i.assignment(s.Assignment)
	if e.Worth != nil {
		i.concluded(s.Worth, e.Worth)
	}
	i.account(s.Account, l)
	if piece != nil {
		i.Piece = piece.Reference
		i.Location = cmp.Or(i.Location, piece.Location)
		i.within = piece.Worth != nil
	}
	for _, c := range e.Claims() {
		switch {
		case c.Claim.Opinion == "":
		case c.Claim.Standing == identify.Undecided:
			i.Undecided = append(i.Undecided, c.Name)
		case c.Claim.Standing == identify.Contradicted:
			i.Contradicted = append(i.Contradicted, c.Name)
		}
	}
	i.problems(e.Problems)
	return i
}

// Piece is the item of an examined piece.
func Piece(e *grading.ExaminedPiece, l Limits) Item {
	p := e.Piece
	i := Item{Sort: SortPiece, Reference: p.Reference, Name: p.Kind}
	if p.Description != "" {
		i.Name += ", " + p.Description
	}
	var carats sum
	for _, item := range e.Items {
		carats.add(item.Carats)
	}
	i.Carats = carats.String()
	for _, s := range p.Stones {
		i.Count += max(1, s.Count)
	}
	i.assignment(p.Assignment)
	if e.Worth != nil {
		i.concluded(p.Worth, e.Worth)
	}
	i.account(p.Account, l)
	i.problems(e.Problems)
	return i
}

// Unjudged reports whether species or variety are undecided or contradicted.
func (i Item) Unjudged() bool {
	open := func(standing string) bool {
		return standing == string(identify.Undecided) || standing == string(identify.Contradicted)
	}
	return i.Sort == SortStone && (open(i.Standing.Species) || i.Variety != "" && open(i.Standing.Variety))
}

func (i *Item) weight(e *grading.Examined) {
	carats, estimated := e.Printed()
	switch {
	case carats != "" && estimated:
		i.Carats, i.WeightIs = carats, "estimated"
	case carats != "":
		i.Carats, i.WeightIs = carats, "weighed"
	case e.Stone.Weight.Stated.Given():
		i.Carats, i.WeightIs = e.Stone.Weight.Stated.Digits(), "stated"
	}
}

func (i *Item) assignment(a stone.Assignment) {
	i.Document, i.Location, i.Examiner = a.Report, a.Location, a.Examiner
	if n := len(a.Examined.Items); n > 0 {
		i.Examined = a.Examined.Items[n-1].String()
	}
	if a.Client != nil {
		i.Client = a.Client.Name
	}
}

func (i *Item) account(a stone.Account, l Limits) {
	if i.Value == (Value{}) {
		i.told(a.Valued)
	}
	if i.Value.Given() && l.Values != (Age{}) && i.Value.day.Before(l.Values.before(l.Today)) {
		i.OutOfDate = append(i.OutOfDate, fmt.Sprintf("the value of %s is older than %s", i.Value.Date, l.Values))
	}
	if a.Stock != nil {
		i.Stock = a.Stock.Number
		if p := a.Stock.Price; p != nil {
			i.Asking = Money{string(p.Amount), p.Currency}
		}
	}
	if o := a.Owned; o != nil {
		i.Paid, i.Receipt = Money{string(o.Paid.Amount), o.Paid.Currency}, o.Receipt
		i.Since = day(o.From)
	}
	if p := a.Insured; p != nil {
		i.Insured, i.InsuredUntil = Money{string(p.Sum.Amount), p.Sum.Currency}, day(p.Until)
		if p.Until.Given() && p.Until.Before(l.Today) {
			i.OutOfDate = append(i.OutOfDate, "insured until "+i.InsuredUntil)
		}
	}
	if len(a.Photos) > 0 {
		i.Picture = a.Photos[0].File
	}
}

// problems counts what is to be mended. Instruments whose check did not hold on
// the day are out of date.
func (i *Item) problems(list stone.Problems) {
	for _, p := range list {
		if p.Severity == stone.Missing || p.Severity == stone.Finding {
			i.ToMend++
		}
		if p.Severity == stone.Finding && p.Statement == "eq-calibration" {
			i.OutOfDate = append(i.OutOfDate, p.Message.String())
		}
	}
}

func treatments(list stone.List[stone.TreatmentClaim]) string {
	if list.Given && len(list.Items) == 0 {
		return "none seen"
	}
	var names []string
	for _, t := range list.Items {
		names = append(names, t.Name)
	}
	return strings.Join(names, ", ")
}

func colour(s *stone.Stone) string {
	switch {
	case s.Quality.Colour != nil && s.Quality.Colour.Words != "":
		return s.Quality.Colour.Words
	case s.Quality.Diamond != nil && s.Quality.Diamond.Colour != "":
		return s.Quality.Diamond.Colour
	}
	return s.Appearance.Colour
}

func day(d stone.Date) string {
	if !d.Given() {
		return ""
	}
	return d.String()
}
