package stone_test

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"

	"stonewrit/grading/stone"
)

func compile(t *testing.T, sort string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(stone.Schema(sort)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource(sort+".json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(sort + ".json") // checks it against the 2020-12 metaschema, too
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// asEditor turns YAML into what an editor checks: the core schema of YAML 1.2,
// where dates and yes are text.
func asEditor(t *testing.T, n *yaml.Node) any {
	t.Helper()
	switch n.Kind {
	case yaml.DocumentNode:
		return asEditor(t, n.Content[0])
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			m[n.Content[i].Value] = asEditor(t, n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		list := []any{}
		for _, c := range n.Content {
			list = append(list, asEditor(t, c))
		}
		return list
	}
	switch n.Tag {
	case "!!int", "!!float":
		return json.Number(n.Value)
	case "!!bool":
		return n.Value == "true"
	case "!!null":
		return nil
	}
	return n.Value
}

func validate(t *testing.T, schema *jsonschema.Schema, src []byte) error {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	return schema.Validate(asEditor(t, &doc))
}

func TestSchemaIsDeterministic(t *testing.T) {
	for _, sort := range []string{stone.SortStone, stone.SortPiece, stone.SortBench} {
		if a, b := stone.Schema(sort), stone.Schema(sort); !bytes.Equal(a, b) || len(a) == 0 {
			t.Errorf("%s: %d bytes, then %d others", sort, len(a), len(b))
		}
	}
	if stone.Schema("ring") != nil {
		t.Error("a schema of a sort that does not exist")
	}
}

// Files under testdata/schema: what the schema accepts or refuses, reading
// accepts or refuses as well.
func TestSchemaAgreesWithReading(t *testing.T) {
	table := loadTable(t)
	names, err := filepath.Glob("testdata/schema/*.yaml")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d files, %v", len(names), err)
	}
	schemas := map[string]*jsonschema.Schema{}
	for _, sort := range []string{stone.SortStone, stone.SortPiece, stone.SortBench} {
		schemas[sort] = compile(t, sort)
	}
	for _, name := range append(names, "testdata/hl-0412.yaml", "testdata/bench.yaml") {
		t.Run(filepath.Base(name), func(t *testing.T) {
			src := readFile(t, name)
			sort := stone.Sniff(src)
			var problems stone.Problems
			switch sort {
			case stone.SortBench:
				_, problems = stone.ReadBench(name, src, table)
			case stone.SortPiece:
				_, problems = stone.ReadPiece(name, src, table)
			default:
				_, problems = stone.Read(name, src, table)
			}
			err := validate(t, schemas[sort], src)
			switch wantBad := strings.HasPrefix(filepath.Base(name), "bad-"); {
			case wantBad && err == nil:
				t.Error("the schema accepts it")
			case wantBad && !problems.Has(stone.Error):
				t.Error("reading accepts it")
			case !wantBad && err != nil:
				t.Errorf("the schema refuses it: %v", err)
			case !wantBad && problems.Has(stone.Error):
				t.Errorf("reading refuses it: %v", problems)
			}
		})
	}
}

// A person reads in the editor what +- means, and what the words are.
func TestSchemaExplains(t *testing.T) {
	text := string(stone.Schema(stone.SortStone))
	for _, want := range []string{
		`"description": "depth, table to culet, in mm. +-x is the half width at 95 % (k = 2), u x a standard uncertainty."`,
		`"$ref": "#/$defs/specific%20gravity"`,
		`"const": "refractometer"`,
		`"title": "stonewrit stone file"`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the schema lacks %s", want)
		}
	}
}
