package report_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/report"
)

// A complete document that the rows of statements.csv speak of: a demo file,
// with the account of another one where it has none of its own, and changed.
type complete struct{ kind, file, account, edits string }

// A statementRow asks for one statement in some documents.
type statementRow struct {
	id        string
	documents []string
	wanted    string // what the document must say
	edits     string // to the complete document: what makes the condition hold
	without   string // takes the input out
	finding   string // severity of what is found then; or always, condition, unread
	why       string
}

// Every statement that the list asks of a kind of document is either found in a
// complete document of that kind, and missed by the check where its input is
// taken out; or stands in not-met.csv with the reason. The list, with the clause
// of every statement, is grading/data/statements.csv; the phrases are ours.
//
// The column finding says what the check finds without the input. "always"
// stands for a sentence that every document of the kind makes, "condition" for
// one that is made where the edits make its condition hold, "unread" for an
// input without which the file is not read at all: none of these has an input to
// be missed by the check.
func TestRequiredStatements(t *testing.T) {
	documents := readDocuments(t)
	rows := readStatementRows(t)
	met, shelf := map[string]bool{}, shelf{}
	for i, row := range rows {
		for _, name := range row.documents {
			doc, ok := documents[name]
			if !ok {
				t.Fatalf("row %d, %s: there is no document %q", i+2, row.id, name)
			}
			t.Run(fmt.Sprintf("%s in %s", row.id, name), func(t *testing.T) {
				row.check(t, shelf, doc)
				if !t.Failed() {
					met[row.id+" "+doc.kind] = true
				}
			})
		}
	}
	countStatements(t, met)
}

// countStatements tells how many statements are met, and refuses one that is
// neither met nor told as not met.
func countStatements(t *testing.T, met map[string]bool) {
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	reasons := readReasons(t)
	var count, idle, told int
	for _, s := range tb.Statements() {
		for _, kind := range []string{stone.Appraisal, stone.ShortNote, stone.Record} {
			key := s.ID + " " + letterOf(kind)
			reason, ok := reasons[key]
			switch mark := s.Mark(kind); {
			case mark == "-":
				if met[key] || ok {
					t.Errorf("%s is not asked of a document of kind %s", s.ID, kind)
				}
			case met[key] && ok:
				t.Errorf("%s, %s: met, and told as not met", s.ID, kind)
			case met[key]:
				count++
			case ok && reason.idle:
				idle++
			case ok:
				told++
				t.Logf("not met: %s, %s (%s, %s): %s", s.ID, kind, mark, s.Source, reason.text)
			default:
				t.Errorf("%s (%s): asked of a document of kind %s with mark %s, and neither met nor told", s.ID, s.Source, kind, mark)
			}
		}
	}
	t.Logf("required statements by kind of document: %d met, %d told as not met, %d whose condition never arises", count, told, idle)
}

func letterOf(kind string) string {
	return map[string]string{stone.Appraisal: "A", stone.ShortNote: "N", stone.Record: "R"}[kind]
}

// check looks for the statement in the document, and for what the check finds
// without its input.
func (r statementRow) check(t *testing.T, shelf shelf, doc complete) {
	said := shelf.of(t, doc, r.edits)
	if len(r.wanted) < 3 {
		t.Errorf("%q is nothing to look for", r.wanted)
	}
	if !strings.Contains(said.text, r.wanted) {
		t.Errorf("the document does not say %q (%s)", r.wanted, r.why)
	}
	if !slices.Contains([]string{"missing", "warning", "finding", "note"}, r.finding) {
		if r.finding == "unread" {
			r.unread(t, doc)
		}
		return
	}
	if found := ofStatement(said.problems, r.id); len(found) > 0 {
		t.Errorf("found in the complete document: %+v", found)
	}
	file, bench := doc.make(t, r.edits+" | "+r.without)
	found := ofStatement(examineDemo(t, file, demoBench(t, bench)).problems(), r.id)
	if len(found) == 0 {
		t.Fatalf("without %s nothing is found of it (%s)", r.without, r.why)
	}
	for _, p := range found {
		if p.Message == "" || p.Hint == "" || p.Line == 0 {
			t.Errorf("%+v has no place, words or hint", p)
		}
	}
	if !slices.ContainsFunc(found, func(p stone.Problem) bool { return string(p.Severity) == r.finding }) {
		t.Errorf("%+v, want severity %s", found, r.finding)
	}
}

