// Package quality names and describes: what a stone may be called, how its
// weight may be worded, how a diamond, a coloured stone or a pearl is graded,
// which treatments are disclosed and how, how the stone is cared for, and what
// a mark on precious metal claims.
//
// The rules follow the stricter of two sources wherever they differ: the Guides
// of the Federal Trade Commission (16 CFR 23, section numbers of 2018) and the
// vocabulary of ISO 18323 with the books of CIBJO. Nothing here claims
// conformity with any of them.
//
// Results are facts: a [Name] with its parts, a [Disclosure] with its class, a
// [Care] with a word for each danger. The sentences around them belong to the
// document. Lists of words, limits and scales stand in the CSV files under
// data, each row with a source.
//
// Grades are the examiner's opinions and are never worked out here. What is
// worked out from a notation, the plain name of a Munsell colour, is the name of
// the nearest published centre of the ISCC-NBS colour names.
package quality
