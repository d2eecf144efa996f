package desk_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"

	"stonewrit/cmd/stonewrit/desk"
	"stonewrit/grading"
)

// handled is a desk without a network, for what the program itself takes.
func handled(b *testing.B) (ask func(method, path string, form url.Values) *httptest.ResponseRecorder) {
	b.Helper()
	dir := b.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../../testdata/demo")); err != nil {
		b.Fatal(err)
	}
	tables, err := grading.Load()
	if err != nil {
		b.Fatal(err)
	}
	d, err := desk.New(desk.Options{Folder: dir, Tables: tables, Office: &office{dir: dir}, Now: today, Hosts: []string{"example.com"}})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { d.Close() })
	handler := d.Handler()
	var cookies []*http.Cookie
	ask = func(method, path string, form url.Values) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		for _, c := range cookies {
			r.AddCookie(c)
		}
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, r)
		return w
	}
	cookies = ask("GET", d.EntryPath(), nil).Result().Cookies()
	return ask
}

func BenchmarkStonePage(b *testing.B) {
	ask := handled(b)
	for b.Loop() {
		if got := ask("GET", "/stone/hl-0412.yaml", nil); got.Code != http.StatusOK {
			b.Fatal(got.Code)
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	ask := handled(b)
	page := ask("GET", "/stone/hl-0412.yaml", nil).Body.String()
	form := url.Values{}
	for _, g := range hidden.FindAllStringSubmatch(page, -1) {
		form.Set(g[1], g[2])
	}
	form.Set("v/tests/#0/readings", "1.762 / 1.770\n1.765 / 1.770\n1.768 / 1.771")
	form.Set("v/size/crown_angle", "33.9")
	for b.Loop() {
		if got := ask("POST", "/check/hl-0412.yaml", form); got.Code != http.StatusOK {
			b.Fatal(got.Code)
		}
	}
}
