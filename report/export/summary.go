package export

import (
	"cmp"
	"slices"
)

// A Summary is a collection added up.
type Summary struct {
	Stones    int `json:"stones"` // those alike in one file counted each
	Pieces    int `json:"pieces"`
	Undecided int `json:"undecided"`   // files whose species or variety is open or contradicted
	OutOfDate int `json:"out_of_date"` // files
	ToMend    int `json:"to_mend"`     // files

	Species  []Group    `json:"by_species"`
	Location []Group    `json:"by_place"`
	Values   []ValueSum `json:"by_value"`
}

// A Group is the items that have something in common.
type Group struct {
	Of         string  `json:"of"` // "" where the files do not say
	Files      int     `json:"files"`
	Stones     int     `json:"stones"`
	Carats     string  `json:"carats,omitempty"` // of those whose weight is known
	Unweighed  int     `json:"without_weight"`   // files
	Values     []Money `json:"values"`           // by currency
	Valued     int     `json:"with_value"`       // files whose amount is in Values
	sortPieces bool
}

// A ValueSum is the sum of amounts of one kind in one currency.
type ValueSum struct {
	Kind  string `json:"kind"`
	Files int    `json:"files"`
	Money
}

// Kinds of amount besides values.
const (
	Asking  = "asking price"
	Insured = "sum insured"
	Paid    = "price paid"
)

// Pieces is the group of the pieces among the species.
const Pieces = "pieces of jewellery"

// Summarise adds items up. The value of a stone that is set in a valued piece is
// part of the piece's and is not added again.
func Summarise(items []Item) Summary {
	var s Summary
	species, places := groups{}, groups{}
	kinds := map[string]purse{}
	counts := map[[2]string]int{}
	amount := func(kind string, m Money) {
		if !m.Given() {
			return
		}
		if kinds[kind] == nil {
			kinds[kind] = purse{}
		}
		kinds[kind].add(m)
		counts[[2]string{kind, m.Currency}]++
	}
	for _, i := range items {
		if i.Sort == SortPiece {
			s.Pieces++
			species.add(Pieces, i, true)
		} else {
			s.Stones += i.Count
			species.add(i.Species, i, false)
		}
		places.add(i.Location, i, false)
		s.Undecided += one(i.Unjudged())
		s.OutOfDate += one(len(i.OutOfDate) > 0)
		s.ToMend += one(i.ToMend > 0)
		if !i.within {
			amount(i.Value.Is, i.Value.Money)
		}
		amount(Asking, i.Asking)
		amount(Insured, i.Insured)
		amount(Paid, i.Paid)
	}
	for _, kind := range []string{Concluded, Told, Asking, Insured, Paid} {
		for _, m := range kinds[kind].amounts() {
			s.Values = append(s.Values, ValueSum{kind, counts[[2]string{kind, m.Currency}], m})
		}
	}
	s.Species, s.Location = species.list(), places.list()
	return s
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// group is a Group in the making.
type group struct {
	Group
	carats sum
	values purse
}

type groups map[string]*group

func (g groups) add(of string, i Item, pieces bool) {
	at := g[of]
	if at == nil {
		at = &group{Group: Group{Of: of, sortPieces: pieces}, values: purse{}}
		g[of] = at
	}
	at.Files++
	if i.Sort == SortStone {
		at.Stones += i.Count
		at.carats.add(i.Carats)
		at.Unweighed += one(i.Carats == "")
	}
	if !i.within && i.Value.Money.Given() {
		at.values.add(i.Value.Money)
		at.Valued++
	}
}

// list orders groups by name; pieces come behind the species, and what is not
// told comes last.
func (g groups) list() []Group {
	list := []Group{}
	for _, at := range g {
		at.Carats, at.Values = at.carats.String(), at.values.amounts()
		list = append(list, at.Group)
	}
	slices.SortFunc(list, func(a, b Group) int {
		return cmp.Or(one(a.Of == "")-one(b.Of == ""), one(a.sortPieces)-one(b.sortPieces), cmp.Compare(a.Of, b.Of))
	})
	return list
}
