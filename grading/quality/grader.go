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

	diamondColour, diamondClarity, fluorescence scale

	treatments []treatmentRow
	conditions map[string]Care
	fissures   []string // proper terms of the features table

	classes     []class
	tolerances  []tolerance
	hallmarks   []hallmark
	exemptParts []string
	restricted  []Restriction

	marks         map[string]map[string]string // statement, kind of document: M, S, C, -
	words         []barredWord
	before, after [][]string      // what a gem's name may stand beside without its qualifier
	gemWords      map[string]bool // last words of the names of gems
}

// New reads the embedded tables. An error means that the tables themselves are
// faulty, and names file and line.
func New(gems *gem.Table) (*Grader, error) {
	g := &Grader{gems: gems}
	err := errors.Join(
		g.readLimits(),
		g.readColours(),
		g.readDiamondScales(),
		g.readTreatments(),
		g.readCare(),
		g.readMetals(),
		g.readWords(),
		g.readRequirements(),
		g.readRestricted(),
	)
	if err != nil {
		return nil, err
	}
	g.noteGemWords()
	return g, nil
}
