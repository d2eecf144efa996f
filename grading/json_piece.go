package grading

import (
	"encoding/json"
	"stonewrit/grading/phrase"

	"stonewrit/grading/stone"
)

// The types below are the object of a piece, one a line beside those of stones.

type jsonPiece struct {
	File     string          `json:"file"`
	Piece    string          `json:"piece,omitempty"`
	Kind     string          `json:"kind,omitempty"`
	Items    []jsonItem      `json:"items,omitempty"`
	Totals   []jsonTotal     `json:"totals,omitempty"`
	Metals   []jsonMetal     `json:"metals,omitempty"`
	Mass     *jsonMass       `json:"mass,omitempty"`
	Caveats  []phrase.Line   `json:"caveats,omitempty"`
	Problems []stone.Problem `json:"problems"`
}

type jsonItem struct {
	Item    int        `json:"item"`
	Name    string     `json:"name"`
	Count   int        `json:"count"`
	Counted bool       `json:"counted,omitempty"` // together, without a file of its own
	Carats  string     `json:"carats,omitempty"`  // of all of them, as printed
	Basis   string     `json:"weight_basis,omitempty"`
	Stone   *jsonStone `json:"examined,omitempty"` // as for a stone by itself
}

type jsonTotal struct {
	Name   string `json:"name"`
	Items  []int  `json:"items"`
	Count  int    `json:"count"`
	Carats string `json:"carats"`
	Basis  string `json:"weight_basis"`
}

type jsonMetal struct {
	Part   string `json:"part"`
	Name   string `json:"name"`
	Listed bool   `json:"listed_class"`
}

type jsonMass struct {
	Gross  float64 `json:"gross_g,omitempty"`
	Net    float64 `json:"net_g,omitempty"`
	Stones float64 `json:"stones_g,omitempty"`
}

// JSON is the examined piece as one line of JSON, its stones inside it.
func (e *ExaminedPiece) JSON() ([]byte, error) {
	if e.Problems.Has(stone.Error) {
		return Unread(e.Piece.File(), e.Problems)
	}
	out := jsonPiece{
		File: e.Piece.File(), Piece: e.Piece.Reference, Kind: e.Piece.Kind, Caveats: e.Caveats, Problems: append([]stone.Problem{}, e.Problems...),
		Mass: &jsonMass{rounded(e.Mass.Gross, 4), rounded(e.Mass.Net, 4), rounded(e.Mass.Stones, 4)},
	}
	for _, i := range e.Items {
		item := jsonItem{Item: i.Number, Name: i.Name.String(), Count: i.Count, Counted: i.Counted, Carats: i.Carats, Basis: string(i.Basis)}
		if !i.Counted {
			object := i.Stone.object(nil)
			item.Stone = &object
		}
		out.Items = append(out.Items, item)
	}
	for _, t := range e.Totals {
		out.Totals = append(out.Totals, jsonTotal{t.Name.String(), t.Items, t.Count, t.Carats, string(t.Basis)})
	}
	for _, m := range e.Metals {
		out.Metals = append(out.Metals, jsonMetal{m.Part, m.Name.String(), m.Listed})
	}
	return json.Marshal(out)
}
