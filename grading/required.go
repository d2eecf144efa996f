package grading

import (
	"stonewrit/grading/stone"
)

// requirement is one statement that a kind of document must make, and the key
// that gives its input.
type requirement struct {
	id     string // of the list of required statements
	kinds  string // letters of the kinds that must have it: A, N, R
	path   string
	lacks  func(e *Examined) bool
	needed string
	hint   string
}

// letters of the kinds of document in the list of required statements.
func letter(kind string) string {
	return map[string]string{stone.Appraisal: "A", stone.ShortNote: "N", stone.Record: "R"}[kind]
}

// required tells which required statements lack their input: issue stops on
// them, draft does not.
func required(e *Examined) stone.Problems {
	var list stone.Problems
	kind := letter(e.Stone.Report)
	for _, r := range requirements() {
		if !contains(r.kinds, kind) || !r.lacks(e) {
			continue
		}
		p := e.Stone.Problem(stone.Missing, r.path, r.needed, r.hint)
		p.Statement = r.id
		list = append(list, p)
	}
	return list
}

func contains(letters, letter string) bool {
	for _, l := range letters {
		if string(l) == letter {
			return true
		}
	}
	return false
}

func requirements() []requirement {
	return []requirement{
		{"issuer", "AN", "", func(e *Examined) bool { return e.Bench == nil || e.Bench.Practice.Address == "" },
			"the document needs name and address of the issuer", "write practice: {name: …, address: …} in bench.yaml"},
		{"client", "AR", "client", func(e *Examined) bool { return e.Stone.Client == nil },
			"the document needs the client (for a record, the owner)", "client: {name: \"…\", address: \"…\"}"},
		{"intended-use", "A", "use.purpose", func(e *Examined) bool { return e.Stone.Use.Purpose == "" && e.purposeOfWorth() == "" },
			"an appraisal needs its intended use", "use: {purpose: insurance replacement, users: [client, insurer]}"},
		{"intended-users", "A", "use.users", func(e *Examined) bool { return len(e.Stone.Use.Users.Items) == 0 },
			"an appraisal needs those who may rely on it", "use: {users: [client, insurer]}"},
		{"item-unambiguous", "ANR", "stone", func(e *Examined) bool { return marksOf(e.Stone) < 2 },
			"the item must be told from any other: two at least of weight, dimensions, inscription, photograph, features", "add photos: or size:"},
		{"condition", "ANR", "quality.condition", func(e *Examined) bool { return e.Stone.Quality.Condition == "" },
			"the document needs the condition of the item", "quality: {condition: \"no wear or damage seen\"}"},
		{"natural-or-not", "ANR", "opinion.growth", func(e *Examined) bool { return e.Stone.Opinion.Growth == "" },
			"the document needs the growth, or undetermined", "growth: undetermined"},
		{"treat-status", "ANR", "opinion.treatments", func(e *Examined) bool {
			list := e.Stone.Opinion.Treatments
			return list.Given && len(list.Items) == 0 && !magnified(e.Stone) && e.Stone.Opinion.Basis != "stated"
		}, "none seen was written, and the stone was not examined under magnification", "leave treatments out for not examined, or record a magnification test"},
		{"ct-estimated", "AN", "size", func(e *Examined) bool {
			return e.Weight.Measured == 0 && e.Weight.Estimate == nil && !e.Stone.Weight.Stated.Given()
		}, "the document needs a weight, measured, estimated from dimensions or stated", "weight: {measured: …} or size: with length, width and depth"},
		{"value-type", "A", "worth", func(e *Examined) bool { return e.Stone.Worth == nil || e.Stone.Worth.Type == "" },
			"an appraisal needs its value with the type of value and its definition", "worth: {type_of_value: \"…\", currency: EUR, lines: [{what: …, amount: \"…\"}]}"},
		{"date-effective", "A", "worth.effective", func(e *Examined) bool { return e.Stone.Worth == nil || !e.Stone.Worth.Effective.Given() },
			"an appraisal needs the day on which the value holds", "worth: {effective: 2026-10-14}"},
		{"cert-interest", "A", "interest", func(e *Examined) bool { return e.Stone.Interest.InItem == "" },
			"an appraisal needs the issuer's interest in the item", "interest: {in item: none, prior services: none, fee: fixed}"},
	}
}

func (e *Examined) purposeOfWorth() string {
	if e.Stone.Worth == nil {
		return ""
	}
	return e.Stone.Worth.Purpose
}

// marksOf counts what tells the item from any other.
func marksOf(s *stone.Stone) int {
	n := 0
	for _, has := range []bool{
		s.Weight.Measured.Given() || s.Weight.Stated.Given(), s.Size.Given(), s.Inscription.Text != "", len(s.Photos) > 0, magnified(s),
	} {
		if has {
			n++
		}
	}
	return n
}

func magnified(s *stone.Stone) bool {
	for _, a := range s.Tests {
		if _, ok := a.Test.(*stone.Magnification); ok && a.Header().SetAside == "" {
			return true
		}
	}
	return false
}
