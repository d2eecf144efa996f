package desk_test

import (
	"encoding/json"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

func TestSaveChangesOneLine(t *testing.T) {
	b := newBench(t)
	before := b.file("hl-0412.yaml")
	v := b.form("/stone/hl-0412.yaml")
	v.Set("v/location", "safe 3")
	v.Set("v/size/crown_angle", "33.9")
	if got := b.post("/stone/hl-0412.yaml", v); got.status != http.StatusSeeOther || !strings.HasSuffix(got.header.Get("Location"), "?done=saved") {
		t.Fatalf("%d %s", got.status, got.body)
	}
	after := b.file("hl-0412.yaml")
	old, now := strings.Split(before, "\n"), strings.Split(after, "\n")
	var differ []string
	for i, line := range now {
		if i >= len(old) || line != old[i] {
			differ = append(differ, line)
		}
	}
	if len(old) != len(now) || len(differ) != 2 {
		t.Errorf("these lines differ: %q", differ)
	}
	for _, want := range []string{"safe 3", "33.9 deg"} {
		if !strings.Contains(strings.Join(differ, "\n"), want) {
			t.Errorf("%q is not among %q", want, differ)
		}
	}
}

// TestTwoWindows has two pages of one file: the second one to save is told, its
// entries are kept in the page, nothing of the first is lost.
func TestTwoWindows(t *testing.T) {
	b := newBench(t)
	first, second := b.form("/stone/hl-0412.yaml"), b.form("/stone/hl-0412.yaml")
	first.Set("v/location", "safe of the first")
	first.Set("v/examiner", "larrin")
	second.Set("v/location", "safe of the second")
	second.Set("v/quality/condition", "a chip, seen by the second")
	if got := b.post("/stone/hl-0412.yaml", first); got.status != http.StatusSeeOther {
		t.Fatalf("the first was refused: %d", got.status)
	}
	saved := b.file("hl-0412.yaml")
	got := b.post("/stone/hl-0412.yaml", second)
	if got.status != http.StatusConflict || b.file("hl-0412.yaml") != saved {
		t.Fatalf("the second: %d", got.status)
	}
	for _, want := range []string{"safe of the first", "safe of the second", "a chip, seen by the second", "changed on both sides"} {
		if !strings.Contains(got.body, want) {
			t.Errorf("the page does not show %q", want)
		}
	}
	if strings.Contains(got.body, "<td>larrin") {
		t.Error("what only the first changed is shown as an entry of the second")
	}
	for _, g := range hidden.FindAllStringSubmatch(got.body, -1) {
		second.Set(g[1], g[2])
	}
	if again := b.post("/stone/hl-0412.yaml", second); again.status != http.StatusSeeOther {
		t.Fatalf("saving once more: %d", again.status)
	}
	for _, want := range []string{"safe of the second", "a chip, seen by the second", "examiner: larrin"} {
		if !strings.Contains(b.file("hl-0412.yaml"), want) {
			t.Errorf("the file does not say %q", want)
		}
	}
}

// Many windows save at once: each change is whole, one of each state wins, and
// no other is lost without being told.
func TestSavingAtOnce(t *testing.T) {
	b := newBench(t)
	var wait sync.WaitGroup
	var mu sync.Mutex
	won := []string{}
	forms := make([]url.Values, 8)
	for i := range forms {
		forms[i] = b.form("/stone/hl-0401.yaml")
		forms[i].Set("v/location", strings.Repeat(string(rune('a'+i)), 5000))
	}
	for i, v := range forms {
		wait.Go(func() {
			if got := b.post("/stone/hl-0401.yaml", v); got.status == http.StatusSeeOther {
				mu.Lock()
				won = append(won, forms[i].Get("v/location"))
				mu.Unlock()
			}
		})
	}
	wait.Wait()
	if len(won) != 1 || !strings.Contains(b.file("hl-0401.yaml"), won[0]) {
		t.Errorf("%d of 8 saved", len(won))
	}
	if left, _ := filepath.Glob(filepath.Join(b.dir, ".*")); len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
}

// A file whose folder takes no more is not touched, and the page says so.
func TestFolderThatTakesNothing(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("root may write everywhere")
	}
	b := newBench(t)
	v := b.form("/stone/hl-0401.yaml")
	v.Set("v/location", "x")
	if err := os.Chmod(b.dir, 0o500); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(b.dir, 0o700)
	before := b.file("hl-0401.yaml")
	if got := b.post("/stone/hl-0401.yaml", v); got.status != http.StatusInternalServerError || b.file("hl-0401.yaml") != before {
		t.Errorf("got %d", got.status)
	}
}

