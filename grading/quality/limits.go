package quality

// readLimits reads the single figures of laws and standards.
func (g *Grader) readLimits() error {
	g.limits = map[string]float64{}
	return each("limits.csv", func(r *row) {
		name := r.text("name")
		if _, twice := g.limits[name]; twice {
			r.fail("name", "is there twice")
		}
		g.limits[name] = r.number("value", 0, 1e6)
	}, "name", "value", "unit")
}

// limit is a figure of limits.csv. A name that the table lacks is a mistake of
// this package, and a test asks for every name that the code uses.
func (g *Grader) limit(name string) float64 {
	v, ok := g.limits[name]
	if !ok {
		panic("quality: limits.csv has no row " + name)
	}
	return v
}
