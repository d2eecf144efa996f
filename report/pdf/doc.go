// Package pdf lays a report.Document out and writes it as PDF.
//
// It works in two steps that know nothing of each other. Press.Layout turns the
// document into pages of placed items: texts, paths and pictures with their
// place in points, counted from the upper left corner of the page. It is pure:
// the same document gives the same items, and a test can look at them without
// a PDF. Press.Write only draws what it is handed, item after item.
//
// Between model and page stands the strip: a slice of a block that may not be
// broken, as high as it needs, with what stands beside it in the margin. Blocks
// make strips; the paginator stacks them on pages, keeps together what must
// stay together, and sets again what a new page must repeat.
//
// A Press holds the parsed typeface. Make one and use it for every document;
// it does not change, so several goroutines may share it.
package pdf