type judgement struct {
	Changed bool
	Finding string
	Tests   map[string]string
	Fields  map[string][]struct{ Severity, Message string }
	Edits   int
}

func (b *bench) check(file string, v url.Values) judgement {
	b.t.Helper()
	got := b.post("/check/"+file, v)
	var j judgement
	if err := json.Unmarshal([]byte(got.body), &j); err != nil || got.status != http.StatusOK {
		b.t.Fatalf("%d %v %s", got.status, err, got.body)
	}
	return j
}

func TestCheckJudgesAndWritesNothing(t *testing.T) {
	b := newBench(t)
	before := b.file("hl-0412.yaml")
	v := b.form("/stone/hl-0412.yaml")
	if j := b.check("hl-0412.yaml", v); j.Edits != 0 || !strings.Contains(j.Finding, "supported") || !strings.Contains(j.Tests["0"], "agrees") {
		t.Errorf("untouched: %d edits, %s", j.Edits, j.Tests["0"])
	}
	v.Set("v/opinion/species", "quartz")
	v.Set("v/opinion/variety", "")
	j := b.check("hl-0412.yaml", v)
	if !strings.Contains(j.Finding, "contradicted") || !strings.Contains(j.Tests["0"], "conflicts") || j.Edits != 2 {
		t.Errorf("a ruby called quartz: %d edits, %s", j.Edits, j.Tests["0"])
	}
	if len(j.Fields["f-v/opinion/species"]) == 0 {
		t.Errorf("the contradiction is not told at its field: %v", j.Fields)
	}
	v.Set("v/size/length", "8,00 mm")
	j = b.check("hl-0412.yaml", v)
	if f := j.Fields["f-v/size/length"]; len(f) == 0 || f[0].Severity != "error" {
		t.Errorf("a decimal comma is not told at its field: %v", j.Fields)
	}
	v.Set("v/tests/#40/test", "polariscope")
	v.Set("v/tests/#40/sees", "stays dark")
	v.Set("v/tests/#40/orientations", "3")
	v.Del("v/size/length")
	v.Set("v/opinion/species", "corundum")
	if j = b.check("hl-0412.yaml", v); !strings.Contains(j.Tests["40"], "conflicts") {
		t.Errorf("a new test is not judged at its place: %v", j.Tests)
	}
	if b.file("hl-0412.yaml") != before {
		t.Error("checking wrote the file")
	}
}

