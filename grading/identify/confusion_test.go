package identify

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"stonewrit/grading/gem"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// readings are the tests that a good bench makes of a material in the middle
// of its own ranges, made without the code under test.
func readings(m *gem.Material, kinds ...string) (*stone.Stone, reading.Values) {
	s := &stone.Stone{}
	if len(m.Looks) > 0 {
		s.Appearance.Transparency = m.Looks[0]
	}
	for _, c := range m.Colours {
		if hueOf(c) != "" {
			s.Appearance.Colour = c
			break
		}
	}
	var v reading.Values
	checked := reading.Check{State: reading.CheckValid, Factor: 1}
	add := func(t stone.Test, kind string) {
		t.Header().Kind, t.Header().Index = kind, len(s.Tests)
		s.Tests = append(s.Tests, stone.AnyTest{Test: t})
	}
	for _, kind := range kinds {
		switch kind {
		case "index":
			t := &stone.Refractometer{Contact: "good"}
			if m.Low.Known() && m.Low.Mid() > 1.80 {
				add(t, stone.KindRefractometer)
				v.Index = append(v.Index, reading.IndexValue{Test: t, Over: 1.81, Limit: 1.81, Check: checked})
				continue
			}
			if !m.Low.Known() {
				continue
			}
			x := reading.IndexValue{Test: t, Low: m.Low.Mid(), High: m.High.Mid(), U: 0.0012, BirefringenceU: 0.0014, Turns: 4, Edges: 2, Limit: 1.81, Check: checked}
			if m.Optic != gem.Uniaxial && m.Optic != gem.Biaxial {
				x.Edges, x.High, x.BirefringenceU = 1, x.Low, 0
			} else {
				x.Birefringence = x.High - x.Low
				x.Most = x.Birefringence / 0.7
				if m.Sign == "+" || m.Sign == "-" {
					x.Sign, x.SignSure = m.Sign, true
				}
				if x.High > 1.81 {
					x.Edges, x.High, x.UpperOver, x.Birefringence, x.Most, x.Sign = 1, x.Low, true, 0, 0, ""
				}
			}
			add(t, stone.KindRefractometer)
			v.Index = append(v.Index, x)
		case "polars":
			p := &stone.Polariscope{Orientations: 3}
			switch m.Optic {
			case gem.Isotropic:
				p.Sees = "stays dark"
			case gem.Uniaxial, gem.Biaxial:
				p.Sees = "blinks"
			case gem.Aggregate:
				p.Sees = "stays light"
			default:
				continue
			}
			add(p, stone.KindPolariscope)
		case "gravity":
			if !m.SG.Known() {
				continue
			}
			g := &stone.Gravity{Method: "hydrostatic"}
			add(g, stone.KindGravity)
			v.Gravity = append(v.Gravity, reading.GravityValue{Test: g, V: m.SG.Mid(), U: 0.005, Weighed: true, Check: checked})
		case "dichroscope":
			switch m.Optic {
			case gem.Uniaxial:
				add(&stone.Dichroscope{Colours: two("blue", "green"), Strength: "distinct"}, stone.KindDichroscope)
			case gem.Biaxial:
				add(&stone.Dichroscope{Colours: two("blue", "green", "brown"), Strength: "distinct"}, stone.KindDichroscope)
			}
		case "spectrum":
			x := reading.SpectrumValue{Test: &stone.Spectroscope{}, Looked: true, Hand: true, Lamp: true}
			for _, a := range m.Absorption {
				if a.Kind == "line" && (a.Frequency == gem.Always || a.Frequency == gem.Often) {
					x.Lines = append(x.Lines, reading.Line{At: (a.From + a.To) / 2, U: 2.5})
				}
			}
			if len(x.Lines) > 0 {
				add(x.Test, stone.KindSpectroscope)
				v.Spectrum = append(v.Spectrum, x)
			}
		case "thermal":
			if m.Thermal != "" {
				add(&stone.Thermal{Shows: m.Thermal}, stone.KindThermal)
			}
		case "doubling":
			if m.Birefringence.Min >= 0.035 {
				add(&stone.Doubling{Shows: "seen"}, stone.KindDoubling)
			}
		case "figure":
			switch m.Optic {
			case gem.Uniaxial, gem.Biaxial:
				add(&stone.Polariscope{Figure: string(m.Optic)}, stone.KindPolariscope)
			}
		}
	}
	return s, v
}

