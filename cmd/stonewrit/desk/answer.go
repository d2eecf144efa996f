package desk

import (
	"regexp"

	"stonewrit/cmd/stonewrit/desk/form"
)

// answerView is what an office said, with links to the fields that it is about.
type answerView struct {
	Good   bool
	Number string
	Lines  []answerLine
}

// answerLine is one line of an answer. A line about a field is parted.
type answerLine struct {
	Severity, Path, Text string
	Link                 string // to the field
	File                 string // if it is another one than the page shows
}

// aboutField is how the commands tell a problem: its severity, file, line and
// column, its path, and what is wrong.
var aboutField = regexp.MustCompile(`^(error|missing|finding|warning|note): (.+?):[0-9]+:[0-9]+: (?:([a-z_]+(?:[.\[][^ :]*)?): )?(.*)$`)

// answer finds the fields that an answer is about.
func (v *viewer) answer(a *Answer) *answerView {
	if a == nil {
		return nil
	}
	out := &answerView{Good: a.Good, Number: a.Number}
	for _, text := range a.Lines {
		g := aboutField.FindStringSubmatch(text)
		if g == nil {
			out.Lines = append(out.Lines, answerLine{Text: v.voice.line(text)})
			continue
		}
		line := answerLine{Severity: g[1], Path: g[3], Text: v.voice.line(g[4])}
		name := form.NameOf(g[3])
		switch {
		case g[2] == v.file && g[3] != "":
			if mark := v.nearest(name); mark != "" {
				line.Link = "#" + mark
			}
		case g[2] == v.file:
		case isYAML(g[2]) && g[3] != "":
			line.File, line.Link = g[2], "/stone/"+escaped(g[2])+"#"+htmlID(name)
		case isYAML(g[2]):
			line.File = g[2]
		}
		out.Lines = append(out.Lines, line)
	}
	return out
}
