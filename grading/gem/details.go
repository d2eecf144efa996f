package gem

import "io/fs"

// owner returns the material that a row of a detail sheet belongs to, or nil
// after noting that the table has no such name.
func (t *Table) owner(r row) *Material {
	name := r.must("material")
	m := t.byName[fold(name)]
	if m == nil || m.Name != name {
		r.fail("material", "%q is not the name of a material", name)
		return nil
	}
	return m
}

func (t *Table) readJoints(fsys fs.FS) error {
	s := openSheet(fsys, "joint.csv", "material", "corner", "index", "sg", "birefringence", "source")
	for _, r := range s.rows {
		if m := t.owner(r); m != nil {
			c := Corner{Name: r.must("corner"), Index: r.number("index"), SG: r.number("sg"), Birefringence: r.span("birefringence", 0, 1), Source: r.source("source")}
			if c.Index < 1.2 || c.SG < 0.8 {
				r.fail("index", "a corner needs an index and a specific gravity")
			}
			if m.JointShape == "" || m.JointSG <= 0 {
				r.fail("material", "%s has corners but no joint_shape or joint_sg in materials.csv", m.Name)
			}
			m.Joint = append(m.Joint, c)
		}
	}
	for _, m := range t.materials {
		if m.JointShape != "" && (len(m.Joint) < 2 || m.JointShape == "hull" && len(m.Joint) < 3) {
			s.fail(1, "material", "%s has too few corners for a %s", m.Name, m.JointShape)
		}
	}
	return s.err()
}

func (t *Table) readAbsorption(fsys fs.FS) error {
	s := openSheet(fsys, "absorption.csv", "material", "kind", "nm", "cause", "frequency", "colours", "source")
	for _, r := range s.rows {
		if m := t.owner(r); m != nil {
			nm := r.span("nm", 300, 800)
			if !nm.Known() {
				r.fail("nm", "is empty")
			}
			m.Absorption = append(m.Absorption, Absorption{
				Kind: r.word("kind", "line", "band", "cutoff", "emission"),
				From: nm.Min, To: nm.Max, Cause: r.text("cause"), Frequency: r.frequency("frequency"),
				Colours: r.list("colours"), Source: r.source("source"),
			})
		}
	}
	return s.err()
}

func (t *Table) readGlow(fsys fs.FS) error {
	s := openSheet(fsys, "glow.csv", "material", "wave", "colours", "frequency", "cause", "source")
	for _, r := range s.rows {
		if m := t.owner(r); m != nil {
			m.Glow = append(m.Glow, Glow{
				Wave: r.word("wave", "long", "short"), Colours: r.list("colours"),
				Frequency: r.frequency("frequency"), Cause: r.text("cause"), Source: r.source("source"),
			})
		}
	}
	return s.err()
}

func (t *Table) readPleochroism(fsys fs.FS) error {
	s := openSheet(fsys, "pleochroism.csv", "material", "body", "colours", "strength", "source")
	for _, r := range s.rows {
		if m := t.owner(r); m != nil {
			m.Pleochroism = append(m.Pleochroism, Pleochroism{
				Body: r.must("body"), Colours: r.list("colours"),
				Strength: r.word("strength", "weak", "distinct", "strong"), Source: r.source("source"),
			})
		}
	}
	return s.err()
}

func (t *Table) readTreatmentUse(fsys fs.FS) error {
	s := openSheet(fsys, "treatment_use.csv", "material", "treatment", "seen", "customary", "source")
	for _, r := range s.rows {
		if m := t.owner(r); m != nil {
			m.Treatments = append(m.Treatments, TreatmentUse{
				Treatment: r.must("treatment"), Seen: r.word("seen", "bench", "laboratory", "nowhere"),
				Customary: Frequency(r.word("customary", "always", "often", "sometimes")), Source: r.source("source"),
			})
		}
	}
	return s.err()
}

func (t *Table) readCare(fsys fs.FS) error {
	s := openSheet(fsys, "care.csv", "material", "ultrasonic", "steam", "heat", "solvents", "light", "knocks", "note", "source")
	for _, r := range s.rows {
		if m := t.owner(r); m != nil {
			if m.Care != (Care{}) {
				r.fail("material", "%s has a row already", m.Name)
			}
			care := func(column string) string { return r.word(column, "yes", "no", "care") }
			m.Care = Care{
				Ultrasonic: care("ultrasonic"), Steam: care("steam"), Heat: care("heat"), Solvents: care("solvents"),
				Light: care("light"), Knocks: care("knocks"), Note: r.text("note"), Source: r.source("source"),
			}
		}
	}
	return s.err()
}

func (t *Table) readRules(fsys fs.FS) error {
	s := openSheet(fsys, "varieties.csv", "variety", "fact", "allowed", "convention", "source")
	t.rules = map[string][]Rule{}
	for _, r := range s.rows {
		name := r.must("variety")
		if m := t.byName[fold(name)]; m == nil || m.Name != name || m.Level == Group || m.Level == Species {
			r.fail("variety", "%q is not the name of a variety", name)
			continue
		}
		rule := Rule{
			Variety: name, Fact: r.word("fact", "colour", "colour change", "phenomenon", "absorption", "transparency", "feature"),
			Allowed: r.list("allowed"), Convention: r.text("convention"), Source: r.source("source"),
		}
		if len(rule.Allowed) == 0 {
			r.fail("allowed", "is empty")
		}
		t.rules[name] = append(t.rules[name], rule)
	}
	return s.err()
}

func (r row) frequency(column string) Frequency {
	return Frequency(r.word(column, "always", "often", "sometimes", "never"))
}
