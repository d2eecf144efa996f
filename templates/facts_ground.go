package templates

// Claim is what is said of one of the four claims.
type Claim struct {
	Name   Name
	Growth string // as the file has it
	Given  bool   // an opinion is given

	Treatments []string // named
	NoneSeen   bool     // looked for, none seen
	Stated     bool     // by the owner's word
}

// Because is one reason of a standing.
type Because struct{ Text string }

// Explanation is how the examiner explains what the tests contradict.
type Explanation struct{ Text string }

// Rivals are the materials that the tests do not exclude.
type Rivals struct {
	Names  []string // the nearest ones
	More   int      // how many further ones
	Tested bool
	Named  bool // an opinion names the species
}

// Rival is one of them.
type Rival struct{ Name, Because string }

// Items are things in a row.
type Items struct{ Items []string }
