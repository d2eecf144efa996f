package report

import (
	"math"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// description is section 5: how the stone looks, how it was treated, how it is
// kept. A note tells all of it in the small size, since its page one tells the
// treatment in the size of the rest.
func (c *composer) description() []Block {
	treatment, care := c.treatment(), c.care()
	if c.kind.Note {
		return append(c.small(append(c.looks(), c.identity()...)...), c.small(append(treatment, care)...)...)
	}
	blocks := append(c.paragraph(c.looks()...), c.paragraph(c.identity()...)...)
	for _, t := range treatment {
		blocks = append(blocks, c.paragraph(t)...)
	}
	return append(blocks, c.paragraph(care)...)
}

// looks is colour, clarity, cut and what else applies, a sentence or two each.
func (c *composer) looks() []Text {
	q := c.s.Quality
	texts := []Text{c.colour(), c.clarity(), c.cut()}
	if q.Diamond != nil {
		texts = append(texts, c.diamond(q.Diamond))
	}
	if q.Pearl != nil {
		texts = append(texts, c.pearl(q.Pearl))
	}
	if o := q.Opal; o != nil {
		texts = append(texts, c.say("description.opal", templates.Opal{Body: o.Body, Play: o.Play, Base: o.Base, Colours: o.Colours.Items}))
	}
	texts = append(texts, c.phenomenon())
	if c.s.Mounted {
		texts = append(texts, c.say("description.setting", c.subject))
	}
	return texts
}

// identity is what tells the stone from any other, and its condition.
func (c *composer) identity() []Text {
	var texts []Text
	if t := c.s.Quality.Words; t != "" {
		texts = append(texts, c.say("description.words", templates.Words{Text: t}))
	}
	if t := c.s.Quality.Condition; t != "" {
		texts = append(texts, c.say("description.condition", templates.Words{Text: t}))
	}
	if i := c.s.Inscription; i.Text != "" {
		texts = append(texts, c.say("description.inscription", templates.Mark{Text: i.Text, Where: i.Where, Read: i.Read}))
	}
	for _, m := range c.s.Marks {
		texts = append(texts, c.say("description.mark", templates.Mark{Text: m.Text, Where: m.Where, How: m.How}))
	}
	if t := c.origin(); !t.Empty() {
		texts = append(texts, t)
	}
	texts = append(texts, c.notGraded(), c.history())
	return append(texts, c.restricted()...)
}

func (c *composer) origin() Text {
	country, basis := c.s.Opinion.Origin, ""
	if o := c.s.Origin; o != nil {
		country, basis = o.Country, o.Basis
	}
	if country == "" && !c.kind.Appraisal {
		return nil
	}
	return c.say("description.origin", templates.Origin{Country: country, Basis: basis, NotDetermined: country == "not determined" || basis == ""})
}

func (c *composer) colour() Text {
	look, f := c.s.Appearance, templates.Colour{Subject: c.subject, Words: c.s.Appearance.Colour}
	f.Transparency, f.Lustre = look.Transparency, look.Lustre
	change := look.Colours
	if q := c.s.Quality.Colour; q != nil {
		f.Munsell, f.Light, f.Zoning = q.Munsell, q.Light, q.Zoning
		if q.Words != "" {
			f.Words = q.Words
		}
		switch worked := c.e.Told.Colour.Worked.Name; {
		case f.Words == "":
			f.Words = worked
		case worked != f.Words:
			f.Plain = worked
		}
		if len(q.Change) > 0 {
			change = q.Change
		}
	}
	for _, light := range sortedKeys(change) {
		f.Changes = append(f.Changes, c.line("description.change", templates.ByLight{Light: c.word("light", light), Colour: change[light]}))
	}
	return c.say("description.colour", f)
}

func (c *composer) clarity() Text {
	f := templates.Clarity{Subject: c.subject, Words: c.s.Quality.Clarity, Seen: c.seenInside()}
	if c.short { // the line of the test says it
		f.Seen = nil
	}
	return c.say("description.clarity", f)
}

// seenInside is what magnification showed, each once.
func (c *composer) seenInside() []string {
	var list []string
	told := map[string]bool{}
	for _, a := range c.s.Tests {
		m, ok := a.Test.(*stone.Magnification)
		if !ok || m.SetAside != "" {
			continue
		}
		for _, term := range c.featuresSaid(m.Sees.Items) {
			if !told[term] {
				told[term] = true
				list = append(list, term)
			}
		}
	}
	return list
}

// featuresSaid are features as the file has them, or by the term of the table
// where the language of the document has a word for that alone.
func (c *composer) featuresSaid(seen []string) []string {
	said := slices.Clone(seen)
	for i, words := range seen {
		if c.word("feature", words) != words {
			continue
		}
		if f, err := c.Gems.Feature(words); err == nil && c.word("feature", f.Term) != f.Term {
			said[i] = f.Term
		}
	}
	return said
}

func (c *composer) cut() Text {
	z := c.s.Size
	f := templates.Cut{Facets: z.Facets, Round: z.Shape == "round"}
	if q := c.s.Quality.Cut; q != nil {
		f.HasWindow, f.HasExtinction = q.Window.Given(), q.Extinction.Given()
		f.Window, f.Extinction = tenths(q.Window), tenths(q.Extinction)
		f.Judged = c.named("judged", "proportions", q.Proportions, "finish", q.Finish, "symmetry", q.Symmetry)
	}
	if !c.kind.Note {
		f.Proportions = c.named("part", "table", c.figure(z.Table.Text), "crown angle", c.figure(z.CrownAngle.Text), "crown height", c.figure(z.CrownHeight.Text),
			"pavilion angle", c.figure(z.PavilionAngle.Text), "pavilion depth", c.figure(z.PavilionDepth.Text),
			"total depth", c.figure(z.TotalDepth.Text))
		f.Edges = c.named("part", "girdle", c.figure(z.Girdle.String()), "culet", c.figure(z.Culet.String()))
	}
	return c.say("description.cut", f)
}

// fromTo is "thin to medium" of the first and the last.
func (c *composer) fromTo(items []string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	return c.line("span", templates.Span{Low: c.w.Term(items[0]), High: c.w.Term(items[len(items)-1])})
}

func tenths(r stone.Ratio) templates.Tenths {
	return templates.Tenths{Tenths: int(math.Round(r.Float() / 10))}
}

// named makes "table 57 %" of each pair of a word and its text; empty texts are
// left out.
func (c *composer) named(list string, pairs ...string) []string {
	var out []string
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i+1] != "" {
			out = append(out, c.line(list+"."+pairs[i], templates.Words{Text: pairs[i+1]}))
		}
	}
	return out
}

