package desk

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

// unplaced is the section for keys that none of them names, so that a key new
// to the records is on the page before anybody thinks of its place.
const unplaced = "paper"

// formatKey is the one key that no form shows: the version of the format.
const formatKey = "stonewrit"
