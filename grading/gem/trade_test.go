package gem

import (
	"errors"
	"slices"
	"testing"
)

// The names that a bench types, with the row they mean. Common practice, no
// source.
func TestNamesOfTheTrade(t *testing.T) {
	table := mustLoad(t)
	for _, tt := range []struct{ written, want string }{
		{"synthetic ruby", "laboratory-grown ruby"}, {"lab-grown sapphire", "laboratory-grown sapphire"}, {"synthetic emerald", "laboratory-grown emerald"},
		{"synthetic alexandrite", "laboratory-grown alexandrite"}, {"laboratory-grown diamond", "laboratory-grown diamond"}, {"lab-grown diamond", "laboratory-grown diamond"},
		{"synthetic beryl", "laboratory-grown beryl"}, {"synthetic aquamarine", "hydrothermal beryl"}, {"synthetic star ruby", "laboratory-grown ruby"},
		{"synthetic malachite", "laboratory-grown malachite"}, {"synthetic lapis lazuli", "laboratory-made lapis lazuli"}, {"synthetic jadeite", "high-pressure jadeite"},
		{"synthetic citrine", "hydrothermal quartz"}, {"Verneuil ruby", "flame-fusion corundum"}, {"synthetic zincite", "vapour-grown zincite"},
		{"synthetic chrysoberyl", "laboratory-grown chrysoberyl"}, {"HPHT diamond", "high-pressure diamond"}, {"CVD diamond", "vapour-grown diamond"},
		{"tsavorite garnet", "tsavorite"}, {"spessartite garnet", "spessartine"}, {"leuco garnet", "grossular"}, {"rainbow garnet", "andradite"}, {"red garnet", "garnet"},
		{"Paraíba", "paraiba tourmaline"}, {"Paraiba-type tourmaline", "paraiba tourmaline"}, {"neon tourmaline", "paraiba tourmaline"},
		{"black star sapphire", "star sapphire"}, {"fancy sapphire", "sapphire"}, {"trapiche ruby", "ruby"},
		{"London blue topaz", "blue topaz"}, {"sky blue topaz", "blue topaz"}, {"Swiss blue topaz", "blue topaz"},
		{"tourmalinated quartz", "quartz"}, {"lemon quartz", "quartz"}, {"rutile quartz", "rutilated quartz"}, {"Madeira citrine", "citrine"},
		{"prase", "quartz"}, {"plasma", "chalcedony"}, {"blue lace agate", "agate"}, {"plume agate", "moss agate"}, {"picture jasper", "jasper"},
		{"cultured pearl", "cultured pearl"}, {"akoya pearl", "cultured pearl, bead nucleus"}, {"Tahitian pearl", "cultured pearl, bead nucleus"},
		{"keshi pearl", "cultured pearl, without bead"}, {"black pearl", "pearl"}, {"quahog pearl", "saltwater pearl"}, {"mabe", "assembled cultured blister pearl"},
		{"bakelite", "phenolic plastic"}, {"acrylic", "acrylic plastic"}, {"apple coral", "sponge coral"}, {"Dominican amber", "amber"},
		{"antler", "antler"}, {"narwhal ivory", "ivory"}, {"shell cameo", "shell"}, {"abalone", "mother-of-pearl"}, {"lead crystal", "crown or lead glass"},
		{"fiber-optic cat's-eye", "cat's-eye glass"}, {"mosaic opal", "mosaic opal"}, {"quartz doublet", "quartz doublet"},
		{"lavender jade", "jadeite"}, {"imperial jade", "jadeite"}, {"black jade", "jade"}, {"chloromelanite", "jadeite"},
		{"cat's-eye apatite", "apatite"}, {"peristerite", "plagioclase"}, {"anorthoclase", "feldspar"}, {"golden labradorite", "labradorite"},
		{"andesine-labradorite", "plagioclase"}, {"hydroxylherderite", "herderite"}, {"Eilat stone", "eilat stone"}, {"tinzenite", "axinite"},
		{"fayalite", "olivine"}, {"pallasitic peridot", "peridot"}, {"jargoon", "zircon"}, {"väyrynenite", "vayrynenite"}, {"sulfur", "sulphur"},
	} {
		if m, err := table.Find(tt.written); err != nil || m.Name != tt.want {
			t.Errorf("Find(%q) = %v, %v; want %s", tt.written, m, err, tt.want)
		}
	}
	for _, name := range []string{"composite ruby", "emerald triplet", "synthetic coral", "Biwa pearl"} {
		var wrong *MisnomerError
		if _, err := table.Find(name); !errors.As(err, &wrong) {
			t.Errorf("Find(%q): got %v, want a refusal with what to write", name, err)
		}
	}
}

