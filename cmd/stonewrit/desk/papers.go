package desk

import (
	"io"
	"mime"
	"net/http"
	"strconv"
	"strings"
)

// paper shows a document.
func (d *Desk) paper(w http.ResponseWriter, r *http.Request, p Paper, err error) {
	if err != nil {
		d.show(w, r, http.StatusUnprocessableEntity, "refused", map[string]any{"Title": d.voice(r).t("No document"), "Text": err.Error()})
		return
	}
	w.Header().Set("Content-Type", p.Type)
	w.Header().Set("Content-Length", strconv.Itoa(len(p.Data)))
	w.Header().Set("Content-Disposition", mime.FormatMediaType("inline", map[string]string{"filename": p.Name}))
	_, _ = w.Write(p.Data) // the browser may have gone
}

// draft shows an unnumbered proof.
func (d *Desk) draft(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	p, err := d.o.Office.Draft(r.Context(), file)
	if err != nil {
		a := Answer{Lines: strings.Split(err.Error(), "\n")}
		d.showStone(w, r, http.StatusUnprocessableEntity, stoneState{file: file, src: src, was: digest(src), answer: &a})
		return
	}
	d.paper(w, r, p, nil)
}

// issue gives a stone a number, or the number it replaces another by. The page
// that asks for it must have shown the file as it is.
func (d *Desk) issue(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	if digest(src) != r.PostForm.Get("digest") {
		d.showStone(w, r, http.StatusConflict, stoneState{file: file, src: src, was: digest(src), notice: "notice.issuechanged"})
		return
	}
	var a Answer
	if number := strings.TrimSpace(r.PostForm.Get("number")); number != "" {
		a, err = d.o.Office.Amend(r.Context(), number, file, strings.TrimSpace(r.PostForm.Get("because")), r.PostForm.Get("authorised_by"))
	} else {
		a, err = d.o.Office.Issue(r.Context(), file, r.PostForm.Get("authorised_by"))
	}
	if err != nil {
		a = Answer{Lines: []string{err.Error()}}
	}
	status := http.StatusOK
	if !a.Good {
		status = http.StatusUnprocessableEntity
	}
	d.showStone(w, r, status, stoneState{file: file, src: src, was: digest(src), answer: &a})
}

// registerPage shows the book.
func (d *Desk) registerPage(w http.ResponseWriter, r *http.Request) { d.showRegister(w, r, nil) }

func (d *Desk) showRegister(w http.ResponseWriter, r *http.Request, a *Answer) {
	entries, err := d.o.Office.Entries(r.Context())
	fault := ""
	if err != nil {
		fault = err.Error()
	}
	status := http.StatusOK
	if a != nil && !a.Good {
		status = http.StatusUnprocessableEntity
	}
	d.show(w, r, status, "register", map[string]any{"Title": d.voice(r).t("Register"), "Entries": entries, "Fault": fault, "Answer": d.viewer(d.voice(r), nil).answer(a)})
}

// void withdraws a number.
func (d *Desk) void(w http.ResponseWriter, r *http.Request) {
	a, err := d.o.Office.Void(r.Context(), strings.TrimSpace(r.PostForm.Get("number")), strings.TrimSpace(r.PostForm.Get("because")))
	if err != nil {
		a = Answer{Lines: []string{err.Error()}}
	}
	d.showRegister(w, r, &a)
}

// document shows what was issued under a number.
func (d *Desk) document(w http.ResponseWriter, r *http.Request) {
	p, err := d.o.Office.Document(r.Context(), r.PathValue("number"))
	d.paper(w, r, p, err)
}

// inventory shows the list of the collection.
func (d *Desk) inventory(w http.ResponseWriter, r *http.Request) {
	p, err := d.o.Office.Inventory(r.Context())
	d.paper(w, r, p, err)
}

// verifyPage asks for the PDF to be verified.
func (d *Desk) verifyPage(w http.ResponseWriter, r *http.Request) {
	d.show(w, r, http.StatusOK, "verify", map[string]any{"Title": d.voice(r).t("Verify a document")})
}

func (d *Desk) verify(w http.ResponseWriter, r *http.Request) {
	in, _, err := r.FormFile("paper")
	if err != nil {
		d.refuse(w, r, http.StatusBadRequest, "verify.none")
		return
	}
	defer in.Close()
	data, err := io.ReadAll(io.LimitReader(in, mostPaper))
	if err != nil {
		d.broken(w, r, err)
		return
	}
	a, err := d.o.Office.Verify(r.Context(), data)
	if err != nil {
		a = Answer{Lines: []string{err.Error()}}
	}
	d.show(w, r, http.StatusOK, "verify", map[string]any{"Title": d.voice(r).t("Verify a document"), "Answer": d.viewer(d.voice(r), nil).answer(&a)})
}