func two(colours ...string) stone.List[string] {
	return stone.List[string]{Items: colours, Given: true}
}

// TestConfusion offers every material's own readings under every name of the
// table: the true name is never contradicted, a wrong name never supported.
func TestConfusion(t *testing.T) {
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	d := New(table)
	var names []*gem.Material
	for _, m := range table.Materials() {
		if m.Level == gem.Species || m.Level == gem.Group {
			names = append(names, m)
		}
	}
	var golden strings.Builder
	base := []string{"index", "polars", "gravity"}
	for _, further := range []string{"", "figure", "dichroscope", "spectrum", "thermal", "doubling"} {
		kinds := base
		if further != "" {
			kinds = append(slices.Clone(base), further)
		}
		counts := map[string]int{}
		fmt.Fprintf(&golden, "# %s\n", strings.Join(kinds, ", "))
		for _, truth := range table.Materials() {
			if truth.Class == "composite" || truth.Level == gem.Group {
				continue
			}
			s, v := readings(truth, kinds...)
			own := table.SpeciesOf(truth)
			var open []string
			surveyed := d.survey(&Case{Stone: s, Values: v})
			for _, name := range names {
				s.Opinion = stone.Opinion{Species: name.Name}
				r := surveyed.judge(Resolve(s.Opinion, table))
				right := table.IsWithin(truth, name)
				standing := r.Species.Standing
				switch {
				case right && standing == Contradicted:
					t.Errorf("%s offered as %s is contradicted: %v", truth.Name, name.Name, r.Species.Because)
				case right:
					counts["right "+string(standing)]++
				case standing == Supported && table.IsWithin(name, own):
					counts["narrower supported"]++ // a colourless tourmaline named as elbaite
				case standing == Supported:
					t.Errorf("%s offered as %s is supported: %v", truth.Name, name.Name, r.Species.Because)
				default:
					counts["wrong "+string(standing)]++
					if standing == Undecided && name.Level == gem.Species {
						open = append(open, name.Name)
						if !slices.ContainsFunc(r.Rivals, func(x Rival) bool { return table.IsWithin(x.Material, own) || table.IsWithin(own, x.Material) }) && !table.IsWithin(name, own) && truth.Optic != "" {
							t.Errorf("%s offered as %s is undecided and %s is not named as a rival", truth.Name, name.Name, own.Name)
						}
					}
				}
			}
			s.Opinion = stone.Opinion{Species: own.Name}
			r := d.Identify(Case{Stone: s, Values: v})
			left := strings.Join(open, ", ")
			if further != "" {
				left = fmt.Sprint(len(open))
			}
			fmt.Fprintf(&golden, "%s: %s; not contradicted: %s\n", truth.Name, r.Species.Standing, left)
		}
		var line []string
		for _, k := range []string{"right supported", "right undecided", "wrong undecided", "wrong contradicted"} {
			line = append(line, fmt.Sprintf("%s %d", k, counts[k]))
		}
		fmt.Fprintf(&golden, "# %s\n", strings.Join(line, ", "))
		t.Log(strings.Join(kinds, ", ")+":", strings.Join(line, ", "))
	}
	const file = "testdata/confusion.golden"
	if *update {
		if err := os.WriteFile(file, []byte(golden.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != golden.String() {
		t.Errorf("the confusion matrix differs from %s; -update rewrites it, and the difference is to be read", file)
	}
}
