package desk

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"stonewrit/grading/stone"
)

// queryOf reads what the list is asked for.
func queryOf(v url.Values) query {
	page, _ := strconv.Atoi(v.Get("page"))
	return query{
		Words: strings.TrimSpace(v.Get("q")), Standing: v.Get("standing"), Kind: v.Get("kind"), Sort: v.Get("sort"),
		Lacking: v.Get("lacking") != "", Page: page,
	}
}

// link is the list at another page.
func (q query) link(page int) string {
	v := url.Values{}
	for key, value := range map[string]string{"q": q.Words, "standing": q.Standing, "kind": q.Kind, "sort": q.Sort} {
		if value != "" {
			v.Set(key, value)
		}
	}
	if q.Lacking {
		v.Set("lacking", "on")
	}
	v.Set("page", strconv.Itoa(page))
	return "/?" + v.Encode()
}

func (d *Desk) listData(r *http.Request) map[string]any {
	q := queryOf(r.URL.Query())
	l := d.index.find(q)
	d.numbers(r.Context(), l.Rows)
	data := map[string]any{"Title": d.words.text("list.title"), "Query": q, "List": l, "Reports": []string{stone.Appraisal, stone.ShortNote, stone.Record}}
	if l.Page > 1 {
		data["Earlier"] = q.link(l.Page - 1)
	}
	if l.Page < l.Pages {
		data["Later"] = q.link(l.Page + 1)
	}
	return data
}

// listPage is the work list.
func (d *Desk) listPage(w http.ResponseWriter, r *http.Request) {
	d.show(w, r, http.StatusOK, "list", d.listData(r))
}

// rowsPart is the list alone, for a page that is searched while one types.
func (d *Desk) rowsPart(w http.ResponseWriter, r *http.Request) {
	part, err := d.part("rows", d.listData(r))
	if err != nil {
		d.broken(w, r, err)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write([]byte(part)) // the browser may have gone
}
