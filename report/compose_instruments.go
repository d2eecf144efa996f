package report

import (
	"maps"
	"slices"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
	"stonewrit/templates"
)

// checks are the checks that the readings were reduced with, by instrument.
func (c *composer) checks() map[string]reading.Check {
	all := map[string]reading.Check{}
	add := func(k reading.Check) {
		if k.State != "" && k.Instrument != "" {
			all[k.Instrument] = k
		}
	}
	for _, v := range c.e.Values.Index {
		add(v.Check)
	}
	for _, v := range c.e.Values.Gravity {
		add(v.Check)
	}
	for _, v := range c.e.Values.Spectrum {
		add(v.Check)
	}
	add(c.e.Weight.Check)
	return all
}

// check is the last check of an instrument. ok is false for one that the bench
// file does not know or that is of a kind nobody checks.
func (c *composer) check(id string) (reading.Check, bool) {
	if k, ok := c.checks()[id]; ok {
		return k, true
	}
	in, ok := c.b.Instruments[id]
	if !ok || len(in.Checks) == 0 {
		return reading.Check{}, false
	}
	k := reading.Check{State: reading.CheckNone, Instrument: id}
	on := c.examinedLast()
	for _, one := range in.Checks {
		if !one.Date.After(on) && (k.State == reading.CheckNone || one.Date.After(k.Date.Time)) {
			k.State, k.Date, k.Reference = reading.CheckValid, one.Date, phrase.Say("%s", phrase.Word(one.Reference))
			if one.Result == "failed" {
				k.State = reading.CheckFailed
			}
		}
	}
	if k.State == reading.CheckValid && in.CheckEvery.Given() {
		k.Due = stone.Date{Time: k.Date.AddDate(0, 0, int(in.CheckEvery.V))}
		if on.After(k.Due.Time) {
			k.State = reading.CheckOverdue
		}
	}
	return k, true
}

func (c *composer) examinedLast() time.Time {
	if n := len(c.s.Examined.Items); n > 0 {
		return c.s.Examined.Items[n-1].Time
	}
	return time.Time{}
}

func (c *composer) checkFacts(k reading.Check) templates.Check {
	return templates.Check{
		Valid: k.State == reading.CheckValid, Overdue: k.State == reading.CheckOverdue, Failed: k.State == reading.CheckFailed, None: k.State == reading.CheckNone,
		Instrument: k.Instrument, Reference: c.prose(k.Reference), Date: c.day(k.Date), Due: c.day(k.Due),
	}
}

// checkOf is the last check behind a test, in words; empty for a test without
// an instrument, or with one that nobody checks.
func (c *composer) checkOf(h *stone.TestHeader) string {
	k, ok := c.check(h.Instrument)
	if !ok {
		return ""
	}
	return c.line("tests.check", c.checkFacts(k))
}

// shortCheck is the same in a few words, for a note.
func (c *composer) shortCheck(t stone.Test) string {
	k, _ := c.check(t.Header().Instrument)
	k.Instrument = t.Header().Instrument
	return c.line("tests.check.short", c.checkFacts(k))
}

// instruments lists the instruments that were used, with what identifies them
// and their last check.
func (c *composer) instruments() []Block {
	list := List{Small: true}
	for _, id := range c.used() {
		if in, ok := c.b.Instruments[id]; ok {
			list.Items = append(list.Items, c.say("tests.instrument", c.instrument(id, in)))
		}
	}
	head := Strong(c.line("tests.instruments", templates.None{}))
	switch {
	case len(list.Items) == 0:
		return nil
	case c.kind.Note:
		return []Block{Small(together(append([]Text{head}, list.Items...)...))}
	}
	return []Block{Paragraph{Text: head, Small: true, KeepNext: true}, list}
}

// used lists the instruments of the examination, sorted.
func (c *composer) used() []string {
	ids := map[string]bool{}
	for _, t := range c.s.Tests {
		ids[t.Header().Instrument] = true
	}
	ids[c.s.Weight.Instrument], ids[c.s.Size.Instrument] = true, true
	delete(ids, "")
	return slices.Sorted(maps.Keys(ids))
}

func (c *composer) instrument(id string, in stone.Instrument) templates.Instrument {
	out := templates.Instrument{
		Name: id, Kind: c.instrumentKind(in.Kind), Maker: in.Maker, Serial: in.Serial, Software: in.Software,
		Limit: c.figure(in.Limit.Text), Readability: c.figure(in.Readability.Text),
	}
	if in.Type != "" {
		out.Type = c.word("type", in.Type)
	}
	for _, w := range in.Wavelengths {
		out.Wavelengths = append(out.Wavelengths, c.figure(w.Text))
	}
	k, ok := c.check(id)
	if !ok {
		k.State = reading.CheckNone
	}
	out.Check = c.line("tests.check", c.checkFacts(k))
	if c.kind.Note && c.inARow(id) { // the day stands in the table
		out.Check = c.line("tests.check.reference", c.checkFacts(k))
	}
	if cert := in.Certificate; cert != nil && cert.None {
		out.NoCertificate = true
	} else if cert != nil {
		out.Certificate, out.CertificateU, out.CertificateBy, out.CertificateDate = cert.Number, c.figure(cert.U.Text), cert.By, c.day(cert.Date)
	}
	if n := len(in.Service); n > 0 && !c.kind.Note {
		out.Service, out.ServiceDate = in.Service[n-1].What, c.day(in.Service[n-1].Date)
	}
	return out
}

// instrumentKind is what an instrument is: where a language has no word of its
// own for it, that of its test.
func (c *composer) instrumentKind(kind string) string {
	if said := c.word("instrument", kind); said != kind {
		return said
	}
	return c.word("kind", kind)
}

// inARow reports whether a test was made with the instrument.
func (c *composer) inARow(id string) bool {
	for _, t := range c.s.Tests {
		if t.Header().Instrument == id {
			return true
		}
	}
	return false
}
