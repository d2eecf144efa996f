package desk

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"golang.org/x/text/language"
)

// A Tongue is a language that the desk speaks, with its own name.
type Tongue struct{ Code, Name string }

// Tongues are the languages of the desk. The first one is that of the sentences
// in the sources.
func Tongues() []Tongue { return []Tongue{{"en", "English"}, {"de", "Deutsch"}} }

const languageCookie = "stonewrit-language"

// voice is the one that a request is answered in: what the person chose on the
// page, else what the desk was started with, else the language of the practice,
// else one that the browser asks for.
func (d *Desk) voice(r *http.Request) *voice {
	var chosen, practice string
	if c, err := r.Cookie(languageCookie); err == nil {
		chosen = c.Value
	}
	if b := d.benchFor("x.yaml"); b != nil {
		practice = b.Bench.Terms.Language
	}
	return d.voices[choose(codes(Tongues()), r.Header.Get("Accept-Language"), chosen, d.o.Language, practice)]
}

func codes(list []Tongue) []string {
	var out []string
	for _, t := range list {
		out = append(out, t.Code)
	}
	return out
}

// choose takes the first of the wishes that is spoken, else what fits best to
// the header of a browser, else the first that is spoken.
func choose(spoken []string, header string, wishes ...string) string {
	for _, w := range wishes {
		if slices.Contains(spoken, w) {
			return w
		}
	}
	var tags []language.Tag
	for _, s := range spoken {
		tags = append(tags, language.Make(s))
	}
	_, i := language.MatchStrings(language.NewMatcher(tags), header)
	return spoken[i]
}

// speak keeps the language that a person chose, and leads back.
func (d *Desk) speak(w http.ResponseWriter, r *http.Request) {
	code := r.PathValue("code")
	if d.voices[code] == nil {
		d.missing(w, r)
		return
	}
	http.SetCookie(w, &http.Cookie{Name: languageCookie, Value: code, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
	http.Redirect(w, r, ownPath(r.URL.Query().Get("to")), http.StatusSeeOther)
}

// ownPath is a path of the desk, whatever was asked for.
func ownPath(to string) string {
	u, err := url.Parse(to)
	if err != nil || u.Scheme != "" || u.Host != "" || !strings.HasPrefix(u.Path, "/") || strings.ContainsAny(to, "\\\n\r") || strings.HasPrefix(u.Path, "//") {
		return "/"
	}
	return u.EscapedPath()
}
