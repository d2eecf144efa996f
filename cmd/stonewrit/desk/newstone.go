package desk

import (
	"net/http"
	"strings"

	"stonewrit/grading/stone"
)

// newPage asks what a new stone file starts with.
func (d *Desk) newPage(w http.ResponseWriter, r *http.Request) {
	d.showNew(w, r, http.StatusOK, NewStone{Kind: stone.ShortNote}, "")
}

func (d *Desk) showNew(w http.ResponseWriter, r *http.Request, status int, n NewStone, fault string) {
	d.show(w, r, status, "new", map[string]any{
		"Title": d.voice(r).t("New stone"), "New": n, "Fault": fault, "Pieces": stone.PieceKinds(),
		"Reports": []string{stone.Appraisal, stone.ShortNote, stone.Record},
	})
}

func (d *Desk) newStone(w http.ResponseWriter, r *http.Request) {
	n := NewStone{
		Reference: strings.TrimSpace(r.PostForm.Get("reference")), Kind: r.PostForm.Get("kind"), Piece: r.PostForm.Get("piece"), Species: strings.TrimSpace(r.PostForm.Get("species")),
	}
	file, err := d.o.Office.New(r.Context(), n)
	if err != nil {
		d.showNew(w, r, http.StatusUnprocessableEntity, n, err.Error())
		return
	}
	http.Redirect(w, r, "/stone/"+escaped(file)+"?done=new", http.StatusSeeOther)
}
