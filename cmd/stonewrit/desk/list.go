package desk

import (
	"html"
	"io"
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

// listData is all that a page of the list shows but its rows.
func (d *Desk) listData(r *http.Request) (map[string]any, listing) {
	q := queryOf(r.URL.Query())
	l := d.index.find(q)
	data := map[string]any{"Title": d.voice(r).t("Stones"), "Query": q, "List": l, "Reports": []string{stone.Appraisal, stone.ShortNote, stone.Record}}
	if l.Page > 1 {
		data["Earlier"] = q.link(l.Page - 1)
	}
	if l.Page < l.Pages {
		data["Later"] = q.link(l.Page + 1)
	}
	return data, l
}

// listPage is the work list. It goes out row by row, as the stones are judged:
// the first ones are on the screen while others are still being read.
func (d *Desk) listPage(w http.ResponseWriter, r *http.Request) {
	data, l := d.listData(r)
	d.dress(r, "list", data)
	d.rows(w, r, "list.html", "listend", data, l)
}

// rowsPart is the list alone, for a page that is searched while one types.
func (d *Desk) rowsPart(w http.ResponseWriter, r *http.Request) {
	data, l := d.listData(r)
	d.rows(w, r, "rowshead", "rowsend", data, l)
}

// firstRows go out one by one; the others a few at a time.
const firstRows = 8

// rows writes what stands before the rows, the rows, and what stands behind
// them.
func (d *Desk) rows(w http.ResponseWriter, r *http.Request, head, end string, data map[string]any, l listing) {
	v := d.voice(r)
	part, err := v.part(head, data)
	if err != nil {
		d.broken(w, r, err)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	send := http.NewResponseController(w)
	_, _ = io.WriteString(w, part) // the browser may have gone, here and below
	_ = send.Flush()
	numbers, n := d.numbers(r.Context()), 0
	for one := range d.index.inOrder(r.Context(), l.Rows) {
		row := *one
		if e, ok := numbers[row.Reference]; ok {
			row.Number, row.NumberState = e.Number, e.State
		}
		if held := d.index.holder(row.File); held != nil {
			row.SetIn = held.Reference
		}
		part, err := v.part("row", &row)
		if err != nil {
			part = "<tr><td colspan=6>" + html.EscapeString(err.Error()) + "</td></tr>"
		}
		_, _ = io.WriteString(w, part)
		if n++; n <= firstRows || n%firstRows == 0 {
			_ = send.Flush()
		}
	}
	data["Count"] = n
	if part, err = v.part(end, data); err == nil {
		_, _ = io.WriteString(w, part)
	}
}
