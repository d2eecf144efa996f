package gem

import (
	"strings"
	"testing"
)

// TestFaultyRowsAreRefused adds one bad row to a good sheet and expects to be
// told file, line and column.
func TestFaultyRowsAreRefused(t *testing.T) {
	material := func(cells map[string]string) string {
		header := "name,level,parent,class,growth,method,grown_met,grown_as_of,optic,sign,small_axial_angle,strain,low,high,birefringence,sg,hardness,dispersion,joint_shape,joint_sg,thermal,electrical,magnet,filter,cleavage,porous,colours,looks,imitations,note,optics_source,sg_source,source"
		good := map[string]string{
			"name": "exemplite", "level": "species", "class": "mineral", "growth": "natural", "optic": "uniaxial", "sign": "+",
			"low": "1.610..1.620", "high": "1.625..1.635", "birefringence": "0.014..0.018", "sg": "3.00..3.10", "hardness": "7",
			"optics_source": "from memory", "sg_source": "from memory", "source": "from memory",
		}
		var line []string
		for column := range strings.SplitSeq(header, ",") {
			cell, changed := cells[column]
			if !changed {
				cell = good[column]
			}
			line = append(line, cell)
		}
		return strings.Join(line, ",")
	}
	if _, err := load(withRow(t, "materials.csv", material(nil))); err != nil {
		t.Fatalf("the row that the faulty ones are made from is refused: %v", err)
	}
	type cells = map[string]string
	tests := []struct{ sheet, line, says, why string }{
		{"materials.csv", material(cells{"name": "Ruby"}), "name: \"Ruby\" is already there", "a name twice"},
		{"materials.csv", material(cells{"name": ""}), "name: is empty", "no name"},
		{"materials.csv", material(cells{"level": "kind"}), "level: \"kind\" is not known", "unknown level"},
		{"materials.csv", material(cells{"growth": "grown"}), "growth: \"grown\" is not known", "unknown growth"},
		{"materials.csv", material(cells{"parent": "unobtainium"}), "parent: \"unobtainium\" is not in the table", "no such parent"},
		{"materials.csv", material(cells{"parent": "exemplite"}), "parent: a species cannot stand below a species", "its own parent"},
		{"materials.csv", material(cells{"level": "group", "parent": "exemplite"}), "is its own ancestor", "a cycle"},
		{"materials.csv", material(cells{"level": "variety"}), "parent: a variety needs a parent", "variety of nothing"},
		{"materials.csv", material(cells{"level": "counterpart", "parent": "beryl"}), "method: a counterpart needs", "grown, but how?"},
		{"materials.csv", material(cells{"low": "1.620..1.610"}), "low: \"1.620..1.610\": the first number is the higher", "turned round"},
		{"materials.csv", material(cells{"low": "16.10..16.20"}), "low: \"16.10..16.20\" lies outside", "a slip of the decimal point"},
		{"materials.csv", material(cells{"low": "1,61"}), "wrong number of fields", "a decimal comma"},
		{"materials.csv", material(cells{"low": "about 1.61"}), "low: \"about 1.61\" is not a number", "words for a number"},
		{"materials.csv", material(cells{"high": "1.600..1.605"}), "high: the range of the high edge", "edges exchanged"},
		{"materials.csv", material(cells{"high": ""}), "high: the two edges are known together", "half an index"},
		{"materials.csv", material(cells{"optic": "isotropic"}), "high: singly refractive material has one index", "two indices"},
		{"materials.csv", material(cells{"optic": "isotropic", "high": "1.610..1.620"}), "birefringence: singly refractive", "birefringence of a singly refractive stone"},
		{"materials.csv", material(cells{"sg": "31.0"}), "sg: \"31.0\" lies outside", "a slip of the decimal point"},
		{"materials.csv", material(cells{"source": ""}), "source: is empty", "no source"},
		{"materials.csv", material(cells{"sg_source": ""}), "sg_source: is empty", "no source of the specific gravity"},
		{"materials.csv", material(cells{"optics_source": "hearsay"}), "optics_source: \"hearsay\" is neither", "unknown source"},
		{"materials.csv", material(cells{"imitations": "cardboard"}), "imitations: \"cardboard\" is not", "unknown imitation"},
		{"materials.csv", material(cells{"grown_met": "no"}), "grown_as_of: is empty", "a statement without a year"},
		{"names.csv", "sphene,synonym,ruby,,from memory", "name: \"sphene\" is taken", "a synonym twice"},
		{"names.csv", "beryl,synonym,ruby,,from memory", "name: \"beryl\" is taken", "a name as a synonym"},
		{"names.csv", "false beryl,misnomer,glass,,from memory", "reason: is empty", "refused without a reason"},
		{"names.csv", "stone,synonym,sphene,,from memory", "material: \"sphene\" is not the name", "a synonym of a synonym"},
		{"joint.csv", "beryl,end,1.6,2.7,,from memory", "material: beryl has corners but no", "a corner without a width"},
		{"joint.csv", "pyrope,end,,,,from memory", "index: a corner needs", "a corner without figures"},
		{"absorption.csv", "beryl,line,68,,often,,from memory", "nm: \"68\" lies outside", "no visible line"},
		{"absorption.csv", "beryl,stripe,680,,often,,from memory", "kind: \"stripe\" is not known", "unknown kind"},
		{"glow.csv", "beryl,medium,red,often,,from memory", "wave: \"medium\" is not known", "unknown lamp"},
		{"pleochroism.csv", "beryl,,blue;green,weak,from memory", "body: is empty", "of which stones?"},
		{"treatment_use.csv", "beryl,oil,eye,often,from memory", "seen: \"eye\" is not known", "unknown place"},
		{"care.csv", "beryl,no,no,no,no,no,no,,from memory", "material: beryl has a row already", "two rows of care"},
		{"care.csv", "ruby,maybe,no,no,no,no,no,,from memory", "ultrasonic: \"maybe\" is not known", "unknown word"},
		{"varieties.csv", "corundum,colour,red,,from memory", "variety: \"corundum\" is not the name of a variety", "a species needs no rule"},
		{"varieties.csv", "ruby,hue,red,,from memory", "fact: \"hue\" is not known", "unknown fact"},
		{"varieties.csv", "ruby,colour,,,from memory", "allowed: is empty", "nothing fits"},
	}
	for _, tt := range tests {
		_, err := load(withRow(t, tt.sheet, tt.line))
		if err == nil || !strings.Contains(err.Error(), tt.says) || !strings.Contains(err.Error(), "data/"+tt.sheet+":") {
			t.Errorf("%s %q: got %v, want it to say %q: %s", tt.sheet, tt.line, err, tt.says, tt.why)
		}
	}
}

