package desk

import (
	"net/http"
	"strings"

	"stonewrit/cmd/stonewrit/desk/form"
)

// textPage shows the text of a stone file to be changed by hand.
func (d *Desk) textPage(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	d.showText(w, r, http.StatusOK, file, src, digest(src), "")
}

func (d *Desk) showText(w http.ResponseWriter, r *http.Request, status int, file string, src []byte, was, notice string) {
	bench := d.benchFor(file)
	j := d.judge(file, src, bench)
	v := d.viewer(d.voice(r), bench)
	d.show(w, r, status, "text", map[string]any{
		"Title": j.Stone.Reference, "File": file, "Digest": was, "Source": string(src), "Notice": notice,
		"Finding": d.finding(j, v, &form.Outcome{}), "Lines": linesOf(j), "Drawings": v.drawings(j),
	})
}

// saveText writes a text as it was entered. A text that is faulty is written
// all the same: it is the person's file, and the page tells the faults.
func (d *Desk) saveText(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	text := r.PostForm.Get("text")
	if !strings.Contains(string(src), "\r\n") {
		text = strings.ReplaceAll(text, "\r\n", "\n")
	}
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += "\n"
	}
	switch err := d.write(file, r.PostForm.Get("digest"), []byte(text)); {
	case isChanged(err):
		d.showText(w, r, http.StatusConflict, file, []byte(text), r.PostForm.Get("digest"), "notice.textchanged")
	case err != nil:
		d.broken(w, r, err)
	default:
		http.Redirect(w, r, "/stone/"+escaped(file)+"?done=saved", http.StatusSeeOther)
	}
}
