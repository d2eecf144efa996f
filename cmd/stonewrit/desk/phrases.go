package desk

// phrases are the texts that pages choose by a word: how something stands, what
// was done. The part before the dot is where they are said.
func phrases() map[string]string {
	return map[string]string{
		"tab.list":     "stones",
		"tab.new":      "new stone",
		"tab.register": "register",
		"tab.verify":   "verify",
		"tab.bench":    "bench",
		"tab.help":     "the tests",

		"claim.species":   "species",
		"claim.variety":   "variety",
		"claim.growth":    "growth",
		"claim.treatment": "treatment",

		"show.supported":    "species supported",
		"show.undecided":    "species undecided",
		"show.contradicted": "species contradicted",
		"show.unread":       "files that cannot be read",
		"show.piece":        "pieces",

		"standing.supported":    "supported",
		"standing.undecided":    "undecided",
		"standing.contradicted": "contradicted",
		"standing.unread":       "cannot be read",
		"standing.":             "not judged",

		"verdict.agrees":      "agrees",
		"verdict.conflicts":   "conflicts",
		"verdict.cannot tell": "cannot tell",
		"verdict.":            "not judged",

		"severity.error":   "error",
		"severity.missing": "missing",
		"severity.finding": "finding",
		"severity.warning": "warning",
		"severity.note":    "note",

		"section.item":    "The stone",
		"section.piece":   "The piece",
		"section.made":    "Metal and make",
		"section.stones":  "Its stones",
		"section.look":    "To the eye",
		"section.size":    "Size and weight",
		"section.tests":   "Tests",
		"section.opinion": "Opinion",
		"section.quality": "Description",
		"section.photos":  "Pictures",
		"section.paper":   "For the document",
		"section.worth":   "Worth",
		"section.goods":   "Stock and ownership",

		"notation.lines":      "One a line; none: looked, nothing seen.",
		"notation.edges":      "One turn a line: 1.762 / 1.770",
		"notation.spans":      "One a line: 500 to 610",
		"notation.claims":     "One a line: name, where, few | several | most. none: looked, nothing seen.",
		"notation.pairs":      "One a line, name: text",
		"notation.quantities": "Several with commas.",

		"sign.positive": "positive",
		"sign.negative": "negative",

		"notice.saved":        "Saved.",
		"notice.same":         "Nothing differed from the file; it was not touched.",
		"notice.photo":        "The pictures are stored, and named in the file.",
		"notice.new":          "The file is made. Write what you saw; what it comes to stands beside it.",
		"notice.failed":       "Not saved: some entries could not be written. They are marked below.",
		"notice.changed":      "Not saved: the file was changed elsewhere since this page was opened. Your entries stand in the form below, laid over the file as it is now. Look at both, then save again.",
		"notice.textchanged":  "Not saved: the file was changed elsewhere. Your text is still below; open the stone in another window to see the other one, and take over from there what you need.",
		"notice.issuechanged": "Not issued: the file was changed since this page was opened. This is the file as it is now.",
		"notice.benchchanged": "Not saved: the bench file was changed elsewhere. This is how it is now.",
		"notice.benchfaulty":  "Not saved: with this bench file no stone could be judged. The faults are marked below.",

		"verify.none": "No PDF came with the form.",

		"bench.none":  "There is no bench.yaml in this folder. The command start makes one.",
		"bench.outer": "This bench file lies above the folder of the desk. It counts, and is changed where it lies.",

		"check.valid":    "holds",
		"check.soon":     "holds, due within a week",
		"check.overdue":  "overdue",
		"check.failed":   "failed",
		"check.none":     "no check on record",
		"check.unneeded": "needs none",

		"refused.title":   "Not here",
		"refused.host":    "The desk answers only under the address it was started with.",
		"refused.origin":  "This request did not come from a page of the desk.",
		"refused.token":   "Open the desk with the whole address that the program printed when it was started.",
		"refused.form":    "This form is not one of this desk, or the desk was started anew since. Load the page again.",
		"refused.size":    "Too much was sent at once.",
		"refused.missing": "There is no such stone file in this folder.",
		"refused.yaml":    "The file is not YAML with keys at its top, so a form cannot change it. Change its text.",
		"refused.changed": "The file was changed elsewhere; nothing was written. Load the page again.",
		"refused.broken":  "This went wrong, and nothing was written:",
	}
}

// names are keys of the files that are shown under another name.
func names() map[string]string {
	return map[string]string{
		"/stone":       "reference",
		"/piece":       "reference",
		"/report":      "document",
		"in_liquid":    "in a liquid",
		"in_air_after": "in air afterwards",
	}
}
