package desk_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// enter opens the desk in a browser.
func (b *bench) enter(ctx context.Context) {
	b.t.Helper()
	do(b.t, ctx, chromedp.EmulateViewport(1360, 900), chromedp.Navigate(b.server.URL+b.desk.EntryPath()), chromedp.WaitVisible("table.stones"))
}

// open shows a page.
func (b *bench) visit(ctx context.Context, path string) {
	b.t.Helper()
	do(b.t, ctx, chromedp.Navigate(b.server.URL+path), chromedp.WaitVisible("main h1"))
}

// fill puts a value into a field as a person does, and waits for its judgement.
func fill(t *testing.T, ctx context.Context, name, value string) {
	t.Helper()
	got := eval[string](t, ctx, fmt.Sprintf(`(async () => {
		const name = %q;
		if (!document.getElementsByName(name)[0]) location.hash = "#f-" + name.replaceAll(" ", "_");
		for (let i = 0; i < 1000 && !document.getElementsByName(name)[0]; i++) await new Promise((r) => setTimeout(r, 10));
		const field = document.getElementsByName(name)[0];
		if (!field) return "no field";
		for (let d = field.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
		const before = window.deskTimes.length;
		field.focus();
		field.value = %q;
		field.dispatchEvent(new Event("input", { bubbles: true }));
		for (let i = 0; i < 4000 && window.deskTimes.length === before; i++) await new Promise((r) => setTimeout(r, 5));
		return window.deskTimes.length > before ? "" : "no judgement";
	})()`, name, value))
	if got != "" {
		t.Fatalf("%s: %s", name, got)
	}
}

// text is what an element says.
func text(t *testing.T, ctx context.Context, selector string) string {
	t.Helper()
	return eval[string](t, ctx, fmt.Sprintf(`document.querySelector(%q)?.textContent ?? ""`, selector))
}

func TestContradictionInTheBrowser(t *testing.T) {
	ctx := browser(t)
	b := newBench(t)
	b.enter(ctx)
	b.visit(ctx, "/stone/hl-0412.yaml")
	fill(t, ctx, "v/opinion/variety", "")
	fill(t, ctx, "v/opinion/species", "quartz")
	for selector, wants := range map[string][]string{
		"#finding .claims": {"contradicted", "quartz"}, `[data-test="0"] .verdict`: {"conflicts", "1.7"}, "#finding .problems": {"species is contradicted", "explanation"}, "#state": {"2 fields differ"},
	} {
		for _, want := range wants {
			if got := text(t, ctx, selector); !strings.Contains(got, want) {
				t.Errorf("%s does not say %q: %s", selector, want, got)
			}
		}
	}
	do(t, ctx, chromedp.Click(`#finding .problems a[href*="species"]`))
	if got := eval[string](t, ctx, `document.activeElement.name`); got != "v/opinion/species" {
		t.Errorf("the link leads to %q", got)
	}
	if strings.Contains(b.file("hl-0412.yaml"), "quartz") {
		t.Error("judging wrote the file")
	}
}

func TestPicturesInTheBrowser(t *testing.T) {
	ctx := browser(t)
	b := newBench(t)
	b.enter(ctx)
	b.visit(ctx, "/stone/hl-0402.yaml")
	picture, err := filepath.Abs(filepath.Join(b.dir, "photos", "HL-0401-face.jpg"))
	if err != nil {
		t.Fatal(err)
	}
	note := filepath.Join(b.dir, "note.jpg")
	if err := os.WriteFile(note, []byte("no picture"), 0o644); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.SetUploadFiles("#photo", []string{note}), chromedp.Click("#photoform button"))
	waitFor(t, ctx, `document.getElementById("photostate").textContent.includes("is no JPEG")`)
	do(t, ctx, chromedp.SetUploadFiles("#photo", []string{picture}), chromedp.Click("#photoform button"))
	waitFor(t, ctx, `document.querySelectorAll(".pictures img").length === 3 && document.querySelector(".pictures figure:last-child img").naturalWidth > 0`)
	if !strings.Contains(b.file("hl-0402.yaml"), "photos/hl-0402-hl-0401-face.jpg") {
		t.Error("the file does not name the picture")
	}
	// The same picture, dropped on the page.
	do(t, ctx, script(`(async () => {
		const data = await (await fetch(document.querySelector(".pictures img").src)).blob();
		const drop = new DataTransfer();
		drop.items.add(new File([data], "dropped.jpg", { type: "image/jpeg" }));
		dispatchEvent(new DragEvent("drop", { dataTransfer: drop, bubbles: true, cancelable: true }));
	})()`))
	waitFor(t, ctx, `document.querySelectorAll(".pictures img").length === 4`)
}

