package stone

import (
	"reflect"
	"slices"
	"stonewrit/grading/phrase"
	"strconv"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"
)

// field describes one key that a struct type allows, read off its tags.
type field struct {
	key   string
	index []int
	need  bool
	doc   string
	eg    string
	tags  fieldTags
	typ   reflect.Type
}

type fieldList []field

// fieldsOf lists the keys of a struct type in their written order; embedded
// structs give their keys to the outer one.
func fieldsOf(t reflect.Type) fieldList {
	var list fieldList
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous && f.Type.Kind() == reflect.Struct {
			for _, inner := range fieldsOf(f.Type) {
				inner.index = append([]int{i}, inner.index...)
				list = append(list, inner)
			}
			continue
		}
		key, ok := f.Tag.Lookup("yaml")
		if !ok {
			continue
		}
		list = append(list, field{
			key: key, index: []int{i}, typ: f.Type,
			need: f.Tag.Get("need") == "yes", doc: f.Tag.Get("doc"), eg: f.Tag.Get("eg"),
			tags: fieldTags{words: splitWords(f.Tag.Get("words")), bound: parseBounds(f.Tag.Get("range"))},
		})
	}
	return list
}

// layouts remember the keys of struct types, which cost more to read off the
// tags than a file of them costs to decode. They may be shared by goroutines.
type layouts struct {
	known sync.Map // reflect.Type to fieldList
	once  sync.Once
	kinds []testKind
	words []string // of the kinds
}

func (l *layouts) testKinds() ([]testKind, []string) {
	l.once.Do(func() { l.kinds, l.words = testKinds(), TestKinds() })
	return l.kinds, l.words
}

func (l *layouts) of(t reflect.Type) fieldList {
	if known, ok := l.known.Load(t); ok {
		return known.(fieldList)
	}
	list := fieldsOf(t)
	l.known.Store(t, list)
	return list
}

func splitWords(tag string) []string {
	if tag == "" {
		return nil
	}
	return strings.Split(tag, "|")
}

func (l fieldList) find(key string) (field, bool) {
	i := slices.IndexFunc(l, func(f field) bool { return f.key == key })
	if i < 0 {
		return field{}, false
	}
	return l[i], true
}

func (l fieldList) names() []string {
	var names []string
	for _, f := range l {
		names = append(names, f.key)
	}
	return names
}

// example is a hint that shows how the key is written.
func (f field) example() phrase.Line {
	switch {
	case f.eg != "":
		return phrase.Say("for example %s: %s", f.key, f.eg)
	case len(f.tags.words) > 0:
		return phrase.Say("%s: one of %s", f.key, strings.Join(f.tags.words, ", "))
	}
	return ""
}

// bounds are the least and the highest number that make sense for a field.
type bounds struct {
	low, high float64
	set       bool
}

func parseBounds(tag string) bounds {
	low, high, ok := strings.Cut(tag, "..")
	if !ok {
		return bounds{}
	}
	l, errLow := strconv.ParseFloat(low, 64)
	h, errHigh := strconv.ParseFloat(high, 64)
	if errLow != nil || errHigh != nil {
		panic("stone: range tag " + tag)
	}
	return bounds{l, h, true}
}

func (b bounds) check(d *decoder, n *yaml.Node, path string, v float64, text string) {
	switch {
	case !b.set:
	case b.low == b.high && v != b.low:
		d.wrong(n, path, phrase.Say("found %s, %s is the only one accepted", text, plain(b.low)), "a later format needs a later program")
	case v < b.low:
		d.wrong(n, path, phrase.Say("%s is below %s, the lowest accepted", text, plain(b.low)), "")
	case v > b.high:
		d.wrong(n, path, phrase.Say("%s is above %s, the highest accepted", text, plain(b.high)), slippedPoint(v, b))
	}
}

// slippedPoint guesses that a decimal point was left out or moved.
func slippedPoint(v float64, b bounds) phrase.Line {
	for _, by := range []float64{10, 100, 1000} {
		if w := v / by; w >= b.low && w <= b.high {
			return phrase.Say("did you mean %s?", plain(w))
		}
	}
	return ""
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