// Material grown by a method that nobody determined has the figures of what it
// is grown as, and is no natural stone.
func TestGrownByAnUndeterminedMethod(t *testing.T) {
	table := mustLoad(t)
	n := 0
	for _, m := range table.Materials() {
		if m.Method != "undetermined" {
			continue
		}
		n++
		parent := find(t, table, m.Parent)
		if m.Level != Counterpart || m.Growth != LaboratoryGrown && m.Growth != Cultured || m.Low != parent.Low || m.Optic != parent.Optic || len(m.Treatments) > 0 {
			t.Errorf("%s: level %s, growth %s, index %s, treatments %v", m.Name, m.Level, m.Growth, text(m.Low), m.Treatments)
		}
	}
	if n < 8 {
		t.Errorf("%d rows, want at least 8", n)
	}
}

// TestRareMaterials has indices, specific gravity and structure of minerals
// that are seldom cut, from memory: the recalled stone must lie in its row.
func TestRareMaterials(t *testing.T) {
	table := mustLoad(t)
	for _, tt := range []struct {
		name          string
		low, high, sg float64
		optic         Optic
		sign          string
	}{
		{"wollastonite", 1.620, 1.635, 2.85, Biaxial, "-"}, {"milarite", 1.548, 1.551, 2.52, Uniaxial, "-"}, {"sogdianite", 1.606, 1.608, 2.80, Uniaxial, "-"},
		{"analcime", 1.487, 1.487, 2.27, Isotropic, ""}, {"nepheline", 1.534, 1.538, 2.60, Uniaxial, "-"}, {"hornblende", 1.63, 1.66, 3.2, Biaxial, "-"},
		{"eosphorite", 1.638, 1.667, 3.07, Biaxial, "-"}, {"childrenite", 1.645, 1.690, 3.2, Biaxial, "-"}, {"vayrynenite", 1.64, 1.667, 3.20, Biaxial, "-"},
		{"wardite", 1.590, 1.599, 2.81, Uniaxial, "+"}, {"mellite", 1.511, 1.539, 1.60, Uniaxial, "-"}, {"legrandite", 1.70, 1.74, 4.0, Biaxial, "+"},
		{"adamite", 1.71, 1.76, 4.4, Biaxial, "+"}, {"anglesite", 1.877, 1.894, 6.38, Biaxial, "+"}, {"phosgenite", 2.118, 2.145, 6.13, Uniaxial, "+"},
		{"proustite", 2.79, 3.08, 5.57, Uniaxial, "-"}, {"cinnabar", 2.91, 3.26, 8.1, Uniaxial, "+"}, {"crocoite", 2.29, 2.66, 6.0, Biaxial, "+"},
		{"sulphur", 1.96, 2.25, 2.07, Biaxial, "+"}, {"siderite", 1.633, 1.873, 3.9, Uniaxial, "-"}, {"simpsonite", 1.98, 2.03, 6.6, Uniaxial, "-"},
		{"microlite", 2.00, 2.00, 6.0, Isotropic, ""}, {"tantalite-(Mn)", 2.19, 2.34, 7.9, Biaxial, "+"}, {"hibonite", 1.79, 1.807, 3.84, Uniaxial, "-"},
		{"bromellite", 1.720, 1.735, 3.01, Uniaxial, "+"}, {"shattuckite", 1.752, 1.815, 4.1, Aggregate, ""}, {"purpurite", 1.85, 1.92, 3.3, Biaxial, "+"},
		{"lawsonite", 1.665, 1.685, 3.09, Biaxial, "+"}, {"humite", 1.62, 1.65, 3.2, Biaxial, "+"},
	} {
		m := find(t, table, tt.name)
		if !m.Low.holds(tt.low, 1e-9) || !m.High.holds(tt.high, 1e-9) || !m.SG.holds(tt.sg, 1e-9) || m.Optic != tt.optic || m.Sign != tt.sign {
			t.Errorf("%s: %s, %s, SG %s, %s %s; want %g, %g, %g, %s %s in it", m.Name, text(m.Low), text(m.High), text(m.SG), m.Optic, m.Sign, tt.low, tt.high, tt.sg, tt.optic, tt.sign)
		}
		if b := tt.high - tt.low; m.Birefringence.Known() && !m.Birefringence.holds(b, 1e-9) {
			t.Errorf("%s: birefringence %s does not hold %.3f", m.Name, text(m.Birefringence), b)
		}
	}
}

