package desk

import (
	"crypto/subtle"
	"errors"
	"net/http"
	"slices"
	"strings"
)

// Limits on what is accepted in one request.
const (
	mostForm   = 2 << 20  // bytes of a form
	mostUpload = 64 << 20 // bytes of one upload of photos
	mostPaper  = 64 << 20 // bytes of a PDF to be verified
)

// guarded lets through what may come from the page itself, and marks every
// answer so that the browser loads nothing from elsewhere and keeps nothing.
func (d *Desk) guarded(next http.Handler) http.Handler {
	protection := http.NewCrossOriginProtection()
	protection.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		d.refuse(w, r, http.StatusForbidden, "refused.origin")
	}))
	inner := protection.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if !slices.Contains(d.o.Hosts, r.Host) {
			d.refuse(w, r, http.StatusMisdirectedRequest, "refused.host")
			return
		}
		if strings.HasPrefix(r.URL.Path, "/photo/") || r.URL.Path == "/verify" {
			r.Body = http.MaxBytesReader(w, r.Body, mostUpload)
		} else {
			r.Body = http.MaxBytesReader(w, r.Body, mostForm)
		}
		inner.ServeHTTP(w, r)
	})
}

// policy keeps script, style, pictures and forms to the page's own; nothing may
// stand in line and nobody may frame it.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

const cookieName = "stonewrit-desk"

// enter turns the token of the start into a cookie that scripts cannot read and
// that no other site can make the browser send.
func (d *Desk) enter(w http.ResponseWriter, r *http.Request) {
	if !same(r.URL.Query().Get("token"), d.keys.entry) {
		d.refuse(w, r, http.StatusForbidden, "refused.token")
		return
	}
	http.SetCookie(w, &http.Cookie{Name: cookieName, Value: d.keys.session, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
	http.Redirect(w, r, "/", http.StatusSeeOther)
}

// known lets in a browser that came by the token, and forms that carry the
// form's token.
func (d *Desk) known(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		c, err := r.Cookie(cookieName)
		if err != nil || !same(c.Value, d.keys.session) {
			d.refuse(w, r, http.StatusForbidden, "refused.token")
			return
		}
		if r.Method == http.MethodPost && !d.ownForm(w, r) {
			return
		}
		next.ServeHTTP(w, r)
	})
}

// ownForm reads a form and looks that the desk made it.
func (d *Desk) ownForm(w http.ResponseWriter, r *http.Request) bool {
	var err error
	if strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
		err = r.ParseMultipartForm(8 << 20)
	} else {
		err = r.ParseForm()
	}
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		d.refuse(w, r, http.StatusRequestEntityTooLarge, "refused.size")
		return false
	case err != nil:
		d.refuse(w, r, http.StatusBadRequest, "refused.form")
		return false
	case !same(r.PostFormValue("form_token"), d.keys.form):
		d.refuse(w, r, http.StatusForbidden, "refused.form")
		return false
	}
	return true
}

// same compares secrets without telling by its time how far they agree.
func same(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }

// refuse tells why a request is not answered.
func (d *Desk) refuse(w http.ResponseWriter, r *http.Request, status int, word string) {
	d.show(w, r, status, "refused", map[string]any{"Title": d.voice(r).word("refused.title"), "Text": d.voice(r).word(word)})
}
