package stone

import (
	"errors"
	"fmt"
	"maps"
	"path"
	"regexp"
	"slices"
	"stonewrit/grading/phrase"
	"strconv"
	"strings"

	"stonewrit/grading/gem"
)

// validator tells what single values cannot: keys that contradict each other
// and names that the gem table does not have.
type validator struct {
	at       func(path string) Position
	table    *gem.Table
	read     Problems // what could not be read
	problems Problems
}

// full reports whether enough is told: looking for the nearest of many names
// takes its time.
func (v *validator) full() bool { return len(v.problems) >= maxTold }

// unread reports whether a key stands in the file but could not be read, so
// that nothing can be said from its absence.
func (v *validator) unread(path string) bool {
	return slices.ContainsFunc(v.read, func(p Problem) bool { return within(p.Path, path) })
}

func (v *validator) say(severity Severity, path string, message, hint phrase.Line) {
	if v.full() {
		return
	}
	at := v.at(path)
	v.problems = append(v.problems, Problem{Severity: severity, Path: path, Line: at.Line, Column: at.Column, Message: message, Hint: hint}.brief())
}

func (v *validator) wrong(path string, hint, form phrase.Line, parts ...any) {
	v.say(Error, path, phrase.Say(form, parts...), hint)
}

func (v *validator) stone(s *Stone) {
	if s.Reference == "" {
		v.wrong("stone", "give the stone a reference of your own, unique in the folder", "the reference is empty")
	}
	v.dates(s.Assignment)
	v.opinion(s)
	v.origin(s)
	v.size(s)
	v.mounting(s)
	for i, t := range s.Tests {
		if t.Test != nil {
			v.test(fmt.Sprintf("tests[%d]", i), t.Test)
		}
	}
	v.account(s.Account, "stone file")
}

func (v *validator) dates(a Assignment) {
	days := a.Examined.Items
	switch {
	case len(days) == 0:
		v.wrong("examined", "write the day: 2026-10-14", "no day of examination is given")
		return
	case len(days) > 2:
		v.wrong("examined", "write the first and the last day", "%d days are given, one or two were expected", len(days))
	case len(days) == 2 && days[1].Before(days[0].Time):
		v.wrong("examined", "write the first day first", "the last day %s lies before the first %s", days[1], days[0])
	}
	if a.Received.Given() && days[0].Given() && a.Received.After(days[0].Time) {
		v.wrong("received", "", "received %s lies after the examination of %s", a.Received, days[0])
	}
}

func (v *validator) opinion(s *Stone) {
	o := s.Opinion
	v.material("opinion.species", o.Species)
	v.material("opinion.variety", o.Variety)
	if _, err := v.table.Find(o.Imitates); o.Imitates != "" && len(o.Imitates) <= 100 && err != nil {
		v.say(Warning, "opinion.imitates", phrase.Say("%s, it is printed as written", err.Error()), "")
	}
	v.kinship(o)
	v.layers(o)
	v.method(o)
	v.treatments("opinion.treatments", o.Treatments.Items)
	v.treatments("opinion.treatments_stated", o.Told.Items)
	if o.Growth == "imitation" && o.Imitates == "" {
		v.wrong("opinion.growth", "add what it is sold or worn as, for example imitates: emerald", "an imitation needs the key imitates")
	}
	if o.Species == "" && len(o.Layers) == 0 {
		v.wrong("opinion", v.speciesHint(o.Variety), "no species is stated")
	}
}

// speciesHint names the species of a variety that stands alone.
func (v *validator) speciesHint(variety string) phrase.Line {
	if m, err := v.table.Find(variety); variety != "" && err == nil {
		return phrase.Say("add species: %s", v.table.SpeciesOf(m).Name)
	}
	return "for example species: corundum (a group such as garnet is accepted)"
}

func (v *validator) layers(o Opinion) {
	if len(o.Layers) > 0 && o.Growth != "composite" && !v.unread("opinion.growth") {
		v.wrong("opinion.layers", "write growth: composite, or leave the layers out", "layers stand beside %s", orNone("growth", o.Growth))
	}
	for i, l := range o.Layers {
		if !strings.EqualFold(l.Material, "glue") {
			v.material(fmt.Sprintf("opinion.layers[%d].material", i), l.Material)
		}
	}
}

