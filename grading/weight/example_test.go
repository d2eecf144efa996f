package weight_test

import (
	"fmt"

	"stonewrit/grading/weight"
)

// A round diamond in a ring, measured from above and below: the claws leave
// 0.05 mm of doubt in each length.
func ExampleEstimator_Estimate() {
	e, err := weight.New()
	if err != nil {
		fmt.Println(err)
		return
	}
	u := weight.DimensionU(0.01, true, false)
	est, err := e.Estimate(weight.Dimensions{
		Shape: "round", Cut: "brilliant", AsDiamond: true,
		Length: weight.Measure{Value: 6.52, U: u},
		Width:  weight.Measure{Value: 6.48, U: u},
		Depth:  weight.Measure{Value: 4.00, U: u},
		Table:  weight.Measure{Value: 57, U: 1},
	}, weight.Gravity{Low: 3.51, High: 3.53})
	if err != nil {
		fmt.Println(err)
		return
	}
	c := est.Chosen
	fmt.Printf("%.2f ct, %.2f to %.2f ct by the %s\n", c.Carats.Value, c.Low, c.High, c.Method)
	for _, o := range est.Candidates {
		fmt.Printf("%s: %.2f ct, u %.3f ct; %s\n", o.Method, o.Carats.Value, o.Carats.U, o.Basis)
	}
	// Output:
	// 1.04 ct, 0.99 to 1.08 ct by the fitted solid
	// shape factor: 1.04 ct, u 0.026 ct; 0.001733 x diameter squared x depth (round brilliant, cut as diamond)
	// solid: 1.02 ct, u 0.026 ct; round brilliant built from table 57.0 %, crown 15.3 %, girdle 2.9 %, pavilion 43.2 %; usual figures for star, lower halves, crown, pavilion
	// fitted solid: 1.04 ct, u 0.024 ct; round brilliant diamond from diameter, depth and table
}

func ExampleEstimator_Contradictions() {
	e, err := weight.New()
	if err != nil {
		fmt.Println(err)
		return
	}
	u := weight.DimensionU(0.01, false, false)
	for _, f := range e.Contradictions(weight.Dimensions{
		Shape: "oval", Cut: "mixed",
		Length: weight.Measure{Value: 6.20, U: u},
		Width:  weight.Measure{Value: 8.00, U: u},
		Depth:  weight.Measure{Value: 3.75, U: u},
	}, weight.Measure{}, weight.Gravity{}) {
		fmt.Printf("%s: %s (%s)\n", f.Dimension, f.Message, f.Slip)
	}
	// Output:
	// length: length 6.20 mm is less than width 8.00 mm; length and width swapped? (two dimensions swapped)
}
