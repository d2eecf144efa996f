package grading

import (
	"fmt"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// pieceRows are asked of a piece of jewellery.
func pieceRows() []requirement {
	return []requirement{
		{id: "item-unambiguous", path: "piece", lacks: func(m *matter) bool { return marksOfPiece(m.piece.Piece) < 2 },
			needed: "the piece must be told from any other: two at least of mass, size, marks, inscription, photograph", hint: "add mass: or photos:"},
		{id: "item-layman", path: "description", lacks: func(m *matter) bool { return m.piece.Piece.Description == "" },
			needed: "the document should describe the piece in words by which anybody knows it again", hint: "description: \"yellow metal ring with a green stone between four small ones\""},
		{id: "condition", path: "condition", lacks: func(m *matter) bool { return m.piece.Piece.Condition == "" },
			needed: "the document needs the condition of the piece", hint: "condition: \"claws sound, light wear\""},
		{id: "setting", each: unsaidSettings},
		{id: "maker", path: "history", lacks: func(m *matter) bool { return m.History == nil || m.History.Maker == "" },
			needed: "the document needs the maker, or that he is not determined", hint: "history: {maker: not determined}, or maker: \"…\" with maker_known_by: mark"},
		{id: "ins-mounting", each: func(m *matter) []lack {
			var list []lack
			for i, s := range m.piece.Piece.Stones {
				if s.File == "" && s.Count == 0 {
					list = append(list, lack{fmt.Sprintf("stones[%d]", i), "the stones need their number", "count: 12"})
				}
			}
			return list
		}},
		{id: "item-count", path: "stones", lacks: func(m *matter) bool { return !m.file.Has("stones") },
			needed: "the document needs the stones of the piece, or that there are none", hint: "stones: [{file: hl-0501.yaml, setting: claw}], or none"},
	}
}

// marksOfPiece counts what tells the piece from any other.
func marksOfPiece(p *stone.Piece) int {
	n := 0
	for _, has := range []bool{p.Mass.Gross.Given(), p.Size.Given(), len(p.Marks) > 0, p.Inscription != nil, len(p.Photos) > 0} {
		if has {
			n++
		}
	}
	return n
}

// unsaidSettings tells what is not said of how stones are set and the piece is
// made, and hand work that is claimed without a ground.
func unsaidSettings(m *matter) []lack {
	p := m.piece.Piece
	var list []lack
	for i, s := range p.Stones {
		if s.Setting == "" {
			list = append(list, lack{fmt.Sprintf("stones[%d]", i), "the document needs how the stone is set", "setting: claw"})
		}
	}
	switch c := p.Construction; {
	case c == nil:
		list = append(list, lack{"construction", "the document needs how the piece is made", "construction: {words: \"cast, the head soldered on\"}"})
	case c.ByHand == "" && claimsHandWork(c.Words):
		list = append(list, lack{"construction.words", "work by hand is claimed, and nothing shows it", "by_hand: \"file marks inside the head\", or leave the claim out"})
	}
	return list
}

func claimsHandWork(words string) bool {
	for _, w := range strings.FieldsFunc(strings.ToLower(words), func(r rune) bool { return r < 'a' || r > 'z' }) {
		if strings.HasPrefix(w, "hand") && !strings.HasPrefix(w, "handle") {
			return true
		}
	}
	return false
}

// metalRows are asked of the metals of a piece.
func metalRows() []requirement {
	parts := func(ask func(metal stone.Metal) (needed, hint phrase.Line)) func(m *matter) []lack {
		return func(m *matter) []lack {
			var list []lack
			for i, metal := range m.piece.Piece.Metals {
				if needed, hint := ask(metal); needed != "" {
					list = append(list, lack{fmt.Sprintf("metals[%d]", i), needed, hint})
				}
			}
			return list
		}
	}
	without := func(name string) func(stone.Metal) (needed, hint phrase.Line) {
		return func(m stone.Metal) (needed, hint phrase.Line) {
			if m.Metal == name && m.Fineness == 0 && m.Karat == 0 && m.KnownBy != "undetermined" {
				return phrase.Say("the word %s needs its fineness directly before it", name), "fineness: 750, known_by: mark; or known_by: undetermined"
			}
			return
		}
	}
	return []requirement{
		{id: "metal-fineness", path: "metals", lacks: func(m *matter) bool { return len(m.piece.Piece.Metals) == 0 },
			needed: "the document needs the metal of each part", hint: "metals: [{part: shank and head, metal: gold, colour: yellow, fineness: 750, known_by: mark, plated: none}]"},
		{id: "metal-fineness", each: func(m *matter) []lack {
			var list []lack
			for i, mark := range m.piece.Piece.Marks {
				if mark.How == "" {
					list = append(list, lack{fmt.Sprintf("marks[%d]", i), phrase.Say("the mark %s needs whether it is struck, only read or was tested", mark.Text), "how: struck"})
				}
			}
			return list
		}},
		{id: "metal-fineness", path: "marks", lacks: func(m *matter) bool { return !m.file.Has("marks") },
			needed: "the document needs the marks, or that there are none", hint: "marks: [{text: \"750\", where: shank, how: struck}], or none"},
		{id: "metal-mass", path: "mass", lacks: func(m *matter) bool { return !m.piece.Piece.Mass.Gross.Given() },
			needed: "the document needs the mass of the piece with its stones", hint: "mass: {gross: 4.53 g, instrument: balance-1}"},
		{id: "gold-word", each: parts(without("gold"))},
		{id: "silver-word", each: parts(without("silver"))},
		{id: "platinum", each: parts(without("platinum"))},
		{id: "platinum", each: parts(func(m stone.Metal) (needed, hint phrase.Line) {
			if m.Metal == "platinum" && m.Fineness > 0 && m.Fineness < 850 && len(m.Alloy) == 0 {
				return "platinum below 850 needs the other metals of its alloy by name", "alloy: [{metal: iridium, fineness: 200}]"
			}
			return
		})},
		{id: "gold-coated", each: parts(func(m stone.Metal) (needed, hint phrase.Line) {
			if m.Plated == nil && slices.Contains(stone.PreciousMetals(), m.Metal) {
				return phrase.Say("the document needs whether the %s has a layer of another metal", phrase.Word(m.Metal)), "plated: none, or rhodium"
			}
			return
		})},
		{id: "acid-touch", each: parts(func(m stone.Metal) (needed, hint phrase.Line) {
			if m.Defaces() && m.Consent == "" {
				return phrase.Say("a test by %s marks the metal, and nobody is named who agreed to it", phrase.Word(m.KnownBy)), "consent: \"client, 2026-10-14\""
			}
			return
		})},
		{id: "vermeil", each: falseVermeil},
		{id: "no-minus", each: shortfall("ISO 9202")},
		{id: "us-tolerance", each: shortfall("15 USC 295")},
	}
}
