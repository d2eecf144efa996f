package weight

import "stonewrit/grading/phrase"

// A wordKey names a row of the table of words: "girdle" or "bulge", and the
// word; the empty word is "not recorded".
type wordKey struct{ kind, word string }

// readWords reads what the words for girdle and bulge come to: per cent of the
// width for a girdle, per cent of the volume for a bulge.
func readWords(src []byte) (map[wordKey]Measure, error) {
	words := map[wordKey]Measure{}
	err := eachRow("words.csv", src, func(r *record) {
		key := wordKey{r.text("kind"), r.text("word")}
		if _, twice := words[key]; twice {
			r.fail("word", "given twice")
		}
		words[key] = Measure{r.number("value", 0, 20), r.number("u", 0, 5)}
	})
	return words, err
}

// girdle is the girdle thickness in per cent: measured, from its word, or the
// usual one where neither is recorded. An unknown word counts as not recorded.
func (e *Estimator) girdle(d Dimensions) Measure {
	if d.GirdlePercent.Given() {
		return d.GirdlePercent
	}
	return e.word("girdle", d.Girdle, d.AsDiamond)
}

// bulge is what a bulged pavilion adds to the volume, as a share of it.
func (e *Estimator) bulge(d Dimensions) Measure {
	m := e.word("bulge", d.Bulge, d.AsDiamond)
	return Measure{m.Value / 100, m.U / 100}
}

func (e *Estimator) word(kind, word string, asDiamond bool) Measure {
	if m, ok := e.words[wordKey{kind, word}]; ok && word != "" {
		return m
	}
	if asDiamond {
		return e.words[wordKey{kind + " diamond", ""}]
	}
	return e.words[wordKey{kind, ""}]
}

// unknownWords reports words for girdle and bulge that the table does not hold.
func (e *Estimator) unknownWords(d Dimensions) []phrase.Line {
	var out []phrase.Line
	for _, w := range []wordKey{{"girdle", d.Girdle}, {"bulge", d.Bulge}} {
		if _, ok := e.words[w]; !ok && w.word != "" {
			out = append(out, phrase.Say("%s %q is not in the table of words; taken as not recorded", phrase.Word(w.kind), w.word))
		}
	}
	return out
}