// A shelf keeps what complete documents say, since many rows ask the same one.
// Every document of it takes the place of another, as the statements on
// amendments ask.
type shelf map[string]saying

type saying struct {
	text     string
	problems stone.Problems
}

func (s shelf) of(t *testing.T, doc complete, edits string) saying {
	key := doc.kind + doc.file + doc.edits + " | " + edits
	if said, ok := s[key]; ok {
		return said
	}
	file, bench := doc.make(t, edits)
	in := demoInput(t, file, demoBench(t, bench))
	in.Replaces = &report.Replaced{Number: "HL-2026-000401-13", Issued: afterDemo, Because: "a weight was misread", Changes: []report.Change{{Field: "weight"}}}
	composed, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	var problems stone.Problems
	if in.Piece != nil {
		problems = examined{piece: in.Piece}.problems()
	} else {
		problems = in.Examined.Problems
	}
	s[key] = saying{wholeText(composed), problems}
	return s[key]
}

// unread asks that the file is not read without the input.
func (r statementRow) unread(t *testing.T, doc complete) {
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	file, bench := doc.make(t, r.edits+" | "+r.without)
	var problems stone.Problems
	if stone.Sniff(file.src) == stone.SortPiece {
		_, problems = stone.ReadPiece(file.name, file.src, tb.Gems)
	} else {
		_, problems = stone.Read(file.name, file.src, tb.Gems)
	}
	_, ofBench := stone.ReadBench("bench.yaml", bench, tb.Gems)
	if !problems.Has(stone.Error) && !ofBench.Has(stone.Error) {
		t.Errorf("with %s the files are read all the same", r.without)
	}
}

func ofStatement(problems stone.Problems, id string) stone.Problems {
	var list stone.Problems
	for _, p := range problems {
		if p.Statement == id {
			list = append(list, p)
		}
	}
	return list
}

// wholeText is all that the pages print, with the words that the layout sets in
// heads and feet.
func wholeText(doc report.Document) string {
	parts := []string{textOf(doc), doc.Words.PageOf, doc.Words.Continued, strings.Join(doc.Practice.Contact, " ")}
	for _, a := range doc.Attachments {
		parts = append(parts, a.Name+": "+a.Description)
	}
	return plainSpaces(strings.Join(parts, "\n"))
}

func readTable(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/statements/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func readDocuments(t *testing.T) map[string]complete {
	documents := map[string]complete{}
	for _, row := range readTable(t, "documents.csv") {
		documents[row[0]] = complete{row[1], row[2], row[3], row[4]}
	}
	return documents
}

func readStatementRows(t *testing.T) []statementRow {
	var rows []statementRow
	for _, c := range readTable(t, "statements.csv") {
		rows = append(rows, statementRow{c[0], strings.Split(c[1], ", "), c[2], c[3], c[4], c[5], c[6]})
	}
	return rows
}

// A reason is why a statement is not met: its condition never arises with what
// the program does, or it is truly missing.
type reason struct {
	idle bool
	text string
}

func readReasons(t *testing.T) map[string]reason {
	reasons := map[string]reason{}
	for _, c := range readTable(t, "not-met.csv") {
		for _, kind := range strings.Split(c[1], "") {
			reasons[c[0]+" "+kind] = reason{c[2] == "never arises", c[3]}
		}
	}
	return reasons
}

// A complete document has nothing to mend: what the rows find is found by what
// they take out.
func TestCompleteDocuments(t *testing.T) {
	for name, doc := range readDocuments(t) {
		file, bench := doc.make(t, "")
		for _, p := range examineDemo(t, file, demoBench(t, bench)).problems() {
			if p.Severity == stone.Missing {
				t.Errorf("%s: %s: %s: %s", name, p.Severity, p.Path, p.Message)
			}
		}
	}
}

// The list of statements is whole: no id twice, and marks and sources for all.
func TestStatementList(t *testing.T) {
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, s := range tb.Statements() {
		if seen[s.ID] || s.Source == "" || s.Basis == "" || s.Section < 1 || s.Section > 15 {
			t.Errorf("%+v", s)
		}
		seen[s.ID] = true
	}
	if len(seen) < 200 {
		t.Errorf("%d statements", len(seen))
	}
	var _ grading.Statement = tb.Statements()[0]
}
