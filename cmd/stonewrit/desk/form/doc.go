// Package form makes the forms of the desk from the record types that read the
// files, so that a form can neither offer a key that reading refuses nor leave
// one out. A form shows the values of a file in the notation of its fields and
// turns what is entered into edits of single values.
//
// Notation: a list has one entry a line; "none" says that somebody looked and
// found nothing; an empty field takes its key out of the file. A bare number in
// a field with one unit gets that unit.
package form
