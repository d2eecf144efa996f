package stone

import (
	"reflect"
	"regexp"
	"slices"
	"stonewrit/grading/phrase"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

func (d *decoder) scalar(n *yaml.Node, v reflect.Value, path string, tags fieldTags) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	switch v.Kind() {
	case reflect.String:
		d.word(n, path, text, tags.words, v)
	case reflect.Bool:
		switch strings.ToLower(text) {
		case "true", "yes":
			v.SetBool(true)
		case "false", "no":
		default:
			d.wrong(n, path, phrase.Say("found %q, true or false was expected", text), "")
		}
	case reflect.Int:
		i, err := strconv.Atoi(text)
		if err != nil {
			d.wrong(n, path, phrase.Say("found %q, a whole number was expected", text), wholeNumber(text))
			return
		}
		v.SetInt(int64(i))
		tags.bound.check(d, n, path, float64(i), text)
	default:
		panic("stone: no way to read a " + v.Type().String())
	}
}

// text returns the text of a scalar node, refusing an empty one.
func (d *decoder) text(n *yaml.Node, path string) (string, bool) {
	switch {
	case !d.plain(n, path):
		return "", false
	case n.Kind != yaml.ScalarNode:
		d.wrong(n, path, phrase.Say("found %s, a single value was expected", describeNode(n)), "put text that begins with a bracket into quotes")
		return "", false
	case n.Tag == "!!null" && !quoted(n), strings.TrimSpace(n.Value) == "":
		d.wrong(n, path, "nothing is written here", "leave the key out, or write a value (\"none\" if you looked and found nothing)")
		return "", false
	}
	if i := strings.IndexFunc(n.Value, unprintable); i >= 0 {
		r, _ := utf8.DecodeRuneInString(n.Value[i:])
		d.wrong(n, path, phrase.Say("holds the character %U, which cannot be printed", r), "take it out")
		return "", false
	}
	return n.Value, true
}

// unprintable tells control characters and the marks that turn the direction
// of writing, by which a text could show other than it is.
func unprintable(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\t' ||
		r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}

// quoted reports whether a scalar is marked as text, so that no reader takes it
// for a truth value or for nothing.
func quoted(n *yaml.Node) bool {
	return n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
}

// yesOrNo reports whether YAML readers take the bare text for a truth value.
func yesOrNo(n *yaml.Node) bool {
	switch strings.ToLower(n.Value) {
	case "no", "off", "yes", "on", "false", "true":
		return !quoted(n)
	}
	return false
}

// word reads one of the allowed words, or free text where there are none.
func (d *decoder) word(n *yaml.Node, path, text string, words []string, v reflect.Value) {
	if len(words) == 0 {
		if yesOrNo(n) {
			d.wrong(n, path, phrase.Say("found %s, which YAML reads as yes or no, and words were expected", text), phrase.Say("write \"none\" if you looked and found nothing, or put the word into quotes: %q", text))
			return
		}
		v.SetString(strings.TrimSpace(text))
		return
	}
	w := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, allowed := range words {
		if strings.ToLower(allowed) == w {
			v.SetString(allowed)
			return
		}
	}
	hint := didYouMean(text, words)
	if yesOrNo(n) {
		hint = phrase.Say("YAML reads %s as yes or no: write one of the words", text)
		if slices.Contains(words, "none") {
			hint = phrase.Say("%s (none if you looked and found nothing)", hint)
		}
	}
	d.wrong(n, path, phrase.Say("%q is not one of: %s", text, strings.Join(words, ", ")), hint)
}

var leadingNumber = regexp.MustCompile(`^([0-9]+)(?:\.0+)?(?: ?[^0-9.,]*)$`)

var karat = regexp.MustCompile(`^([0-9]{1,2}) ?(?:[kK]|kt|KT|karat)$`)

// wholeNumber is a hint that picks the whole number out of a text. Karats are
// parts of 24, and these files count parts in a thousand.
func wholeNumber(text string) phrase.Line {
	if g := karat.FindStringSubmatch(text); g != nil {
		if k, _ := strconv.Atoi(g[1]); k >= 1 && k <= 24 {
			return phrase.Say("parts in a thousand are counted: %d of 24 are %d", k, k*1000/24)
		}
	}
	if g := leadingNumber.FindStringSubmatch(text); g != nil {
		return phrase.Say("did you mean %s?", g[1])
	}
	return ""
}
