package main

import (
	"fmt"
	"slices"
	"strings"

	"stonewrit/grading/gem"
)

// spectrum lists lines, bands and cutoffs; those that go together stand on one
// line.
func (e *entry) spectrum() {
	label := "spectrum"
	for rest := e.m.Absorption; len(rest) > 0; {
		same := slices.IndexFunc(rest, func(a gem.Absorption) bool { return !alike(a, rest[0]) })
		if same < 0 {
			same = len(rest)
		}
		e.line(label, sourced(absorptionText(rest[:same]), e.from(rest[0].Source)))
		label, rest = "", rest[same:]
	}
}

// alike reports whether two rows differ in wavelength alone.
func alike(a, b gem.Absorption) bool {
	return a.Kind == b.Kind && a.Frequency == b.Frequency && a.Cause == b.Cause && a.Source == b.Source && slices.Equal(a.Colours, b.Colours)
}

func absorptionText(rows []gem.Absorption) string {
	var at []string
	for _, a := range rows {
		at = append(at, nanometres(a.From, a.To))
	}
	a := rows[0]
	kind := a.Kind
	if len(rows) > 1 {
		kind += "s"
	}
	text := fmt.Sprintf("%s %s nm, %s", kind, listed(at), a.Frequency)
	if a.Cause != "" {
		text += ", by " + a.Cause
	}
	if len(a.Colours) > 0 {
		text += ", in stones that are " + orListed(a.Colours)
	}
	return text
}

func nanometres(from, to float64) string {
	text := func(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }
	if from == to || to == 0 {
		return text(from)
	}
	return text(from) + " to " + text(to)
}

// light is what lamp and dichroscope show, and how the material looks.
func (e *entry) light() {
	label := "lamp"
	for _, g := range e.m.Glow {
		text := fmt.Sprintf("%s wave: %s, %s", g.Wave, orListed(g.Colours), g.Frequency)
		if len(g.Colours) == 0 {
			text = fmt.Sprintf("%s wave: %s glows", g.Wave, g.Frequency)
		}
		if g.Cause != "" {
			text += ", by " + g.Cause
		}
		e.line(label, sourced(text, e.from(g.Source)))
		label = ""
	}
	label = "dichroscope"
	for _, d := range e.m.Pleochroism {
		text := fmt.Sprintf("%s: %s", d.Strength, strings.Join(d.Colours, " and "))
		if d.Body != "" {
			text = d.Body + " stones: " + text
		}
		e.line(label, sourced(text, e.from(d.Source)))
		label = ""
	}
	if len(e.m.Colours) > 0 {
		e.line("colours", strings.Join(e.m.Colours, ", "))
	}
	if len(e.m.Looks) > 0 {
		e.line("looks", strings.Join(e.m.Looks, ", "))
	}
}

// names is what a variety's name needs, and what the material is mistaken for.
func (e *entry) names() {
	for _, r := range e.table.Rules(e.m) {
		text := r.Fact + " " + strings.Join(r.Allowed, " or ")
		if r.Convention != "" {
			text += " (" + r.Convention + ")"
		}
		e.line("name needs", sourced(text, e.from(r.Source)))
	}
	if len(e.m.Imitations) > 0 {
		e.line("mistaken for", strings.Join(e.m.Imitations, ", "))
	}
}

// treatments are those met in the material, and where each can be seen.
func (e *entry) treatments() {
	label := "treatments"
	for _, use := range e.m.Treatments {
		e.line(label, sourced(fmt.Sprintf("%s: %s done; %s", use.Treatment, use.Customary, seenAt(use.Seen)), e.from(use.Source)))
		label = ""
	}
}

func seenAt(place string) string {
	switch place {
	case "bench":
		return "can be seen at the bench"
	case "laboratory":
		return "takes a laboratory to see"
	}
	return "cannot be seen"
}

// care is how the material is kept and cleaned.
func (e *entry) care() {
	c := e.table.CareFor(e.m)
	var parts []string
	for _, group := range [][2]string{{"yes", "bears "}, {"care", "with care: "}, {"no", "not: "}} {
		var what []string
		for _, f := range []struct{ what, word string }{
			{"ultrasonic cleaning", c.Ultrasonic}, {"steam", c.Steam}, {"heat", c.Heat}, {"solvents", c.Solvents}, {"light", c.Light}, {"knocks", c.Knocks},
		} {
			if f.word == group[0] {
				what = append(what, f.what)
			}
		}
		if len(what) > 0 {
			parts = append(parts, group[1]+listed(what))
		}
	}
	text := strings.Join(parts, "; ")
	if c.Note != "" {
		text += "; " + c.Note
	}
	e.line("care", sourced(text, e.from(c.Source)))
}

// sources spells out the entries of SOURCES.md that were met.
func (e *entry) sources() string {
	known := sourceTexts(gem.Sources())
	var b strings.Builder
	told := map[string]bool{}
	b.WriteString("\nSources\n")
	for _, cell := range e.met {
		for part := range strings.SplitSeq(cell, ";") {
			id, _, _ := strings.Cut(strings.TrimSpace(part), " ")
			if text, ok := known[id]; ok && !told[id] {
				told[id] = true
				b.WriteString(wrapped("  "+id+": ", "    ", text))
			}
		}
	}
	for _, phrase := range []struct{ words, means string }{
		{gem.FromMemory, "recalled by who wrote the table, not read in a source"},
		{gem.CommonPractice, "a rule of the trade that no source was found for"},
	} {
		if strings.Contains(strings.Join(e.met, ";"), phrase.words) {
			b.WriteString(wrapped("  "+phrase.words+": ", "    ", phrase.means))
		}
	}
	return b.String()
}

// sourceTexts maps the ids of SOURCES.md, the headings of its second level, to
// what stands below them.
func sourceTexts(text string) map[string]string {
	out := map[string]string{}
	id := ""
	for line := range strings.SplitSeq(text, "\n") {
		if heading, ok := strings.CutPrefix(line, "## "); ok {
			id, _, _ = strings.Cut(strings.TrimSpace(heading), " ")
			continue
		}
		if id != "" && strings.TrimSpace(line) != "" {
			out[id] = strings.TrimSpace(out[id] + " " + strings.TrimSpace(line))
		}
	}
	return out
}
