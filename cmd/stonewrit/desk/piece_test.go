package desk_test

import (
	"net/http"
	"strings"
	"testing"
)

// A piece is edited as stones are: single values, remarks and order kept, two
// windows told apart, and what it comes to beside it.
func TestPieceIsEdited(t *testing.T) {
	b := newBench(t)
	page := b.get("/stone/hl-0500.yaml").body
	for _, want := range []string{"The piece", "Metal and make", "Its stones", `href="/stone/hl-0501.yaml"`, "4.53 g with the stones", "counted together", "EUR", `name="v/metals/#0/fineness"`} {
		if !strings.Contains(page, want) {
			t.Errorf("the page of a piece does not say %q", want)
		}
	}
	before := b.file("hl-0500.yaml")
	first, second := b.form("/stone/hl-0500.yaml"), b.form("/stone/hl-0500.yaml")
	first.Set("v/metals/#0/fineness", "585")
	first.Set("v/mass/gross", "4.60 g")
	second.Set("v/condition", "a claw is bent")
	if got := b.post("/stone/hl-0500.yaml", first); got.status != http.StatusUnprocessableEntity && got.status != http.StatusSeeOther {
		t.Fatalf("%d %s", got.status, got.body)
	}
	after := b.file("hl-0500.yaml")
	if !strings.Contains(after, "fineness: 585") || strings.Count(after, "#") != strings.Count(before, "#") || strings.Count(after, "\n") != strings.Count(before, "\n") {
		t.Errorf("got\n%s", after)
	}
	if got := b.post("/stone/hl-0500.yaml", second); got.status != http.StatusConflict || !strings.Contains(got.body, "a claw is bent") || b.file("hl-0500.yaml") != after {
		t.Errorf("the second window: %d", got.status)
	}
	v := b.form("/stone/hl-0500.yaml")
	v.Set("v/stones/#0/file", "none.yaml")
	j := b.check("hl-0500.yaml", v)
	if f := j.Fields["f-v/stones/#0/file"]; len(f) == 0 || !strings.Contains(f[0].Message, "none.yaml") {
		t.Errorf("a stone file that is not there is not told at its field: %v", j.Fields)
	}
	if list := b.get("/?standing=piece"); list.status != http.StatusOK {
		t.Errorf("pieces cannot be asked for: %d", list.status)
	}
	if list := b.get("/?sort=name").body; !strings.Contains(list, "HL-0500") || !strings.Contains(list, "its stones:") {
		t.Errorf("the list does not tell the piece: %s", list)
	}
	if got := b.get("/stone/hl-0501.yaml").body; !strings.Contains(got, `set in <a href="/stone/hl-0500.yaml">`) {
		t.Error("the page of a stone does not tell the piece that holds it")
	}
}

// Groups that are not on a page at first are fetched as they are in the state of
// the file that the page shows; the page with all fields has them too.
func TestGroupsAreFetched(t *testing.T) {
	b := newBench(t)
	page := b.get("/stone/hl-0403.yaml").body
	whole := b.get("/stone/hl-0403.yaml?all=1").body
	const name = `name="v/worth/purpose"`
	if strings.Contains(page, name) || !strings.Contains(whole, name) {
		t.Error("worth is folded up in one page and shown in the other")
	}
	if few, all := strings.Count(page, "<"), strings.Count(whole, "<"); few > all*2/3 {
		t.Errorf("%d elements of %d are on the page at first", few, all)
	}
	if got := b.get("/part/hl-0403.yaml?at=worth&what=section"); got.status != http.StatusOK || !strings.Contains(got.body, name) {
		t.Errorf("a part of the page: %d %.300s", got.status, got.body)
	}
	if got := b.get("/part/hl-0412.yaml?at=v/tests/%230&what=seldom"); got.status != http.StatusOK || !strings.Contains(got.body, `name="v/tests/#0/set_aside"`) {
		t.Errorf("the seldom fields of a test: %d %.300s", got.status, got.body)
	}
	for _, path := range []string{"/part/none.yaml?at=v/opinion&what=below", "/part/hl-0412.yaml?at=v/nothing&what=below", "/part/../bench.yaml?at=v/opinion", "/part/hl-0412.yaml?at=&what=section"} {
		if got := b.get(path); got.status == http.StatusOK {
			t.Errorf("%s: %d", path, got.status)
		}
	}
}
