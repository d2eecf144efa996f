package grading

import (
	"maps"
	"slices"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// instrumentRows are asked of the instruments that were used. The word none is
// an answer to each of them, and is printed.
func instrumentRows() []requirement {
	row := func(id string, needed, hint phrase.Line, lacks func(m *matter, in stone.Instrument, has func(key string) bool) bool) requirement {
		return requirement{id: id, each: func(m *matter) []lack {
			var ids []string
			for _, name := range used(m.stone.Stone) {
				if m.bench == nil {
					break
				}
				in, ok := m.bench.Instruments[name]
				has := func(key string) bool { return m.bench.Has("instruments." + name + "." + key) }
				if ok && lacks(m, in, has) {
					ids = append(ids, name)
				}
			}
			if len(ids) == 0 {
				return nil
			}
			return []lack{{"tests", phrase.Say("%s: %s", needed, listed(ids)), phrase.Say("%s in bench.yaml", hint)}}
		}}
	}
	return []requirement{
		row("eq-identity", "the bench does not name maker and serial number", "maker: \"…\", serial: \"…\", or none,",
			func(_ *matter, in stone.Instrument, _ func(string) bool) bool {
				return in.Maker == "" || in.Serial == ""
			}),
		row("eq-calibration", "the bench has no check against something known", "checks: [{date: 2026-10-01, reference: quartz, …}], or none,",
			func(_ *matter, in stone.Instrument, has func(string) bool) bool {
				return measures(in.Kind) && len(in.Checks) == 0 && !has("checks")
			}),
		row("eq-verify", "no check is newer than the last service", "a check after the service, under checks:,",
			func(_ *matter, in stone.Instrument, _ func(string) bool) bool {
				service := newest(in.Service, func(s stone.Service) stone.Date { return s.Date })
				check := newest(in.Checks, func(c stone.Check) stone.Date { return c.Date })
				return service.Given() && !check.After(service.Time) && !check.Equal(service.Time)
			}),
		row("eq-reference", "a check does not tell until when its reference mass or block is valid, or it was no longer", "reference_valid_until: 2027-05-31 under the check",
			func(m *matter, in stone.Instrument, _ func(string) bool) bool {
				return weighs(in.Kind) && slices.ContainsFunc(in.Checks, func(c stone.Check) bool {
					return !c.Expires.Given() || c.Expires.Before(c.Date.Time)
				})
			}),
		row("trace", "the bench has no calibration certificate with its uncertainty", "certificate: {number: \"…\", u: 0.0001 g, date: …}, or none,",
			func(_ *matter, in stone.Instrument, _ func(string) bool) bool {
				return weighs(in.Kind) && (in.Certificate == nil || !in.Certificate.None && !in.Certificate.U.Given())
			}),
	}
}

// used are the instruments of a stone's tests, weight and size, in order of
// their names.
func used(s *stone.Stone) []string {
	set := map[string]bool{s.Weight.Instrument: true, s.Size.Instrument: true}
	for _, a := range s.Tests {
		if a.Test != nil && a.Header().SetAside == "" {
			set[a.Header().Instrument] = true
		}
	}
	delete(set, "")
	return slices.Sorted(maps.Keys(set))
}

// measures reports whether an instrument of a kind gives figures or answers
// that can be wrong.
func measures(kind string) bool {
	return weighs(kind) || slices.Contains([]string{
		stone.KindRefractometer, stone.KindDigital, stone.KindReflectivity, stone.KindSpectroscope, stone.KindThermal,
		stone.KindElectrical, stone.KindScreening, stone.KindRadioactivity, "thermal probe", "heavy liquids",
	}, kind)
}

// weighs reports whether an instrument of a kind gives a mass or a length.
func weighs(kind string) bool {
	return slices.Contains([]string{"balance", "scales in ct", "gauge"}, kind)
}

func newest[T any](list []T, date func(T) stone.Date) stone.Date {
	var last stone.Date
	for _, t := range list {
		if d := date(t); d.After(last.Time) {
			last = d
		}
	}
	return last
}
