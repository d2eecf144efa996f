package stone

// SetStone is a stone of a piece: one with a file of its own, or small ones
// alike that are counted together.
type SetStone struct {
	File string `yaml:"file" doc:"stone file, below the folder of the piece file"`

	What       string               `yaml:"what" doc:"species or variety of stones counted together"`
	Growth     string               `yaml:"growth" words:"natural|cultured|laboratory-grown|artificial|composite|undetermined|imitation" doc:"how they came to be"`
	Imitates   string               `yaml:"imitates" doc:"what they are sold or worn as"`
	Treatments List[TreatmentClaim] `yaml:"treatments" doc:"treatments seen; [] for none seen; leave out for not examined"`
	KnownBy    string               `yaml:"known_by" doc:"what the name rests on: all twelve by a thermal tester"`
	Count      int                  `yaml:"count" range:"1..100000" doc:"how many"`
	Outline
	Length    List[Length]  `yaml:"length" range:"0.1..500" doc:"length, or smallest and largest"`
	Width     List[Length]  `yaml:"width" range:"0.1..500" doc:"width, or smallest and largest"`
	Diameter  List[Length]  `yaml:"diameter" range:"0.1..500" doc:"diameter, or smallest and largest"`
	Depth     List[Length]  `yaml:"depth" range:"0.1..500" doc:"depth, or smallest and largest"`
	Girdle    WordOrPercent `yaml:"girdle" words:"extremely thin|very thin|thin|medium|slightly thick|thick|very thick|extremely thick" doc:"girdle thickness, a word or a per cent"`
	Hidden    List[string]  `yaml:"hidden" words:"length|width|depth|diameter" doc:"dimensions that the setting hides"`
	Weight    WeightOf      `yaml:"weight" doc:"weight of all of them, measured before setting or stated"`
	Colour    string        `yaml:"colour" doc:"colour in words, or a range of grades: F to H"`
	Clarity   string        `yaml:"clarity" doc:"clarity in words, or a range of grades: VS1 to SI1"`
	System    string        `yaml:"system" doc:"the grading system, where colour or clarity are grades"`
	Condition string        `yaml:"condition" doc:"wear and damage of these stones, if not told of the piece"`

	Setting string `yaml:"setting" words:"claw|bezel|half bezel|grain|channel|bar|flush|tension|peg|strung|glued|closed back|other" doc:"how it is set"`
	Place   string `yaml:"place" doc:"where in the piece: centre, shoulders"`
	Note    string `yaml:"note" doc:"printed"`
}

// Number is how many stones the entry stands for, at least one.
func (s SetStone) Number() int { return max(s.Count, 1) }

// Record is the entry as a stone file would have it: what a stone in its
// setting is and measures, without any test.
func (s SetStone) Record() *Stone {
	basis := ""
	if s.KnownBy == "" {
		basis = "stated"
	}
	r := &Stone{Mounted: true}
	r.Opinion = Opinion{Species: s.What, Growth: s.Growth, Imitates: s.Imitates, Treatments: s.Treatments, Basis: basis}
	r.Size = Size{
		Outline: s.Outline, Length: s.Length, Width: s.Width, Diameter: s.Diameter, Depth: s.Depth,
		Girdle: s.Girdle, Count: s.Count, Hidden: s.Hidden, InSetting: true,
	}
	r.Weight = s.Weight
	return r
}
