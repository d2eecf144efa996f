package main

import (
	"embed"
	"maps"
	"slices"
	"strings"
	"text/template"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/stone"
)

//go:embed skeleton/*.yaml
var skeletons embed.FS

// placeholder stands where only the user knows what to write; nothing is issued
// while it is there.
const placeholder = "WRITE HERE"

// A skeleton is what a new file is filled in with.
type skeleton struct {
	File, Base      string // its name, and the name without ending
	Reference, Kind string
	Piece           string // kind of the piece, for a piece file
	Species         string
	Today           string
	Examiner        string
	FirstNumber     string // how the first number of the year would look
	Prefix          string
	Placeholder     string
	instruments     map[string]stone.Instrument
}

// write fills in a skeleton of the program.
func (s skeleton) write(file string) ([]byte, error) {
	t, err := template.New(file).Funcs(template.FuncMap{"instrument": s.instrument}).ParseFS(skeletons, "skeleton/"+file)
	if err != nil {
		return nil, err
	}
	s.Placeholder = placeholder
	var b strings.Builder
	err = t.Execute(&b, s)
	return []byte(b.String()), err
}

// instrument is the instrument of a kind that the bench has, or the one that
// the commented bench file would call it.
func (s skeleton) instrument(kind string) string {
	for _, id := range slices.Sorted(maps.Keys(s.instruments)) {
		if s.instruments[id].Kind == kind {
			return id
		}
	}
	return kind + "-1"
}

// asYAML writes a word so that YAML reads it as that word.
func asYAML(word string) (string, error) {
	text, err := yaml.Marshal(word)
	return strings.TrimSpace(string(text)), err
}
