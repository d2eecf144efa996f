package quality

import (
	"errors"

	"stonewrit/grading/gem"
)

// A Grader holds the tables of this package beside the gem table. It never
// changes after New and is safe for use by several goroutines at once.
type Grader struct {
	gems    *gem.Table
	limits  map[string]float64
	colours []centre
}

// New reads the embedded tables. An error means that the tables themselves are
// faulty, and names file and line.
func New(gems *gem.Table) (*Grader, error) {
	g := &Grader{gems: gems}
	err := errors.Join(
		g.readLimits(),
		g.readColours(),
	)
	if err != nil {
		return nil, err
	}
	return g, nil
}
