package gem

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// CIBJO's classes of disclosure as published summaries give them (second
// hand): general for heat, colourless oil, resin or wax in fissures and surface
// wax; specific for the rest. Bleaching was general and is specific for pearls
// since 2024: the stricter is taken.
func TestDisclosureClass(t *testing.T) {
	table := mustLoad(t)
	for name, want := range map[string]string{
		"heated": "general", "oil": "general", "resin": "general", "wax in fissures": "general", "waxed": "general",
		"dyed": "specific", "coated": "specific", "irradiated": "specific", "glass filled": "specific",
		"lead-glass filled": "specific", "surface diffusion": "specific", "beryllium diffusion": "specific",
		"laser drilled": "specific", "impregnated": "specific", "bleached": "specific",
	} {
		tr, err := table.Treatment(name)
		if err != nil {
			t.Error(err)
		} else if tr.Disclosure != want {
			t.Errorf("%s: %s disclosure, want %s", name, tr.Disclosure, want)
		}
	}
}

// 16 CFR 23.24 (2018): (a) a treatment that does not last, (b) one that asks
// for special care must be told with it.
func TestTreatmentsThatDoNotLastHaveCare(t *testing.T) {
	for _, tr := range mustLoad(t).Treatments() {
		if tr.Permanence != "permanent" && tr.Care == "" {
			t.Errorf("%s does not last, and no care is named", tr.Name)
		}
		if !strings.HasSuffix(tr.Wording, ".") {
			t.Errorf("%s: %q is not a sentence", tr.Name, tr.Wording)
		}
	}
}

// 16 CFR 23.25(d)-(e) (2018): stone bound with lead glass is a composite, with
// a notice that it lacks the properties of the stone and needs special care.
func TestLeadGlassIsAComposite(t *testing.T) {
	tr, err := mustLoad(t).Treatment("lead-glass filled")
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"composite", "not the properties", "special care"} {
		if !strings.Contains(tr.Wording, word) {
			t.Errorf("wording %q does not say %q", tr.Wording, word)
		}
	}
}

// 10 CFR 32.11 and NRC Information Notice 90-62: reactor-irradiated stones are
// distributed first by a licensee. Gamma rays of cobalt leave no activity.
func TestRadioactivityIsTold(t *testing.T) {
	table := mustLoad(t)
	for name, word := range map[string]string{
		"irradiated": "licensed", "neutron irradiated": "licensed", "electron irradiated": "slightly radioactive",
		"gamma irradiated": "do not make",
	} {
		tr, err := table.Treatment(name)
		if err != nil {
			t.Error(err)
		} else if !strings.Contains(tr.Radioactivity, word) {
			t.Errorf("%s: %q does not say %q", name, tr.Radioactivity, word)
		}
	}
	for _, tr := range table.Treatments() {
		irradiated, _ := table.Treatment("irradiated")
		if told := tr.Radioactivity != ""; told != table.TreatmentIsWithin(tr, irradiated) {
			t.Errorf("%s: a note on radioactivity stands with irradiation, and only there", tr.Name)
		}
	}
}

func TestTreatmentKinship(t *testing.T) {
	table := mustLoad(t)
	tests := []struct {
		inner, outer string
		want         bool
		why          string
	}{
		{"oil", "fracture filled", true, "oil in fissures is a filler"},
		{"lead-glass filled", "fracture filled", true, "through glass filled"},
		{"high heat", "heated", true, "strong heating is heating"},
		{"heated", "high heat", false, "gentle heating is heating too"},
		{"beryllium diffusion", "surface diffusion", false, "two kinds of diffusion"},
		{"neutron irradiated", "irradiated", true, "kind of radiation"},
		{"dyed", "dyed", true, "itself"},
	}
	for _, tt := range tests {
		inner, errInner := table.Treatment(tt.inner)
		outer, errOuter := table.Treatment(tt.outer)
		if err := errors.Join(errInner, errOuter); err != nil {
			t.Error(err)
		} else if got := table.TreatmentIsWithin(inner, outer); got != tt.want {
			t.Errorf("%s within %s: %v, want %v: %s", tt.inner, tt.outer, got, tt.want, tt.why)
		}
	}
}

// Words of daily use. Common practice, no source.
func TestTreatmentNames(t *testing.T) {
	table := mustLoad(t)
	for written, want := range map[string]string{
		"Heated": "heated", "HPHT": "high pressure, high temperature", "oiled": "oil", "surface-diffused": "surface diffusion",
		"stabilized": "stabilised", "fracture-filled": "fracture filled", "laser-drilled": "laser drilled", "foil-backed": "backed",
		"pressed": "reconstructed", "smoke treated": "smoke treated",
	} {
		if tr, err := table.Treatment(written); err != nil || tr.Name != want {
			t.Errorf("%q: got %v, %v; want %s", written, tr, err, want)
		}
	}
	_, err := table.Treatment("laser dril")
	var missing *TreatmentNotFoundError
	if !errors.As(err, &missing) || !slices.Contains(missing.Nearest, "laser drilled") {
		t.Errorf("laser dril: got %+v, want laser drilled among the nearest", err)
	}
}

func TestTreatmentUseIsKnown(t *testing.T) {
	table := mustLoad(t)
	for _, m := range table.Materials() {
		for _, use := range m.Treatments {
			if tr, err := table.Treatment(use.Treatment); err != nil || tr.Name != use.Treatment {
				t.Errorf("%s: %q is not the proper name of a treatment", m.Name, use.Treatment)
			}
		}
	}
}

// A treatment that the table calls visible on the bench must leave something
// that the features table knows.
func TestBenchTreatmentsLeaveASign(t *testing.T) {
	table := mustLoad(t)
	noSign := map[string]string{"bleached": "known by the colour of the material alone"}
	for _, m := range table.Materials() {
		for _, use := range m.Treatments {
			if use.Seen != "bench" || noSign[use.Treatment] != "" {
				continue
			}
			if tr, err := table.Treatment(use.Treatment); err != nil || !table.leavesSign(m, tr) {
				t.Errorf("%s: no feature speaks for %s (%v)", m.Name, use.Treatment, err)
			}
		}
	}
}

// leavesSign reports whether some feature in m speaks for tr, for a kind of it
// or for a wider word.
func (t *Table) leavesSign(m *Material, tr *Treatment) bool {
	for _, f := range t.Features() {
		for _, s := range t.SignsFor(f, m) {
			if s.Claim != "treatment" || s.Force != Proves && s.Force != Suggests {
				continue
			}
			about, ok := t.evidence.treatments.find(s.About)
			if ok && (t.TreatmentIsWithin(about, tr) || t.TreatmentIsWithin(tr, about)) {
				return true
			}
		}
	}
	return false
}

func TestFillerWording(t *testing.T) {
	for amount, want := range map[string]string{
		"few": "in few fissures", "several": "in several fissures", "most": "in most fissures", "moderate": "",
	} {
		if got := FillerWording(amount); got != want {
			t.Errorf("%s: got %q, want %q", amount, got, want)
		}
	}
}
