package gem

import "slices"

// Tests returns the words by which HarmOf, HarmToTreated and CautionsFor know
// what is done to a stone: the tests of a stone file, the methods of specific
// gravity apart, the tests that are never suggested, and cleaning and cutting.
func Tests() []string {
	return []string{
		"refractometer", "digital refractive index", "reflectivity", "carbonate flash",
		"polariscope", "dichroscope", "spectroscope", "ultraviolet", "colour filter",
		"specific gravity", "specific gravity: hydrostatic", "specific gravity: liquid", "specific gravity: value",
		"hardness", "thermal conductivity", "electrical conductivity", "magnet", "radioactivity", "diamond screening",
		"magnification", "doubling", "immersion", "pearl drill hole", "surface feel", "strong lamp",
		"infrared spectrum", "Raman spectrum", "laboratory report",
		"hot point", "acid", "heat", "acetone wipe", "alcohol wipe", "ultrasonic", "steam", "cutting",
	}
}

// knownTest returns the word under which the sheets speak of a test. A spot
// reading of the carbonate flash is a use of the refractometer, and specific
// gravity without a method means weighing in water.
func knownTest(test string) (word string, ok bool) {
	switch test {
	case "carbonate flash":
		return "refractometer", true
	case "specific gravity":
		return "specific gravity: hydrostatic", true
	}
	return test, slices.Contains(Tests(), test)
}
