package templates

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"text/template/parse"
)

// leftOut are the facts that one language has in a sentence and the other does
// not, with the reason: "-" before a fact that German leaves out, "+" before one
// that German alone needs.
var leftOut = map[string]string{
	"It +Pearl":                          "the pronoun follows the gender of the noun",
	"It +Piece":                          "the pronoun follows the gender of the noun",
	"it +Pearl":                          "the pronoun follows the gender of the noun",
	"it +Piece":                          "the pronoun follows the gender of the noun",
	"ground.growth +Name.Diamond":        "German has one word for grown diamonds and another for grown coloured stones",
	"description.cut -Extinction.Tenths": "English needs it for the number of the verb alone",
}

// TestGermanSaysWhatEnglishSays compares the facts that each sentence uses in
// the two languages: what one forgets a reader is not told. Number and gender
// are grammar and no facts.
func TestGermanSaysWhatEnglishSays(t *testing.T) {
	set := must(Load(nil))
	en, de := must(set.Language("en")), must(set.Language("de"))
	used := map[string]bool{}
	for _, s := range Catalogue() {
		if s.Optional {
			continue
		}
		differences := compare(facts(en, s.Name), facts(de, s.Name))
		for _, d := range differences {
			key := s.Name + " " + d
			if used[key] = true; leftOut[key] == "" {
				t.Errorf("%s", key)
			}
		}
	}
	for _, key := range slices.Sorted(maps.Keys(leftOut)) {
		if !used[key] {
			t.Errorf("%s no longer differs", key)
		}
	}
}

// compare lists what is missing and what is more.
func compare(english, german map[string]bool) []string {
	var list []string
	for _, f := range slices.Sorted(maps.Keys(english)) {
		if !german[f] {
			list = append(list, "-"+f)
		}
	}
	for _, f := range slices.Sorted(maps.Keys(german)) {
		if !english[f] {
			list = append(list, "+"+f)
		}
	}
	return list
}

// facts are the fields that a sentence uses.
func facts(w *Wording, sentence string) map[string]bool {
	all := map[string]bool{}
	for _, tree := range w.root.Lookup(sentence).Root.Nodes {
		collect(tree, all)
	}
	return all
}

func collect(n parse.Node, all map[string]bool) {
	switch n := n.(type) {
	case *parse.ListNode:
		if n != nil {
			for _, inner := range n.Nodes {
				collect(inner, all)
			}
		}
	case *parse.ActionNode:
		collect(n.Pipe, all)
	case *parse.IfNode:
		branch(&n.BranchNode, all)
	case *parse.WithNode:
		branch(&n.BranchNode, all)
	case *parse.RangeNode:
		branch(&n.BranchNode, all)
	case *parse.PipeNode:
		for _, c := range n.Cmds {
			for _, arg := range c.Args {
				collect(arg, all)
			}
		}
	case *parse.TemplateNode:
		collect(n.Pipe, all)
	case *parse.FieldNode:
		add(n.Ident, all)
	case *parse.VariableNode:
		add(n.Ident[1:], all)
	}
}

func branch(n *parse.BranchNode, all map[string]bool) {
	collect(n.Pipe, all)
	collect(n.List, all)
	if n.ElseList != nil {
		collect(n.ElseList, all)
	}
}

// add notes a fact, and leaves out the subject where it stands for grammar.
func add(path []string, all map[string]bool) {
	switch fact := strings.Join(path, "."); fact {
	case "", "Subject", "Subject.Many", "Many":
	default:
		all[fact] = true
	}
}

// TestGermanPrintsWhatEnglishPrints fills each sentence many times with some of
// its facts, each text a mark of its own, and looks which marks are printed.
func TestGermanPrintsWhatEnglishPrints(t *testing.T) {
	set := must(Load(nil))
	en, de := must(set.Language("en")), must(set.Language("de"))
	for _, s := range Catalogue() {
		if s.Optional || s.Name == "ground.opinion" { // English names the subject there, for grammar
			continue
		}
		random := rand.New(rand.NewPCG(1, 2))
		for range 100 {
			data := reflect.New(reflect.TypeOf(s.Data())).Elem()
			marks := 0
			mark(data, random, &marks)
			english, german := say(t, en, s.Name, data.Interface()), say(t, de, s.Name, data.Interface())
			if got, want := marksIn(german), marksIn(english); !slices.Equal(got, want) {
				t.Errorf("%s: German prints %v, English %v\n%s\n%s", s.Name, got, want, german, english)
				break
			}
		}
	}
}

// mark sets about two of three fields, texts to marks of their own.
func mark(v reflect.Value, random *rand.Rand, marks *int) {
	if v.Kind() != reflect.Struct && random.IntN(3) == 0 {
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			mark(v.Field(i), random, marks)
		}
	case reflect.String:
		*marks++
		v.SetString(fmt.Sprintf("mark%02d", *marks))
	case reflect.Int:
		v.SetInt(int64(random.IntN(4)))
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1+random.IntN(3), 4))
		for i := range v.Len() {
			mark(v.Index(i), random, marks)
		}
	}
}

var printed = regexp.MustCompile(`[Mm]ark[0-9]{2}`)

// marksIn are the marks of a text, each once.
func marksIn(s string) []string {
	found := map[string]bool{}
	for _, m := range printed.FindAllString(s, -1) {
		found[strings.ToLower(m)] = true
	}
	return slices.Sorted(maps.Keys(found))
}
