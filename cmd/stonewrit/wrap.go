package main

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// lineWidth is the width that texts are broken to.
const lineWidth = 96

// labelWidth is the width of the labels in front of a text.
const labelWidth = 15

// labelled sets a text beside its label, and breaks it below itself.
//
//	species      corundum: supported
func labelled(label, text string) string {
	return wrapped(pad("  "+label, labelWidth), strings.Repeat(" ", labelWidth), text)
}

// wrapped breaks a text into lines, the first after one head, the others after
// another.
func wrapped(first, others, text string) string {
	var b strings.Builder
	line, width := first, utf8.RuneCountInString(first)
	empty := true
	for _, word := range strings.Fields(oneLine(text)) {
		n := utf8.RuneCountInString(word)
		if !empty && width+1+n > lineWidth {
			b.WriteString(line + "\n")
			line, width, empty = others, utf8.RuneCountInString(others), true
		}
		if !empty {
			line += " "
			width++
		}
		line, width, empty = line+word, width+n, false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
	return b.String()
}

// pad fills a label up to a width, and keeps one space behind it.
func pad(s string, width int) string {
	return s + strings.Repeat(" ", max(1, width-utf8.RuneCountInString(s)))
}

// listed joins names as a sentence does: a, b and c.
func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// orListed joins names of which one holds: a, b or c.
func orListed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// some joins the first names of a long list and counts the rest.
func some(names []string, most int) string {
	if len(names) <= most {
		return listed(names)
	}
	return strings.Join(names[:most], ", ") + " and " + count(len(names)-most, "more", "more")
}

// count is a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
