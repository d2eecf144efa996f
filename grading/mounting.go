package grading

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quality"
	"stonewrit/grading/stone"
)

// A PartMetal is the metal of one part of a piece, with its name.
type PartMetal struct {
	stone.Metal
	Place     int         // in the list of the file, from 0
	Name      phrase.Line // fineness directly before the word, layers told
	Listed    bool        // the fineness is a recommended class of ISO 9202
	Classes   []int       // the recommended classes of the metal, per mille
	Judged    []quality.Judgement
	Exempted  bool // a working part that an assay in the United States leaves out
	NoVermeil []phrase.Line
}

// metals names the metals of a piece, by falling mass where every part's mass is
// known (16 CFR 23.7-23.8, from memory).
func (t *Tables) metals(p *stone.Piece) (list []PartMetal, byMass bool) {
	var metals []PartMetal
	for i, m := range p.Metals {
		metals = append(metals, PartMetal{Metal: m, Place: i})
	}
	byMass = !slices.ContainsFunc(metals, func(m PartMetal) bool { return !m.Mass.Given() })
	if byMass {
		slices.SortStableFunc(metals, func(a, b PartMetal) int { return cmp.Compare(b.Mass.Grams, a.Mass.Grams) })
	}
	for _, part := range metals {
		m := part.Metal
		part.Name, part.Classes = t.Quality.MetalLine(metalOf(m)), t.Quality.Classes(m.Metal)
		part.Listed = t.Quality.Listed(m.Metal, m.Fineness)
		part.Exempted = m.Exempt != ""
		if m.Measured.Given() && m.Fineness > 0 {
			part.Judged = t.Quality.JudgeFineness(m.Metal, float64(m.Fineness), m.Measured.Float(), quality.PartWithoutSolder)
		}
		if l := m.Plated; l != nil && l.Metal == "gold" && m.Metal == "silver" {
			part.NoVermeil = t.Quality.NoVermeil(metalOf(m), float64(t.Quality.KaratOf(float64(l.Fineness))), l.Depth.Float())
		}
		list = append(list, part)
	}
	return list, byMass
}

// metalOf is a part's metal as the rules of naming take it.
func metalOf(m stone.Metal) quality.Metal {
	q := quality.Metal{Name: m.Metal, Colour: m.Colour, Karat: float64(m.Karat), PerMille: float64(m.Fineness), Grams: m.Mass.Grams}
	if m.Plated != nil && !m.Plated.None {
		q.Plated = m.Plated.Metal
	}
	var others []phrase.Line
	for _, a := range m.Alloy {
		others = append(others, phrase.Say("%d %s", a.Fineness, phrase.Word(a.Metal)))
	}
	q.Alloy = phrase.Commas(others...)
	return q
}

// Mass is the mass of a piece in gram.
type Mass struct {
	Gross, Net float64 // 0 for not known
	Stones     float64 // of all stones, at 0.2 g a carat
	AllStones  bool    // the weight of every stone is known
	Reckoned   bool    // the net mass is worked out here, not written
}

// massOf gathers the masses. A net mass that nobody wrote is the gross mass less
// the stones, where every stone's weight is known.
func massOf(e *ExaminedPiece) Mass {
	m := Mass{Gross: e.Piece.Mass.Gross.Grams, Net: e.Piece.Mass.Net.Grams, AllStones: true}
	for _, i := range e.Items {
		var carats float64
		if _, err := fmt.Sscan(i.Carats, &carats); err != nil {
			m.AllStones = false
			continue
		}
		m.Stones += carats / 5 // one carat is 0.2 g
	}
	if m.Net == 0 && m.Gross > 0 && m.AllStones {
		m.Net, m.Reckoned = m.Gross-m.Stones, true
	}
	return m
}

// massFindings tells where gross, net and stones do not fit one another.
func (e *ExaminedPiece) massFindings(apart float64) stone.Problems {
	m := e.Mass
	if m.Gross == 0 || !m.AllStones || m.Reckoned {
		return nil
	}
	u := 0.0
	for _, i := range e.Items {
		if w := i.Stone.Weight; i.Basis == Estimated && w.Estimate != nil {
			u = math.Hypot(u, w.Estimate.Chosen.Carats.U/5)
		}
	}
	if gap := m.Gross - m.Net - m.Stones; math.Abs(gap) > apart+2*u {
		p := e.Piece.Problem(stone.Finding, "mass.net", phrase.Say("%s gross less %s net leaves %.2f g for the stones, and they weigh %.2f g", phrase.Figure(e.Piece.Mass.Gross.String()), phrase.Figure(e.Piece.Mass.Net.String()), m.Gross-m.Net, m.Stones), "mend a mass, or say under how what else was taken off")
		p.Statement = "metal-mass"
		return stone.Problems{p}
	}
	return nil
}

