// Package templates holds every word that a document prints beside the words
// of the stone file: the order of its sections, their names, and all sentences,
// in files that a practice may replace without touching the program.
//
// # Files
//
// The file order.txt names the sections of each kind of document, in order. A
// folder for each language (en) holds files *.tmpl. Each of them is a list of
// named sentences:
//
//	{{define "limits.validity"}}
//	This document is valid {{.Validity}}.
//	{{end}}
//
// What stands between define and end is a template of the Go package
// text/template. The dot is one of the structs of this package; Catalogue tells
// which sentence gets which. Line ends and runs of spaces become one space. A
// tilde in the text is a no-break space, for "1~ct". The functions are those of
// text/template and those of this package's function list (see README.md in
// this folder).
//
// # A folder of one's own
//
// Load reads a folder that holds any part of this: a sentence that it defines
// takes the place of the built-in one, all others stay. A new language needs
// every sentence. Load refuses, with file and line, a sentence that does not
// exist, a field that the sentence's struct does not have, a section that does
// not exist and a template that is not balanced, so that no document can fail
// for its wording later.
package templates
