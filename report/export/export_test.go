package export_test

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/report/export"
	"stonewrit/report/pdf"
)

// limits are those of 20 November 2026, with three years for a value.
func limits() export.Limits {
	return export.Limits{Today: time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC), Values: export.Age{Years: 3}}
}

// demo is the demo of the project as a collection.
func demo(t *testing.T) []export.Item {
	t.Helper()
	tables, err := grading.Load()
	if err != nil {
		t.Fatal(err)
	}
	read := func(name string) []byte {
		src, err := os.ReadFile(filepath.Join("..", "..", "testdata", "demo", name))
		if err != nil {
			t.Fatal(err)
		}
		return src
	}
	bench, problems := stone.ReadBench("bench.yaml", read("bench.yaml"), tables.Gems)
	var items []export.Item
	l := limits()
	one := func(name string) *stone.Stone {
		s, more := stone.Read(name, read(name), tables.Gems)
		problems = append(problems, more...)
		return s
	}
	for _, name := range []string{"hl-0401.yaml", "hl-0404.yaml", "hl-0407.yaml", "hl-0409.yaml", "hl-0411.yaml", "hl-0412.yaml", "hl-0413.yaml"} {
		items = append(items, export.Stone(tables.Examine(one(name), bench, l.Today), nil, l))
	}
	piece, more := stone.ReadPiece("hl-0500.yaml", read("hl-0500.yaml"), tables.Gems)
	problems = append(problems, more...)
	set := tables.ExamineSet(one("hl-0501.yaml"), piece, bench, l.Today)
	items = append(items, export.Piece(tables.ExaminePiece(piece, []*grading.Examined{set}, bench, l.Today), l), export.Stone(set, piece, l))
	if problems.Has(stone.Error) {
		t.Fatal(problems)
	}
	return items
}

func find(t *testing.T, items []export.Item, reference string) export.Item {
	t.Helper()
	i := slices.IndexFunc(items, func(i export.Item) bool { return i.Reference == reference })
	if i < 0 {
		t.Fatalf("no %s", reference)
	}
	return items[i]
}

// The figures are those that stand in the demo's files.
func TestItems(t *testing.T) {
	items := demo(t)
	ring, set, amethyst, pearls := find(t, items, "HL-0500"), find(t, items, "HL-0501"), find(t, items, "HL-0411"), find(t, items, "HL-0409")
	for _, tt := range []struct{ what, got, want string }{
		{"the ring's place", ring.Location, "safe 1, tray C"},
		{"a stone without a place of its own is where its piece is", set.Location, "safe 1, tray C"},
		{"what it is set in", set.Piece, "HL-0500"},
		{"the value that others told", amethyst.Value.Money.String() + " " + amethyst.Value.Date + " " + amethyst.Value.Is, "140.00 EUR 2023-06-01 told by others"},
		{"the sum insured", amethyst.Insured.String(), "150 EUR"},
		{"the price paid", amethyst.Paid.String(), "120.00 EUR"},
		{"an old value", strings.Join(amethyst.OutOfDate, "; "), "the value of 2023-06-01 is older than 3 years"},
		{"cultured pearls are never named bare", pearls.Name, "saltwater cultured pearls (with bead nucleus)"},
		{"an imitation is named as one", find(t, items, "HL-0413").Name, "imitation sapphire (laboratory-grown blue spinel, flame fusion)"},
		{"the asking price is no value", find(t, items, "HL-0407").Value.Money.String(), ""},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %q, want %q", tt.what, tt.got, tt.want)
		}
	}
}

