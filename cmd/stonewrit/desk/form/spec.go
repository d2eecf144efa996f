package form

import (
	"fmt"
	"reflect"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// A Shape says how the value of a field is entered and written.
type Shape string

// The shapes. The first ones hold a single value, the next ones a list or a
// mapping told in lines, the last ones further fields.
const (
	Word      Shape = "word"      // one of Words
	Line      Shape = "line"      // free text on one line; Words are suggestions
	Prose     Shape = "prose"     // free text
	Quantity  Shape = "quantity"  // number with unit
	Whole     Shape = "whole"     // whole number
	YesNo     Shape = "yes or no" //
	Day       Shape = "day"       // a date
	Amount    Shape = "amount"    // exact decimal, or with currency; in quotes
	Glow      Shape = "glow"      // strength and colour
	Afterglow Shape = "afterglow" // none, or colour and seconds

	Choices    Shape = "choices"    // some of Words
	Lines      Shape = "lines"      // texts
	Quantities Shape = "quantities" // numbers with unit
	Days       Shape = "days"       // dates
	Edges      Shape = "edges"      // turns of the refractometer
	Spans      Shape = "spans"      // stretches of the spectrum
	Claims     Shape = "claims"     // treatments: name, where, amount
	Pairs      Shape = "pairs"      // name: text

	Group Shape = "group" // fields of their own
	Items Shape = "items" // a list of groups
	Named Shape = "named" // groups with a name each
	Tests Shape = "tests" // the tests: a list of groups that differ by kind
)

// A Spec describes one key of a file, read off the tags of its type.
type Spec struct {
	Key, Doc, Example string
	Need              bool
	Shape             Shape
	Words             []string
	Units             []string // how the quantity may be written; the first is usual
	Measured          bool     // may carry its uncertainty
	Single            bool     // a list of one entry may be written without brackets
	Plain             string   // of a group: the key that a bare text stands for
	Fields            []Spec   // of groups
}

// StoneSpecs describes the stone file.
func StoneSpecs() []Spec { return fieldsOf(reflect.TypeFor[stone.Stone]()) }

// PieceSpecs describes the piece file.
func PieceSpecs() []Spec { return fieldsOf(reflect.TypeFor[stone.Piece]()) }

// BenchSpecs describes the bench file.
func BenchSpecs() []Spec { return fieldsOf(reflect.TypeFor[stone.Bench]()) }

// fieldsOf lists the keys of a record type in their order.
func fieldsOf(t reflect.Type) []Spec {
	var list []Spec
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			list = append(list, fieldsOf(f.Type)...)
			continue
		}
		key, ok := f.Tag.Lookup("yaml")
		if !ok {
			continue
		}
		s := Spec{Key: key, Doc: f.Tag.Get("doc"), Example: f.Tag.Get("eg"), Need: f.Tag.Get("need") == "yes"}
		if words := f.Tag.Get("words"); words != "" {
			s.Words = strings.Split(words, "|")
		}
		s.shape(f.Type)
		list = append(list, s)
	}
	return list
}

// shape finds how a value of type t is entered.
func (s *Spec) shape(t reflect.Type) {
	switch {
	case t.Kind() == reflect.Pointer:
		s.shape(t.Elem())
	case s.leaf(t), s.list(t):
	case t.Kind() == reflect.Map && t.Elem().Kind() == reflect.String:
		s.Shape = Pairs
	case t.Kind() == reflect.Map:
		s.Shape, s.Fields = Named, fieldsOf(t.Elem())
	case t.Kind() == reflect.Struct:
		s.Shape, s.Fields, s.Plain = Group, fieldsOf(t), plainKey(t)
	case t.Kind() == reflect.Bool:
		s.Shape = YesNo
	case t.Kind() == reflect.Int:
		s.Shape = Whole
	case t.Kind() == reflect.String && len(s.Words) > 0:
		s.Shape = Word
	case t.Kind() == reflect.String:
		s.Shape = Line
		if longText(s.Key) {
			s.Shape = Prose
		}
	default:
		panic(fmt.Sprintf("form: no field for %s of type %s", s.Key, t))
	}
}

