package pdf_test

import (
	"fmt"
	"time"

	"stonewrit/report"
	"stonewrit/report/pdf"
)

// A document is built by hand, checked before a number is taken, and printed.
func Example() {
	press, err := pdf.NewPress() // once; it serves any number of documents
	if err != nil {
		panic(err)
	}
	doc := report.Document{
		Title: "Stone note", Language: "en", Date: time.Date(2026, 10, 14, 0, 0, 0, 0, time.UTC), DateText: "14 October 2026",
		Practice: report.Practice{Name: "Kestrel Lane Gem Room"},
		Sections: []report.Section{
			{Blocks: []report.Block{report.Lead{
				Sentence: report.Plain("This stone is a ").Strong("peridot").Plain("."),
				Margin:   []report.MarginFigure{{Figure: "2.14\u00a0ct", Note: report.Plain("weighed loose")}},
			}}},
			{Name: "The tests", Blocks: []report.Block{report.Table{
				Columns: []report.Column{{Head: "test", Width: 1}, {Head: "verdict"}},
				Rows:    []report.Row{{Cells: []report.Cell{{Text: report.Plain("refractometer")}, report.Marked(report.MarkFilled, "agrees")}}},
			}}},
		},
	}
	if err := press.Check(doc); err != nil {
		panic(err)
	}
	doc.Number = "KL-2026-000419-56"
	file, err := press.Print(doc)
	fmt.Println(string(file[:8]), err)
	// Output: %PDF-1.7 <nil>
}
