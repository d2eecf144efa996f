package identify

import (
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// variety weighs the claim of the variety: supported only if the species is and
// every fact that the name needs is recorded and fits.
func (j *judgement) variety(species Standing) Claim {
	claim := Claim{Opinion: j.c.Stone.Opinion.Variety, Standing: Undecided}
	v := j.opinion.Variety
	if v == nil {
		claim.Because = []phrase.Line{"no opinion given"}
		return claim
	}
	if claim.Opinion == "" {
		claim.Opinion = v.Name
	}
	if against := j.againstVariety(); len(against) > 0 {
		claim.Standing, claim.Because = Contradicted, against
		return claim
	}
	missing, wrong, fits := j.rules(v)
	fits = unique(fits)
	switch {
	case len(wrong) > 0:
		claim.Standing, claim.Because = Contradicted, wrong
	case len(missing) > 0:
		claim.Because = append(fits, missing...)
	case species != Supported:
		claim.Because = append(fits, "the species is not supported")
	default:
		claim.Standing, claim.Because = Supported, fits
		if len(fits) == 0 {
			claim.Because = []phrase.Line{"the name needs nothing beyond the species"}
		}
	}
	return claim
}

// againstVariety are the tests that conflict with the variety's own row.
func (j *judgement) againstVariety() []phrase.Line {
	var against []phrase.Line
	for i, r := range j.results {
		if r.Verdict == Conflicts && j.nearest[i].verdict != conflicts {
			against = append(against, phrase.Say("%s: %s", testLabel(r.Test), r.Because))
		}
	}
	return against
}

// rules tells of each fact that the name needs whether it is missing, wrong or
// fits.
func (j *judgement) rules(v *gem.Material) (missing, wrong, fits []phrase.Line) {
	name := phrase.Word(v.Name)
	for _, rule := range j.rulesOf(v) {
		found := j.fact(rule.Fact)
		fact, wanted := phrase.Word(rule.Fact), phrase.Commas(phrase.Words(rule.Allowed)...)
		switch {
		case len(found) == 0:
			missing = append(missing, phrase.Say("%s needs %s %s, which is not recorded", name, fact, wanted))
		case factFits(rule, found), rule.Fact == "absorption" && j.bandCovers(rule):
			fits = append(fits, phrase.Say("%s %s", fact, j.factText(rule.Fact, found)))
			if rule.Convention != "" {
				fits = append(fits, phrase.Say("by convention: %s", phrase.Line(rule.Convention)))
			}
		case rule.Fact == "absorption":
			missing = append(missing, phrase.Say("%s needs %s nm in the spectrum, which was not seen", name, wanted))
		case rule.Fact == "feature":
			missing = append(missing, phrase.Say("%s needs %s, which was not seen", name, wanted))
		default:
			wrong = append(wrong, phrase.Say("%s needs %s %s, recorded is %s", name, fact, wanted, j.factText(rule.Fact, found)))
		}
	}
	return missing, wrong, fits
}

// rulesOf are the rules of the variety and of the varieties above it.
func (j *judgement) rulesOf(v *gem.Material) []gem.Rule {
	var list []gem.Rule
	for v != nil && v.Level != gem.Species && v.Level != gem.Group {
		list = append(list, j.table.Rules(v)...)
		up, err := j.table.Find(v.Parent)
		if err != nil {
			break
		}
		v = up
	}
	return list
}

// fact is what the file records of one kind of fact; nil if nothing.
func (j *judgement) fact(kind string) []string {
	s := j.c.Stone
	switch kind {
	case "colour":
		return colours(s)
	case "colour change":
		return change(s)
	case "phenomenon":
		if s.Appearance.Phenomenon.Given {
			if len(s.Appearance.Phenomenon.Items) == 0 {
				return []string{"none"}
			}
			return s.Appearance.Phenomenon.Items
		}
		if p := s.Quality.Phenomenon; p != "" {
			return []string{p}
		}
	case "transparency":
		if t := s.Appearance.Transparency; t != "" {
			return []string{t}
		}
	case "absorption":
		return phrase.Strings(j.absorption())
	case "feature":
		var terms []string
		for _, o := range j.seen {
			terms = append(terms, o.feature.Term)
		}
		return terms
	}
	return nil
}

func colours(s *stone.Stone) []string {
	switch q := s.Quality.Colour; {
	case s.Appearance.Colour != "":
		return []string{s.Appearance.Colour}
	case q != nil && q.Words != "":
		return []string{q.Words}
	case s.Appearance.Colours["daylight"] != "":
		return []string{s.Appearance.Colours["daylight"]}
	}
	return nil
}

// change is "yes" or "no" where colours in two lights are recorded.
func change(s *stone.Stone) []string {
	if slices.Contains(s.Appearance.Phenomenon.Items, "colour change") {
		return []string{"yes"}
	}
	by := s.Appearance.Colours
	if q := s.Quality.Colour; len(by) == 0 && q != nil {
		by = q.Change
	}
	if len(by) < 2 {
		return nil
	}
	seen := map[string]bool{}
	for _, c := range by {
		words := strings.Fields(strings.ToLower(c))
		if len(words) > 0 {
			seen[words[len(words)-1]] = true
		}
	}
	if len(seen) > 1 {
		return []string{"yes"}
	}
	return []string{"no"}
}

// absorption lists lines and bands seen in nm.
func (j *judgement) absorption() []phrase.Line {
	var seen []phrase.Line
	for _, v := range j.c.Values.Spectrum {
		if v.Test.SetAside != "" {
			continue
		}
		for _, l := range v.Lines {
			seen = append(seen, phrase.Say("%.0f", l.At))
		}
		for _, b := range v.Bands {
			seen = append(seen, phrase.Say("%.0f to %.0f", b.From, b.To))
		}
	}
	return seen
}

// factText is what the file records of a fact, to be printed.
func (j *judgement) factText(kind string, found []string) phrase.Line {
	if kind == "absorption" {
		return phrase.Commas(j.absorption()...)
	}
	return phrase.Commas(phrase.Words(found)...)
}

// bandCovers reports whether a band seen covers a wavelength that a rule allows.
func (j *judgement) bandCovers(rule gem.Rule) bool {
	return slices.ContainsFunc(j.c.Values.Spectrum, func(v reading.SpectrumValue) bool {
		return v.Test.SetAside == "" && slices.ContainsFunc(v.Bands, func(b reading.Band) bool {
			return slices.ContainsFunc(rule.Allowed, func(a string) bool {
				nm, err := strconv.ParseFloat(a, 64)
				return err == nil && nm >= b.From-lineSlack && nm <= b.To+lineSlack
			})
		})
	})
}

// factFits reports whether what is recorded is among what is allowed. A colour
// fits by its last word, the hue: "purplish red" is a red.
func factFits(rule gem.Rule, found []string) bool {
	return slices.ContainsFunc(found, func(f string) bool {
		return slices.ContainsFunc(rule.Allowed, func(a string) bool { return wordFits(rule.Fact, strings.ToLower(f), strings.ToLower(a)) })
	})
}

func wordFits(fact, found, allowed string) bool {
	switch fact {
	case "absorption":
		f, err1 := strconv.ParseFloat(found, 64)
		a, err2 := strconv.ParseFloat(allowed, 64)
		return err1 == nil && err2 == nil && f >= a-lineSlack && f <= a+lineSlack
	case "colour":
		if found == allowed {
			return true
		}
		words := strings.Fields(strings.NewReplacer(",", " ", "-", " ").Replace(found))
		return len(words) > 0 && words[len(words)-1] == allowed
	}
	return found == allowed || strings.Contains(found, allowed)
}

// lineSlack is how near in nm a line must lie to count as the one that a
// variety needs: the tolerance of a hand spectroscope in the red.
const lineSlack = 10
