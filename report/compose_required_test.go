package report_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"stonewrit/report"
)

// What a kind of document must show, requirement by requirement, with the
// clause it comes from; L is a note in the long form, N one in the short form. The clauses were read or recalled as the list of
// requirements of this project tells; the phrases are ours.
func TestEachKindShowsWhatItMust(t *testing.T) {
	docs := map[string]report.Document{"A": compose(t, "ruby.yaml"), "N": compose(t, "spinel.yaml"), "L": longForm(t, "spinel.yaml"), "R": compose(t, "opal.yaml")}
	f, err := os.Open("testdata/required.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string]string{}
	for kind, doc := range docs {
		texts[kind] = plainSpaces(textOf(doc))
	}
	for _, row := range rows[1:] {
		id, source, kinds, wanted := row[0], row[1], row[2], row[3]
		for _, kind := range strings.Split(kinds, "") {
			if !strings.Contains(texts[kind], wanted) {
				t.Errorf("%s (%s): the document of kind %s does not say %q", id, source, kind, wanted)
			}
		}
	}
	t.Logf("%d statements looked for", len(rows)-1)
}

// What a kind must not have, or has and another has not.
func TestKindsDifferInContent(t *testing.T) {
	for _, tc := range []struct {
		file     string
		sections string
		absent   []string
		why      string
	}{
		{"ruby.yaml", "|On what ground|The tests|Description, treatment and care|Worth|Limits|Photos|How to verify", []string{"goggles", "Where it is"}, "an appraisal is for readers who repeat no test"},
		{"spinel.yaml", "|On what ground|The tests|Description and care|Limits|How to verify", []string{"concluded at", "Worth", "appraisal"}, "a note gives no value"},
		{"opal.yaml", "|On what ground|The tests|Description, treatment and care|Photos|Where it is and what was paid", []string{"concluded at", "Worth", "appraisal", "Appraisal"}, "a record makes no valuation of its own"},
	} {
		doc := compose(t, tc.file)
		var names []string
		for _, s := range doc.Sections {
			names = append(names, s.Name)
		}
		if got := strings.Join(names, "|"); got != tc.sections {
			t.Errorf("%s: sections %s, want %s", tc.file, got, tc.sections)
		}
		text := textOf(doc)
		for _, word := range tc.absent {
			if strings.Contains(text, word) {
				t.Errorf("%s says %q: %s", tc.file, word, tc.why)
			}
		}
	}
}

// N and R may not be called appraisal or valuation (17025 7.8.2.1 a and the
// definition of an appraisal).
func TestTitlesOfNoteAndRecord(t *testing.T) {
	for _, file := range []string{"spinel.yaml", "opal.yaml", "pearls.yaml", "bare.yaml"} {
		title := strings.ToLower(compose(t, file).Title)
		for _, word := range []string{"apprais", "valu", "worth"} {
			if strings.Contains(title, word) {
				t.Errorf("%s: the title %q holds %q", file, title, word)
			}
		}
	}
}

// A seller's estimate is not called an appraisal (JVC task force 1995 foreword).
func TestSellersEstimateIsNoAppraisal(t *testing.T) {
	in := inputOf(t, "ruby.yaml", edited(t, "ruby.yaml", "sold_by_issuer: false", "sold_by_issuer: true"))
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(doc.Title, "ppraisal") {
		t.Errorf("the title is %q", doc.Title)
	}
	if text := textOf(doc); !strings.Contains(text, "The issuer sold this item") {
		t.Error("that the issuer sold the stone is not told")
	}
}

func plainSpaces(s string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(s)
}

// longForm is the note of a stone for a client who did not agree to a short
// form.
func longForm(t *testing.T, name string) report.Document {
	t.Helper()
	src := strings.Replace(string(edited(t, name, "short_form: agreed\n", "")), "client: {name: own stock}", "client: {name: Odile Marchpane}", 1)
	doc, err := report.Compose(inputOf(t, name, []byte(src)))
	if err != nil {
		t.Fatal(err)
	}
	if doc.Short {
		t.Fatalf("%s is still in the short form", name)
	}
	return doc
}

// edited is a stone file with one text replaced.
func edited(t *testing.T, name, from, to string) []byte {
	t.Helper()
	src, err := os.ReadFile("testdata/stones/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(src), from) {
		t.Fatalf("%s does not hold %q", name, from)
	}
	return []byte(strings.Replace(string(src), from, to, 1))
}
