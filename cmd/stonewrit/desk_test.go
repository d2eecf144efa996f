package main

import (
	"bufio"
	"bytes"
	"context"
	"crypto/rand"
	"fmt"
	"io"
	"mime/multipart"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// deskAt serves a folder with the real commands behind it.
func deskAt(t *testing.T, dir string) (address string) {
	t.Helper()
	now := func() time.Time { return time.Date(2026, 11, 3, 10, 0, 0, 0, time.UTC) }
	p := &program{world: world{strings.NewReader(""), io.Discard, io.Discard, now, rand.Reader}, out: bufio.NewWriter(io.Discard)}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	d, err := p.newDesk(dir, "", hostsOf(listener.Addr()))
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- serve(ctx, listener, d.Handler()) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
		d.Close()
	})
	return "http://" + listener.Addr().String() + d.EntryPath()
}

// A visitor asks the desk as a browser does.
type visitor struct {
	t      *testing.T
	base   string
	client *http.Client
}

func visit(t *testing.T, dir string) *visitor {
	t.Helper()
	address := deskAt(t, dir)
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	v := &visitor{t, address[:strings.Index(address, "/enter")], &http.Client{Jar: jar}}
	v.get(address[len(v.base):])
	return v
}

func (v *visitor) read(resp *http.Response, err error) (int, string) {
	v.t.Helper()
	if err != nil {
		v.t.Fatal(err)
	}
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	if err != nil {
		v.t.Fatal(err)
	}
	return resp.StatusCode, string(body)
}

func (v *visitor) get(path string) (int, string) {
	v.t.Helper()
	return v.read(v.client.Get(v.base + path))
}

// post sends the form of a page, with what is entered in it.
func (v *visitor) post(page, to string, entered ...string) (int, string) {
	v.t.Helper()
	_, body := v.get(page)
	sent := url.Values{}
	for _, g := range regexp.MustCompile(`<input type="hidden" name="(form_token|digest)" value="([^"]*)">`).FindAllStringSubmatch(body, -1) {
		sent.Set(g[1], g[2])
	}
	for i := 0; i+1 < len(entered); i += 2 {
		sent.Set(entered[i], entered[i+1])
	}
	return v.read(v.client.PostForm(v.base+to, sent))
}

// upload sends a PDF to be verified.
func (v *visitor) upload(pdf string) (int, string) {
	v.t.Helper()
	_, page := v.get("/verify")
	token := regexp.MustCompile(`name="form_token" value="([^"]*)"`).FindStringSubmatch(page)[1]
	var b bytes.Buffer
	w := multipart.NewWriter(&b)
	_ = w.WriteField("form_token", token) // into memory
	part, err := w.CreateFormFile("paper", "some.pdf")
	if err != nil {
		v.t.Fatal(err)
	}
	_, _ = io.WriteString(part, pdf)
	w.Close()
	return v.read(v.client.Post(v.base+"/verify", w.FormDataContentType(), &b))
}

// want holds an answer against what it should be.
func (v *visitor) want(what string, status int, body string, wantStatus int, says ...string) {
	v.t.Helper()
	for _, s := range says {
		if status != wantStatus || !strings.Contains(body, s) {
			v.t.Errorf("%s: %d without %q: %.2500s", what, status, s, notices(body))
		}
	}
}

// notices is what a page tells of what was done.
func notices(body string) string {
	if i := strings.Index(body, `class="notice"`); i >= 0 {
		return body[i:]
	}
	return body
}

var numberOf = regexp.MustCompile(`/document/(HL-2026-[0-9]{6}-[0-9]{2})`)

