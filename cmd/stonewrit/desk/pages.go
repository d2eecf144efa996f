package desk

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"html"
	"html/template"
	"io"
	"io/fs"
	"net/http"
	"net/url"
	"path"
	"strings"

	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"github.com/go-fonts/liberation/liberationserifregular"

	"stonewrit/grading/phrase"
)

//go:embed pages/*.html
var pageFiles embed.FS

//go:embed assets/*
var assetFiles embed.FS

// loadPages parses the pages in the language of a voice.
func loadPages(v *voice) (*template.Template, error) {
	return template.New("").Funcs(template.FuncMap{
		"t": func(english string, args ...any) string { return v.t(phrase.Line(english), args...) }, "word": v.word, "line": v.line, "term": v.term, "tongues": Tongues,
		"path": escaped, "base": path.Base, "asset": assetPath,
		"language": func() string { return v.language }, "mark": markOf, "pair": pair, "beside": beside, "idOf": func(s string) string { return strings.ReplaceAll(s, " ", "-") },
		"lines": func(s string) []string { return strings.Split(s, "\n") },
	}).ParseFS(pageFiles, "pages/*.html")
}

// escaped makes a file's name part of a link.
func escaped(file string) string {
	parts := strings.Split(file, "/")
	for i := range parts {
		parts[i] = url.PathEscape(parts[i])
	}
	return strings.Join(parts, "/")
}

// beside is the path of a picture that a stone file names.
func beside(file, picture string) string { return path.Join(path.Dir(file), picture) }

// pair hands two values to a part of a page.
func pair(a, b any) map[string]any { return map[string]any{"A": a, "B": b} }

// markOf is the shape that stands before a standing or verdict, the same as in
// the documents.
func markOf(word string) string {
	switch word {
	case "supported", "agrees":
		return "filled"
	case "contradicted", "conflicts":
		return "struck"
	}
	return "open"
}

// assetHandler serves style and script. Their links carry a digest of what they
// hold, so that a browser may keep them.
func assetHandler() http.Handler {
	files := http.FileServerFS(assetFiles)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if face := faces()[path.Base(r.URL.Path)]; face != nil {
			w.Header().Set("Content-Type", "font/ttf")
			w.Header().Set("Cache-Control", "private, max-age=86400")
			_, _ = w.Write(face) // the browser may have gone
			return
		}
		if r.URL.RawQuery != "" {
			w.Header().Set("Cache-Control", "private, max-age=86400, immutable")
		}
		files.ServeHTTP(w, r)
	})
}

// faces is the typeface that documents are set in.
func faces() map[string][]byte {
	return map[string][]byte{
		"serif.ttf": liberationserifregular.TTF, "serif-italic.ttf": liberationserifitalic.TTF, "serif-bold.ttf": liberationserifbold.TTF,
	}
}

// assetPath is the link to an asset.
func assetPath(name string) (string, error) {
	data, err := fs.ReadFile(assetFiles, "assets/"+name)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(data)
	return "/assets/" + name + "?" + hex.EncodeToString(sum[:6]), nil
}

// begin sends the top of a page, so that the browser shows it and fetches style
// and typeface while the rest is made.
func (d *Desk) begin(w http.ResponseWriter, r *http.Request, status int, page, title string) {
	data := map[string]any{"Title": title}
	part, err := d.dress(r, page, data).part("head", data)
	if err != nil {
		part = err.Error()
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = io.WriteString(w, part)            // the browser may have gone
	_ = http.NewResponseController(w).Flush() // a wrapper may not be able to
}

// goOn sends what follows the top of a page.
func (d *Desk) goOn(w http.ResponseWriter, r *http.Request, page string, data map[string]any) {
	v := d.dress(r, page, data)
	part, err := v.part(page+".html", data)
	if err != nil {
		part = "<p>" + html.EscapeString(v.word("refused.broken")+" "+err.Error()) + "</p>"
	}
	_, _ = io.WriteString(w, part) // the browser may have gone
}

// dress adds what every page needs.
func (d *Desk) dress(r *http.Request, page string, data map[string]any) *voice {
	data["Page"], data["FormToken"], data["Path"], data["Lists"] = page, d.keys.form, r.URL.Path, d.listsPath
	return d.voice(r)
}

// show writes a page. Nothing of it goes out if any of it cannot be made.
func (d *Desk) show(w http.ResponseWriter, r *http.Request, status int, page string, data map[string]any) {
	v := d.dress(r, page, data)
	var b bytes.Buffer
	if err := v.pages.ExecuteTemplate(&b, page+".html", data); err != nil {
		http.Error(w, v.word("refused.broken")+"\n"+err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(b.Bytes()) // the browser may have gone
}

// part makes a piece of a page.
func (v *voice) part(name string, data any) (string, error) {
	var b bytes.Buffer
	err := v.pages.ExecuteTemplate(&b, name, data)
	return b.String(), err
}

// missing says that nothing is there, whatever the reason.
func (d *Desk) missing(w http.ResponseWriter, r *http.Request) {
	d.refuse(w, r, http.StatusNotFound, "refused.missing")
}
