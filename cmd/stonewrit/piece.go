package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"stonewrit/grading"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/report"
)

// setInPieces takes out of the list the stones that a piece of it names: they
// are told of in its document, and by themselves only where they are named. It
// notes the stones that stand in two pieces.
func (r *reader) setInPieces(list []listing) []listing {
	var pieces []*stone.Piece
	at := map[*stone.Piece]int{}
	set := map[string]bool{}
	for i, l := range list {
		if l.Sort != stone.SortPiece {
			continue
		}
		src, err := l.source.read()
		if err != nil {
			continue // told when it is read
		}
		p, _ := r.stones.Piece(l.file, src)
		pieces, at[p] = append(pieces, p), i
		for _, f := range p.Files() {
			file := besideFile(l.file, f)
			set[absolute(file)] = true
			r.benches.above(file) // while nobody else asks
		}
	}
	for p, problems := range grading.SetTwice(pieces) {
		list[at[p]].twice = problems
	}
	return slices.DeleteFunc(list, func(l listing) bool { return l.dir != "" && set[absolute(l.file)] })
}

// besideFile is the path of a file that another names, from its own folder.
func besideFile(file, named string) string {
	return filepath.Join(filepath.Dir(file), filepath.FromSlash(strings.ReplaceAll(named, `\`, "/")))
}

// absolute is a path to compare others with.
func absolute(path string) string {
	if full, err := filepath.Abs(path); err == nil {
		return full
	}
	return filepath.Clean(path)
}

// readItems reads a piece file, and the stone files that it names.
func (r *reader) readItems(rec *record) {
	rec.piece, rec.problems = r.stones.Piece(rec.file, rec.src)
	rec.stone = rec.piece.Head()
	rec.problems = append(rec.problems, rec.twice...)
	if rec.unread() && (rec.bench == nil || rec.bench.usable()) {
		rec.problems = append(rec.problems, stone.AgainstPiece(rec.piece, rec.bench.record(), rec.bench.today(r.p.now()))...)
	}
	rec.problems.Sort()
	if rec.unread() {
		return
	}
	for i, s := range rec.piece.Stones {
		if s.File == "" {
			continue
		}
		file := besideFile(rec.file, s.File)
		one := r.read(listing{source: r.setSource(rec, s.File, file), bench: r.benches.above(file)})
		if one.piece != nil {
			one.problems = stone.Problems{{Severity: stone.Error, Line: 1, Column: 1, Message: "a piece file, a stone file was expected"}}
		}
		if one.unread() {
			first := one.problems[slices.IndexFunc(one.problems, func(p stone.Problem) bool { return p.Severity == stone.Error })]
			rec.problems = append(rec.problems, rec.piece.Problem(stone.Error, fmt.Sprintf("stones[%d].file", i), phrase.Say("%s cannot be used: %s: %s", s.File, first.Where(file), first.Message), first.Hint))
		}
		rec.set = append(rec.set, one)
	}
	rec.problems.Sort()
}

// setSource is the source of a stone file that a piece names. Nothing outside of
// the folder that the piece was found in is reached.
func (r *reader) setSource(rec *record, named, file string) source {
	out := source{file: file, Heading: stone.Heading{Sort: stone.SortStone}}
	out.dir, out.below = filepath.Dir(rec.file), filepath.FromSlash(strings.ReplaceAll(named, `\`, "/"))
	if src, err := out.read(); err == nil {
		out.Heading = stone.Head(src)
		if out.Sort == stone.SortPiece {
			out.Sort = stone.SortOther // pieces do not hold pieces
		}
	}
	return out
}

// stonesOf reads the stones that the paths lead to, those of pieces among them.
func (r *reader) stonesOf(paths []string) []*record {
	var list []*record
	for _, l := range r.list(paths) {
		rec := r.read(l)
		if rec.piece == nil || rec.unread() {
			list = append(list, rec)
			continue
		}
		list = append(list, rec.set...)
	}
	return list
}

// checkedPiece examines a piece that can be used, with its stones and pictures,
// under a name for the files of both.
func (r *reader) checkedPiece(rec *record, p *stone.Piece, name func(file string) string) *grading.ExaminedPiece {
	today := rec.bench.today(r.p.now())
	var stones []*grading.Examined
	for _, one := range rec.set {
		e := r.tables.ExamineSet(one.stone.Named(name(one.file)), p, one.bench.record(), today)
		e.Problems = append(e.Problems, one.problems...)
		if !e.Problems.Has(stone.Error) {
			e.Problems = append(e.Problems, r.pictureProblems(one)...)
		}
		e.Problems.Sort()
		stones = append(stones, e)
	}
	e := r.tables.ExaminePiece(p, stones, rec.bench.record(), today)
	e.Problems = append(e.Problems, rec.problems...)
	if !e.Problems.Has(stone.Error) {
		e.Problems = append(e.Problems, r.pictureProblems(rec)...)
		e.Problems = append(e.Problems, rec.bench.unwritten()...)
	}
	e.Problems.Sort()
	return e
}

// checkPiece words what is known of a piece and of its stones.
func (r *reader) checkPiece(rec *record, show showing) *checkedStone {
	out := &checkedStone{file: rec.file, problems: rec.problems, piece: true}
	if rec.unread() {
		out.text, out.err = show.stone(rec, &grading.Examined{Stone: rec.stone, Problems: rec.problems})
		return out
	}
	e := r.checkedPiece(rec, rec.piece, func(file string) string { return file })
	out.problems = slices.Clone(e.Problems)
	if e.Problems.Has(stone.Error) {
		out.text, out.err = show.stone(rec, &grading.Examined{Stone: rec.stone, Problems: e.Problems})
		return out
	}
	for _, i := range e.Items {
		if !i.Counted {
			out.problems = append(out.problems, i.Stone.Problems...)
		}
	}
	out.text, out.err = show.piece(rec, e)
	return out
}

// pieceLine is the object of a piece, on a line of its own.
func (r *reader) pieceLine(rec *record, e *grading.ExaminedPiece) (string, error) {
	line, err := e.JSON()
	if err != nil {
		return "", fmt.Errorf("%s: %w", rec.file, err)
	}
	return string(line) + "\n", nil
}

// pieceBlock words what is known of a piece, for somebody at the counter.
func (r *reader) pieceBlock(rec *record, e *grading.ExaminedPiece) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "%s  %s\n", oneLine(e.Piece.Reference), rec.file)
	var metals []string
	for _, m := range e.Metals {
		metals = append(metals, m.Part+": "+m.Name.String())
	}
	b.WriteString(labelled(e.Piece.Kind, strings.Join(metals, "; ")))
	if e.Mass.Gross > 0 {
		text := fmt.Sprintf("%.2f g with the stones", e.Mass.Gross)
		if e.Mass.Net > 0 {
			text += fmt.Sprintf(", %.3f g of metal", e.Mass.Net)
		}
		b.WriteString(labelled("mass", text))
	}
	set := rec.set
	for _, i := range e.Items {
		file := ""
		if !i.Counted && len(set) > 0 {
			file, set = set[0].file, set[1:]
		}
		b.WriteString(labelled(fmt.Sprintf("item %d", i.Number), itemText(i, file)))
	}
	if w := e.Worth; w != nil && w.Conclusion.Amount != "" {
		b.WriteString(labelled("value", w.Currency+" "+w.Conclusion.Amount))
	}
	for _, q := range e.Problems {
		b.WriteString(problemLines(rec.file, q))
	}
	set = rec.set
	for _, i := range e.Items {
		if i.Counted || len(set) == 0 {
			continue
		}
		for _, q := range i.Stone.Problems {
			b.WriteString(problemLines(set[0].file, q))
		}
		set = set[1:]
	}
	b.WriteString("\n")
	return b.String(), nil
}

// itemText is an item of a piece in short: its name, its weight and how its
// claims stand.
func itemText(i grading.Item, file string) string {
	text := i.Name.String()
	if i.Count > 1 {
		text = fmt.Sprintf("%d %s", i.Count, text)
	}
	if i.Carats != "" {
		text += fmt.Sprintf("; %s ct %s", i.Carats, i.Basis)
	}
	if i.Counted {
		return text + "; counted together, not examined one by one"
	}
	var standings []string
	for _, c := range i.Stone.Claims() {
		standings = append(standings, c.Name+" "+string(c.Claim.Standing))
	}
	return text + "; " + strings.Join(standings, ", ") + "; " + file
}

// problems are all that stand against a manuscript.
func (m *manuscript) problems() stone.Problems {
	var all stone.Problems
	for _, part := range m.parts() {
		all = append(all, part.problems...)
	}
	return all
}

// A part is one file of a document, with what was found of it.
type part struct {
	file        string
	stone       *grading.Examined // nil for a piece file
	problems    stone.Problems
	explanation string // of a contradicted claim
}

// parts are the file of the stone, or of the piece and those of its stones.
func (m *manuscript) parts() []part {
	e := m.input.Piece
	if e == nil {
		return []part{{m.rec.file, m.input.Examined, m.input.Examined.Problems, m.input.Examined.Stone.Explanation}}
	}
	list := []part{{m.rec.file, nil, e.Problems, ""}}
	set := m.rec.set
	for _, i := range e.Items {
		if i.Counted || len(set) == 0 {
			continue
		}
		list = append(list, part{set[0].file, i.Stone, i.Stone.Problems, i.Stone.Stone.Explanation + e.Piece.Explanation})
		set = set[1:]
	}
	return list
}

// authorised notes who authorises the document.
func (m *manuscript) authorised(who string) {
	if m.input.Piece != nil {
		m.input.Piece.Piece.Authorised = who
		return
	}
	m.input.Examined.Stone.Authorised = who
}

// pieceManuscript examines a piece, loads the pictures of it and of its stones,
// and draws the evidence of each.
func (r *reader) pieceManuscript(rec *record, shop *workshop) (*manuscript, error) {
	piece := rec.piece.Named(filepath.Base(rec.file))
	e := r.checkedPiece(rec, piece, filepath.Base)
	m := &manuscript{rec: rec, shop: shop, input: report.Input{Piece: e}}
	if e.Problems.Has(stone.Error) {
		return m, nil
	}
	json, err := e.JSON()
	if err != nil {
		return nil, err
	}
	pictures, err := r.pictures(rec)
	if err != nil {
		return nil, err
	}
	m.input = report.Input{
		Piece: e, Gems: r.tables.Gems, Wording: shop.wording, Photos: pictures, StoneFile: rec.src, JSON: json, Program: name + " " + version(),
	}
	var errs []error
	set := rec.set
	for _, i := range e.Items {
		if i.Counted {
			continue
		}
		of, err := r.setOf(set[0], i, rec.piece.Report, shop)
		errs, m.input.Set, set = append(errs, err), append(m.input.Set, of), set[1:]
	}
	m.letterhead()
	return m, errors.Join(errs...)
}

// setOf is what belongs to one stone of a piece.
func (r *reader) setOf(rec *record, i grading.Item, kind string, shop *workshop) (report.Set, error) {
	pictures, err := r.pictures(rec)
	if err != nil {
		return report.Set{}, err
	}
	drawings, err := r.evidence(i.Stone, kind, shop)
	return report.Set{Photos: pictures, Evidence: drawings, StoneFile: rec.src}, err
}
