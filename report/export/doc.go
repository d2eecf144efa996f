// Package export turns a collection of examined stones and pieces into lists: a
// document to be printed, a table of values separated by commas, a workbook, and
// JSON.
//
// An [Item] is one line of a list: what a stone or piece is, where it is kept,
// what it is worth by whom, what is undecided about it and what is out of date.
// [Summarise] adds items up. Amounts of money and carats are decimal text and are
// added exactly; amounts of two currencies, and values of different kinds, are
// never added to one another.
package export
