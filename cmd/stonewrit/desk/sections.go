package desk

import "stonewrit/grading/stone"

// section is one part of the page of a stone.
type section struct {
	name string   // of its text, and where links lead
	keys []string // of the stone file
	seld bool     // seldom filled in: closed until it holds something
}

// sections is the order of the bench: whose stone, what it looks like, its size
// and weight, the tests, and only then what the examiner says it is.
func sections() []section {
	return []section{
		{"item", []string{"stone", "report", "received", "examined", "examiner", "client", "location", "mounted", "prepared", "inscription", "marks"}, false},
		{"look", []string{"appearance"}, false},
		{"size", []string{"size", "weight"}, false},
		{"tests", []string{"tests"}, false},
		{"opinion", []string{"opinion", "origin"}, false},
		{"quality", []string{"quality"}, false},
		{"photos", []string{"photos"}, false},
		{"paper", []string{"authorised_by", "short_form", "place", "explanation", "use", "scope", "interest", "assumptions", "hypothetical", "history", "standards", "spoken", "court", "oath", "gift"}, true},
		{"worth", []string{"worth"}, true},
		{"goods", []string{"stock", "sold_by_issuer", "owned", "insured", "valued"}, true},
	}
}

// pieceSections is the order for a piece of jewellery: whose it is, what it is
// made of and holds, and only then what it is worth.
func pieceSections() []section {
	return []section{
		{"piece", []string{"piece", "kind", "report", "received", "examined", "examiner", "client", "location", "prepared"}, false},
		{"made", []string{"metals", "marks", "mass", "size", "construction", "condition", "description", "inscription"}, false},
		{"stones", []string{"stones"}, false},
		{"photos", []string{"photos"}, false},
		{"paper", []string{"authorised_by", "short_form", "place", "explanation", "use", "scope", "interest", "assumptions", "hypothetical", "history", "standards", "spoken", "court", "oath", "gift"}, true},
		{"worth", []string{"worth"}, true},
		{"goods", []string{"stock", "sold_by_issuer", "owned", "insured", "valued"}, true},
	}
}

// sectionsOf are the parts of the page of a sort of file.
func sectionsOf(sort string) []section {
	if sort == stone.SortPiece {
		return pieceSections()
	}
	return sections()
}

// unplaced is the section for keys that none of them names, so that a key new
// to the records is on the page before anybody thinks of its place.
const unplaced = "paper"

// formatKey is the one key that no form shows: the version of the format.
const formatKey = "stonewrit"