// Stones of the tourmaline series, recalled from handbooks: the line from
// elbaite to schorl must pass each of them within its width.
func TestTourmalinesLieOnTheLine(t *testing.T) {
	table := mustLoad(t)
	for _, tt := range []struct {
		name          string
		low, high, sg float64
	}{
		{"elbaite", 1.619, 1.638, 3.04}, {"elbaite", 1.624, 1.644, 3.08}, {"rubellite", 1.623, 1.643, 3.03}, {"paraiba tourmaline", 1.619, 1.639, 3.10},
		{"liddicoatite", 1.621, 1.637, 3.02}, {"dravite", 1.617, 1.640, 3.05}, {"uvite", 1.620, 1.641, 3.05}, {"schorl", 1.637, 1.665, 3.18}, {"schorl", 1.643, 1.672, 3.20},
		{"tourmaline", 1.624, 1.644, 3.06},
	} {
		m := find(t, table, tt.name)
		n := (tt.low + tt.high) / 2
		if d := jointDistance(m, n, tt.sg); len(m.Joint) != 2 || d > m.JointSG {
			t.Errorf("%s at %.4f and %.2f: %d corners, %.3f off the line, more than %g", tt.name, n, tt.sg, len(m.Joint), d, m.JointSG)
		}
		if !m.Low.holds(tt.low, 1e-9) || !m.High.holds(tt.high, 1e-9) || !m.SG.holds(tt.sg, 1e-9) {
			t.Errorf("%s: %s, %s, SG %s do not hold %g, %g, %g", tt.name, text(m.Low), text(m.High), text(m.SG), tt.low, tt.high, tt.sg)
		}
	}
	// Apatite has the index of tourmaline and lies beyond its line.
	if d := jointDistance(find(t, table, "elbaite"), 1.635, 3.19); d <= find(t, table, "elbaite").JointSG {
		t.Errorf("a stone of 1.635 and 3.19 passes for elbaite, %.3f off the line", d)
	}
}

func TestGlassIsMadeAndJadeStandsTheContactLiquid(t *testing.T) {
	table := mustLoad(t)
	for _, name := range []string{"aventurine glass", "cat's-eye glass"} {
		if g := find(t, table, name).Growth; g != Artificial {
			t.Errorf("%s: growth %s; nature makes none", name, g)
		}
	}
	for _, name := range []string{"jadeite", "nephrite", "chalcedony", "agate"} {
		if harm, harmful := table.HarmOf("refractometer", find(t, table, name), false); harmful {
			t.Errorf("%s: the refractometer is its daily test (common practice), got %q", name, harm)
		}
	}
	for _, name := range []string{"turquoise", "opal", "quartzite"} {
		if _, harmful := table.HarmOf("refractometer", find(t, table, name), false); !harmful {
			t.Errorf("%s: porous, and the contact liquid stains it", name)
		}
	}
	if looks := find(t, table, "staurolite").Looks; !slices.Equal(looks, []string{"translucent", "opaque", "transparent"}) {
		t.Errorf("staurolite looks %v; a clear one is rare", looks)
	}
}
