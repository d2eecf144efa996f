// Package chart draws the evidence of a document: an examined stone's figures
// as lines, ticks and letters in ink, to scale, in a report.Figure.
//
// There are five drawings. Two rulers carry the stone's refractive index and
// specific gravity as ticks under brackets of the expanded uncertainty (k = 2);
// the published ranges of what the stone is said to be, and of the materials
// that its tests leave open, hang below. The turns on the refractometer, the
// lines of the spectrum and the making of the cut are the other three.
//
// Each drawing is a method of Drawer that takes plain figures and returns false
// where there is nothing to draw. Evidence takes an examined stone and returns
// all that it has. Nothing is told by colour, and no word is written here: a
// Drawer carries the words, and a function that measures how wide they set.
//
// Coordinates are points from the upper left corner, y downwards. No label
// overlaps another one, and nothing leaves the box of its figure.
package chart
