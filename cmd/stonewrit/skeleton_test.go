package main

import (
	"bytes"
	"regexp"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// unused is the mark of a key that is not used: # close to a word, or before
// more than one blank. A remark has one blank.
var unused = regexp.MustCompile(`(?m)^( *)#(\S|  )`)

func uncommented(src []byte) []byte { return unused.ReplaceAll(src, []byte("$1$2")) }

func skeletonFor(t *testing.T, file, kind string) []byte {
	t.Helper()
	src, err := skeleton{
		File: "x.yaml", Base: "x", Reference: "X-1", Kind: kind, Piece: "ring", Species: assumedSpecies, Today: "2026-11-01",
		Examiner: "me", Prefix: "SW", FirstNumber: "SW-2026-000001-16",
	}.write(file)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// A skeleton can be read as it is, and with every unused key put to use; the
// schema, which editors check by, agrees.
func TestSkeletons(t *testing.T) {
	table, err := gem.Load()
	if err != nil {
		t.Fatal(err)
	}
	benchSrc := skeletonFor(t, benchName, "")
	full, problems := stone.ReadBench("bench.yaml", uncommented(benchSrc), table)
	refuse(t, "bench file with every key", problems)
	_, problems = stone.ReadBench("bench.yaml", benchSrc, table)
	refuse(t, "bench file", problems)
	schemas := map[string]*jsonschema.Schema{stone.SortStone: compiled(t, stone.SortStone), stone.SortBench: compiled(t, stone.SortBench)}
	followsSchema(t, schemas[stone.SortBench], benchSrc)
	followsSchema(t, schemas[stone.SortBench], uncommented(benchSrc))
	if bytes.Equal(benchSrc, uncommented(benchSrc)) || len(full.Instruments) < 8 {
		t.Errorf("the bench file shows %d instruments", len(full.Instruments))
	}
	for _, kind := range []string{stone.Appraisal, stone.ShortNote, stone.Record} {
		t.Run(kind, func(t *testing.T) {
			src := skeletonFor(t, "stone.yaml", kind)
			if !bytes.Contains(src, []byte("+-x behind one is the half width at 95 %")) {
				t.Error("it does not say what +-x means")
			}
			for _, text := range [][]byte{src, uncommented(src)} {
				s, problems := stone.Read("x.yaml", text, table)
				refuse(t, "stone file", problems)
				refuse(t, "against the bench file", stone.Against(s, full, time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)))
				followsSchema(t, schemas[stone.SortStone], text)
			}
			s, _ := stone.Read("x.yaml", uncommented(src), table)
			if len(s.Tests) < 6 || !s.Size.Given() || !s.Weight.Measured.Given() || len(s.Photos) == 0 {
				t.Errorf("with every key: %d tests, %d pictures", len(s.Tests), len(s.Photos))
			}
		})
	}
}

// With every unused key put to use a file has what its kind of document must
// have; only the words of the practice are still to be written.
func TestSkeletonsAreComplete(t *testing.T) {
	tables, err := grading.Load()
	if err != nil {
		t.Fatal(err)
	}
	bench, problems := stone.ReadBench("bench.yaml", uncommented(skeletonFor(t, benchName, "")), tables.Gems)
	refuse(t, "bench file", problems)
	today := time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)
	for _, kind := range []string{stone.Appraisal, stone.ShortNote, stone.Record} {
		s, problems := stone.Read("x.yaml", uncommented(skeletonFor(t, "stone.yaml", kind)), tables.Gems)
		refuse(t, kind, problems)
		complete(t, kind, tables.Examine(s, bench, today).Problems)
		p, problems := stone.ReadPiece("x.yaml", uncommented(skeletonFor(t, "piece.yaml", kind)), tables.Gems)
		refuse(t, kind+" of a piece", problems)
		e := tables.ExaminePiece(p, []*grading.Examined{tables.ExamineSet(s, p, bench, today)}, bench, today)
		complete(t, kind+" of a piece", e.Problems)
	}
}

func complete(t *testing.T, what string, problems stone.Problems) {
	t.Helper()
	for _, q := range problems {
		if q.Severity == stone.Missing || q.Severity == stone.Error || q.Severity == stone.Finding && q.Statement != "conclusion-support" {
			t.Errorf("%s: %s: %s: %s", what, q.Severity, q.Path, q.Message)
		}
	}
}

func refuse(t *testing.T, what string, problems stone.Problems) {
	t.Helper()
	for _, q := range problems {
		if q.Severity == stone.Error {
			t.Errorf("%s: %s: %s", what, q.Where("x.yaml"), q.Message)
		}
	}
}

func compiled(t *testing.T, sort string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(stone.Schema(sort)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(sort+".json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(sort + ".json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func followsSchema(t *testing.T, schema *jsonschema.Schema, src []byte) {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	datesAsText(&doc)
	var value any
	if err := doc.Decode(&value); err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(value); err != nil {
		t.Errorf("the schema refuses it: %v", err)
	}
}

// datesAsText makes a date the text that it is to an editor.
func datesAsText(n *yaml.Node) {
	if n.Tag == "!!timestamp" {
		n.Tag = "!!str"
	}
	for _, below := range n.Content {
		datesAsText(below)
	}
}
