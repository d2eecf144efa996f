package export

import (
	"encoding/json"
	"io"
	"time"
)

// Keys of these types are a contract: they may grow, and never change their
// meaning.

type jsonList struct {
	Made      string     `json:"made"`
	OlderThan string     `json:"values_older_than,omitempty"` // are out of date
	Summary   Summary    `json:"summary"`
	Items     []jsonItem `json:"items"`
}

type jsonItem struct {
	File       string      `json:"file"`
	Reference  string      `json:"reference"`
	Sort       string      `json:"sort"`
	Document   string      `json:"document"`
	Name       string      `json:"name"`
	Species    string      `json:"species,omitempty"`
	Variety    string      `json:"variety,omitempty"`
	Growth     string      `json:"growth,omitempty"`
	Treatments string      `json:"treatments,omitempty"`
	Standing   *Standings  `json:"standing,omitempty"`
	Count      int         `json:"count"`
	Carats     json.Number `json:"carats,omitempty"`
	WeightIs   string      `json:"carats_are,omitempty"`
	Shape      string      `json:"shape,omitempty"`
	Cut        string      `json:"cut,omitempty"`
	Colour     string      `json:"colour,omitempty"`
	Location   string      `json:"kept_at,omitempty"`
	Piece      string      `json:"set_in,omitempty"`
	Examined   string      `json:"examined,omitempty"`
	Examiner   string      `json:"examiner,omitempty"`
	Client     string      `json:"client,omitempty"`
	Value      *jsonValue  `json:"value,omitempty"`
	Asking     *Money      `json:"asking_price,omitempty"`
	Insured    *Money      `json:"sum_insured,omitempty"`
	Until      string      `json:"insured_until,omitempty"`
	Paid       *Money      `json:"price_paid,omitempty"`
	Since      string      `json:"owned_since,omitempty"`
	Receipt    string      `json:"receipt,omitempty"`
	Stock      string      `json:"stock,omitempty"`
	Undecided  []string    `json:"undecided"`
	Against    []string    `json:"contradicted"`
	OutOfDate  []string    `json:"out_of_date"`
	ToMend     int         `json:"to_mend"`
	Picture    string      `json:"picture,omitempty"`
}

type jsonValue struct {
	Amount   string `json:"amount,omitempty"`
	Low      string `json:"low,omitempty"`
	High     string `json:"high,omitempty"`
	Currency string `json:"currency"`
	Is       string `json:"is"`
	Type     string `json:"type,omitempty"`
	Date     string `json:"date,omitempty"`
	By       string `json:"by,omitempty"`
}

// JSON writes one object: what the items come to, and the items. Amounts of
// money are text, so that no reader makes binary fractions of them.
func JSON(w io.Writer, items []Item, l Limits) error {
	list := jsonList{Made: l.Today.Format(time.DateOnly), OlderThan: l.Values.String(), Summary: Summarise(items), Items: []jsonItem{}}
	for _, i := range items {
		list.Items = append(list.Items, i.json())
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	return out.Encode(list)
}

func (i Item) json() jsonItem {
	j := jsonItem{
		File: i.File, Reference: i.Reference, Sort: i.Sort, Document: i.Document, Name: i.Name,
		Species: i.Species, Variety: i.Variety, Growth: i.Growth, Treatments: i.Treatments,
		Count: i.Count, Carats: json.Number(i.Carats), WeightIs: i.WeightIs, Shape: i.Shape, Cut: i.Cut, Colour: i.Colour,
		Location: i.Location, Piece: i.Piece, Examined: i.Examined, Examiner: i.Examiner, Client: i.Client,
		Asking: given(i.Asking), Insured: given(i.Insured), Until: i.InsuredUntil, Paid: given(i.Paid), Since: i.Since, Receipt: i.Receipt, Stock: i.Stock,
		Undecided: append([]string{}, i.Undecided...), Against: append([]string{}, i.Contradicted...), OutOfDate: append([]string{}, i.OutOfDate...), ToMend: i.ToMend, Picture: i.Picture,
	}
	if i.Standing != (Standings{}) {
		j.Standing = &i.Standing
	}
	if v := i.Value; v.Given() {
		j.Value = &jsonValue{v.Amount, v.Low, v.High, v.Currency, v.Is, v.Type, v.Date, v.By}
	}
	return j
}

func given(m Money) *Money {
	if !m.Given() {
		return nil
	}
	return &m
}
