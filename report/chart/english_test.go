package chart

// English is the wording of the drawings in the tests of this package.
func English() Words {
	return Words{
		Index:   "Refractive index",
		Gravity: "Specific gravity",
		Over:    "over {figure}",
		Above:   "above {figure}",
		Below:   "below {figure}",
		Layer:   "{material}, {part}",
		More:    "and {count} more",
		Unknown: "not in the table: {names}",

		IndexCaption: "Refractive index of this stone (ticks) with its expanded uncertainty (brackets, k = 2), over the published " +
			"ranges of what it is said to be and of the materials that the tests leave open. Of two lines the upper is the range of the lower index.",
		GravityCaption: "Specific gravity of this stone (tick) with its expanded uncertainty (bracket, k = 2), over published ranges.",
		IndexAlt:       "Ruler of the refractive index. This stone: {stone}. Published: {ranges}.",
		GravityAlt:     "Ruler of the specific gravity. This stone: {stone}. Published: {ranges}.",

		Turns:        "Refractive index, turn by turn",
		Turn:         "turn",
		Lowest:       "lowest {figure}",
		Highest:      "highest {figure}",
		TurnsCaption: "The edges on the refractometer as the stone was turned, with the offset of the check taken off: discs the lower edge, rings the upper one.",
		TurnsAlt:     "{count} turns on the refractometer, lowest edge {low}, highest edge {high}.",

		Seen:            "seen in this stone",
		NoLines:         "looked at, no line was seen in this stone",
		Published:       "published for {name}",
		NonePublished:   "none published for {name}",
		Always:          "always there",
		Often:           "often",
		Sometimes:       "sometimes",
		Emission:        "bright line",
		SpectrumCaption: "Absorption spectrum in nanometres. Lines that are published and were not seen prove nothing.",
		SpectrumAlt:     "Spectrum. Seen: {seen}. Published for {name}: {published}.",

		Profile:       "profile",
		FaceUp:        "face up",
		Scale:         "scale {scale}, millimetres",
		Assumed:       "dashed: usual proportions, not measured",
		NoProfile:     "depth {figure}, profile not drawn",
		MakingCaption: "Making drawing. Figures are as measured.",
		MakingAlt:     "Making drawing, face up and in profile, of a stone of {figures} mm.",
	}
}
