package desk_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"stonewrit/cmd/stonewrit/desk"
	"stonewrit/grading"
)

// office stands in for the commands: it makes files and remembers what it was
// asked.
type office struct {
	dir     string
	mu      sync.Mutex
	entries []desk.Entry
	asked   []string
	refuse  []string // what keeps stones from being issued
}

const blank = "stonewrit: 1\nstone: %s\nreport: %s\nexamined: 2026-11-02\nexaminer: okafor\n\n# what it is\nopinion:\n  species: %s   # changed at any time\n"

func (o *office) New(_ context.Context, n desk.NewStone) (string, error) {
	if n.Reference == "" {
		return "", errors.New("a reference is needed")
	}
	file := strings.ToLower(n.Reference) + ".yaml"
	f, err := os.OpenFile(filepath.Join(o.dir, file), os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return "", fmt.Errorf("%s is there already", file)
	}
	defer f.Close()
	_, err = fmt.Fprintf(f, blank, n.Reference, n.Kind, n.Species)
	return file, err
}

func (o *office) note(format string, args ...any) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.asked = append(o.asked, fmt.Sprintf(format, args...))
}

func (o *office) Draft(_ context.Context, file string) (desk.Paper, error) {
	o.note("draft %s", file)
	return desk.Paper{Name: "draft.pdf", Type: "application/pdf", Data: []byte("%PDF-1.7 draft")}, nil
}

func (o *office) Issue(_ context.Context, file, by string) (desk.Answer, error) {
	o.note("issue %s by %s", file, by)
	if len(o.refuse) > 0 {
		return desk.Answer{Lines: o.refuse}, nil
	}
	e := desk.Entry{Number: "HL-2026-000001-16", Stone: "HL-0401", Kind: "note", State: "issued", Issued: "2026-11-03"}
	o.entries = append(o.entries, e)
	return desk.Answer{Good: true, Number: e.Number, Lines: []string{"issued"}}, nil
}

func (o *office) Amend(_ context.Context, number, file, because, by string) (desk.Answer, error) {
	o.note("amend %s %s because %s by %s", number, file, because, by)
	return desk.Answer{Good: true, Number: "HL-2026-000002-13"}, nil
}

func (o *office) Void(_ context.Context, number, because string) (desk.Answer, error) {
	o.note("void %s because %s", number, because)
	if because == "" {
		return desk.Answer{}, errors.New("a reason is needed")
	}
	return desk.Answer{Good: true}, nil
}

func (o *office) Verify(_ context.Context, pdf []byte) (desk.Answer, error) {
	return desk.Answer{Good: strings.HasPrefix(string(pdf), "%PDF")}, nil
}

func (o *office) Entries(context.Context) ([]desk.Entry, error) { return o.entries, nil }

func (o *office) Document(_ context.Context, number string) (desk.Paper, error) {
	return desk.Paper{Name: number + ".pdf", Type: "application/pdf", Data: []byte("%PDF-1.7 " + number)}, nil
}

func (o *office) Inventory(context.Context) (desk.Paper, error) {
	return desk.Paper{Name: "inventory.pdf", Type: "application/pdf", Data: []byte("%PDF-1.7 list")}, nil
}

// today is the day of all tests: after every examination of the demo.
func today() time.Time { return time.Date(2026, 11, 3, 10, 0, 0, 0, time.UTC) }

// bench is a desk over a copy of the demo, with a browser's cookies.
type bench struct {
	t      *testing.T
	dir    string
	desk   *desk.Desk
	office *office
	server *httptest.Server
	client *http.Client
}

func newBench(t *testing.T) *bench {
	t.Helper()
	b := &bench{t: t, dir: t.TempDir()}
	if err := os.CopyFS(b.dir, os.DirFS("../../../testdata/demo")); err != nil {
		t.Fatal(err)
	}
	return b.open()
}

