package main

import (
	"errors"
	"fmt"
	"strings"

	"stonewrit/grading/quantity"
)

// parseRange reads a pure number, or a range of two: 1.62..1.64. A number with
// an uncertainty, 4.00 +-0.02, is the range that it spans.
func parseRange(text string) (low, high float64, err error) {
	from, to, two := strings.Cut(text, "..")
	a, err := pure(from)
	if err != nil {
		return 0, 0, err
	}
	if !two {
		return a.Float() - 2*a.U, a.Float() + 2*a.U, nil
	}
	b, err := pure(to)
	if err != nil {
		return 0, 0, err
	}
	if a.Float() > b.Float() {
		return 0, 0, errors.New("the first figure is above the second")
	}
	return a.Float(), b.Float(), nil
}

func pure(text string) (quantity.Measure[quantity.Number], error) {
	m, err := quantity.Parse[quantity.Number](strings.TrimSpace(text))
	var syntax *quantity.SyntaxError
	if errors.As(err, &syntax) && syntax.Hint != "" {
		return m, fmt.Errorf("%w (%s)", err, syntax.Hint)
	}
	return m, err
}
