package stone

import (
	"fmt"
	"maps"
	"slices"
	"stonewrit/grading/phrase"
	"strings"
	"time"
)

// Against tells what of a stone file does not fit the bench file and the day:
// unknown examiners and instruments, instruments of another kind, readings
// above an instrument's limit, dates in the future. today is the calendar day
// at the practice; bench may be nil. It may be asked of a record that has
// problems of its own.
func Against(s *Stone, bench *Bench, today time.Time) Problems {
	v := &validator{at: s.Position}
	v.future(s.Assignment, s.Photos, today)
	v.futureTests(s.Tests, today)
	if bench != nil {
		v.people(s.Assignment, s.Tests, bench)
		for i, t := range s.Tests {
			if t.Test != nil {
				v.instrument(fmt.Sprintf("tests[%d]", i), t.Test, bench)
			}
		}
		v.balance("weight.instrument", s.Weight.Instrument, bench, "balance", "scales in ct")
		v.balance("size.instrument", s.Size.Instrument, bench, "gauge")
	}
	v.problems.Sort()
	return v.problems
}

// AgainstPiece tells what of a piece file does not fit the bench file and the
// day, as Against does of a stone file.
func AgainstPiece(p *Piece, bench *Bench, today time.Time) Problems {
	v := &validator{at: p.Position}
	v.future(p.Assignment, p.Photos, today)
	if bench != nil {
		v.people(p.Assignment, nil, bench)
		v.balance("mass.instrument", p.Mass.Instrument, bench, "balance", "scales in ct")
	}
	v.problems.Sort()
	return v.problems
}

func (v *validator) future(a Assignment, photos []Photo, today time.Time) {
	v.later("received", "the day it came in", a.Received, today)
	for i, d := range a.Examined.Items {
		path := "examined"
		if len(a.Examined.Items) > 1 {
			path = fmt.Sprintf("examined[%d]", i)
		}
		v.later(path, "the day of examination", d, today)
	}
	for i, p := range photos {
		if n := len(a.Examined.Items); n > 0 && p.Taken.Given() && p.Taken.After(a.Examined.Items[n-1].Time) {
			v.say(Warning, fmt.Sprintf("photos[%d].taken", i), phrase.Say("the photo of %s was taken after the examination", p.Taken), "")
		}
	}
}

func (v *validator) futureTests(tests []AnyTest, today time.Time) {
	for i, t := range tests {
		if t.Test != nil {
			v.later(fmt.Sprintf("tests[%d].date", i), "the day of the test", t.Header().Date, today)
		}
	}
}

func (v *validator) later(path, what string, d Date, today time.Time) {
	if d.Given() && d.After(today) {
		v.wrong(path, "", "%s %s lies after today, %s", what, d, today.Format(time.DateOnly))
	}
}

func (v *validator) people(a Assignment, tests []AnyTest, b *Bench) {
	known := slices.Sorted(maps.Keys(b.Examiners))
	type named struct{ path, id string }
	all := []named{{"examiner", a.Examiner}, {"authorised_by", a.Authorised}}
	for i, t := range tests {
		if t.Test != nil {
			all = append(all, named{fmt.Sprintf("tests[%d].by", i), t.Header().By})
		}
	}
	for _, who := range all {
		if _, ok := b.Examiners[who.id]; who.id != "" && !ok {
			v.wrong(who.path, didYouMean(who.id, known), "%q is not an examiner of %s, which names %s", who.id, b.File(), listed(known))
		}
	}
}

func listed(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, ", ")
}

func (v *validator) instrument(at string, t Test, b *Bench) {
	h := t.Header()
	if h.Instrument == "" {
		return
	}
	in, ok := b.Instruments[h.Instrument]
	if !ok {
		known := slices.Sorted(maps.Keys(b.Instruments))
		v.wrong(at+".instrument", didYouMean(h.Instrument, known), "%q is not an instrument of %s, which names %s", h.Instrument, b.File(), listed(known))
		return
	}
	if !fits(in.Kind, h.Kind) {
		v.wrong(at+".instrument", "name another instrument, or mend its kind in the bench file", "%s is a %s, which does not do a %s test", h.Instrument, in.Kind, h.Kind)
	}
	if r, ok := t.(*Refractometer); ok && in.Limit.Given() {
		v.limit(at, h.Instrument, r, in)
	}
}

func (v *validator) limit(at, id string, r *Refractometer, in Instrument) {
	for i, turn := range r.Readings.Items {
		for j, e := range turn.Seen {
			if e.V <= in.Limit.V {
				continue
			}
			path := fmt.Sprintf("%s.readings[%d]", at, i)
			if len(turn.Seen) > 1 || turn.Over {
				path += fmt.Sprintf("[%d]", j)
			}
			v.wrong(path, slippedPoint(float64(e.V), bounds{1.3, float64(in.Limit.V), true}), "%s is above %s, the limit of %s", e, in.Limit, id)
		}
	}
}

// fits reports whether an instrument of a kind does a kind of test.
func fits(instrument, test string) bool {
	return instrument == test || slices.Contains(otherTests(instrument), test)
}

// otherTests are the kinds of test that a kind of instrument does besides the
// one of its own name.
func otherTests(instrument string) []string {
	switch instrument {
	case "balance", "scales in ct", "heavy liquids":
		return []string{KindGravity}
	case "lamp":
		return []string{KindUltraviolet}
	case "loupe", "microscope":
		return []string{KindMagnification, KindDoubling, KindDrillHole, KindImmersion}
	case KindMagnification:
		return []string{KindDoubling, KindDrillHole, KindImmersion}
	case "thermal probe":
		return []string{KindThermal}
	case KindThermal:
		return []string{KindElectrical, KindScreening}
	case KindRefractometer:
		return []string{KindCarbonate}
	case KindDigital:
		return []string{KindReflectivity}
	case KindReflectivity:
		return []string{KindDigital}
	}
	return nil
}

func (v *validator) balance(path, id string, b *Bench, kinds ...string) {
	if id == "" {
		return
	}
	in, ok := b.Instruments[id]
	known := slices.Sorted(maps.Keys(b.Instruments))
	switch {
	case !ok:
		v.wrong(path, didYouMean(id, known), "%q is not an instrument of %s, which names %s", id, b.File(), listed(known))
	case !slices.Contains(kinds, in.Kind):
		v.wrong(path, "", "%s is a %s, a %s was expected", id, in.Kind, strings.Join(kinds, " or "))
	}
}