// cultured refuses the word for anything but pearls: of a stone it misleads.
func (v *validator) cultured(o Opinion) {
	pearl, err := v.table.Find("pearl")
	m, unknown := v.table.Find(o.Species)
	if o.Growth != "cultured" || o.Species == "" || err != nil || unknown != nil || v.table.IsWithin(m, pearl) || m.Class == "composite" {
		return
	}
	v.wrong("opinion.growth", "for a stone write laboratory-grown", "cultured is said of pearls, not of %s", m.Name)
}

// method refuses a way of growing that does not belong to the growth.
func (v *validator) method(o Opinion) {
	cultured := []string{"bead nucleus", "without bead", "undetermined"}
	v.cultured(o)
	switch {
	case o.Method == "" || v.unread("opinion.growth"):
	case o.Growth == "cultured" && !slices.Contains(cultured, o.Method):
		v.wrong("opinion.method", phrase.Say("for cultured pearls: %s", strings.Join(cultured, ", ")), "%q is no way of culturing", o.Method)
	case o.Growth == "laboratory-grown", o.Growth == "artificial", o.Growth == "imitation":
		if slices.Contains(cultured[:2], o.Method) {
			v.wrong("opinion.method", "for pearls write growth: cultured", "%q is a way of culturing pearls", o.Method)
		}
	case o.Growth != "cultured":
		v.wrong("opinion.method", "leave it out, or mend the growth", "a method of growth stands beside %s", orNone("growth", o.Growth))
	}
}

// orNone names a key with its value, or says that it is not there.
func orNone(key, value string) phrase.Line {
	if value == "" {
		return phrase.Say("no %s", key)
	}
	return phrase.Say("%s: %s", key, value)
}

// kinship refuses a variety that belongs to another species.
func (v *validator) kinship(o Opinion) {
	if o.Species == "" || o.Variety == "" {
		return
	}
	species, err1 := v.table.Find(o.Species)
	variety, err2 := v.table.Find(o.Variety)
	if err1 != nil || err2 != nil || v.table.IsWithin(variety, species) || v.table.IsWithin(species, variety) {
		return
	}
	right := v.table.SpeciesOf(variety).Name
	v.wrong("opinion.variety", phrase.Say("write species: %s, or another variety", right), "%s is a name for %s, not for %s", o.Variety, right, o.Species)
}

// material refuses a name that the table does not have, or that misleads.
func (v *validator) material(path, name string) {
	if name == "" || v.full() {
		return
	}
	if len(name) > 100 {
		v.wrong(path, "write a name of the gem table, and the rest under note:", "%q is too long for a name", name)
		return
	}
	_, err := v.table.Find(name)
	var misnomer *gem.MisnomerError
	var unknown *gem.NotFoundError
	switch {
	case errors.As(err, &misnomer):
		v.wrong(path, phrase.Say("write %q", misnomer.Proper), "%s", misnomer)
	case errors.As(err, &unknown):
		hint := phrase.Line("the command gems lists the names")
		if len(unknown.Nearest) > 0 {
			hint = phrase.Say("did you mean %q?", unknown.Nearest[0])
		}
		v.wrong(path, hint, "%s", unknown)
	}
}

func (v *validator) treatments(path string, claims []TreatmentClaim) {
	for i, t := range claims {
		if v.full() {
			return
		}
		at := fmt.Sprintf("%s[%d]", path, i)
		if _, err := v.table.Treatment(t.Name); err != nil {
			var names []string
			for _, known := range v.table.Treatments() {
				names = append(names, known.Name)
			}
			v.wrong(at, didYouMean(t.Name, names), "%q is not a treatment of the table: %s", t.Name, strings.Join(names, ", "))
		}
	}
}

