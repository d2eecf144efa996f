package reading

// WaterDensity is the density of air-free water in g/cm3 at t degrees Celsius,
// good from 0 to 40 C. Source: Tanaka et al., Metrologia 38 (2001) 301-309,
// eq. 1; the constants are those printed there.
func WaterDensity(t float64) float64 {
	const (
		a1 = -3.983035
		a2 = 301.797
		a3 = 522528.9
		a4 = 69.34881
		a5 = 0.999974950
	)
	return a5 * (1 - (t+a1)*(t+a1)*(t+a2)/(a3*(t+a4)))
}