// The pages of the desk reach the commands, from the first draft to a number
// that is withdrawn.
func TestDeskOffice(t *testing.T) {
	dir := copied(t, "demo")
	v := visit(t, dir)
	for _, c := range []struct {
		path, says string
		status     int
	}{
		{"/", "HL-0401", 200},
		{"/draft/hl-0401.yaml", "%PDF-", 200},
		{"/draft/hl-0500.yaml", "%PDF-", 200},
		{"/register", "No number has been given yet.", 200},
		{"/document/HL-2026-000001-16", "no register", 422},
		{"/document/nonsense", "", 422},
		{"/inventory", "%PDF-", 200},
	} {
		status, body := v.get(c.path)
		v.want(c.path, status, body, c.status, c.says)
	}
	if _, err := os.Stat(filepath.Join(dir, "register.db")); err == nil {
		t.Error("looking at the register made it")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "drafts*")); len(left) > 0 {
		t.Error("a draft was left in the folder")
	}

	status, body := v.post("/stone/hl-0401.yaml", "/issue/hl-0401.yaml", "authorised_by", "larrin")
	v.want("issue", status, body, 200, "Done.", "/document/HL-2026-")
	number := numberOf.FindStringSubmatch(body)
	if number == nil {
		t.Fatal("no number was given")
	}
	_, pdf := v.get("/document/" + number[1])
	status, body = v.upload(pdf)
	v.want("verify", status, body, 200, "Done.", number[1])
	status, body = v.upload(strings.Replace(pdf, "%PDF-1", "%PDF-1", 1) + "x")
	v.want("verify what was changed", status, body, 200, "Not done.", "finding")
	if strings.Contains(body, os.TempDir()) {
		t.Error("a folder of this computer is told")
	}
	status, body = v.post("/stone/hl-0401.yaml", "/issue/hl-0401.yaml", "authorised_by", "larrin")
	v.want("issue again", status, body, 200, number[1], "unchanged")

	v.post("/stone/hl-0401.yaml", "/stone/hl-0401.yaml", "v/location", "safe 9")
	status, body = v.post("/stone/hl-0401.yaml", "/issue/hl-0401.yaml", "number", number[1], "because", "it was moved", "authorised_by", "larrin")
	v.want("amend", status, body, 200, "Done.", "changed", "location")
	status, body = v.post("/register", "/void", "number", number[1], "because", "a trial")
	v.want("void a replaced one", status, body, 422, "Not done.")
	_, body = v.get("/register")
	newer := numberOf.FindAllStringSubmatch(body, -1)
	status, body = v.post("/register", "/void", "number", newer[len(newer)-1][1], "because", "a trial")
	v.want("void", status, body, 200, "Done.", "a trial")
	status, body = v.post("/register", "/void", "number", newer[len(newer)-1][1])
	v.want("void without a reason", status, body, 422, "needs a reason")

	status, body = v.post("/stone/hl-0500.yaml", "/issue/hl-0500.yaml", "authorised_by", "larrin")
	v.want("issue a piece", status, body, 200, "Done.")
}

