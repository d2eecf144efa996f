package gem

// distance counts the slips of a pen between two folded words: a letter too
// many, one too few, a wrong one, or two neighbours that changed places.
//
// It is the distance of Levenshtein with the exchange of neighbours that
// Damerau added, in its simple form: no letter is touched twice.
// F. J. Damerau, Commun. ACM 7, 171-176 (1964), from memory.
func distance(a, b string) int {
	before := make([]int, len(b)+1) // the row of a[:i-2]
	last := make([]int, len(b)+1)   // the row of a[:i-1]
	this := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		this[0] = i
		for j := 1; j <= len(b); j++ {
			wrong := 1
			if a[i-1] == b[j-1] {
				wrong = 0
			}
			this[j] = min(last[j]+1, this[j-1]+1, last[j-1]+wrong)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				this[j] = min(this[j], before[j-2]+1)
			}
		}
		before, last, this = last, this, before
	}
	return last[len(b)]
}
