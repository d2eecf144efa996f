package main

import (
	"fmt"
	"slices"
	"stonewrit/grading/phrase"
	"strings"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
)

// mostRivals is how many rivals are named before the rest is counted.
const mostRivals = 8

// block words what is known of one stone, for somebody at the counter. It is ""
// where the stone cannot be used: the problems then tell all.
func (r *reader) block(rec *record, e *grading.Examined) (string, error) {
	if e.Problems.Has(stone.Error) {
		return "", nil
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s  %s\n", oneLine(e.Stone.Reference), rec.file)
	for _, claim := range e.Claims() {
		b.WriteString(claimLines(e, claim))
	}
	b.WriteString(labelled("rivals", rivalsText(e)))
	if e.Verdict.Species.Standing == identify.Undecided {
		if next := r.suggestions(rec, e); len(next) > 0 {
			b.WriteString(labelled("next", nextText(next[0], len(e.Verdict.Rivals))))
		}
	}
	b.WriteString(labelled("weight", weightText(e)))
	for _, q := range e.Problems {
		if isContradiction(e, q) {
			q.Message = q.Message.First() // the reason stands with the claim
		}
		b.WriteString(problemLines(rec.file, q))
	}
	b.WriteString("\n")
	return b.String(), nil
}

// claimLines are a claim with its standing, and what it rests on.
func claimLines(e *grading.Examined, c grading.NamedClaim) string {
	opinion := c.Claim.Opinion
	if opinion == "" {
		opinion = noOpinion(e.Stone, c.Name)
	}
	text := labelled(c.Name, opinion+": "+string(c.Claim.Standing))
	because := slices.DeleteFunc(phrase.Strings(c.Claim.Because), namesRivals)
	if len(because) > 0 {
		text += labelled("", strings.Join(because, "; "))
	}
	return text
}

// namesRivals tells the reason that lists the rivals, which have a line of
// their own.
func namesRivals(because string) bool { return strings.HasPrefix(because, "not excluded: ") }

// noOpinion words a claim that the file leaves open.
func noOpinion(s *stone.Stone, claim string) string {
	if claim == "treatment" && s.Opinion.Treatments.Given {
		return "none seen"
	}
	return "not stated"
}

// rivalsText names the materials that the tests leave.
func rivalsText(e *grading.Examined) string {
	if len(e.Stone.Tests) == 0 {
		return "nothing was tested"
	}
	var names []string
	for _, r := range e.Verdict.Rivals {
		names = append(names, r.Material.Name)
	}
	if len(names) == 0 {
		return "none left"
	}
	return some(names, mostRivals)
}

// nextText is the most useful test not done yet.
func nextText(s identify.Suggestion, rivals int) string {
	if len(s.Excludes) == 0 {
		return s.Test + " may tell some of them apart"
	}
	return fmt.Sprintf("%s would exclude %d of %s", s.Test, len(s.Excludes), count(rivals, "rival", "rivals"))
}

// weightText tells the weight as weighed, as estimated and as stated.
func weightText(e *grading.Examined) string {
	var parts []string
	w := e.Weight
	if w.Measured > 0 {
		parts = append(parts, fmt.Sprintf("%s ct weighed", e.Stone.Weight.Measured.Digits()))
	}
	if stated := e.Stone.Weight.Stated; stated.Given() {
		by := ""
		if e.Stone.Weight.By != "" {
			by = " by " + e.Stone.Weight.By
		}
		parts = append(parts, fmt.Sprintf("%s ct stated%s, not weighed here", stated.Digits(), by))
	}
	switch {
	case w.Estimate != nil:
		c := w.Estimate.Chosen
		parts = append(parts, fmt.Sprintf("%.2f ct from the dimensions (%.2f to %.2f; %s)", c.Carats.Value, c.Low, c.High, c.Method))
	case w.NoEstimate != "":
		parts = append(parts, "no estimate: "+w.NoEstimate.String())
	}
	if e.Stone.Size.Number() > 1 {
		parts = append(parts, fmt.Sprintf("%d stones together", e.Stone.Size.Number()))
	}
	return strings.Join(parts, "; ")
}

// problemLines are a problem with its place, and the hint below it.
func problemLines(file string, q stone.Problem) string {
	text := labelled(string(q.Severity), q.Where(file)+": "+q.Message.String())
	if q.Hint != "" {
		text += labelled("", "hint: "+q.Hint.String())
	}
	return text
}
