package quality

import (
	"errors"
	"slices"
)

// PerMille is the fineness of gold of so many karats: pure gold has 24.
func PerMille(karat float64) float64 { return karat * 1000 / 24 }

// A Sample says what was assayed: the law allows a whole article with its
// solder more than a part without.
type Sample string

// The samples of 15 USC 295 and 296.
const (
	PartWithoutSolder Sample = "part without solder"
	WholeArticle      Sample = "whole article"
	WholeWatchcase    Sample = "whole watchcase or flatware"
)

type tolerance struct {
	law, metal string
	sample     string
	perMille   float64
}

// A Judgement is what one rule says of a measured fineness against a mark.
type Judgement struct {
	Law    string
	Lowest float64 // per mille, the least that the rule allows under the mark
	Holds  bool
}

// JudgeFineness compares a measured fineness, per mille, with what a mark
// claims: by ISO 9202, which allows no shortfall, and by the law of the United
// States, which allows one, where it has a rule for the metal. Which of them
// binds is not decided here; say by which.
func (g *Grader) JudgeFineness(metal string, claimed, measured float64, sample Sample) []Judgement {
	var list []Judgement
	for _, t := range g.tolerances {
		if (t.metal == "any" || t.metal == metal) && (t.sample == "any" || t.sample == string(sample)) {
			lowest := claimed - t.perMille
			list = append(list, Judgement{t.law, lowest, measured >= lowest})
		}
	}
	return list
}

// Classes are the recommended finenesses of a metal by ISO 9202, per mille,
// rising; nil for another metal.
func (g *Grader) Classes(metal string) []int {
	var list []int
	for _, c := range g.classes {
		if c.metal == metal {
			list = append(list, c.perMille)
		}
	}
	return list
}

// Listed reports whether a fineness is one of the recommended classes; another
// one is to be printed as "not a listed class".
func (g *Grader) Listed(metal string, perMille int) bool {
	return slices.Contains(g.Classes(metal), perMille)
}

// MarkAllowed is the highest class that metal of a measured fineness may be
// marked with: classes are least values. ok is false below the lowest class.
func (g *Grader) MarkAllowed(metal string, measured float64) (class int, ok bool) {
	for _, c := range g.Classes(metal) {
		if measured >= float64(c) {
			class, ok = c, true
		}
	}
	return class, ok
}

// KaratOf is the highest whole karat that gold of a fineness, per mille, may be
// called by the law of the United States for a part without solder: 585 is 14 K,
// 916 is 22 K. It returns 0 below one karat. The karat and the mark in per mille
// remain two claims.
func (g *Grader) KaratOf(perMille float64) int {
	for k := 24; k > 0; k-- {
		for _, j := range g.JudgeFineness("gold", PerMille(float64(k)), perMille, PartWithoutSolder) {
			if j.Law == "15 USC 295" && j.Holds {
				return k
			}
		}
	}
	return 0
}

// LowestFineness is the least fineness, per mille, that a country lets be sold
// as the metal; ok is false where the table does not have it.
func (g *Grader) LowestFineness(country, metal string) (perMille float64, ok bool) {
	for _, h := range g.hallmarks {
		if h.country == country && h.metal == metal && h.lowest > 0 {
			return h.lowest, true
		}
	}
	return 0, false
}

// HallmarkExempt is the mass in g below which a country asks for no hallmark; ok
// is false where the table does not have it.
func (g *Grader) HallmarkExempt(country, metal string) (grams float64, ok bool) {
	for _, h := range g.hallmarks {
		if h.country == country && h.metal == metal && h.exempt > 0 {
			return h.exempt, true
		}
	}
	return 0, false
}

// AssayExempt reports whether a part is left out of an assay in the United
// States: springs, posts, pegs and the like.
func (g *Grader) AssayExempt(part string) bool { return slices.Contains(g.exemptParts, part) }

type class struct {
	metal    string
	perMille int
}

type hallmark struct {
	country, metal string
	lowest, exempt float64 // per mille, g; 0 for not known
}

func (g *Grader) readMetals() error {
	optional := func(r *row, column string) float64 {
		if r.text(column) == "" {
			return 0
		}
		return r.number(column, 0.01, 1000)
	}
	return errors.Join(
		each("fineness.csv", func(r *row) {
			g.classes = append(g.classes, class{r.text("metal"), int(r.number("per_mille", 1, 1000))})
		}, "metal", "per_mille"),
		each("tolerances.csv", func(r *row) {
			g.tolerances = append(g.tolerances, tolerance{r.text("law"), r.text("metal"), r.text("sample"), r.number("per_mille", 0, 50)})
		}, "law", "metal", "sample", "per_mille"),
		each("hallmark.csv", func(r *row) {
			g.hallmarks = append(g.hallmarks, hallmark{r.text("country"), r.text("metal"), optional(r, "lowest"), optional(r, "exempt_g")})
		}, "country", "metal", "lowest", "exempt_g"),
		each("exempt_parts.csv", func(r *row) { g.exemptParts = append(g.exemptParts, r.text("part")) }, "part"),
	)
}