func TestSummary(t *testing.T) {
	s := export.Summarise(demo(t))
	var values []string
	for _, v := range s.Values {
		values = append(values, v.Kind+" "+v.Money.String())
	}
	// By hand from the files: 1700 + 1550 + 3900 + 1700; 0411; 0407; 0411; 0411.
	// The aquamarine in the ring is part of the ring's value.
	want := []string{"concluded here 8850.00 EUR", "told by others 140.00 EUR", "asking price 640.00 EUR", "sum insured 150 EUR", "price paid 120.00 EUR"}
	if !slices.Equal(values, want) {
		t.Errorf("values %q, want %q", values, want)
	}
	if s.Pieces != 1 || s.Stones != 1+12+1+61+1+1+1+1 || s.OutOfDate != 1 {
		t.Errorf("%d pieces, %d stones, %d out of date", s.Pieces, s.Stones, s.OutOfDate)
	}
	for _, groups := range [][]export.Group{s.Species, s.Location} {
		files := 0
		for _, g := range groups {
			files += g.Files
		}
		if files != 9 {
			t.Errorf("the groups have %d files, want 9", files)
		}
	}
	if last := s.Species[len(s.Species)-1].Of; last != export.Pieces {
		t.Errorf("the last group is %q", last)
	}
}

// Currencies and kinds are never added to one another, and cents never lost.
func TestSumsAreExact(t *testing.T) {
	item := func(amount, currency string) export.Item {
		return export.Item{Sort: export.SortStone, Count: 1, Species: "beryl", Carats: "0.10", Value: export.Value{Money: export.Money{Amount: amount, Currency: currency}, Is: export.Concluded}}
	}
	var items []export.Item
	for range 1000 {
		items = append(items, item("0.10", "EUR"), item("900000000000000.01", "CHF"), item("1000", "JPY"))
	}
	s := export.Summarise(items)
	got := ""
	for _, m := range s.Species[0].Values {
		got += m.String() + "; "
	}
	if want := "900000000000000010.00 CHF; 100.00 EUR; 1000000 JPY; "; got != want {
		t.Errorf("got %s want %s", got, want)
	}
	if s.Species[0].Carats != "300.00" {
		t.Errorf("%s carats, want 300.00", s.Species[0].Carats)
	}
}

func TestCSV(t *testing.T) {
	items := demo(t)
	items[0].Location = "=HYPERLINK(\"x\"), safe\nwith a \"line\""
	var out bytes.Buffer
	if err := export.CSV(&out, items); err != nil {
		t.Fatal(err)
	}
	text, ok := strings.CutPrefix(out.String(), "\ufeff")
	if !ok {
		t.Error("no mark of UTF-8")
	}
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	columns, err := export.Columns()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 1+len(items) || len(rows[0]) != len(columns) {
		t.Fatalf("%d rows of %d columns", len(rows), len(rows[0]))
	}
	at := slices.Index(rows[0], "kept at")
	if got := rows[1][at]; got != "'"+items[0].Location || export.Plain(got) != items[0].Location {
		t.Errorf("the place reads %q", got)
	}
	if got := rows[1][slices.Index(rows[0], "value")]; got != "1700.00" {
		t.Errorf("the value reads %q", got)
	}
}

func FuzzHarmless(f *testing.F) {
	for _, s := range []string{"", "=1", "'=1", "''@x", "'", "'a", "-5 %", "\tx"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		h := export.Harmless(s)
		if export.Plain(h) != s {
			t.Errorf("%q comes back as %q", s, export.Plain(h))
		}
		if h != "" && strings.ContainsRune("=+-@\t\r", rune(h[0])) {
			t.Errorf("%q begins like a formula", h)
		}
	})
}

func TestJSON(t *testing.T) {
	var out bytes.Buffer
	if err := export.JSON(&out, demo(t), limits()); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Made    string
		Summary struct {
			Values []struct{ Kind, Amount, Currency string } `json:"by_value"`
		}
		Items []struct {
			Reference string
			Carats    float64
			Value     struct{ Amount string }
			Undecided []string
		}
	}
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if got.Made != "2026-11-20" || len(got.Items) != 9 || got.Items[0].Value.Amount != "1700.00" || got.Items[0].Carats != 1.71 || got.Summary.Values[0].Amount != "8850.00" || got.Items[0].Undecided == nil {
		t.Errorf("got %+v", got)
	}
}

