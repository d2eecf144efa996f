package quality

import (
	"slices"

	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
)

// relative asks for the features that place the stone within its kind, or for
// the reason why they are left out.
func (r *review) relative() {
	q := r.s.Quality
	var lacks []string
	lack := func(name string, given bool) {
		if !given && q.NotGraded[name] == "" {
			lacks = append(lacks, name)
		}
	}
	switch {
	case r.g.is(r.c.Subject, "pearl"):
		lack("shape", q.Pearl != nil && q.Pearl.Shape != "")
		lack("lustre", q.Pearl != nil && q.Pearl.Lustre != "")
		lack("surface", q.Pearl != nil && q.Pearl.Surface != "")
	case r.isDiamond():
		d := q.Diamond
		lack("colour", q.Colour != nil || d != nil && d.Colour != "")
		lack("clarity", q.Clarity != "" || d != nil && d.Clarity != "")
		lack("cut", q.Cut != nil || d != nil && d.Cut+d.Polish+d.Symmetry != "")
	default:
		lack("colour", q.Colour != nil || q.Opal != nil)
		lack("clarity", q.Clarity != "" || q.Opal != nil || r.opaque())
		lack("cut", q.Cut != nil || r.unfaceted())
	}
	if len(lacks) > 0 {
		r.lack("relative-quality", "quality", phrase.Say("give them, or the reason: not_graded: {%s: \"…\"}", lacks[0]), "what places the stone within its kind is left out: %s", phrase.Semicolons(phrase.Words(lacks)...))
	}
}

// opaque stones have no clarity to describe.
func (r *review) opaque() bool { return r.s.Appearance.Transparency == "opaque" }

// unfaceted cuts have neither window nor finish of facets to describe.
func (r *review) unfaceted() bool {
	return slices.Contains([]string{"cabochon", "double cabochon", "flat cabochon", "bead", "carved", "tablet", "rough"}, r.s.Size.Cut)
}

// colour checks notation, words and light.
func (r *review) colour() {
	q := r.s.Quality.Colour
	if q == nil {
		return
	}
	if q.Light == "" && q.Munsell+q.Words != "" {
		r.lack("test-conditions", "quality.colour.light", "light: D65", "a colour needs the light it was judged in")
	}
	if q.Munsell == "" {
		return
	}
	m, err := ParseMunsell(q.Munsell)
	if err != nil {
		r.finding("", "quality.colour.munsell", "for example 5R 4/12 (hue, value, chroma), or N 5/ for a grey", "%s", says(err))
		return
	}
	worked := r.g.ColourName(m).Name
	for _, t := range []text{{"quality.colour.words", q.Words}, {"appearance.colour", r.s.Appearance.Colour}} {
		if t.words != "" && r.g.Clashes(t.words, m) {
			r.warning("", t.path, "mend the words or the notation", "%q does not fit %s, which is %s", t.words, m, phrase.Word(worked))
		}
	}
}

// clarity checks words against what magnification shows, and the areas of the
// face.
func (r *review) clarity() {
	q := r.s.Quality
	graded := q.Diamond != nil && q.Diamond.Clarity != ""
	if (q.Clarity != "" || graded) && !r.g.magnified(r.s) {
		path := "quality.clarity"
		if q.Clarity == "" {
			path = "quality.diamond.clarity"
		}
		r.lack("clarity-10x", path, "tests: [{test: magnification, power: 10, corrected: true, sees: […]}]", "a clarity rests on ten times by a corrected magnifier, and no such examination is recorded")
	}
	v, ok := ClarityOf(q.Clarity)
	switch {
	case !ok:
	case !v.AtTenTimes && r.g.includedAtTen(r.s):
		r.finding("flawless-stone", "quality.clarity", "mend the words or what magnification sees", "%q, and magnification sees something inside", q.Clarity)
	case v.AtTenTimes && r.g.Cleanness(r.s) == Clean:
		r.warning("", "quality.clarity", "add what was seen under sees:", "%q, and magnification sees nothing", q.Clarity)
	}
	if c := q.Cut; c != nil && c.Window.Float()+c.Extinction.Float() > 100 {
		r.finding("", "quality.cut", "", "a window of %s and an extinction of %s are more than the whole face", phrase.Figure(c.Window.Text), phrase.Figure(c.Extinction.Text))
	}
}

// phenomena checks star and opal against the rest of the file.
func (r *review) phenomena() {
	if star := r.s.Quality.Star; star != nil {
		if !seesPhenomenon(r.s, "asterism") && !seesPhenomenon(r.s, "star") {
			r.warning("", "quality.star", "appearance: {phenomenon: [asterism]}", "a star is described, and the appearance names no asterism")
		}
		if rays := r.s.Appearance.Rays; rays > 0 && star.Rays > 0 && rays != star.Rays {
			r.warning("", "quality.star.rays", "", "the star has %d rays here and %d under appearance", star.Rays, rays)
		}
	}
	opal := r.s.Quality.Opal
	if opal == nil {
		return
	}
	if (opal.Base == "doublet" || opal.Base == "triplet") && r.c.Growth != gem.Composite {
		r.finding("assembled", "quality.opal.base", "growth: composite, with its layers", "a %s is an assembled stone, and the growth says otherwise", phrase.Word(opal.Base))
	}
	if opal.Play == "none" && len(opal.Colours.Items) > 0 {
		r.warning("", "quality.opal.colours", "", "no play of colour, and colours of it")
	}
}