func (b *bench) open() *bench {
	b.t.Helper()
	tables, err := grading.Load()
	if err != nil {
		b.t.Fatal(err)
	}
	b.server = httptest.NewUnstartedServer(nil)
	b.office = &office{dir: b.dir}
	b.desk, err = desk.New(desk.Options{Folder: b.dir, Tables: tables, Office: b.office, Now: today, Hosts: []string{b.server.Listener.Addr().String()}})
	if err != nil {
		b.t.Fatal(err)
	}
	b.server.Config.Handler = b.desk.Handler()
	b.server.Start()
	b.t.Cleanup(func() { b.server.Close(); b.desk.Close() })
	b.client = &http.Client{Jar: &jar{}, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	if got := b.get(b.desk.EntryPath()); got.status != http.StatusSeeOther {
		b.t.Fatalf("entering gave %d", got.status)
	}
	return b
}

// jar keeps the cookies of one host.
type jar struct{ cookies []*http.Cookie }

func (j *jar) SetCookies(_ *url.URL, c []*http.Cookie) { j.cookies = append(j.cookies, c...) }
func (j *jar) Cookies(*url.URL) []*http.Cookie         { return j.cookies }

type answer struct {
	status int
	body   string
	header http.Header
}

func (b *bench) do(r *http.Request) answer {
	b.t.Helper()
	resp, err := b.client.Do(r)
	if err != nil {
		b.t.Fatal(err)
	}
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	if err != nil {
		b.t.Fatal(err)
	}
	return answer{resp.StatusCode, string(body), resp.Header}
}

func (b *bench) request(method, path string, body io.Reader) *http.Request {
	b.t.Helper()
	r, err := http.NewRequest(method, b.server.URL+path, body)
	if err != nil {
		b.t.Fatal(err)
	}
	return r
}

func (b *bench) get(path string) answer {
	b.t.Helper()
	return b.do(b.request("GET", path, nil))
}

func (b *bench) post(path string, v url.Values) answer {
	b.t.Helper()
	r := b.request("POST", path, strings.NewReader(v.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return b.do(r)
}

var hidden = regexp.MustCompile(`<input type="hidden" name="(form_token|digest)" value="([^"]*)">`)

// form is what a page's form sends before anything is entered.
func (b *bench) form(path string) url.Values {
	b.t.Helper()
	page := b.get(path)
	v := url.Values{}
	for _, g := range hidden.FindAllStringSubmatch(page.body, -1) {
		v.Set(g[1], g[2])
	}
	if v.Get("form_token") == "" {
		b.t.Fatalf("%s has no form (%d): %s", path, page.status, page.body)
	}
	return v
}

func (b *bench) file(name string) string {
	b.t.Helper()
	src, err := os.ReadFile(filepath.Join(b.dir, name))
	if err != nil {
		b.t.Fatal(err)
	}
	return string(src)
}

func TestEveryPage(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ path, says string }{
		{"/", "HL-0401"}, {"/?q=ruby&page=1", "HL-"}, {"/rows?q=&sort=name", "HL-0402"}, {"/new", "reference"}, {"/stone/hl-0401.yaml", "half width at 95 %"},
		{"/stone/hl-0412.yaml", "refractometer-1"}, {"/text/hl-0401.yaml", "stonewrit: 1"}, {"/register", "No number"}, {"/verify", "PDF"},
		{"/stone/hl-0500.yaml", "shank and head"}, {"/stone/hl-0412.yaml?all=1", "who agreed"}, {"/how/polariscope", "Cross the filters"}, {"/lists", "list-materials"},
		{"/bench", "refractometer-1"}, {"/help", "How it misleads"}, {"/test/polariscope?at=3&file=hl-0401.yaml", "blinks"},
		{"/draft/hl-0401.yaml", "%PDF"}, {"/inventory", "%PDF"}, {"/document/HL-2026-000001-16", "%PDF"}, {"/assets/desk.css", "--paper"},
	} {
		t.Run(c.path, func(t *testing.T) {
			got := b.get(c.path)
			if got.status != http.StatusOK || !strings.Contains(got.body, c.says) {
				t.Errorf("%d, without %q: %.3000s", got.status, c.says, got.body)
			}
			for _, must := range []string{"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy"} {
				if got.header.Get(must) == "" {
					t.Errorf("no header %s", must)
				}
			}
			if strings.Contains(got.body, "<style") || strings.Contains(got.body, " style=") || strings.Contains(got.body, " onclick") {
				t.Error("style or script in line, which the policy refuses")
			}
		})
	}
}