func (v *validator) origin(s *Stone) {
	undetermined := func(c string) bool { return c == "" || strings.EqualFold(c, "not determined") }
	if !undetermined(s.Opinion.Origin) && (s.Origin == nil || s.Origin.Basis == "") {
		v.wrong("opinion.origin", "write origin: {country: …, basis: …} at the top level, or not determined", "a country of origin needs its basis")
	}
	if s.Origin != nil && !undetermined(s.Origin.Country) && s.Origin.Basis == "" {
		v.wrong("origin", "say what the opinion rests on, or write not determined", "a country of origin needs its basis")
	}
}

func (v *validator) size(s *Stone) {
	z := s.Size
	for _, m := range []struct {
		key  string
		list List[Length]
	}{{"length", z.Length}, {"width", z.Width}, {"depth", z.Depth}, {"diameter", z.Diameter}, {"sizes", z.Sizes}} {
		if m.list.Given && len(m.list.Items) == 0 {
			v.wrong("size."+m.key, "leave the key out where it was not measured", "no measure is given")
		}
	}
	if z.Diameter.Given && (z.Length.Given || z.Width.Given) {
		v.wrong("size.diameter", "give the diameter of a round stone, length and width of any other", "a diameter stands beside length or width")
	}
	if z.Hidden.Given && !z.InSetting && !s.Mounted && !v.unread("mounted") && !v.unread("size.in setting") {
		v.wrong("size.hidden", "write mounted: true, or leave it out", "a hidden dimension of a stone that is not in a setting")
	}
}

// mounting refuses what cannot be done to a stone in its setting.
func (v *validator) mounting(s *Stone) {
	if !s.Mounted {
		return
	}
	if s.Weight.Measured.Given() && s.Weight.When != "before setting" && !v.unread("weight.when") {
		v.wrong("weight.measured", "add when: before setting, or use stated: with by:", "a stone in its mounting cannot be weighed")
	}
	for i, t := range s.Tests {
		g, ok := t.Test.(*Gravity)
		if ok && g.Method != "value" && g.SetAside == "" {
			v.wrong(fmt.Sprintf("tests[%d].method", i), "write mounted: false if it was loose when tested", "the specific gravity of a mounted stone cannot be found by %s", map[string]string{"hydrostatic": "weighing", "liquid": "a liquid"}[g.Method])
		}
	}
}

// beside refuses a file that does not lie in the folder of the file that names
// it, or below.
func (v *validator) beside(at, file, folder string) {
	clean := path.Clean(strings.ReplaceAll(file, `\`, "/"))
	if file == "" {
		return
	}
	if path.IsAbs(clean) || clean == ".." || strings.HasPrefix(clean, "../") || strings.Contains(clean, ":") {
		v.wrong(at, "copy the file into that folder, or one below, and write its path from there", "%q lies outside the folder of the %s", file, folder)
	}
}

var accent = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

func (v *validator) bench(b *Bench) {
	if b.Accent != "" && !accent.MatchString(b.Accent) {
		v.wrong("accent", "for example \"#1d3557\"", "%q is not a colour written #rrggbb", b.Accent)
	}
	v.beside("practice.logo", b.Practice.Logo, "bench file")
	for i, file := range b.Font.Items {
		v.beside(fmt.Sprintf("font[%d]", i), file, "bench file")
	}
	for _, id := range slices.Sorted(maps.Keys(b.Examiners)) {
		v.beside("examiners."+id+".signature", b.Examiners[id].Signature, "bench file")
	}
	for _, id := range slices.Sorted(maps.Keys(b.Instruments)) {
		in := b.Instruments[id]
		kinds := InstrumentKinds()
		if !slices.Contains(kinds, in.Kind) {
			v.wrong("instruments."+id+".kind", didYouMean(in.Kind, kinds), "%q is not one of: %s", in.Kind, strings.Join(kinds, ", "))
		}
	}
}

// InstrumentKinds are the words for what an instrument is: those of the tests,
// and those of what measures and shows.
func InstrumentKinds() []string {
	return append([]string{"balance", "scales in ct", "gauge", "lamp", "loupe", "microscope", "thermal probe", "heavy liquids"}, TestKinds()...)
}

// mohs reads a Mohs number of a scratch, if it is one.
func mohs(text string) (float64, bool) {
	h, err := strconv.ParseFloat(text, 64)
	return h, err == nil
}
