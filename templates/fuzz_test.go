package templates

import (
	"regexp"
	"testing"
	"testing/fstest"
)

// FuzzLoad lays what somebody might write over the built-in wording: it loads
// or is refused with file and line, and never panics.
func FuzzLoad(f *testing.F) {
	f.Add(`{{define "limits.validity"}}Valid {{.Validity}}.{{end}}`, "note: finding, ground, tests\n")
	f.Add("{{define \"date\"}}\n{{if false}}\n{{.Weekday}}{{end}}{{.Day}}{{end}}", "")
	f.Add(`{{define "finding"}}{{template "finding" .}}{{end}}`, "appraisal:\n")
	f.Add(`{{define "title"}}{{range $i, $x := .Changes}}{{$x}}{{end}}`, "record: verify verify\n")
	place := regexp.MustCompile(`^[a-z/]+\.(tmpl|txt)(:\d+)?: `)
	f.Fuzz(func(t *testing.T, wording, order string) {
		folder := fstest.MapFS{"en/own.tmpl": {Data: []byte(wording)}}
		if order != "" {
			folder["order.txt"] = &fstest.MapFile{Data: []byte(order)}
		}
		_, err := Load(folder)
		for _, one := range parts(err) {
			if !place.MatchString(one.Error()) {
				t.Errorf("the mistake does not say where it is: %v", one)
			}
		}
	})
}

// parts are the errors that an error joins.
func parts(err error) []error {
	if several, ok := err.(interface{ Unwrap() []error }); ok {
		return several.Unwrap()
	}
	if err == nil {
		return nil
	}
	return []error{err}
}