// A workbook is a zip of XML (ECMA-376): it is read here without the library
// that wrote it.
func TestXLSX(t *testing.T) {
	items := demo(t)
	items[0].Location = "=1+1"
	var out bytes.Buffer
	if err := export.XLSX(&out, items); err != nil {
		t.Fatal(err)
	}
	r, err := zip.NewReader(bytes.NewReader(out.Bytes()), int64(out.Len()))
	if err != nil {
		t.Fatal(err)
	}
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
		} `xml:"sheets>sheet"`
	}
	unmarshal(t, r, "xl/workbook.xml", &book)
	var names []string
	for _, s := range book.Sheets {
		names = append(names, s.Name)
	}
	if want := []string{"items", "by species", "by place", "by value", "columns"}; !slices.Equal(names, want) {
		t.Errorf("sheets %q, want %q", names, want)
	}
	var sheet struct {
		Rows []struct {
			Cells []struct {
				At     string `xml:"r,attr"`
				Kind   string `xml:"t,attr"`
				Value  string `xml:"v"`
				Inline string `xml:"is>t"`
				F      string `xml:"f"`
			} `xml:"c"`
		} `xml:"sheetData>row"`
	}
	unmarshal(t, r, "xl/worksheets/sheet1.xml", &sheet)
	if len(sheet.Rows) != 1+len(items) {
		t.Fatalf("%d rows, want %d", len(sheet.Rows), 1+len(items))
	}
	heads := map[string]string{} // column letter to head
	for _, c := range sheet.Rows[0].Cells {
		heads[strings.TrimRight(c.At, "0123456789")] = c.Inline + c.Value
	}
	got := map[string]string{}
	for _, c := range sheet.Rows[1].Cells {
		if c.F != "" {
			t.Errorf("%s is a formula: %s", c.At, c.F)
		}
		got[heads[strings.TrimRight(c.At, "0123456789")]] = c.Kind + ":" + c.Inline + c.Value
	}
	for head, want := range map[string]string{"reference": "inlineStr:HL-0401", "kept at": "inlineStr:=1+1", "carats": "n:1.71", "value": "n:1700", "value: currency": "inlineStr:EUR"} {
		if got[head] != want && got[head] != strings.TrimPrefix(want, "n") {
			t.Errorf("%s is %q, want %q", head, got[head], want)
		}
	}
	// 2026-10-05 is day 46300 of the workbook's calendar (days since 1899-12-30).
	if day := strings.TrimPrefix(got["examined"], "n:"); strings.TrimPrefix(day, ":") != "46300" {
		t.Errorf("examined is %q, want day 46300", got["examined"])
	}
}

func unmarshal(t *testing.T, r *zip.Reader, name string, to any) {
	t.Helper()
	f, err := r.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	src, err := io.ReadAll(f)
	if err == nil {
		err = xml.Unmarshal(src, to)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// The printed list lays out without a fault, and every sentence it may need is
// in words.csv.
func TestList(t *testing.T) {
	items := demo(t)
	items[1].Contradicted, items[1].ToMend, items[2].ToMend = []string{"species"}, 1, 2
	items[3].Value.Amount, items[3].Value.Low, items[3].Value.High = "", "1000.00", "2000.00"
	items = append(items, export.Item{Sort: export.SortStone, Reference: "X"})
	for _, o := range []export.ListOptions{
		{Limits: limits()},
		{Limits: export.Limits{Today: limits().Today}, Left: []string{"bad.yaml"}, Filter: export.Filter{Location: "safe", Document: "note", Undecided: true}},
	} {
		for _, some := range [][]export.Item{items, nil} {
			doc, err := export.List(some, o)
			if err != nil {
				t.Fatal(err)
			}
			press, err := pdf.NewPress()
			if err != nil {
				t.Fatal(err)
			}
			pages, err := press.Layout(doc)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range pdf.Faults(pages) {
				t.Error(f)
			}
		}
	}
}

func TestParseAge(t *testing.T) {
	for text, want := range map[string]string{"3 years": "3 years", "1 year": "1 year", "18 months": "18 months", "400days": "400 days", "none": ""} {
		if got, err := export.ParseAge(text); err != nil || got.String() != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "3", "0 years", "-1 year", "three years", "3 weeks", "3 years 2 months"} {
		if got, err := export.ParseAge(text); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}
