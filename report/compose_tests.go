package report

import (
	"slices"
	"strings"

	"stonewrit/grading/identify"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// tests is section 4: one row a test, with cautions beside the tests that need
// one, and the instruments with their last checks.
func (c *composer) tests() []Block {
	if len(c.e.Verdict.Tests) == 0 {
		return c.paragraph(c.say("tests.none", templates.None{}))
	}
	table := c.testTable()
	cautions := c.newCautions()
	for _, r := range c.e.Verdict.Tests {
		row := c.testRow(r)
		row.Note = together(row.Note, cautions.beside(r.Test))
		table.Rows = append(table.Rows, row)
	}
	blocks := []Block{table}
	blocks = append(blocks, c.small(cautions.cleaning())...)
	if !c.kind.Record {
		blocks = append(blocks, c.instruments()...)
	}
	if c.kind.Record {
		blocks = append(blocks, c.small(c.caveats()...)...)
	}
	return blocks
}

func (c *composer) testTable() Table {
	head := func(name string) string { return c.line("tests.head."+name, templates.None{}) }
	widths, last := []float64{1.2, 2.2, 1.35, 2}, "why"
	if c.kind.Note {
		widths, last = []float64{1.25, 1.9, 1.3, 1.65}, "check"
	}
	return Table{Small: true, Wide: true, Columns: []Column{
		{Head: head("test"), Width: widths[0]}, {Head: head("read"), Width: widths[1]}, {Head: head("value"), Width: widths[2]}, {Head: head("verdict")},
		{Head: head(last), Width: widths[3]},
	}}
}

func (c *composer) testRow(r identify.TestResult) Row {
	h := r.Test.Header()
	row := Row{Cells: []Cell{
		{Text: c.say("tests.name", templates.TestName{Number: h.Index + 1, Kind: h.Kind, Place: h.Place})},
		{Text: c.asRead(r.Test)},
		{Text: Plain(c.reduced(r))},
		c.verdict(r),
	}}
	if c.kind.Note {
		row.Cells = append(row.Cells, Cell{Text: Plain(c.shortCheck(r.Test))})
	} else {
		row.Cells = append(row.Cells, Cell{Text: c.why(r)})
	}
	row.Note = c.testNote(h)
	if h.SetAside != "" && c.kind.Note {
		row.Note = together(row.Note, c.say("tests.aside", templates.Aside{Why: h.SetAside}))
	}
	return row
}

// reduced is the value of a test that measures; what others showed stands in
// the reading alone.
func (c *composer) reduced(r identify.TestResult) string {
	switch r.Test.(type) {
	case *stone.Refractometer, *stone.Digital, *stone.Gravity:
		return c.prose(r.Value)
	}
	return ""
}

func (c *composer) verdict(r identify.TestResult) Cell {
	if r.Test.Header().SetAside != "" {
		return Cell{Text: Plain(c.line("verdict.set aside", templates.None{}))}
	}
	mark := map[identify.Verdict]Mark{identify.Agrees: MarkFilled, identify.CannotTell: MarkOpen, identify.Conflicts: MarkStruck}[r.Verdict]
	return Marked(mark, c.line("verdict."+string(r.Verdict), templates.None{}))
}

func (c *composer) why(r identify.TestResult) Text {
	if aside := r.Test.Header().SetAside; aside != "" {
		return c.say("tests.aside", templates.Aside{Why: aside})
	}
	return Plain(c.prose(r.Because))
}

// testNote is the small line below a test: instrument and check, and what of
// light, temperature, day and person differs from the rest.
func (c *composer) testNote(h *stone.TestHeader) Text {
	n := templates.TestNote{Note: h.Note, Parts: c.circumstances(h)}
	if h.Instrument != "" && !c.kind.Note {
		n.Parts = slices.Insert(n.Parts, 0, c.line("note.instrument", templates.Circumstance{Instrument: h.Instrument, Check: c.checkOf(h)}))
	}
	return c.say("tests.note", n)
}

// circumstances are light, temperature, day and person of a test, where they
// differ from the rest.
func (c *composer) circumstances(h *stone.TestHeader) []string {
	var parts []string
	add := func(is bool, sentence string, f templates.Circumstance) {
		if is {
			parts = append(parts, c.line("note."+sentence, f))
		}
	}
	add(h.Light != "", "light", templates.Circumstance{Light: h.Light})
	if h.Temperature.Given() {
		parts = append(parts, c.figure(h.Temperature.Text))
	}
	add(h.Date.Given() && !(len(c.s.Examined.Items) == 1 && h.Date == c.s.Examined.Items[0]), "date", templates.Circumstance{Date: c.day(h.Date)})
	add(h.By != "" && h.By != c.s.Examiner, "by", templates.Circumstance{By: c.person(h.By)})
	return parts
}

// cautions are printed once each, beside the first test that needs them.
type cautions struct {
	c    *composer
	told map[string]bool
}

func (c *composer) newCautions() cautions { return cautions{c, map[string]bool{}} }

// beside is what is to be said beside a test for the safety of whoever repeats
// it. An appraisal is for readers who repeat nothing.
func (k cautions) beside(t stone.Test) Text {
	if k.c.kind.Appraisal {
		return nil
	}
	word, liquid := cautionWord(t, k.c.b)
	text := k.of(word, liquid)
	if _, lamp := t.(*stone.Ultraviolet); lamp {
		text = together(text, k.c.say("tests.eyes", templates.Eyes{Protected: k.c.b.Safety.Eyes}))
	}
	return text
}

// of gives the cautions of a test that hold whatever the liquid, and of those
// that begin at a figure the nearest one below the liquid's.
func (k cautions) of(word string, liquid float64) Text {
	var text Text
	var nearest float64
	for _, caution := range k.c.Gems.CautionsFor(word) {
		if caution.From < liquid {
			nearest = max(nearest, caution.From)
		}
	}
	for _, caution := range k.c.Gems.CautionsFor(word) {
		if caution.From != 0 && caution.From != nearest || k.told[caution.ID] {
			continue
		}
		k.told[caution.ID] = true
		text = together(text, k.c.say("tests.caution", templates.Caution{Wording: k.c.sentence(caution.Wording)}))
	}
	return text
}

// cleaning is the cautions of what the stone was cleaned with.
func (k cautions) cleaning() Text {
	if k.c.s.Prepared == nil || k.c.kind.Appraisal {
		return nil
	}
	for _, by := range k.c.s.Prepared.By.Items {
		if strings.Contains(strings.ToLower(by), "acetone") {
			return k.of("acetone wipe", 0)
		}
	}
	return nil
}

// cautionWord is a test as the table of cautions knows it, with the figure of
// the liquid it was made with.
func cautionWord(t stone.Test, b *stone.Bench) (word string, liquid float64) {
	switch t := t.(type) {
	case *stone.Gravity:
		return t.Kind + ": " + t.Method, t.Liquid.Float()
	case *stone.Refractometer:
		if t.Liquid.Given() {
			return t.Kind, t.Liquid.Float()
		}
		return t.Kind, b.Instruments[t.Instrument].Limit.Float()
	}
	return t.Header().Kind, 0
}
