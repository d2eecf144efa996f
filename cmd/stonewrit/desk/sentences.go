package desk

import (
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// Sentences are the English sentences of the pages, of the forms and of the
// help: all that a translation has to say, but for what grading says and the
// few that handlers say with a figure in them.
func Sentences(gems *gem.Table) ([]string, error) {
	all := map[string]bool{}
	for _, list := range []map[string]string{phrases(), names()} {
		for _, s := range list {
			all[s] = true
		}
	}
	if err := pageSentences(all); err != nil {
		return nil, err
	}
	help, err := loadHelp()
	if err != nil {
		return nil, err
	}
	for _, h := range help {
		all[h.Shows] = true
		for _, s := range slices.Concat(h.Well, h.Misleads) {
			all[s] = true
		}
	}
	specs := slices.Concat(form.StoneSpecs(), form.PieceSpecs(), form.BenchSpecs())
	for _, own := range form.TestSpecs(gems) {
		specs = append(specs, own...)
	}
	specSentences(all, specs)
	for _, kind := range stone.TestKinds() {
		all[kind] = true
	}
	delete(all, "")
	return slices.Sorted(maps.Keys(all)), nil
}

// said finds the sentences in the actions of a page.
var said = regexp.MustCompile(`\bt ("(?:[^"\\]|\\.)*")`)

func pageSentences(all map[string]bool) error {
	pages, err := fs.Glob(pageFiles, "pages/*.html")
	if err != nil {
		return err
	}
	for _, name := range pages {
		src, err := fs.ReadFile(pageFiles, name)
		if err != nil {
			return err
		}
		for _, g := range said.FindAllStringSubmatch(string(src), -1) {
			s, err := strconv.Unquote(g[1])
			if err != nil {
				return err
			}
			all[s] = true
		}
	}
	return nil
}

// specSentences are what the fields of forms are called and told by, and the
// words that are chosen from.
func specSentences(all map[string]bool, specs []form.Spec) {
	for _, s := range specs {
		all[s.Doc] = true
		if _, own := names()[s.Key]; !own {
			all[strings.ReplaceAll(s.Key, "_", " ")] = true
		}
		if s.Shape == form.Word || s.Shape == form.Choices {
			for _, w := range s.Words {
				all[w] = true
			}
		}
		specSentences(all, s.Fields)
	}
}
