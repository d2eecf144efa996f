package templates

import (
	"regexp"
	"testing"
	"testing/fstest"
)

// FuzzLoad reads what somebody might write: it loads or is refused with file and
// line, and never panics. The built-in wording is left out, since reading it
// takes longer than all else; TestAFolderReplacesWhatItDefines lays files over it.
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
		l := newLoader()
		l.read(folder)
		for _, language := range l.names() {
			l.wording(language)
		}
		for _, one := range l.errs {
			if !place.MatchString(one.Error()) {
				t.Errorf("the mistake does not say where it is: %v", one)
			}
		}
	})
}
