package phrase

// And is "a, b and c".
func And(items ...Line) Line { return enumerate("%s and %s", items) }

// Or is "a, b or c".
func Or(items ...Line) Line { return enumerate("%s or %s", items) }

// Commas is "a, b, c".
func Commas(items ...Line) Line { return enumerate("%s, %s", items) }

// Semicolons is "a; b; c". Lines that say nothing are left out.
func Semicolons(items ...Line) Line {
	var said []Line
	for _, l := range items {
		if l != "" {
			said = append(said, l)
		}
	}
	return Join("%s; %s", said...)
}

// Words are words as lines.
func Words[S ~string](items []S) []Line {
	var list []Line
	for _, s := range items {
		list = append(list, Say("%s", Word(s)))
	}
	return list
}

// Texts are texts that stand as they are, as lines.
func Texts(items []string) []Line {
	var list []Line
	for _, s := range items {
		list = append(list, Say("%s", s))
	}
	return list
}

// Figures are figures as lines.
func Figures(items []string) []Line {
	var list []Line
	for _, s := range items {
		list = append(list, Say("%s", Figure(s)))
	}
	return list
}

func enumerate(last Line, items []Line) Line {
	n := len(items)
	if n < 2 {
		return Join(last, items...)
	}
	return Say(last, Join("%s, %s", items[:n-1]...), items[n-1])
}

// Join puts lines together by a form of two parts: "a or b or c" by "%s or %s".
func Join(form Line, items ...Line) Line {
	var l Line
	for i, item := range items {
		if i == 0 {
			l = item
			continue
		}
		l = Say(form, l, item)
	}
	return l
}

// Strings are lines in English.
func Strings(lines []Line) []string {
	var list []string
	for _, l := range lines {
		list = append(list, l.String())
	}
	return list
}