// waitFor waits until a script says true.
func waitFor(t *testing.T, ctx context.Context, condition string) {
	t.Helper()
	for range 1200 {
		if v, err := chromedp.Run(ctx, chromedp.Evaluate[bool]("!!("+condition+")")); err == nil && v {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	t.Fatalf("never came true: %s; the page says %q, %q", condition, text(t, ctx, ".notice"), text(t, ctx, "#photostate"))
}

func TestTwoWindowsInTheBrowser(t *testing.T) {
	first := browser(t)
	b := newBench(t)
	b.enter(first)
	second, stop := chromedp.NewContext(first)
	defer stop()
	do(t, second, chromedp.EmulateViewport(1360, 900))
	b.visit(first, "/stone/hl-0401.yaml")
	b.visit(second, "/stone/hl-0401.yaml")
	fill(t, first, "v/location", "by the first")
	fill(t, second, "v/location", "by the second")
	do(t, first, chromedp.KeyEvent("s", chromedp.KeyModifiers(kb.ModifierCtrl)), chromedp.WaitVisible(".notice"))
	fill(t, second, "v/examiner", "larrin")
	if got := text(t, second, "#state"); !strings.Contains(got, "changed elsewhere") {
		t.Errorf("the second window is not warned: %s", got)
	}
	do(t, second, chromedp.Click("button.main"), chromedp.WaitVisible(".clashes"))
	if got := text(t, second, ".clashes"); !strings.Contains(got, "by the first") || !strings.Contains(got, "by the second") {
		t.Errorf("the two are not shown side by side: %s", got)
	}
	if !strings.Contains(b.file("hl-0401.yaml"), "by the first") {
		t.Error("the first is lost")
	}
	do(t, second, chromedp.Click("button.main"))
	waitFor(t, second, `location.search === "?done=saved"`)
	if got := b.file("hl-0401.yaml"); !strings.Contains(got, "by the second") || !strings.Contains(got, "examiner: larrin") {
		t.Error("the second could not save after looking")
	}
	do(t, second, chromedp.Reload(), chromedp.WaitVisible("#stone"))
	if got := eval[string](t, second, `document.getElementsByName("v/location")[0].value`); got != "by the second" {
		t.Errorf("after loading again: %q", got)
	}
}

// TestWithoutScript reads and saves with scripts switched off.
func TestWithoutScript(t *testing.T) {
	b := newBench(t)
	page := b.get("/stone/hl-0412.yaml").body
	for _, want := range []string{"supported", "agrees", "1.762 / 1.770", "stonewrit: 1", "the table says"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page alone does not say %q", want)
		}
	}
	v := b.form("/stone/hl-0412.yaml")
	v.Set("action", "add")
	v.Set("add", "magnet")
	got := b.post("/stone/hl-0412.yaml", v)
	if to := got.header.Get("Location"); !strings.Contains(to, "add=magnet") || !strings.Contains(b.get(to).body, `value="magnet"`) {
		t.Errorf("a test cannot be added without a script: %s", to)
	}
}

// violation is a finding of axe-core.
type violation struct {
	ID, Help, Impact string
	Nodes            []struct{ HTML, FailureSummary string }
}

// openAll opens all that is folded up. The bar that stays at the lower edge of
// the window is let go: what it covers comes free by scrolling, and what gets
// the focus is scrolled clear of it. All parts are laid out, also those out of
// sight, whose places are only guessed until then.
const openAll = `
	document.querySelectorAll("details").forEach((d) => { d.open = true; });
	document.querySelectorAll(".save").forEach((s) => { s.style.position = "static"; });
	document.querySelectorAll(".part, .helptest").forEach((p) => { p.style.contentVisibility = "visible"; });`

func TestAccessibleInTheBrowser(t *testing.T) {
	axe, err := os.ReadFile("testdata/axe-core/axe.min.js")
	if err != nil {
		t.Skipf("axe-core is not here: %v", err)
	}
	ctx := browser(t)
	b := newBench(t)
	b.enter(ctx)
	do(t, ctx, script(string(axe)), script(`document.querySelector("main").append(document.createElement("img"), document.createElement("select"))`))
	if n := eval[int](t, ctx, `axe.run({ runOnly: ["wcag2a"] }).then((r) => r.violations.length)`); n < 2 {
		t.Fatalf("axe-core finds %d of two planted faults", n)
	}
	for _, width := range []int64{1360, 390} {
		do(t, ctx, chromedp.EmulateViewport(width, 900))
		for _, path := range []string{"/", "/?standing=contradicted", "/new", "/stone/hl-0412.yaml", "/stone/hl-0412.yaml?all=1", "/stone/hl-0500.yaml", "/stone/hl-0405.yaml?add=refractometer", "/text/hl-0401.yaml", "/register", "/verify", "/bench", "/help", "/stone/none.yaml"} {
			b.visit(ctx, path)
			do(t, ctx, script(openAll), script(string(axe)))
			waitFor(t, ctx, `!document.querySelector("details[open] > .fetch")`)
			raw := eval[string](t, ctx, `axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }).then((r) => JSON.stringify(r.violations))`)
			var found []violation
			if err := json.Unmarshal([]byte(raw), &found); err != nil {
				t.Fatal(err)
			}
			for _, v := range found {
				t.Errorf("%s at %d: %s (%s), %d places: %.300s %.300s", path, width, v.Help, v.ID, len(v.Nodes), v.Nodes[0].HTML, v.Nodes[0].FailureSummary)
			}
			if wide := eval[float64](t, ctx, `document.documentElement.scrollWidth - document.documentElement.clientWidth`); wide > 0 {
				t.Errorf("%s at %d: the page is %v wider than the window", path, width, wide)
			}
		}
	}
}
