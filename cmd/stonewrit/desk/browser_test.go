package desk_test

import (
	"context"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

var update = flag.Bool("update", false, "write the screenshots in testdata/screens anew")

// browser starts a real Chromium, or skips the test with the reason.
func browser(t *testing.T, flags ...chromedp.ExecAllocatorOption) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes too long for -short")
	}
	var found string
	if os.Getenv("STONEWRIT_BROWSER_TESTS") == "" {
		t.Skip("tests in a browser take minutes: set STONEWRIT_BROWSER_TESTS=1")
	}
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			found = path
			break
		}
	}
	if found == "" {
		t.Skip("no Chromium is installed: apt-get install chromium")
	}
	opts := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(found), chromedp.UserDataDir(t.TempDir()), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("force-color-profile", "srgb"), chromedp.Flag("font-render-hinting", "none"),
	)
	ctx, stop := chromedp.NewExecAllocator(context.Background(), append(opts, flags...)...)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Skipf("%s does not start here: %v", found, err)
	}
	ctx, stop = context.WithTimeout(ctx, 6*time.Minute)
	t.Cleanup(stop)
	return ctx
}

// step is one thing done in the browser.
type step = chromedp.Action[chromedp.Void]

// do takes steps, and fails the test where one fails.
func do(t *testing.T, ctx context.Context, steps ...step) {
	t.Helper()
	for i, s := range steps {
		if err := chromedp.Do(ctx, s); err != nil {
			t.Fatalf("step %d: %v", i+1, err)
		}
	}
}

// eval is the value of a script.
func eval[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatalf("%s: %v", script, err)
	}
	return v
}

// script runs a script.
func script(text string) step { return chromedp.Evaluate[chromedp.Void](text) }

// shot keeps a picture of what is seen, when the pictures are to be made anew.
func shot(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	if !*update {
		return
	}
	data, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join("testdata", "screens"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join("testdata", "screens", name+".png"), data, 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestScreensInTheBrowser keeps pictures of the pages, few and small.
func TestScreensInTheBrowser(t *testing.T) {
	if !*update {
		t.Skip("pictures are made with -update")
	}
	ctx := browser(t)
	b := newBench(t)
	visit := func(path string) { b.visit(ctx, path); do(t, ctx, chromedp.Sleep(500*time.Millisecond)) }
	do(t, ctx, chromedp.EmulateViewport(1280, 800), chromedp.Navigate(b.server.URL+b.desk.EntryPath()), chromedp.WaitVisible("table.stones"), chromedp.Sleep(500*time.Millisecond))
	shot(t, ctx, "list")
	visit("/stone/hl-0412.yaml")
	shot(t, ctx, "stone")
	do(t, ctx, script(`document.querySelector("#tests").scrollIntoView()`), chromedp.Sleep(200*time.Millisecond))
	shot(t, ctx, "stone-tests")
	visit("/stone/hl-0500.yaml")
	shot(t, ctx, "piece")
	visit("/bench")
	shot(t, ctx, "bench")
	do(t, ctx, chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile))
	visit("/")
	shot(t, ctx, "list-phone")
	visit("/stone/hl-0412.yaml")
	shot(t, ctx, "stone-phone")
	do(t, ctx, chromedp.EmulateViewport(1280, 800))
	visit("/language/de?to=/stone/hl-0412.yaml")
	shot(t, ctx, "stone-german")
}
