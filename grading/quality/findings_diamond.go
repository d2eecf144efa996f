package quality

import (
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// diamond checks the grades of a diamond.
func (r *review) diamond() {
	d := r.s.Quality.Diamond
	if d == nil || !r.isDiamond() {
		return
	}
	if d.System == "" && d.Colour+d.Clarity+d.Polish+d.Symmetry+d.Cut+d.Fluorescence != "" {
		r.lack("grade-system", "quality.diamond.system", "system: the name of the grading system, or the practice's own words for how it grades", "a grade needs the name of the system it belongs to")
	}
	r.diamondColour(d)
	r.diamondClarity(d)
	r.fluorescence(d)
	r.systems(d)
	r.annex(d)
	if r.c.Facets > 0 && r.s.Size.Cut == "brilliant" && r.s.Size.Shape == "round" && r.g.holds("fewer facets", r.c) {
		r.warning("misleading-cut", "size.cut", "for example single, with the number of facets", "a round brilliant has 32 facets beside the table above the girdle and 24 below, %d were counted (16 CFR 23.17)", r.c.Facets)
	}
}

func (r *review) isDiamond() bool {
	if r.g.is(r.c.Subject, "diamond") {
		return true
	}
	for _, l := range r.c.Layers {
		if l.Material != nil && r.g.gems.SpeciesOf(l.Material).Name == "diamond" {
			return true
		}
	}
	return false
}

func (r *review) diamondColour(d *stone.DiamondGrade) {
	const path = "quality.diamond.colour"
	if d.Colour == "" {
		return
	}
	if fancy(r.s) {
		r.finding("colour-scale", path, "leave it out, and write quality: {colour: {munsell: …, words: …}}", "a fancy colour is told in plain words, it has no grade from D to Z")
		return
	}
	grades, err := r.g.ParseDiamondColour(d.Colour)
	if err != nil {
		r.finding("colour-scale", path, "for example G, or F to H", "%s", says(err))
		return
	}
	if r.s.Mounted && !grades.Range() {
		r.finding("grade-near-edge", path, "for example F to H", "a mounted stone is graded in a range, %s is a single colour", d.Colour)
	}
	switch {
	case d.ComparedWith == "":
		r.lack("colour-master", "quality.diamond.compared_with", "compared_with: master stones", "a colour grade needs what it was compared with")
	case !strings.Contains(strings.ToLower(d.ComparedWith), "master"):
		r.warning("colour-master", "quality.diamond.compared_with", "compared_with: master stones", "a colour is graded against master stones, not %s", d.ComparedWith)
	}
}

func (r *review) diamondClarity(d *stone.DiamondGrade) {
	const path = "quality.diamond.clarity"
	if d.Clarity == "" {
		return
	}
	grades, err := r.g.ParseDiamondClarity(d.Clarity)
	if err != nil {
		r.finding("clarity-scale", path, "for example VS2, or VS1 to SI1", "%s", says(err))
		return
	}
	if limit, _ := r.g.diamondClarity.grade("VVS2"); r.s.Mounted {
		switch {
		case grades.better(limit):
			r.finding("grade-near-edge", path, "a range that begins at VVS2 or below", "a clarity better than VVS2 cannot be seen in a setting, %s is", grades.Line())
		case !grades.Range():
			r.warning("grade-near-edge", path, "for example VS1 to SI1", "a mounted stone is graded in a range, %s is a single clarity", d.Clarity)
		}
	}
	if r.g.includedAtTen(r.s) && (grades.Best.Name == "FL" || grades.Best.Name == "IF") {
		r.finding("flawless-stone", path, "mend the grade or what magnification sees", "%s, and magnification sees something inside (16 CFR 23.13(a))", grades.Line())
	}
	if r.each > 0 && r.each < r.g.limit("clarity split") && r.g.splits(grades) && !grades.Range() {
		r.say(stone.Note, "clarity-split", path, "nothing needs to be mended", "an older rule of CIBJO splits VVS, VS and SI from %s ct on; the trade splits smaller stones as well", figured(r.g.limit("clarity split")))
	}
}

func (r *review) fluorescence(d *stone.DiamondGrade) {
	const path = "quality.diamond.fluorescence"
	if d.Fluorescence == "" && r.s.Quality.NotGraded["fluorescence"] != "" {
		return
	}
	if d.Fluorescence == "" {
		r.lack("fluorescence", path, "fluorescence: none, or for example medium blue", "a graded diamond needs its fluorescence, as a grade of its own beside the ultraviolet test")
		return
	}
	f, err := r.g.ParseFluorescence(d.Fluorescence)
	switch {
	case err != nil:
		r.finding("fluorescence", path, "none, weak, medium or strong, with its colour", "%s", says(err))
	case f.Colour == "" && f.Worst.rank > 0:
		r.warning("fluorescence", path, phrase.Say("for example %s blue", d.Fluorescence), "the colour of the fluorescence is not told")
	}
}

// systems checks that a standard named as the system may be cited.
func (r *review) systems(d *stone.DiamondGrade) {
	system := strings.ToUpper(strings.Join(strings.Fields(d.System), " "))
	if strings.Contains(system, "24016") {
		for _, reason := range r.g.OutsideISO24016(r.s, r.each) {
			r.finding("iso-scope", "quality.diamond.system", phrase.Say("name another system; what stands against it: %s", reason.Path), "ISO 24016 may not be cited for this stone: %s (clause 1)", reason.Text)
		}
	}
	if strings.Contains(system, "16554") {
		for _, reason := range r.g.OutsideGBT16554(r.s, r.each) {
			r.warning("mounted-range", "quality.diamond.system", phrase.Say("what stands against it: %s", reason.Path), "GB/T 16554 may not be cited for this stone: %s (clause 1)", reason.Text)
		}
	}
}

// annex checks that what standards list as the usual content of a grading report
// is there, or left out with a reason.
func (r *review) annex(d *stone.DiamondGrade) {
	z := r.s.Size
	var lacks []string
	for _, f := range []struct {
		name  string
		given bool
	}{
		{"mass", r.each > 0}, {"measurements", z.Given()}, {"shape", z.Shape != ""}, {"colour", d.Colour != "" || r.s.Quality.Colour != nil},
		{"clarity", d.Clarity != ""}, {"polish", d.Polish != ""}, {"symmetry", d.Symmetry != ""},
		{"girdle", d.Girdle.Given || z.Girdle.Word != "" || z.Girdle.Percent.Given()}, {"culet", d.Culet != "" || z.Culet.Word != "" || z.Culet.Percent.Given()},
	} {
		if !f.given && r.s.Quality.NotGraded[f.name] == "" {
			lacks = append(lacks, f.name)
		}
	}
	if len(lacks) > 0 {
		r.lack("report-annex", "quality.diamond", phrase.Say("give them, or the reason: not_graded: {%s: \"…\"}", lacks[0]), "a graded diamond also has: %s", phrase.Commas(phrase.Words(lacks)...))
	}
	if z.Table.Given() && !z.Diameter.Given && !z.Width.Given {
		r.lack("cut-measures", "size.table", "give the diameters or the width", "the table is a per cent of the mean girdle diameter, which is not given (ISO 24016, 8.3.3)")
	}
}

// misplaced tells grades that belong to another kind of stone.
func (r *review) misplaced() {
	q, m := r.s.Quality, r.c.narrow()
	if m == nil && r.c.Growth != gem.Composite {
		return
	}
	noun := r.c.noun()
	name := phrase.Word(noun)
	if q.Diamond != nil && !r.isDiamond() {
		r.finding("grade-system", "quality.diamond", "use colour, clarity and cut", "grades of a diamond stand beside %s", name)
	}
	_, imitates := r.g.imitationOf(r.c.Subject)
	pearl := r.g.is(r.c.Subject, "pearl") || imitates || r.c.Growth == gem.Composite || strings.Contains(noun, "pearl") || strings.EqualFold(r.c.Imitates, "pearl")
	if q.Pearl != nil && !pearl {
		r.finding("pearl-qualifier", "quality.pearl", "use colour, clarity and cut", "a description of pearls stands beside %s", name)
	}
	opal := r.g.is(r.c.Subject, "opal") || r.c.Growth == gem.Composite || strings.Contains(noun, "opal") || strings.EqualFold(r.c.Imitates, "opal")
	if q.Opal != nil && !opal {
		r.finding("", "quality.opal", "use colour, clarity and cut", "a description of an opal stands beside %s", name)
	}
}
