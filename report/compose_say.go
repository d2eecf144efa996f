package report

import (
	"regexp"
	"strings"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// say is a sentence of the wording as text of the document.
func (c *composer) say(name string, data any) Text {
	said, err := c.w.Say(name, data)
	if err != nil && c.err == nil {
		c.err = err
	}
	var t Text
	for _, r := range said {
		t = append(t, Run{tidy(r.Text), styleOf(r.Voice)})
	}
	return t
}

// line is a sentence without its voices.
func (c *composer) line(name string, data any) string { return c.say(name, data).String() }

// paragraph is a block of one or more sentences, nil where they say nothing.
func (c *composer) paragraph(texts ...Text) []Block {
	t := together(texts...)
	if t.Empty() {
		return nil
	}
	return []Block{Para(t)}
}

// small is a paragraph in the small size, nil where it says nothing.
func (c *composer) small(texts ...Text) []Block {
	t := together(texts...)
	if t.Empty() {
		return nil
	}
	return []Block{Small(t)}
}

// subhead is a line in bold over what follows.
func (c *composer) subhead(name string) Block { return Subhead(c.line(name, templates.None{})) }

// together joins sentences with a space; those that say nothing are left out.
func together(texts ...Text) Text {
	var t Text
	for _, s := range texts {
		switch {
		case s.Empty():
		case len(t) == 0:
			t = s
		default:
			t = t.Plain(" ").Then(s)
		}
	}
	return t
}

func styleOf(v templates.Voice) Style {
	switch v {
	case templates.Strong:
		return StyleStrong
	case templates.Italic:
		return StyleItalic
	case templates.Quiet:
		return StyleQuiet
	}
	return StylePlain
}

// word is a word of the stone file in the language of the document.
func (c *composer) word(list, word string) string {
	if word == "" {
		return ""
	}
	said, err := c.w.Word(list, word)
	if err != nil && c.err == nil {
		c.err = err
	}
	return said
}

// date is a day as the language prints it, empty for none.
func (c *composer) date(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return c.line("date", templates.Day{Year: t.Year(), Month: int(t.Month()), Day: t.Day()})
}

func (c *composer) day(d stone.Date) string { return c.date(d.Time) }

// figure is a quantity of the stone file as the language writes it.
func (c *composer) figure(s string) string {
	return signs(c.w.Figure(s))
}

// prose is a sentence of the examination, with its signs as print has them and
// no stone called by a name that it may not have.
func (c *composer) prose(l phrase.Line) string { return c.qualified(signs(l.In(qualifying{c}))) }

func (c *composer) proses(list []phrase.Line) []string {
	var out []string
	for _, l := range list {
		out = append(out, c.prose(l))
	}
	return out
}

// sentence is a whole sentence of the tables in the language of the document.
func (c *composer) sentence(s string) string { return signs(c.w.Form(s)) }

func (c *composer) sentences(list []string) []string {
	var out []string
	for _, s := range list {
		out = append(out, c.sentence(s))
	}
	return out
}

// qualifying is the language of the document as the examination's own sentences are
// said in it: a diamond is never called so without its qualifier.
type qualifying struct{ c *composer }

func (q qualifying) Form(english string) string   { return q.c.w.Form(english) }
func (q qualifying) Figure(english string) string { return q.c.w.Figure(english) }
func (q qualifying) Term(english string) string {
	if english == "diamond" {
		return q.c.materialName(english)
	}
	return q.c.w.Term(english)
}

var (
	plusMinus  = regexp.MustCompile(`([0-9]) ?(?:±|\+-) ?([0-9])`)
	times      = regexp.MustCompile(`([0-9)%]|\b[a-z]{1,2}) x ([0-9(])`)
	degrees    = regexp.MustCompile(`([0-9]) ?deg\b`)
	celsius    = regexp.MustCompile(`([0-9]) ?C\b`)
	beforeUnit = regexp.MustCompile(`([0-9]) (ct|mm|cm|g|nm|%|°C|s|J/m²|kJ/m²|µg/m³|mm³|g/cm³)(\W|$)`)
)

// signs writes the signs of products, degrees and uncertainties as print does.
func signs(s string) string {
	if !hasDigit(s) {
		return s
	}
	for _, sign := range []struct {
		mark    string // nothing to do without it
		pattern *regexp.Regexp
		printed string
	}{
		{"±", plusMinus, "$1\u00a0±\u00a0$2"}, {"+-", plusMinus, "$1\u00a0±\u00a0$2"}, {" x ", times, "$1\u00a0× $2"},
		{"deg", degrees, "$1°"}, {"C", celsius, "$1\u00a0°C"},
	} {
		if strings.Contains(s, sign.mark) {
			s = sign.pattern.ReplaceAllString(s, sign.printed)
		}
	}
	for _, unit := range [][2]string{{"/m2", "/m²"}, {"/m3", "/m³"}, {"/cm3", "/cm³"}, {"mm3", "mm³"}, {" ug/", " µg/"}} {
		s = strings.ReplaceAll(s, unit[0], unit[1])
	}
	return tidy(s)
}

// tidy puts a no-break space between a number and its unit. It changes nothing
// but spaces, so it may meet anybody's words.
func tidy(s string) string {
	if !hasDigit(s) {
		return s
	}
	return beforeUnit.ReplaceAllString(s, "$1\u00a0$2$3")
}

func hasDigit(s string) bool {
	for i := range len(s) {
		if s[i] >= '0' && s[i] <= '9' {
			return true
		}
	}
	return false
}
