package templates

import (
	"strings"
	"text/template"
	"text/template/parse"
	"unicode"
	"unicode/utf8"
)

// functions are what templates may call beside the functions of text/template.
func (w *Wording) functions() template.FuncMap {
	return template.FuncMap{
		// Voices.
		"strong": voiced(voiceStrong), "italic": voiced(voiceItalic), "quiet": voiced(voiceQuiet),
		// "a, b and c"; "a, b or c", by the sentences list.and and list.or.
		"list": func(items []string) (string, error) { return w.join("list.and", items) },
		"any":  func(items []string) (string, error) { return w.join("list.or", items) },
		// "a; b; c".
		"semicolons": func(items []string) string { return strings.Join(items, "; ") },
		"commas":     func(items []string) string { return strings.Join(items, ", ") },
		// First letter in capitals or not; sentence also adds a full stop.
		"upper": upperFirst, "lower": lowerFirst, "sentence": sentence, "sentences": sentences,
		// Whether a name already says another: "red spinel" says "spinel".
		"says":     strings.Contains,
		"stopless": func(s string) string { return strings.TrimRight(s, ". ") },
		// "a" or "an" before a word of English.
		"an": article,
		// The text of a word list: word "shape" "oval" is the sentence
		// "shape.oval", or the word itself where there is none.
		"word": w.word,
		// The same of each item of a list.
		"words": w.words,
	}
}

// signatures are the functions without a wording, to parse and check with.
func signatures() map[string]any { return (&Wording{}).functions() }

// builtinNames tell the parser which functions text/template has.
func builtinNames() map[string]any {
	names := map[string]any{}
	for _, n := range []string{"and", "or", "not", "len", "index", "slice", "print", "printf", "println", "eq", "ne", "lt", "le", "gt", "ge", "html", "js", "urlquery", "call"} {
		names[n] = true
	}
	return names
}

func (w *Wording) join(sentence string, items []string) (string, error) {
	if len(items) < 2 {
		return strings.Join(items, ""), nil
	}
	last := len(items) - 1
	return w.raw(sentence, List{Before: items[:last], Last: items[last]})
}

func upperFirst(s string) string { return mapFirst(s, unicode.ToUpper) }
func lowerFirst(s string) string { return mapFirst(s, unicode.ToLower) }

func mapFirst(s string, change func(rune) rune) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(change(r)) + s[size:]
}

// sentence begins with a capital and ends with a full stop, unless it ends with
// a stop of its own.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" {
		return ""
	}
	if last, _ := utf8.DecodeLastRuneInString(strings.TrimRight(s, "”’\"')")); !strings.ContainsRune(".!?…", last) {
		s += "."
	}
	return upperFirst(s)
}

func sentences(items []string) string {
	var out []string
	for _, s := range items {
		if s = sentence(s); s != "" {
			out = append(out, s)
		}
	}
	return strings.Join(out, " ")
}

// article is "a" or "an" for the sound that an English word most often begins
// with.
func article(s string) string {
	if s != "" && strings.ContainsRune("aeiouAEIOU", rune(s[0])) {
		return "an"
	}
	return "a"
}

// noBreak turns the tildes of the text of a template into no-break spaces.
func noBreak(n parse.Node) {
	switch n := n.(type) {
	case *parse.ListNode:
		if n == nil {
			return
		}
		for _, c := range n.Nodes {
			noBreak(c)
		}
	case *parse.TextNode:
		n.Text = []byte(strings.ReplaceAll(string(n.Text), "~", "\u00a0"))
	case *parse.IfNode:
		noBreak(n.List)
		noBreak(n.ElseList)
	case *parse.RangeNode:
		noBreak(n.List)
		noBreak(n.ElseList)
	case *parse.WithNode:
		noBreak(n.List)
		noBreak(n.ElseList)
	}
}
