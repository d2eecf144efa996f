package desk_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestHostileInTheBrowser lets a real browser, which holds the cookie of the
// desk, meet a foreign name for its address, a foreign page that sends its
// forms, a path out of the folder, and a file that tries to be a page.
func TestHostileInTheBrowser(t *testing.T) {
	ctx := browser(t, chromedp.Flag("host-resolver-rules", "MAP hostile.example 127.0.0.1"))
	b := newBench(t)
	b.enter(ctx)
	before := b.file("hl-0401.yaml")
	token := b.form("/stone/hl-0401.yaml")

	port := b.server.URL[strings.LastIndex(b.server.URL, ":"):]
	do(t, ctx, chromedp.Navigate("http://hostile.example"+port+"/"), chromedp.WaitVisible("main h1"))
	if got := text(t, ctx, "main"); !strings.Contains(got, "only under the address") || strings.Contains(got, "HL-0401") {
		t.Errorf("under a foreign name: %s", got)
	}

	foreign := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		fmt.Fprintf(w, `<h1>foreign</h1><form method="post" action="%s/stone/hl-0401.yaml"><input name="form_token" value="%s"><input name="digest" value="%s"><input name="v/location" value="stolen"><button>go</button></form>`,
			b.server.URL, token.Get("form_token"), token.Get("digest"))
	}))
	defer foreign.Close()
	do(t, ctx, chromedp.Navigate(foreign.URL), chromedp.WaitVisible("h1"), chromedp.Click("button"), chromedp.WaitVisible("main h1"))
	if got := text(t, ctx, "main"); !strings.Contains(got, "did not come from a page of the desk") {
		t.Errorf("a form of a foreign page: %s", got)
	}
	if b.file("hl-0401.yaml") != before {
		t.Error("a foreign page wrote the file")
	}

	for _, path := range []string{"/stone/..%2f..%2fetc%2fpasswd", "/stone/%2fetc%2fpasswd", "/picture/..%2f..%2fetc%2fpasswd?for=row", "/part/..%2f..%2fx.yaml?at=v%2fstone"} {
		b.visit(ctx, path)
		if got := text(t, ctx, "main"); !strings.Contains(got, "no such stone file") {
			t.Errorf("%s: %s", path, got)
		}
	}

	const name = "hl-0666.yaml"
	evil := strings.Replace(b.file("hl-0403.yaml"), "stone: HL-0403", `stone: "<script>window.ran = 1</script><img src=x onerror='window.ran = 1'>"`, 1)
	evil += "# <script>window.ran = 1</script></pre><script>window.ran = 1</script>\n"
	if err := os.WriteFile(filepath.Join(b.dir, name), []byte(evil), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/?sort=name", "/stone/" + name, "/text/" + name} {
		b.visit(ctx, path)
		if !strings.Contains(eval[string](t, ctx, `document.documentElement.textContent`), "window.ran") {
			t.Errorf("%s does not show the file", path)
		}
		if eval[bool](t, ctx, `"ran" in window`) {
			t.Errorf("%s: a file ran as a script", path)
		}
	}
}

// TestNoScriptInTheBrowser reads with scripts switched off: what a stone comes
// to, its readings and its text are there, and a link shows what is folded up.
func TestNoScriptInTheBrowser(t *testing.T) {
	ctx := browser(t, chromedp.Flag("blink-settings", "scriptEnabled=false"))
	b := newBench(t)
	b.enter(ctx)
	b.visit(ctx, "/stone/hl-0403.yaml")
	if eval[int](t, ctx, `document.querySelectorAll("datalist").length`) > 0 {
		t.Fatal("scripts run")
	}
	for _, selector := range []string{"#finding .claims", "#tests .verdict", "#source pre", "#figures svg"} {
		if eval[int](t, ctx, fmt.Sprintf(`document.querySelectorAll(%q).length`, selector)) == 0 {
			t.Errorf("there is no %s", selector)
		}
	}
	b.visit(ctx, eval[string](t, ctx, `document.querySelector("#s-worth .fetch a").getAttribute("href")`))
	if !eval[bool](t, ctx, `document.querySelector("#s-worth").open`) {
		t.Error("the page with all fields has one folded up")
	}
	if got := eval[int](t, ctx, `document.getElementsByName("v/worth/purpose").length`); got != 1 {
		t.Errorf("the page with all fields has %d fields for the purpose", got)
	}
}
