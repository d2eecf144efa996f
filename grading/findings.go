package grading

import (
	"fmt"
	"math"
	"slices"

	"stonewrit/grading/identify"
	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// findings are what the examination itself shows to be wrong: contradicted
// claims, tests that contradict each other, checks that do not hold, weights
// that do not fit.
func findings(e *Examined) stone.Problems {
	var list stone.Problems
	s := e.Stone
	for _, c := range e.Claims() {
		if c.Claim.Standing == identify.Contradicted {
			p := s.Problem(stone.Finding, c.Path, phrase.Say("%s: %s", phrase.Say("%s is contradicted", phrase.Word(c.Name)), phrase.Semicolons(c.Claim.Because...)), "mend the opinion or the reading, set a mistaken test aside with set_aside, or explain under explanation")
			p.Statement = Contradiction
			list = append(list, p)
		}
	}
	for _, f := range e.Verdict.Findings {
		list = append(list, s.Problem(stone.Finding, f.Path, f.Message, f.Hint))
	}
	list = append(list, checkFindings(e)...)
	list = append(list, weightFindings(e)...)
	return append(list, scaleFindings(e)...)
}

// Contradiction is the required statement that a contradicted claim goes
// against. The message of such a problem begins with the claim and ends with its
// reasons.
const Contradiction = "conclusion-support"

// NamedClaim is a claim with its name and the key it answers.
type NamedClaim struct {
	Name, Path string
	Claim      identify.Claim
}

// Claims lists the four claims in the order told to people.
func (e *Examined) Claims() []NamedClaim {
	return []NamedClaim{
		{"species", "opinion.species", e.Verdict.Species},
		{"variety", "opinion.variety", e.Verdict.Variety},
		{"growth", "opinion.growth", e.Verdict.Growth},
		{"treatment", "opinion.treatments", e.Verdict.Treatment},
	}
}

// Contradicted reports whether any claim is.
func (e *Examined) Contradicted() bool {
	for _, c := range e.Claims() {
		if c.Claim.Standing == identify.Contradicted {
			return true
		}
	}
	return false
}

func checkFindings(e *Examined) stone.Problems {
	var list stone.Problems
	told := map[string]bool{}
	tell := func(t stone.Test, c reading.Check) {
		if c.State != reading.CheckOverdue && c.State != reading.CheckFailed || told[c.Instrument] {
			return
		}
		told[c.Instrument] = true
		path := fmt.Sprintf("tests[%d].instrument", t.Header().Index)
		p := e.Stone.Problem(stone.Finding, path, phrase.Say("%s: %s", c.Instrument, c.Words()), "check the instrument and repeat the test")
		p.Statement = "eq-calibration"
		list = append(list, p)
	}
	for _, v := range e.Values.Index {
		tell(v.Test, v.Check)
	}
	for _, v := range e.Values.Gravity {
		tell(v.Test, v.Check)
	}
	for _, v := range e.Values.Spectrum {
		tell(v.Test, v.Check)
	}
	return list
}

// weightFindings compares the measured weight with the estimate: 2u is a note,
// 3u a finding.
func weightFindings(e *Examined) stone.Problems {
	var list stone.Problems
	w := e.Weight
	for _, slip := range w.Slips {
		list = append(list, e.Stone.Problem(stone.Finding, slipPath(slip.Dimension), slip.Message, phrase.Say("likely slip: %s", phrase.Word(slip.Slip))))
	}
	if w.Estimate == nil {
		return list
	}
	for _, text := range w.Estimate.Warnings {
		list = append(list, e.Stone.Problem(stone.Warning, "size", text, ""))
	}
	if w.Measured == 0 {
		return list
	}
	estimated := w.Estimate.Chosen.Carats
	u := math.Hypot(estimated.U, w.MeasuredU)
	away := math.Abs(w.Measured-estimated.Value) / u
	text := phrase.Say("the measured %s lies %.1f times the uncertainty from the %.2f ct that the dimensions give", phrase.Figure(e.Stone.Weight.Measured.String()), away, estimated.Value)
	limit := 3.0
	if g := e.Stone.Size.Girdle; !g.Given() {
		limit = unknownGirdle
		text = phrase.Say("%s; the girdle is not recorded", text)
	}
	switch {
	case away > limit:
		list = append(list, e.Stone.Problem(stone.Finding, "weight.measured", text, "a slip in a dimension or in the weight, or another material"))
	case away > 2:
		list = append(list, e.Stone.Problem(stone.Note, "weight.measured", text, ""))
	}
	return list
}

// scaleShare is how far two weighings of one stone may lie apart before one of
// them is taken for a slip (common practice, from memory).
const scaleShare = 0.02

// scaleFindings compare the weight with the mass in air of a hydrostatic test.
func scaleFindings(e *Examined) stone.Problems {
	var list stone.Problems
	measured := e.Stone.Weight.Measured
	if !measured.Given() || e.Stone.Size.Number() > 1 {
		return nil
	}
	for i, a := range e.Stone.Tests {
		g, ok := a.Test.(*stone.Gravity)
		if !ok || g.SetAside != "" || g.Method != "hydrostatic" || len(g.InAir.Items) == 0 {
			continue
		}
		air := float64(quantity.Gram(g.InAir.Items[0].Grams).Carats())
		if apart := math.Abs(air - measured.Float()); apart > max(scaleShare*measured.Float(), 0.02) {
			list = append(list, e.Stone.Problem(stone.Finding, fmt.Sprintf("tests[%d].in_air", i),
				phrase.Say("%s in air is %.3f ct, and the stone was weighed at %s", phrase.Figure(g.InAir.Items[0].String()), air, phrase.Figure(measured.String())), "one of the two slipped, or it was another stone"))
		}
	}
	return list
}

// unknownGirdle is the limit for a stone whose girdle is not recorded. Stones
// left thick to reach a round weight make the tail heavier than a normal one: on
// 6,000 round diamonds of open data 0.6 % lie beyond three uncertainties, 0.2 %
// beyond four.
const unknownGirdle = 4.0

func slipPath(dimension string) string {
	if dimension == "weight" {
		return "weight"
	}
	return "size." + dimension
}

// caveats are the printed limits of the examination.
func caveats(e *Examined) []phrase.Line {
	list := slices.Clone(e.Verdict.Caveats)
	if w := e.Weight; w.Measured == 0 && w.Estimate != nil {
		list = append(list, phrase.Say("The weight is estimated, not weighed: %s.", w.Estimate.Because))
	}
	if others := e.Weight.Widened; len(others) > 0 && e.Weight.Measured == 0 {
		list = append(list, phrase.Say("The interval of the estimated weight allows for what the tests leave open: %s.", phrase.Commas(phrase.Words(others)...)))
	}
	if n := len(e.Verdict.Rivals); n > fewRivals && e.Weight.Measured == 0 && e.Weight.Estimate != nil {
		list = append(list, phrase.Say("The estimated weight is that of the stated material alone; the tests leave %d others.", n))
	}
	if e.Stone.Size.InSetting || e.Stone.Mounted && !e.Stone.Size.Sizes.Given && e.Stone.Size.Given() {
		list = append(list, "The dimensions were taken in the setting.")
	}
	if e.Bench != nil {
		list = append(list, phrase.Texts(e.Bench.Terms.Caveats)...)
	}
	return list
}