func TestJointNeedsCorners(t *testing.T) {
	const line = "exemplite,species,,mineral,natural,,,,isotropic,,,,1.61..1.62,1.61..1.62,,3.0..3.1,7,,line,0.1,,,,,,,,,,,from memory,from memory,from memory"
	_, err := load(withRow(t, "materials.csv", line))
	if err == nil || !strings.Contains(err.Error(), "exemplite has too few corners for a line") {
		t.Errorf("got %v, want it to say that the line of exemplite has too few corners", err)
	}
}

// TestProblemsNameTheLine: the header is line 1 and remarks count as lines.
func TestProblemsNameTheLine(t *testing.T) {
	s := &sheet{file: "trial.csv", columns: map[string]int{}}
	s.parse("name,n\n# a remark\none,1.5..1.6\ntwo,1.6..1.5\n", []string{"name", "n"})
	for _, r := range s.rows {
		r.span("n", 1, 3)
	}
	const want = `data/trial.csv:4: n: "1.6..1.5": the first number is the higher one`
	if err := s.err(); err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestHeadersAreChecked(t *testing.T) {
	for header, says := range map[string]string{
		"":         "no header",
		"name":     "n: column is missing",
		"name,n,m": "m: unknown column",
		"name,n,n": "n: column is there twice",
	} {
		s := &sheet{file: "trial.csv", columns: map[string]int{}}
		s.parse(header+"\n", []string{"name", "n"})
		if err := s.err(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("header %q: got %v, want it to say %q", header, err, says)
		}
	}
}