// What keeps a document from being made is told with a link to its field.
func TestFindingsLeadToTheirFields(t *testing.T) {
	dir := copied(t, "demo")
	v := visit(t, dir)
	status, body := v.post("/new", "/new", "reference", "HL-0800", "kind", "appraisal", "piece", "brooch")
	v.want("a new piece", status, body, 200, "The file is made", "HL-0800")
	status, body = v.post("/stone/hl-0800.yaml", "/issue/hl-0800.yaml")
	v.want("issue what is not described", status, body, 422, "Not done.", "<a href=\"#f-v/")
	status, body = v.post("/new", "/new", "reference", "HL-0801", "kind", "note", "species", "spinel")
	v.want("a new stone", status, body, 200, "The file is made")
	status, body = v.post("/stone/hl-0801.yaml", "/issue/hl-0801.yaml", "authorised_by", "larrin")
	v.want("issue it", status, body, 422, "Not done.", "<a href=\"#f-v/quality/condition\">")
	src, err := os.ReadFile(filepath.Join(dir, "hl-0801.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	faulty := strings.Replace(string(src), "species: spinel", "species: corundum\n  variety: 7", 1)
	if err := os.WriteFile(filepath.Join(dir, "hl-0801.yaml"), []byte(strings.Replace(faulty, "report: note", "report: letter", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	status, body = v.get("/draft/hl-0801.yaml")
	v.want("draft what cannot be read", status, body, 422, "Not done.", "<a href=\"#f-v/report\">")
}

// TestStoneByKeyboardInTheBrowser goes from nothing to a numbered PDF in a real browser and
// never touches the mouse.
func TestStoneByKeyboardInTheBrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("a browser takes too long for -short")
	}
	if os.Getenv("STONEWRIT_BROWSER_TESTS") == "" {
		t.Skip("tests in a browser take minutes: set STONEWRIT_BROWSER_TESTS=1")
	}
	chromium := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil && chromium == "" {
			chromium = path
		}
	}
	if chromium == "" {
		t.Skip("no Chromium is installed: apt-get install chromium")
	}
	dir := copied(t, "demo")
	k := keyboard{t: t, ctx: keyboardBrowser(t, chromium)}
	k.do(chromedp.EmulateViewport(1360, 900), chromedp.Navigate(deskAt(t, dir)), chromedp.WaitVisible("table.stones"))

	k.to(`a[href="/new"]`).press(kb.Enter).page("#reference")
	k.press("HL-0700").to("#species").press("spinel").to("button.main").press(kb.Enter).page("#stone")
	k.to(field("examiner")).press("A. O").to(field("client/name")).press("own stock")
	k.to(field("appearance/colour")).press("red")
	k.to(field("appearance/transparency")).press("transp")
	for _, f := range [][2]string{{"shape", "oval"}, {"cut", "mixed"}, {"length", "7.02"}, {"width", "5.51"}, {"depth", "3.60"}} {
		k.to(field("size/" + f[0])).press(f[1])
	}
	k.to(field("size/instrument")).press("gauge")
	k.to(field("weight/measured")).press("1.003").to(field("weight/instrument")).press("balance")
	k.test("refr").to(field("tests/#0/instrument")).press("refr").to(field("tests/#0/light")).press("sodium").to(field("tests/#0/readings")).press("1.718").press(kb.Enter).press("1.718").press(kb.Enter).press("1.718")
	k.test("polar").to(field("tests/#1/sees")).press("stays d").to(field("tests/#1/orientations")).press("4")
	k.test("magnif").to(field("tests/#2/power")).press("10").to(field("tests/#2/sees")).press("none")
	k.says(`[data-test="0"] .verdict`, "agrees")
	k.to(field("opinion/growth")).press("und")
	k.to(field("quality/condition")).press("no wear or damage seen")
	k.to(field("use/copies")).press("own use")
	k.to("#s-worth > summary").press(kb.Enter)
	if !k.is(`document.getElementById("s-worth").open`) {
		t.Error("a part that is folded up cannot be opened with the keyboard")
	}
	k.press("s", chromedp.KeyModifiers(kb.ModifierCtrl)).says(".notice", "Saved.")

	src, err := os.ReadFile(filepath.Join(dir, "hl-0700.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"measured: 1.003 ct", "length: 7.02 mm", "readings: [1.718, 1.718, 1.718]", "orientations: 4", "# Quantities carry their unit"} {
		if !strings.Contains(string(src), want) {
			t.Errorf("the file does not say %q:\n%s", want, src)
		}
	}
	k.to("#authorised").press("T. L").to("#issue").press(kb.Enter).page(".notice")
	k.says(".notice", "HL-2026-")
	if t.Failed() {
		t.Fatal(k.text("main .notice"), k.text("#finding"))
	}
	issued, err := filepath.Glob(filepath.Join(dir, "issued", "*.pdf"))
	if err != nil || len(issued) != 1 {
		t.Fatalf("issued are %v: %s", issued, k.text(".notice"))
	}
	k.to(`a[href="/register"]`).press(kb.Enter).page("table.stones").says("table.stones", "HL-0700")
}

func field(path string) string { return fmt.Sprintf(`[name="v/%s"]`, path) }

func keyboardBrowser(t *testing.T, chromium string) context.Context {
	t.Helper()
	opts := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(chromium), chromedp.UserDataDir(t.TempDir()), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-component-update", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), opts...)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Skipf("%s does not start here: %v", chromium, err)
	}
	ctx, stop = context.WithTimeout(ctx, 6*time.Minute)
	t.Cleanup(stop)
	return ctx
}

// A keyboard is all that the test has in its hands.
type keyboard struct {
	t   *testing.T
	ctx context.Context
}

func (k keyboard) do(steps ...chromedp.Action[chromedp.Void]) {
	k.t.Helper()
	if err := chromedp.Do(k.ctx, steps...); err != nil {
		k.t.Fatal(err)
	}
}

// press types keys into whatever has the focus.
func (k keyboard) press(keys string, opts ...chromedp.KeyOption) keyboard {
	k.t.Helper()
	k.do(chromedp.KeyEvent(keys, opts...))
	return k
}

// mostTabs is how far apart things may lie on a page.
const mostTabs = 400

// to presses Tab until what is looked for has the focus.
func (k keyboard) to(selector string) keyboard {
	k.t.Helper()
	for range mostTabs {
		k.press(kb.Tab)
		if k.is(fmt.Sprintf(`document.activeElement.matches(%q)`, selector)) {
			return k
		}
	}
	k.t.Fatalf("%s cannot be reached with Tab: it is %s", selector, k.outer(selector))
	return k
}

// test adds a test, its kind chosen by its first letters.
func (k keyboard) test(letters string) keyboard {
	k.t.Helper()
	before := k.text("#tests")
	k.to("#addkind").press(letters).to("#addtest").press(kb.Enter)
	for range 200 {
		if k.text("#tests") != before {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	// the focus is in the new test already: step back so that its fields come next
	return k.press(kb.Tab, chromedp.KeyModifiers(kb.ModifierShift))
}

func (k keyboard) is(script string) bool {
	k.t.Helper()
	v, err := chromedp.Run(k.ctx, chromedp.Evaluate[bool](script))
	if err != nil {
		k.t.Fatal(err)
	}
	return v
}

func (k keyboard) text(selector string) string {
	k.t.Helper()
	v, err := chromedp.Run(k.ctx, chromedp.Evaluate[string](fmt.Sprintf(`document.querySelector(%q)?.textContent ?? ""`, selector)))
	if err != nil {
		k.t.Fatal(err)
	}
	return v
}

// outer shows an element as it is, shortened.
func (k keyboard) outer(selector string) string {
	k.t.Helper()
	v, err := chromedp.Run(k.ctx, chromedp.Evaluate[string](fmt.Sprintf(`document.querySelector(%q)?.closest("details, section, form")?.outerHTML.slice(0, 800) ?? "not there"`, selector)))
	if err != nil {
		k.t.Fatal(err)
	}
	return v
}

// page waits until the next page is there.
func (k keyboard) page(selector string) keyboard {
	k.t.Helper()
	k.do(chromedp.WaitVisible(selector))
	return k
}

// says waits until an element says something.
func (k keyboard) says(selector, want string) keyboard {
	k.t.Helper()
	for range 300 {
		if strings.Contains(k.text(selector), want) {
			return k
		}
		time.Sleep(20 * time.Millisecond)
	}
	k.t.Errorf("%s does not say %q: %.2000s", selector, want, k.text(selector))
	return k
}
