package stone

// Quality is the grading and description, what applies of it.
type Quality struct {
	Colour     *ColourGrade      `yaml:"colour" doc:"colour of a coloured stone"`
	Diamond    *DiamondGrade     `yaml:"diamond" doc:"grades of a diamond"`
	Pearl      *PearlGrade       `yaml:"pearl" doc:"grades of pearls"`
	Opal       *OpalGrade        `yaml:"opal" doc:"description of an opal"`
	Star       *StarGrade        `yaml:"star" doc:"description of a star"`
	Clarity    string            `yaml:"clarity" words:"nothing seen at 10x|visible at 10x|visible to the eye|prominent" doc:"clarity in plain words"`
	Cut        *CutGrade         `yaml:"cut" doc:"how the cut performs"`
	NotGraded  map[string]string `yaml:"not_graded" doc:"colour, clarity or cut with the reason why it was not graded"`
	Phenomenon string            `yaml:"phenomenon" doc:"phenomenon as described"`
	Condition  string            `yaml:"condition" doc:"wear and damage"`
	Words      string            `yaml:"description" doc:"anything else a reader needs to know it again"`
}

// ColourGrade is a colour in an open notation and in words.
type ColourGrade struct {
	Munsell string            `yaml:"munsell" doc:"Munsell notation, ASTM D1535"`
	Words   string            `yaml:"words" doc:"plain colour name"`
	Light   string            `yaml:"light" doc:"light it was judged in"`
	Zoning  string            `yaml:"zoning" words:"none|slight|distinct|strong" doc:"unevenness"`
	Change  map[string]string `yaml:"change" doc:"colour by light"`
}

// DiamondGrade holds the grades of a diamond and the system they belong to.
type DiamondGrade struct {
	System       string       `yaml:"system" doc:"the grading system"`
	ComparedWith string       `yaml:"compared_with" doc:"what the colour was compared with"`
	Colour       string       `yaml:"colour" doc:"D to Z, or a range: F to H"`
	Clarity      string       `yaml:"clarity" doc:"FL, IF, VVS1 ... I3, or a range"`
	Fluorescence string       `yaml:"fluorescence" doc:"none, weak, medium, strong, with a colour"`
	Polish       string       `yaml:"polish" words:"excellent|very good|good|fair|poor" doc:"polish"`
	Symmetry     string       `yaml:"symmetry" words:"excellent|very good|good|fair|poor" doc:"symmetry"`
	Cut          string       `yaml:"cut" words:"excellent|very good|good|fair|poor" doc:"cut"`
	Culet        string       `yaml:"culet" doc:"culet"`
	Girdle       List[string] `yaml:"girdle" words:"extremely thin|very thin|thin|medium|slightly thick|thick|very thick|extremely thick" doc:"girdle, or its thinnest and thickest"`
}

// PearlGrade describes pearls.
type PearlGrade struct {
	Shape    string       `yaml:"shape" words:"round|near round|oval|button|drop|semi-baroque|baroque|circled|half" doc:"shape"`
	Colour   string       `yaml:"colour" doc:"body colour"`
	Lustre   string       `yaml:"lustre" words:"very high|high|medium|soft|dull" doc:"lustre"`
	Surface  string       `yaml:"surface" words:"clean|light marks|moderate marks|heavy marks" doc:"surface"`
	Nacre    *Nacre       `yaml:"nacre" doc:"nacre and how it was judged"`
	Overtone string       `yaml:"overtone" doc:"overtone"`
	Matching string       `yaml:"matching" words:"excellent|good|fair|poor" doc:"matching of a strand"`
	Drilled  string       `yaml:"drilled" words:"through|half|undrilled" doc:"drilling"`
	Sizes    List[Length] `yaml:"sizes" range:"0.1..100" doc:"smallest and largest"`
	Count    int          `yaml:"count" range:"1..10000" doc:"number of pearls"`
	Length   string       `yaml:"length" doc:"length of a strand, with its unit"`
}

// Nacre is how thick the nacre is and by what it is known.
type Nacre struct {
	Words  string `yaml:"words" words:"very thick|thick|medium|thin|very thin" doc:"thickness in words"`
	Method string `yaml:"method" need:"yes" doc:"how it was judged: drill hole, ..."`
}

// OpalGrade describes an opal.
type OpalGrade struct {
	Body    string       `yaml:"body" words:"black|dark|grey|white|crystal|fire|boulder" doc:"body"`
	Play    string       `yaml:"play" words:"none|pinfire|small|broad|patchwork|rolling" doc:"pattern of the play of colour"`
	Colours List[string] `yaml:"colours" doc:"colours of the play"`
	Base    string       `yaml:"base" words:"solid|on matrix|doublet|triplet" doc:"what it stands on"`
}

// StarGrade describes a star.
type StarGrade struct {
	Rays      int    `yaml:"rays" range:"4..24" doc:"rays"`
	Sharpness string `yaml:"sharpness" words:"sharp|medium|diffuse" doc:"sharpness"`
	Centred   *bool  `yaml:"centred" doc:"centred on the dome"`
}

// CutGrade is how the cut performs, in areas of the face.
type CutGrade struct {
	Window      Ratio  `yaml:"window" range:"0..100" doc:"part of the face one can read through"`
	Extinction  Ratio  `yaml:"extinction" range:"0..100" doc:"part of the face that stays dark"`
	Proportions string `yaml:"proportions" words:"excellent|very good|good|fair|poor" doc:"proportions"`
	Finish      string `yaml:"finish" words:"excellent|very good|good|fair|poor" doc:"finish"`
	Symmetry    string `yaml:"symmetry" words:"excellent|very good|good|fair|poor" doc:"symmetry"`
}
