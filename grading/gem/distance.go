package gem

// nearness counts the slips of a pen between a folded word and a known one: a
// letter too many, one too few, a wrong one, or two neighbours that changed
// places. ok is false, and the count 0, beyond a third of the known word's
// letters.
//
// It is the distance of Levenshtein with the exchange of neighbours that
// Damerau added, in its simple form: no letter is touched twice.
// F. J. Damerau, Commun. ACM 7, 171-176 (1964), from memory.
func nearness(word, known string) (slips int, ok bool) {
	most := len(known) / 3
	if len(word)-len(known) > most || len(known)-len(word) > most {
		return 0, false // spares the work: every letter more or less is a slip
	}
	if slips = distance(word, known, most); slips > most {
		return 0, false
	}
	return slips, true
}

// distance is the count of slips between two folded words; it gives up, with a
// count above most, once there are more than that.
func distance(a, b string, most int) int {
	var room [3][64]int
	before, last, this := room[0][:], room[1][:], room[2][:] // the rows of a[:i-2], a[:i-1] and a[:i]
	if len(b)+1 > len(this) {
		before, last, this = make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	}
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		this[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			wrong := 1
			if a[i-1] == b[j-1] {
				wrong = 0
			}
			d := min(last[j]+1, this[j-1]+1, last[j-1]+wrong)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, before[j-2]+1)
			}
			this[j] = d
			least = min(least, d)
		}
		if least > most+1 { // an exchange may still come back by one
			return most + 1
		}
		before, last, this = last, this, before
	}
	return last[len(b)]
}