func TestCheckSaysThatTheFileChanged(t *testing.T) {
	b := newBench(t)
	v := b.form("/stone/hl-0401.yaml")
	if err := os.WriteFile(filepath.Join(b.dir, "hl-0401.yaml"), []byte(b.file("hl-0401.yaml")+"# a remark of an editor\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if j := b.check("hl-0401.yaml", v); !j.Changed {
		t.Error("a file changed by an editor is not told")
	}
	v.Set("v/location", "x")
	if got := b.post("/stone/hl-0401.yaml", v); got.status != http.StatusConflict || !strings.Contains(b.file("hl-0401.yaml"), "a remark of an editor") {
		t.Errorf("got %d", got.status)
	}
}

func TestNewStoneAndPapers(t *testing.T) {
	b := newBench(t)
	v := b.form("/new")
	v.Set("reference", "HL-0600")
	v.Set("kind", "note")
	v.Set("species", "spinel")
	got := b.post("/new", v)
	if got.status != http.StatusSeeOther || got.header.Get("Location") != "/stone/hl-0600.yaml?done=new" {
		t.Fatalf("%d %s", got.status, got.header.Get("Location"))
	}
	if got := b.post("/new", v); got.status != http.StatusUnprocessableEntity || !strings.Contains(got.body, "is there already") {
		t.Errorf("the same reference again: %d", got.status)
	}
	issue := b.form("/stone/hl-0600.yaml")
	issue.Set("authorised_by", "okafor")
	b.office.refuse = []string{"the document needs the condition of the item"}
	if got := b.post("/issue/hl-0600.yaml", issue); got.status != http.StatusUnprocessableEntity || !strings.Contains(got.body, b.office.refuse[0]) {
		t.Errorf("a refusal is not told: %d", got.status)
	}
	b.office.refuse = nil
	if got := b.post("/issue/hl-0600.yaml", issue); got.status != http.StatusOK || !strings.Contains(got.body, "/document/HL-2026-000001-16") {
		t.Errorf("issuing: %d", got.status)
	}
	issue.Set("digest", "old")
	if got := b.post("/issue/hl-0600.yaml", issue); got.status != http.StatusConflict {
		t.Errorf("issuing a file that changed: %d", got.status)
	}
	if len(b.office.asked) != 2 {
		t.Errorf("the office was asked %q", b.office.asked)
	}
	void := b.form("/register")
	void.Set("number", "HL-2026-000001-16")
	if got := b.post("/void", void); got.status != http.StatusUnprocessableEntity {
		t.Errorf("withdrawing without a reason: %d", got.status)
	}
}

func TestTextPage(t *testing.T) {
	b := newBench(t)
	v := b.form("/text/hl-0401.yaml")
	stale := b.form("/text/hl-0401.yaml")
	text := strings.Replace(b.file("hl-0401.yaml"), "safe 1", "safe 9", 1)
	v.Set("text", strings.ReplaceAll(text, "\n", "\r\n"))
	if got := b.post("/text/hl-0401.yaml", v); got.status != http.StatusSeeOther || b.file("hl-0401.yaml") != text {
		t.Errorf("%d", got.status)
	}
	stale.Set("text", "stonewrit: 1\nstone: X\n")
	if got := b.post("/text/hl-0401.yaml", stale); got.status != http.StatusConflict || b.file("hl-0401.yaml") != text || !strings.Contains(got.body, "stone: X") {
		t.Errorf("a stale text: %d", got.status)
	}
	broken := b.form("/text/hl-0401.yaml")
	broken.Set("text", "stonewrit: 1\nstone: [\n")
	b.post("/text/hl-0401.yaml", broken)
	if got := b.get("/stone/hl-0401.yaml"); got.status != http.StatusOK || !strings.Contains(got.body, "not YAML") {
		t.Errorf("a file that is no YAML: %d", got.status)
	}
}

func TestBenchPage(t *testing.T) {
	b := newBench(t)
	before := b.file("bench.yaml")
	v := b.form("/bench")
	v.Set("v/practice/contact", "elsewhere@example.com")
	v.Set("id/instruments/+", "gauge-2")
	v.Set("v/instruments/+/kind", "gauge")
	v.Set("v/instruments/+/readability", "0.01 mm")
	if got := b.post("/bench", v); got.status != http.StatusSeeOther {
		t.Fatalf("%d %s", got.status, got.body)
	}
	after := b.file("bench.yaml")
	if !strings.Contains(after, "\n  gauge-2:\n    kind: gauge\n    readability: 0.01 mm\n") || !strings.Contains(after, "elsewhere@example.com") || strings.Count(after, "#") != strings.Count(before, "#") {
		t.Errorf("got\n%s", after)
	}
	if got := b.post("/bench", v); got.status != http.StatusConflict {
		t.Errorf("a stale bench form: %d", got.status)
	}
	bad := b.form("/bench")
	bad.Set("v/page", "A3")
	if got := b.post("/bench", bad); got.status != http.StatusUnprocessableEntity || b.file("bench.yaml") != after {
		t.Errorf("a bench file with which nothing could be judged: %d", got.status)
	}
}