// grades are a grade, or from one to another: "G to I".
func (c *composer) grades(s string) string {
	low, high, ok := strings.Cut(s, " to ")
	if !ok {
		return s
	}
	return phrase.Say("%s to %s", phrase.Word(low), phrase.Word(high)).In(c.w)
}

func (c *composer) diamond(q *stone.DiamondGrade) Text {
	return c.say("description.diamond", templates.Diamond{
		Subject: c.subject, System: q.System, ComparedWith: q.ComparedWith, Mounted: c.s.Mounted,
		Grades: c.named("grade", "colour", c.grades(q.Colour), "clarity", c.grades(q.Clarity), "polish", q.Polish, "symmetry", q.Symmetry, "cut", q.Cut),
		Seen:   c.named("grade", "fluorescence", q.Fluorescence, "girdle", c.fromTo(q.Girdle.Items), "culet", q.Culet),
	})
}

func (c *composer) pearl(q *stone.PearlGrade) Text {
	f := templates.Pearl{
		Subject: c.subject, Matching: q.Matching, Drilled: q.Drilled,
		Parts: c.named("pearl", "shape", q.Shape, "colour", q.Colour, "overtone", q.Overtone, "lustre", q.Lustre, "surface", q.Surface),
	}
	if q.Nacre != nil {
		f.Nacre, f.NacreMethod = q.Nacre.Words, q.Nacre.Method
	}
	return c.say("description.pearl", f)
}

func (c *composer) phenomenon() Text {
	look := c.s.Appearance
	f := templates.Phenomenon{Phenomena: look.Phenomenon.Items, Rays: look.Rays}
	f.NoPhenomenon = !c.kind.Note && look.Phenomenon.Given && len(look.Phenomenon.Items) == 0
	if p := c.s.Quality.Phenomenon; p != "" && p != "none" {
		f.Phenomenon = p
	}
	if star := c.s.Quality.Star; star != nil {
		f.Sharpness = star.Sharpness
		if star.Rays > 0 {
			f.Rays = star.Rays
		}
		if star.Centred != nil {
			f.Centred, f.OffCentre = *star.Centred, !*star.Centred
		}
	}
	return c.say("description.phenomenon", f)
}
