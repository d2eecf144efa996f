package templates

// Drawings are the words of the drawings, the second part of the names of their
// sentences: "drawing.index". What stands in braces in them is filled in by
// whoever draws.
func Drawings() []string {
	return []string{
		"index",
		"gravity",
		"over",
		"above",
		"below",
		"layer",
		"more",
		"unknown",
		"indexcaption",
		"gravitycaption",
		"indexalt",
		"gravityalt",
		"turns",
		"turn",
		"lowest",
		"highest",
		"turnscaption",
		"turnsalt",
		"seen",
		"nolines",
		"published",
		"nonepublished",
		"always",
		"often",
		"sometimes",
		"emission",
		"spectrumcaption",
		"spectrumalt",
		"profile",
		"faceup",
		"scale",
		"assumed",
		"noprofile",
		"makingcaption",
		"makingalt",
	}
}
