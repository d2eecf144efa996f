package stone

// Outline is the shape of a stone seen from above and the style of its cut.
type Outline struct {
	Shape string `yaml:"shape" words:"round|oval|cushion|square|rectangle|cut-corner square|cut-corner rectangle|pear|marquise|heart|triangle|curved triangle|kite|half moon|baguette|tapered baguette|hexagon|octagon|lozenge|shield|drop|bead|irregular" doc:"outline"`
	Cut   string `yaml:"cut" words:"brilliant|old mine|old European|single|princess|radiating cushion|step|mixed|checkerboard|rose|double rose|briolette|cabochon|double cabochon|flat cabochon|bead|faceted bead|carved|tablet|rough" doc:"style of cutting"`
}

// Size is the outline, the cut and the measured dimensions of the stone.
type Size struct {
	Outline
	Length        List[Length]  `yaml:"length" range:"0.1..500" doc:"length, or smallest and largest of stones alike"`
	Width         List[Length]  `yaml:"width" range:"0.1..500" doc:"width, or both widths of a tapered stone"`
	Depth         List[Length]  `yaml:"depth" range:"0.1..500" doc:"depth, table to culet"`
	Diameter      List[Length]  `yaml:"diameter" range:"0.1..500" doc:"diameter, or smallest and largest"`
	Sizes         List[Length]  `yaml:"sizes" range:"0.1..500" doc:"smallest and largest of a strand"`
	Table         Ratio         `yaml:"table" range:"10..100" doc:"table, per cent of the mean girdle diameter or width"`
	CrownAngle    Angle         `yaml:"crown_angle" range:"1..80" doc:"crown angle"`
	CrownHeight   Ratio         `yaml:"crown_height" range:"0.5..60" doc:"crown height"`
	PavilionAngle Angle         `yaml:"pavilion_angle" range:"1..85" doc:"pavilion angle"`
	PavilionDepth Ratio         `yaml:"pavilion_depth" range:"1..120" doc:"pavilion depth"`
	TotalDepth    Ratio         `yaml:"total_depth" range:"2..200" doc:"total depth"`
	Girdle        WordOrPercent `yaml:"girdle" words:"extremely thin|very thin|thin|medium|slightly thick|thick|very thick|extremely thick" doc:"girdle thickness, a word or a per cent"`
	Star          Ratio         `yaml:"star" range:"5..95" doc:"length of the star facets"`
	LowerHalves   Ratio         `yaml:"lower_halves" range:"5..99" doc:"length of the lower half facets"`
	Culet         WordOrPercent `yaml:"culet" words:"none|pointed|very small|small|medium|large|very large" doc:"culet, a word or a per cent"`
	Bulge         string        `yaml:"pavilion_bulge" words:"none|slight|moderate|strong" doc:"bulge of the pavilion"`
	Count         int           `yaml:"count" range:"1..100000" doc:"stones alike, measured together"`
	Instrument    string        `yaml:"instrument" doc:"gauge of the bench file"`
	InSetting     bool          `yaml:"in setting" doc:"measured in the setting"`
	Hidden        List[string]  `yaml:"hidden" words:"length|width|depth|diameter" doc:"dimensions that the setting hides"`
	Facets        int           `yaml:"facets" range:"1..2000" doc:"polished facets counted"`
}

// Given reports whether any dimension stands in the file.
func (s Size) Given() bool {
	return s.Length.Given || s.Width.Given || s.Depth.Given || s.Diameter.Given || s.Sizes.Given
}

// Number is how many stones alike were measured together, at least one.
func (s Size) Number() int { return max(s.Count, 1) }

// WeightOf is what is known of the weight.
type WeightOf struct {
	Measured   Weight `yaml:"measured" range:"0.0001..100000" doc:"weighed here, all stones alike together"`
	Instrument string `yaml:"instrument" doc:"balance of the bench file"`
	When       string `yaml:"when" words:"loose|before setting" doc:"weighed loose, or before it was set"`
	Stated     Weight `yaml:"stated" range:"0.0001..100000" doc:"told or stamped, not weighed here"`
	By         string `yaml:"by" doc:"who or what states it"`
}
