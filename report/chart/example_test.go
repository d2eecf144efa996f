package chart_test

import (
	"fmt"
	"strings"

	"stonewrit/grading/gem"
	"stonewrit/report/chart"
)

func ExampleDrawer_Gravity() {
	d := chart.Drawer{Words: chart.English()} // Width is that of the typeface, where it is at hand
	f, ok := d.Gravity(chart.Gravity{
		Value: 3.993, U: 0.016,
		Materials: []chart.Material{
			{Name: "corundum", Own: true, Ranges: []gem.Range{{Min: 3.94, Max: 4.06}}},
			{Name: "zircon", Ranges: []gem.Range{{Min: 3.90, Max: 4.73}}},
		},
	})
	fmt.Println(ok, f.Width)
	fmt.Println(strings.ReplaceAll(f.Alt, "\u00a0", " "))
	// Output:
	// true 372
	// Ruler of the specific gravity. This stone: 3.993 ± 0.032. Published: corundum 3.94–4.06; zircon 3.90–4.73.
}
