package desk

import (
	"path"
	"strings"

	"stonewrit/grading"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// judgePiece reads and examines the text of a piece file, with the stones that
// it names.
func (d *Desk) judgePiece(file string, src []byte, bench *benchRecord) *judged {
	j := &judged{File: file, Src: src, Bench: bench, sort: stone.SortPiece}
	p, problems := stone.ReadPiece(path.Base(file), src, d.o.Tables.Gems)
	j.Stone, j.Problems = p.Head(), problems
	switch {
	case !bench.usable():
		j.Problems = append(benchProblems(), j.Problems...)
		return j
	case j.Problems.Has(stone.Error):
		return j
	}
	var stones []*grading.Examined
	for _, named := range p.Files() {
		one := d.setStone(file, named, p)
		j.Set = append(j.Set, one)
		stones = append(stones, one.Examined)
	}
	e := d.o.Tables.ExaminePiece(p, stones, bench.record(), d.today(bench))
	j.Problems = append(j.Problems, e.Problems...)
	if !j.Problems.Has(stone.Error) {
		j.Piece = e
		j.Problems = append(j.Problems, d.pictureProblems(j)...)
	}
	j.Problems.Sort()
	return j
}

// setStone examines a stone of a piece by its file, which is named from the
// folder of the piece. Its Examined is nil where the file cannot be used.
func (d *Desk) setStone(piece, named string, p *stone.Piece) *judged {
	j := &judged{File: path.Join(path.Dir(piece), strings.ReplaceAll(named, `\`, "/")), sort: stone.SortStone}
	src, err := d.readStone(j.File)
	if err != nil || stone.Sniff(src) != stone.SortStone {
		j.Stone, _ = stone.Read(path.Base(j.File), nil, d.o.Tables.Gems)
		return j
	}
	j.Src, j.Bench = src, d.benchFor(j.File)
	j.Stone, j.Problems = stone.Read(path.Base(j.File), src, d.o.Tables.Gems)
	if !j.Bench.usable() || j.Problems.Has(stone.Error) {
		return j
	}
	e := d.o.Tables.ExamineSet(j.Stone, p, j.Bench.record(), d.today(j.Bench))
	j.Problems = append(j.Problems, e.Problems...)
	if !j.Problems.Has(stone.Error) {
		j.Examined = e
		j.Problems = append(j.Problems, d.pictureProblems(j)...)
	}
	j.Problems.Sort()
	return j
}

// itemView is one entry of a piece as the page tells it.
type itemView struct {
	Number, Count       int
	Name, Carats, Basis string
	File                string // of a stone with a file of its own
	Claims              []claimView
	Stops               int // what keeps the stone from going out with the piece
}

// tellPiece tells what a piece comes to.
func (v *viewer) tellPiece(f *findingView, j *judged) {
	e, set := j.Piece, j.Set
	for _, i := range e.Items {
		item := itemView{Number: i.Number, Count: i.Count, Name: i.Name.String(), Carats: i.Carats, Basis: v.voice.term(i.Basis)}
		if !i.Counted && len(set) > 0 {
			item.File, item.Stops = set[0].File, set[0].stops()
			item.Claims = v.claims(i.Stone)
			f.Stops += item.Stops
			set = set[1:]
		}
		f.Items = append(f.Items, item)
	}
	for _, m := range e.Metals {
		f.Values = append(f.Values, v.voice.t("%s: %s", m.Part, v.voice.line(m.Name)))
	}
	if e.Mass.Gross > 0 {
		f.Weight = append(f.Weight, v.voice.t("%.2f g with the stones", e.Mass.Gross))
	}
	if e.Mass.Net > 0 {
		f.Weight = append(f.Weight, v.voice.t("%.3f g of metal", e.Mass.Net))
	}
	for _, t := range e.Totals {
		f.Weight = append(f.Weight, v.voice.t("%s ct of %s in all", t.Carats, t.Name.String()))
	}
	if w := e.Worth; w != nil && w.Conclusion.Amount != "" {
		f.Worth = w.Currency + " " + w.Conclusion.Amount
	}
}

// standingsOf are the worst standings of the stones of a piece, by claim.
func standingsOf(set []*judged) map[string]string {
	worst := map[string]string{}
	order := map[string]int{"": 0, "supported": 1, "undecided": 2, "contradicted": 3}
	for _, one := range set {
		if one.Examined == nil {
			continue
		}
		for _, c := range one.Examined.Claims() {
			if s := string(c.Claim.Standing); order[s] > order[worst[c.Name]] {
				worst[c.Name] = s
			}
		}
	}
	return worst
}

// pieceRow tells a piece in the list: what it is, what it holds, and how its
// stones stand.
func (d *Desk) pieceRow(r *row, j *judged, src []byte) {
	p, _ := stone.ReadPiece(path.Base(j.File), src, d.o.Tables.Gems)
	r.Piece = true
	var parts []phrase.Line
	if p.Kind != "" {
		parts = append(parts, phrase.Say("%s", phrase.Word(p.Kind)))
	}
	for _, m := range p.Metals {
		parts = append(parts, phrase.Say("%s", phrase.Word(strings.TrimSpace(m.Colour+" "+m.Metal))))
	}
	for _, s := range p.Stones {
		if s.What != "" {
			parts = append(parts, phrase.Say("%s", phrase.Word(s.What)))
		}
	}
	for _, one := range j.Set {
		r.Holds = append(r.Holds, one.File)
		parts = append(parts, opinionOf(one.Stone))
	}
	r.Opinion = phrase.Commas(parts...)
	worst := standingsOf(j.Set)
	r.Species, r.Growth, r.Treatment = worst["species"], worst["growth"], worst["treatment"]
	for _, one := range j.Set {
		if n := one.stops(); n > 0 {
			r.Lacks = append(r.Lacks, stone.Problem{Severity: stone.Missing, Message: phrase.Say("%s", one.File)})
		}
	}
}