// falseVermeil finds the word vermeil where no part is.
func falseVermeil(m *matter) []lack {
	p := m.piece.Piece
	for _, t := range textsOf(p) {
		if !strings.Contains(strings.ToLower(t.words), "vermeil") {
			continue
		}
		reasons := []phrase.Line{"no part is silver with a layer of gold"}
		for _, part := range m.piece.Metals {
			if l := part.Plated; l != nil && l.Metal == "gold" && part.Metal.Metal == "silver" {
				if reasons = part.NoVermeil; len(reasons) == 0 {
					return nil
				}
			}
		}
		return []lack{{t.path, phrase.Say("this is no vermeil (16 CFR 23.4(b)): %s", phrase.Semicolons(reasons...)), "say gold-plated silver"}}
	}
	return nil
}

// shortfall finds metal whose measured fineness lies below its mark by more
// than a law allows.
func shortfall(law string) func(m *matter) []lack {
	return func(m *matter) []lack {
		var list []lack
		for _, part := range m.piece.Metals {
			for _, j := range part.Judged {
				if j.Law == law && !j.Holds {
					list = append(list, lack{fmt.Sprintf("metals[%d].measured", part.Place), phrase.Say("%s is below %g, the least that %s allows under %d", phrase.Figure(part.Measured.String()), j.Lowest, law, part.Fineness), "write the fineness that holds, and tell the mark under marks:"})
				}
			}
		}
		return list
	}
}

// A pieceText is words of a piece file that are printed.
type pieceText struct{ path, words string }

func textsOf(p *stone.Piece) []pieceText {
	list := []pieceText{{"description", p.Description}, {"condition", p.Condition}}
	if p.Construction != nil {
		list = append(list, pieceText{"construction.words", p.Construction.Words})
	}
	if p.History != nil {
		list = append(list, pieceText{"history.style", p.History.Style})
	}
	for i, m := range p.Metals {
		list = append(list, pieceText{fmt.Sprintf("metals[%d].note", i), m.Note})
	}
	for i, s := range p.Stones {
		list = append(list, pieceText{fmt.Sprintf("stones[%d].note", i), s.Note})
	}
	for i, photo := range p.Photos {
		list = append(list, pieceText{fmt.Sprintf("photos[%d].caption", i), photo.Caption})
	}
	if p.Worth != nil {
		for i, l := range p.Worth.Lines {
			list = append(list, pieceText{fmt.Sprintf("worth.lines[%d].what", i), l.What})
		}
	}
	return list
}

// refused finds words that may not stand in the document of a piece: about its
// metals, about its stones by the names they need, and about any stone.
func (t *Tables) refused(e *ExaminedPiece) stone.Problems {
	var list stone.Problems
	for _, text := range textsOf(e.Piece) {
		for _, w := range t.wordsRefused(e, text.words) {
			severity, message := stone.Finding, phrase.Line("%q may not be said of this piece (%s)")
			if w.Advice {
				severity, message = stone.Warning, "%q is better not said of this piece (%s)"
			}
			p := e.Piece.Problem(severity, text.path, phrase.Say(message, w.Word, w.Clause), phrase.Say("write: %s", w.Proper))
			p.Statement = w.Statement
			list = append(list, p)
		}
	}
	return list
}

func (t *Tables) wordsRefused(e *ExaminedPiece, words string) []quality.Refusal {
	found := t.Quality.Refused(words, quality.Context{Clean: quality.NotMagnified})
	for _, i := range e.Items {
		for _, r := range t.Quality.Refused(words, t.Quality.ContextOf(i.Stone.Stone)) {
			if namesStone(r.Statement) {
				found = append(found, r)
			}
		}
	}
	found = append(found, t.metalWords(e.Metals, words)...)
	var once []quality.Refusal
	told := map[string]bool{}
	for _, r := range found {
		if !told[r.Word] {
			once = append(once, r)
		}
		told[r.Word] = true
	}
	return once
}

// namesStone reports whether a refusal is about a stone's name: other words may
// be about another stone of the piece.
func namesStone(statement string) bool {
	switch statement {
	case "lab-prefix", "imitation-prefix", "composite-filler", "pearl-bare", "pearl-cultured", "pearl-imitation", "pearl-qualifier", "diamond-iso", "diamond-ftc", "stone-name-mined":
		return true
	}
	return false
}

// metalWords are the words refused for a metal of the piece. A word of silver's
// fineness is allowed if any part has it.
func (t *Tables) metalWords(metals []PartMetal, words string) []quality.Refusal {
	var found []quality.Refusal
	refusals := map[string]int{}
	for _, m := range metals {
		for _, r := range t.Quality.RefusedMetal(words, metalOf(m.Metal)) {
			refusals[r.Word]++
			if refusals[r.Word] == 1 {
				found = append(found, r)
			}
		}
	}
	var kept []quality.Refusal
	for _, r := range found {
		bare := r.Word == "gold" || r.Word == "silver" || r.Word == "platinum"
		if bare || refusals[r.Word] == len(metals) {
			kept = append(kept, r)
		}
	}
	return kept
}