// leaf knows the types of the records that read themselves.
func (s *Spec) leaf(t reflect.Type) bool {
	switch t {
	case reflect.TypeFor[stone.Date]():
		s.Shape = Day
	case reflect.TypeFor[stone.Mass]():
		s.Shape, s.Units, s.Measured = Quantity, []string{"g", "ct"}, true
	case reflect.TypeFor[stone.Anything](), reflect.TypeFor[stone.WordOrPercent]():
		s.Shape = Line
	case reflect.TypeFor[stone.Decimal](), reflect.TypeFor[stone.Money]():
		s.Shape = Amount
	case reflect.TypeFor[stone.Fluorescence]():
		s.Shape, s.Words = Glow, []string{"none", "weak", "moderate", "strong", "very strong"}
	case reflect.TypeFor[stone.Afterglow]():
		s.Shape = Afterglow
	case reflect.TypeFor[stone.Adjustments]():
		s.Shape = Pairs
	default:
		units, ok := unitsOf(t)
		if ok {
			s.Shape, s.Units, s.Measured = Quantity, units, true
		}
		return ok
	}
	return true
}

// unitsOf are the units of a quantity type; a pure number has none.
func unitsOf(t reflect.Type) ([]string, bool) {
	q, ok := reflect.New(t).Interface().(interface {
		Units() []string
		Float() float64
	})
	if !ok {
		return nil, false
	}
	return q.Units(), true
}

// list knows lists, by what they are lists of.
func (s *Spec) list(t reflect.Type) bool {
	switch {
	case t.Kind() == reflect.Slice:
		t = t.Elem()
	case t.Kind() == reflect.Struct && strings.HasPrefix(t.Name(), "List["):
		items, _ := t.FieldByName("Items")
		t, s.Single = items.Type.Elem(), true
	default:
		return false
	}
	switch t {
	case reflect.TypeFor[stone.AnyTest]():
		s.Shape = Tests
	case reflect.TypeFor[stone.Edges]():
		s.Shape, s.Measured = Edges, true
	case reflect.TypeFor[stone.Span]():
		s.Shape, s.Units = Spans, []string{"nm"}
	case reflect.TypeFor[stone.TreatmentClaim]():
		s.Shape = Claims
	case reflect.TypeFor[stone.Date]():
		s.Shape = Days
	case reflect.TypeFor[stone.Mass]():
		s.Shape, s.Units, s.Measured = Quantities, []string{"g", "ct"}, true
	default:
		s.listOf(t)
	}
	return true
}

func (s *Spec) listOf(t reflect.Type) {
	units, measured := unitsOf(t)
	switch {
	case measured:
		s.Shape, s.Units, s.Measured = Quantities, units, true
	case t.Kind() == reflect.Struct:
		s.Shape, s.Fields, s.Plain = Items, fieldsOf(t), plainKey(t)
	case len(s.Words) > 0:
		s.Shape = Choices
	default:
		s.Shape = Lines
	}
}

// plainKey is the key that a bare text stands for, in the types that may be
// written as one.
func plainKey(t reflect.Type) string {
	switch t {
	case reflect.TypeFor[stone.Mark]():
		return "text"
	case reflect.TypeFor[stone.Statement]():
		return "words"
	case reflect.TypeFor[stone.Plating]():
		return "metal"
	}
	return ""
}

// longText tells the keys under which people write sentences.
func longText(key string) bool {
	switch key {
	case "explanation", "condition", "description", "note", "type_of_value", "because", "provenance", "validity", "basis", "address":
		return true
	}
	return false
}

// TestSpecs describes each kind of test: its own keys first, those that all
// tests have behind them.
func TestSpecs(table *gem.Table) map[string][]Spec {
	common := len(fieldsOf(reflect.TypeFor[stone.TestHeader]()))
	kinds := map[string][]Spec{}
	for _, kind := range stone.TestKinds() {
		s, _ := stone.Read("", []byte("tests: [{test: "+kind+"}]"), table)
		all := fieldsOf(reflect.TypeOf(s.Tests[0].Test).Elem())
		kinds[kind] = append(append([]Spec{}, all[common:]...), all[1:common]...) // all[0] is test: itself
	}
	return kinds
}

// CommonKeys are the keys that every kind of test has.
func CommonKeys() []string {
	var keys []string
	for _, s := range fieldsOf(reflect.TypeFor[stone.TestHeader]()) {
		keys = append(keys, s.Key)
	}
	return keys
}
