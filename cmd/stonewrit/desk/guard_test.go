package desk_test

import (
	"bytes"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestRefusals sends what must not be answered. Each row is a request that is
// good but for one thing.
func TestRefusals(t *testing.T) {
	b := newBench(t)
	form := b.form("/stone/hl-0401.yaml")
	form.Set("v/location", "elsewhere")
	before := b.file("hl-0401.yaml")
	save := func() *http.Request {
		r := b.request("POST", "/stone/hl-0401.yaml", strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		return r
	}
	with := func(change func(url.Values)) *http.Request {
		v := url.Values{}
		for k := range form {
			v.Set(k, form.Get(k))
		}
		change(v)
		r := b.request("POST", "/stone/hl-0401.yaml", strings.NewReader(v.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		return r
	}
	header := func(r *http.Request, name, value string) *http.Request { r.Header.Set(name, value); return r }
	for _, c := range []struct {
		name, why string
		request   *http.Request
		cookie    string // in place of the good one
		want      int
	}{
		{"host", "a name that somebody made to lead here", func() *http.Request { r := b.request("GET", "/", nil); r.Host = "evil.example"; return r }(), "", http.StatusMisdirectedRequest},
		{"host without port", "not what the browser was opened with", func() *http.Request { r := b.request("GET", "/", nil); r.Host = "127.0.0.1"; return r }(), "", http.StatusMisdirectedRequest},
		{"host of the way in", "the token must not be taken there either", func() *http.Request {
			r := b.request("GET", b.desk.EntryPath(), nil)
			r.Host = "evil.example:80"
			return r
		}(), "", http.StatusMisdirectedRequest},
		{"origin", "a page of another site sends the form", header(save(), "Origin", "https://evil.example"), "", http.StatusForbidden},
		{"null origin", "a page in a frame without origin", header(save(), "Origin", "null"), "", http.StatusForbidden},
		{"cross-site", "the browser says that another site asks", header(save(), "Sec-Fetch-Site", "cross-site"), "", http.StatusForbidden},
		{"same site, other origin", "another port of this computer", header(save(), "Sec-Fetch-Site", "same-site"), "", http.StatusForbidden},
		{"no cookie", "a browser that did not come by the token", save(), "none", http.StatusForbidden},
		{"wrong cookie", "a guess", save(), "guess", http.StatusForbidden},
		{"reading without cookie", "others on this computer may not read", b.request("GET", "/stone/hl-0401.yaml", nil), "none", http.StatusForbidden},
		{"picture without cookie", "nor look", b.request("GET", "/picture/photos/HL-0401-face.jpg?for=row", nil), "none", http.StatusForbidden},
		{"wrong start token", "a guess", b.request("GET", "/enter?token=guess", nil), "none", http.StatusForbidden},
		{"no start token", "none", b.request("GET", "/enter", nil), "none", http.StatusForbidden},
		{"no form token", "not a form of the desk", with(func(v url.Values) { v.Del("form_token") }), "", http.StatusForbidden},
		{"wrong form token", "a form of an earlier start", with(func(v url.Values) { v.Set("form_token", "old") }), "", http.StatusForbidden},
		{"stale digest", "the page shows another text", with(func(v url.Values) { v.Set("digest", "0123456789abcdef0123456789abcdef") }), "", http.StatusConflict},
		{"no digest", "nor does one without", with(func(v url.Values) { v.Del("digest") }), "", http.StatusConflict},
		{"size", "more than a form may have", with(func(v url.Values) { v.Set("v/location", strings.Repeat("x", 3<<20)) }), "", http.StatusRequestEntityTooLarge},
		{"method", "a form is not to be got", b.request("DELETE", "/stone/hl-0401.yaml", nil), "", http.StatusMethodNotAllowed},
	} {
		t.Run(c.name, func(t *testing.T) {
			client := *b.client
			if c.cookie != "" {
				client.Jar = nil
				if c.cookie != "none" {
					c.request.AddCookie(&http.Cookie{Name: "stonewrit-desk", Value: c.cookie})
				}
			}
			resp, err := client.Do(c.request)
			if err != nil {
				t.Fatal(err)
			}
			defer resp.Body.Close()
			if resp.StatusCode != c.want {
				t.Errorf("got %d, want %d: %s", resp.StatusCode, c.want, c.why)
			}
			if got := b.file("hl-0401.yaml"); got != before {
				t.Fatal("the file was changed")
			}
		})
	}
	if got := b.do(save()); got.status != http.StatusSeeOther || b.file("hl-0401.yaml") == before {
		t.Errorf("the good request was refused too: %d", got.status)
	}
}

func TestCookieIsClosed(t *testing.T) {
	b := newBench(t)
	got := b.get(b.desk.EntryPath())
	cookie := got.header.Get("Set-Cookie")
	for _, must := range []string{"HttpOnly", "SameSite=Strict", "Path=/"} {
		if !strings.Contains(cookie, must) {
			t.Errorf("the cookie %q has no %s", cookie, must)
		}
	}
	if strings.Contains(cookie, strings.TrimPrefix(b.desk.EntryPath(), "/enter?token=")) {
		t.Error("the cookie is the token of the address, which stands in the history of the browser")
	}
}

// TestPaths asks for what is not to be had: outside, links that lead outside,
// and files that are no stone files.
func TestPaths(t *testing.T) {
	b := newBench(t)
	outside := filepath.Join(filepath.Dir(b.dir), "outside.yaml")
	if err := os.WriteFile(outside, []byte("stonewrit: 1\nstone: SECRET\nopinion: {species: quartz}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Remove(outside) })
	if err := os.Symlink(outside, filepath.Join(b.dir, "link.yaml")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("/etc", filepath.Join(b.dir, "etc")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(b.dir, "plain.yaml"), []byte("a: 1\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, prefix := range []string{"/stone/", "/text/", "/draft/"} {
		for _, path := range []string{"..%2Foutside.yaml", "%2e%2e/outside.yaml", "link.yaml", "etc%2Fpasswd", "%2Fetc%2Fpasswd", "bench.yaml", "plain.yaml", "README.md", "photos", "nothing.yaml", "photos%2F..%2Fhl-0401.yaml", "hl-0401.yaml%00", "."} {
			if got := b.get(prefix + path); got.status == http.StatusOK || strings.Contains(got.body, "SECRET") || strings.Contains(got.body, "root:") {
				t.Errorf("%s%s: got %d", prefix, path, got.status)
			}
		}
	}
	for _, path := range []string{"..%2Foutside.yaml", "etc%2Fpasswd", "hl-0401.yaml", "link.yaml"} {
		if got := b.get("/picture/" + path + "?for=row"); got.status != http.StatusNotFound {
			t.Errorf("picture %s: got %d", path, got.status)
		}
	}
	v := b.form("/text/hl-0401.yaml")
	v.Set("text", "stonewrit: 1\n")
	for _, path := range []string{"/text/link.yaml", "/text/..%2Foutside.yaml", "/text/plain.yaml", "/stone/link.yaml"} {
		if got := b.post(path, v); got.status != http.StatusNotFound {
			t.Errorf("%s: got %d", path, got.status)
		}
	}
	if src, err := os.ReadFile(outside); err != nil || !strings.Contains(string(src), "SECRET") {
		t.Errorf("the file outside was changed: %v", err)
	}
	if strings.Contains(b.get("/?q=secret").body, "SECRET") {
		t.Error("the list shows a file outside")
	}
}

// upload is a request that brings a picture.
func (b *bench) upload(path, name string, data []byte, v url.Values) *http.Request {
	b.t.Helper()
	var body bytes.Buffer
	w := multipart.NewWriter(&body)
	for k := range v {
		_ = w.WriteField(k, v.Get(k))
	}
	part, err := w.CreateFormFile("photo", name)
	if err != nil {
		b.t.Fatal(err)
	}
	if _, err := part.Write(data); err != nil {
		b.t.Fatal(err)
	}
	w.Close()
	r := b.request("POST", path, &body)
	r.Header.Set("Content-Type", w.FormDataContentType())
	return r
}

func TestUpload(t *testing.T) {
	b := newBench(t)
	good, err := os.ReadFile("../../../testdata/demo/photos/HL-0401-face.jpg")
	if err != nil {
		t.Fatal(err)
	}
	form := b.form("/stone/hl-0402.yaml")
	before := b.file("hl-0402.yaml")
	for _, c := range []struct {
		name, file string
		data       []byte
		form       url.Values
		want       int
	}{
		{"no picture", "a.jpg", []byte("GIF89a nothing"), form, http.StatusUnprocessableEntity},
		{"cut short", "a.jpg", good[:len(good)/2], form, http.StatusUnprocessableEntity},
		{"empty", "a.jpg", nil, form, http.StatusUnprocessableEntity},
		{"a script by another name", "a.jpg", []byte("<script>alert(1)</script>"), form, http.StatusUnprocessableEntity},
		{"too large", "a.jpg", append(bytes.Clone(good), make([]byte, 65<<20)...), form, http.StatusRequestEntityTooLarge},
		{"no token", "a.jpg", good, url.Values{"digest": form["digest"]}, http.StatusForbidden},
		{"stale", "a.jpg", good, url.Values{"form_token": form["form_token"], "digest": {"x"}}, http.StatusConflict},
	} {
		if got := b.do(b.upload("/photo/hl-0402.yaml", c.file, c.data, c.form)); got.status != c.want {
			t.Errorf("%s: got %d, want %d", c.name, got.status, c.want)
		}
	}
	if b.file("hl-0402.yaml") != before {
		t.Error("a refused picture changed the file")
	}
	stored := func() []string {
		list, err := filepath.Glob(filepath.Join(b.dir, "photos", "hl-0402-*"))
		if err != nil {
			t.Fatal(err)
		}
		return list
	}
	if len(stored()) != 0 {
		t.Errorf("refused pictures were stored: %v", stored())
	}
	if got := b.do(b.upload("/photo/hl-0402.yaml", `..\..\../x/<b> Face up!.PHP`, good, form)); got.status != http.StatusSeeOther {
		t.Fatalf("a good picture was refused: %d %s", got.status, got.body)
	}
	if list := stored(); len(list) != 1 || filepath.Base(list[0]) != "hl-0402-b-face-up.jpg" {
		t.Errorf("stored as %v", list)
	}
	after := b.file("hl-0402.yaml")
	if want := "file: photos/hl-0402-b-face-up.jpg"; strings.Count(after, want) != 1 || len(after) > len(before)+80 {
		t.Errorf("the file does not name it once, or changed otherwise")
	}
	if again := b.do(b.upload("/photo/hl-0402.yaml", "x.jpg", good, form)); again.status != http.StatusConflict {
		t.Errorf("a second picture with the digest of before: %d", again.status)
	}
}
