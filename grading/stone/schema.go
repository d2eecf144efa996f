package stone

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"

	"stonewrit/grading/quantity"
)

// Schema is the JSON Schema (2020-12) of a sort of file, SortStone, SortPiece or
// SortBench, for editors that complete and check while one writes. It is made
// from the types that read the file, so it cannot say otherwise; what single
// values cannot tell (names of the gem table, keys that contradict each other)
// only reading tells. It is nil for any other sort.
func Schema(sort string) []byte {
	var root reflect.Type
	switch sort {
	case SortStone:
		root = reflect.TypeFor[Stone]()
	case SortPiece:
		root = reflect.TypeFor[Piece]()
	case SortBench:
		root = reflect.TypeFor[Bench]()
	default:
		return nil
	}
	m := &schemaMaker{}
	top := object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "stonewrit " + sort + " file"},
		{"description", "A quantity is written with its unit and may carry its uncertainty: 7.82 mm +-0.02. " + uncertaintyDoc},
	}
	top = append(top, m.structure(root)...)
	if len(m.tests) > 0 {
		top = append(top, member{"$defs", m.tests})
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(top); err != nil {
		panic("stone: schema: " + err.Error()) // strings and numbers alone
	}
	return b.Bytes()
}

const uncertaintyDoc = "+-x is the half width at 95 % (k = 2), u x a standard uncertainty."

// object is a JSON object that keeps the order of its members.
type object []member

type member struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		var value bytes.Buffer
		enc := json.NewEncoder(&value)
		enc.SetEscapeHTML(false)
		if err := enc.Encode(m.value); err != nil {
			return nil, err
		}
		key, err := json.Marshal(m.key)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(bytes.TrimSpace(value.Bytes()))
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// schemaMaker walks the types that the decoder walks.
type schemaMaker struct {
	tests object // the kinds of test, by name
}

// of is the schema of one value.
func (m *schemaMaker) of(t reflect.Type, tags fieldTags) object {
	switch v := reflect.New(t).Interface().(type) {
	case leaf:
		return v.schema(m, tags)
	case quantityText:
		return quantitySchema(v.Units(), tags.bound)
	}
	switch t.Kind() {
	case reflect.Struct:
		return m.structure(t)
	case reflect.Pointer:
		return m.of(t.Elem(), tags)
	case reflect.Slice:
		return anyOf(object{{"const", "none"}}, listSchema(m.of(t.Elem(), tags)))
	case reflect.Map:
		return object{{"type", "object"}, {"additionalProperties", m.of(t.Elem(), tags)}}
	case reflect.Bool:
		return anyOf(object{{"type", "boolean"}}, object{{"enum", []string{"yes", "no"}}})
	case reflect.Int:
		return append(object{{"type", "integer"}}, tags.bound.schema()...)
	case reflect.String:
		return wordSchema(tags.words)
	}
	panic("stone: no schema for a " + t.String())
}

// structure is the schema of keys with values.
func (m *schemaMaker) structure(t reflect.Type) object {
	var properties object
	required := []string{}
	for _, f := range fieldsOf(t) {
		p := m.of(f.typ, f.tags)
		properties = append(properties, member{f.key, append(object{{"description", f.description()}}, p...)})
		if f.need {
			required = append(required, f.key)
		}
	}
	o := object{{"type", "object"}, {"properties", properties}, {"additionalProperties", false}}
	if len(required) > 0 {
		o = append(o, member{"required", required})
	}
	return o
}

// description is the doc of a key, with the meaning of +- where it may stand.
func (f field) description() string {
	q, ok := reflect.New(elementOf(f.typ)).Interface().(quantityText)
	if !ok {
		return f.doc
	}
	doc := f.doc
	if units := q.Units(); len(units) > 0 {
		doc += ", in " + units[0]
	}
	return doc + ". " + uncertaintyDoc
}

// elementOf is what a list is a list of.
func elementOf(t reflect.Type) reflect.Type {
	for {
		switch {
		case t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice:
			t = t.Elem()
		case t.Kind() == reflect.Struct && strings.HasPrefix(t.Name(), "List["):
			items, _ := t.FieldByName("Items")
			t = items.Type
		default:
			return t
		}
	}
}

func anyOf(options ...object) object { return object{{"anyOf", options}} }

func listSchema(item object) object { return object{{"type", "array"}, {"items", item}} }

// wordSchema allows the words of a field, or any text where there are none.
func wordSchema(words []string) object {
	if len(words) > 0 {
		return object{{"enum", words}}
	}
	return object{{"type", []string{"string", "number"}}, {"pattern", `\S`}}
}

func quantitySchema(units []string, bound bounds) object {
	text := object{{"type", "string"}, {"pattern", quantity.Pattern(units)}}
	if len(units) > 0 {
		return text
	}
	return anyOf(append(object{{"type", "number"}}, bound.schema()...), text)
}

func (b bounds) schema() object {
	if !b.set {
		return nil
	}
	return object{{"minimum", b.low}, {"maximum", b.high}}
}
