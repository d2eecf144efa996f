package grading_test

import (
	"strings"
	"testing"

	"stonewrit/grading"
	"stonewrit/grading/identify"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

func read(t testing.TB, tables *grading.Tables, body string) *grading.Examined {
	t.Helper()
	src := "stonewrit: 1\nstone: T-1\nreport: note\nexamined: 2026-10-14\nexaminer: okafor\n" + body
	s, problems := stone.Read("t.yaml", []byte(src), tables.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%s\n%+v", src, problems)
	}
	return tables.Examine(s, nil, today)
}

// Facts of growth and treatment: each row is common practice of the bench
// (no source) as the rulings settle it.
func TestClaims(t *testing.T) {
	tables := load(t)
	sees := func(terms string) string { return "  - {test: magnification, power: 40, sees: [" + terms + "]}\n" }
	corundum := "  - {test: refractometer, readings: [[1.762, 1.770], [1.764, 1.770], [1.768, 1.770], [1.763, 1.770]]}\n  - {test: specific gravity, method: value, value: 4.00 +-0.02}\n  - {test: polariscope, sees: blinks, figure: uniaxial, orientations: 3}\n"
	for _, c := range []struct {
		name, body, claim string
		want              identify.Standing
		why               string
	}{
		{"constants and growth", "appearance: {colour: red, transparency: transparent}\nopinion: {species: corundum, variety: ruby, growth: natural}\ntests:\n" + corundum, "growth", identify.Undecided,
			"index and specific gravity never show natural growth"},
		{"constants and species", "appearance: {colour: red, transparency: transparent}\nopinion: {species: corundum, variety: ruby, growth: natural}\ntests:\n" + corundum, "species", identify.Supported,
			"two kinds agree tellingly and nothing else is left"},
		{"ruby by colour", "appearance: {colour: purplish red, transparency: transparent}\nopinion: {species: corundum, variety: ruby, growth: natural}\ntests:\n" + corundum, "variety", identify.Supported,
			"red corundum is ruby"},
		{"blue ruby", "appearance: {colour: blue, transparency: transparent}\nopinion: {species: corundum, variety: ruby, growth: natural}\ntests:\n" + corundum, "variety", identify.Contradicted,
			"blue corundum is no ruby"},
		{"colour not recorded", "opinion: {species: corundum, variety: ruby, growth: natural}\ntests:\n" + corundum, "variety", identify.Undecided,
			"a fact that the name needs is missing"},
		{"curved striae", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + sees("curved striae"), "growth", identify.Contradicted,
			"curved striae show growth from a melt"},
		{"curved striae, said so", "opinion: {species: corundum, growth: laboratory-grown, method: flame fusion}\ntests:\n" + corundum + sees("curved striae"), "growth", identify.Supported,
			"the same sign supports the right name"},
		{"gas bubbles in corundum", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + sees("gas bubbles in the body"), "growth", identify.Contradicted,
			"gas bubbles in the body of corundum exclude natural growth"},
		{"gas bubbles in moldavite", "opinion: {species: moldavite, growth: natural}\ntests:\n" + sees("gas bubbles in the body"), "growth", identify.Undecided,
			"bubbles belong in moldavite"},
		{"fingerprint", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + sees("fingerprint"), "growth", identify.Undecided,
			"a fingerprint only suggests natural growth: grown stones hold its like"},
		{"bubbles in a filler", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + sees("bubbles in a filler"), "growth", identify.Undecided,
			"bubbles in a filler speak of treatment, not of growth"},
		{"cubic zirconia", "appearance: {transparency: transparent}\nopinion: {species: cubic zirconia, growth: natural}\ntests:\n  - {test: specific gravity, method: value, value: 5.95 +-0.02}\n", "growth", identify.Contradicted,
			"nature does not make it in sizes to cut"},
		{"cubic zirconia as artificial", "appearance: {transparency: transparent}\nopinion: {species: cubic zirconia, growth: artificial}\ntests:\n  - {test: refractometer, over the limit: true, method: facet, contact: good}\n  - {test: digital refractive index, readings: [2.16]}\n  - {test: specific gravity, method: value, value: 5.95 +-0.02}\n  - {test: polariscope, sees: stays dark, orientations: 5}\n", "growth", identify.Supported,
			"a material that nature does not make is artificial by being itself"},
		{"no opinion", "opinion: {species: corundum}\ntests:\n" + corundum, "growth", identify.Undecided, "no opinion given"},
		{"none seen, not magnified", "opinion: {species: corundum, growth: natural, treatments: []}\ntests:\n" + corundum, "treatment", identify.Undecided,
			"none seen without magnification is not examined"},
		{"none seen in tanzanite", "opinion: {species: zoisite, variety: tanzanite, growth: natural, treatments: []}\ntests:\n" + sees("needles"), "treatment", identify.Undecided,
			"heating of tanzanite leaves nothing that a bench sees"},
		{"heated and silk", "opinion: {species: corundum, variety: ruby, growth: natural, treatments: [high heat]}\ntests:\n" + corundum + sees("intact silk"), "treatment", identify.Contradicted,
			"intact silk excludes high heat"},
		{"flash effect in untreated emerald", "opinion: {species: beryl, variety: emerald, growth: natural, treatments: []}\ntests:\n" + sees("flash effect"), "treatment", identify.Contradicted,
			"a flash effect shows a filled fracture"},
		{"dye in fractures", "opinion: {species: quartz, growth: natural, treatments: []}\ntests:\n" + sees("dye in fractures"), "treatment", identify.Contradicted,
			"dye in fractures shows dyeing"},
		{"laser drill hole", "opinion: {species: diamond, growth: natural, treatments: [laser drilled]}\ntests:\n" + sees("laser drill hole"), "treatment", identify.Supported,
			"a laser drill hole shows laser drilling"},
		{"bead nucleus", "opinion: {species: pearl, growth: natural}\ntests:\n  - {test: pearl drill hole, sees: [bead nucleus]}\n", "growth", identify.Contradicted,
			"a bead in the drill hole shows a cultured pearl"},
		{"bead nucleus, cultured", "opinion: {species: pearl, growth: cultured, method: bead nucleus, water: saltwater}\ntests:\n  - {test: pearl drill hole, sees: [bead nucleus]}\n", "growth", identify.Supported,
			"a bead in the drill hole shows a cultured pearl"},
		{"matched report", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + "  - {test: laboratory report, issuer: Invented, states: {species: corundum, growth: natural, weight: 1.52 ct}, matched: [weight, inscription]}\n", "growth", identify.Supported,
			"a report matched with the stone counts"},
		{"unmatched report", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + "  - {test: laboratory report, issuer: Invented, states: {species: corundum, growth: natural}, matched: [weight]}\n", "growth", identify.Undecided,
			"the commonest fraud is a good paper with another stone"},
		{"report of another growth", "opinion: {species: corundum, growth: natural}\ntests:\n" + corundum + "  - {test: laboratory report, issuer: Invented, states: {species: corundum, growth: laboratory-grown, weight: 1.52 ct, length: 7.83 mm}, matched: [weight, size]}\n", "growth", identify.Contradicted,
			"a matched report that states another growth conflicts"},
		{"stated", "appearance: {colour: red, transparency: transparent}\nopinion: {species: corundum, variety: ruby, growth: natural, basis: stated}\ntests:\n" + corundum, "species", identify.Undecided,
			"as stated by the owner the best standing is undecided"},
		{"stated and wrong", "opinion: {species: quartz, growth: natural, basis: stated}\ntests:\n" + corundum, "species", identify.Contradicted,
			"tests of a stated stone are judged and may contradict"},
		{"alexandrite without change", "appearance: {colours: {daylight: green, incandescent: green}}\nopinion: {species: chrysoberyl, variety: alexandrite, growth: natural}\ntests: []\n", "variety", identify.Contradicted,
			"alexandrite needs its change"},
		{"doubled edges in diamond", "opinion: {species: diamond, growth: natural}\ntests:\n  - {test: thermal conductivity, shows: diamond}\n  - {test: doubling, shows: seen}\n", "species", identify.Contradicted,
			"a thermal tester and doubling part moissanite from diamond"},
		{"doubled edges in moissanite", "opinion: {species: moissanite, growth: artificial}\ntests:\n  - {test: thermal conductivity, shows: diamond}\n  - {test: doubling, shows: seen}\n", "species", identify.Undecided,
			"nothing contradicts moissanite"},
		{"garnet by group", "appearance: {transparency: transparent}\nopinion: {species: garnet, growth: natural}\ntests:\n  - {test: refractometer, readings: [1.745]}\n  - {test: specific gravity, method: value, value: 3.80 +-0.02}\n", "species", identify.Undecided,
			"one edge at 1.745 with 3.80 fits a pyrope-almandine, and not it alone"},
		{"garnet lighter than its index", "opinion: {species: pyrope-almandine, growth: natural}\ntests:\n  - {test: refractometer, readings: [1.79]}\n  - {test: specific gravity, method: value, value: 3.70 +-0.02}\n", "species", identify.Contradicted,
			"a pyrope-almandine of index 1.79 weighs about 4.1: the two are judged together"},
	} {
		e := read(t, tables, c.body)
		for _, claim := range e.Claims() {
			if claim.Name == c.claim && claim.Claim.Standing != c.want {
				t.Errorf("%s: %s is %s, want %s: %s\n  because %s", c.name, c.claim, claim.Claim.Standing, c.want, c.why, strings.Join(phrase.Strings(claim.Claim.Because), "\n    "))
			}
		}
	}
}

// Ticking [] without magnification stops issue: it is a missing statement.
func TestNoneSeenWithoutMagnification(t *testing.T) {
	e := read(t, load(t), "opinion: {species: corundum, growth: natural, treatments: []}\ntests: []\n")
	for _, p := range e.Problems {
		if p.Severity == stone.Missing && p.Path == "opinion.treatments" {
			return
		}
	}
	t.Errorf("no missing statement at opinion.treatments in %+v", e.Problems)
}
