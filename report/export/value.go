package export

import (
	"time"

	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// By whom a value is.
const (
	Concluded = "concluded here"
	Told      = "told by others"
)

// A Value is what an item is worth: by the appraisal of its own file, or else by
// the latest of the earlier valuations that the file tells of.
type Value struct {
	Money            // none where only a range was concluded
	Low, High string // of a range
	Is        string // Concluded, Told
	Type      string // type of value
	Date      string // the day on which it holds
	By        string // who told it, of Told

	day time.Time
}

// Given reports whether there is an amount or a range.
func (v Value) Given() bool { return v.Money.Given() || v.Low != "" || v.High != "" }

// text is the value as printed in a list.
func (v Value) text() string {
	if v.Money.Given() || !v.Given() {
		return v.Money.String()
	}
	return v.Low + " to " + v.High + " " + v.Currency
}

func (i *Item) concluded(w *stone.Worth, r *worth.Result) {
	c := r.Conclusion
	if c.Amount == "" && c.Low == "" && c.High == "" {
		return
	}
	i.Value = Value{
		Money: Money{c.Amount, r.Currency}, Low: c.Low, High: c.High, Is: Concluded,
		Type: w.Type, Date: day(w.Effective), day: w.Effective.Time,
	}
}

// told takes the latest of the earlier valuations.
func (i *Item) told(list []stone.Valued) {
	var last *stone.Valued
	for n, v := range list {
		if last == nil || v.Date.After(last.Date.Time) {
			last = &list[n]
		}
	}
	if last == nil {
		return
	}
	i.Value = Value{
		Money: Money{string(last.Amount.Amount), last.Amount.Currency}, Is: Told,
		Type: last.Type, Date: day(last.Date), By: last.By, day: last.Date.Time,
	}
}
