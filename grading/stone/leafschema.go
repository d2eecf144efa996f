package stone

import (
	"reflect"
	"strings"

	"stonewrit/grading/quantity"
)

// The schema of each type that reads itself.

func (l *List[T]) schema(m *schemaMaker, tags fieldTags) object {
	item := m.of(reflect.TypeFor[T](), tags)
	return anyOf(item, object{{"const", "none"}}, listSchema(item))
}

func (t *Date) schema(*schemaMaker, fieldTags) object {
	return object{{"type", "string"}, {"format", "date"}, {"pattern", `^(19|20|21)[0-9]{2}-[0-9]{2}-[0-9]{2}$`}}
}

func (e *Edges) schema(_ *schemaMaker, tags fieldTags) object {
	index := quantitySchema(nil, tags.bound)
	return anyOf(index, object{
		{"type", "array"}, {"minItems", 1}, {"maxItems", 2},
		{"prefixItems", []object{index}}, {"items", anyOf(index, object{{"const", "over"}})},
	})
}

func (s *Span) schema(*schemaMaker, fieldTags) object {
	return object{{"type", "array"}, {"minItems", 2}, {"maxItems", 2}, {"items", quantitySchema(s.From.Units(), bounds{})}}
}

func (w *WordOrPercent) schema(_ *schemaMaker, tags fieldTags) object {
	return anyOf(object{{"enum", tags.words}}, quantitySchema(w.Percent.Units(), bounds{}))
}

func (m *Mass) schema(*schemaMaker, fieldTags) object {
	units := append(quantity.Gram(0).Symbols(), quantity.Carat(0).Symbols()...)
	return quantitySchema(units, bounds{})
}

func (a *Decimal) schema(*schemaMaker, fieldTags) object {
	return object{{"type", []string{"string", "number"}}, {"pattern", decimalText.String()}}
}

func (m *Money) schema(*schemaMaker, fieldTags) object {
	return object{{"type", "string"}, {"pattern", strings.ReplaceAll(moneyText.String(), "(?:", "(")}}
}

func (a *Adjustments) schema(*schemaMaker, fieldTags) object {
	percent := quantitySchema(quantity.Percent(0).Symbols(), bounds{})
	return object{{"type", "object"}, {"additionalProperties", anyOf(percent, object{{"type", "string"}, {"pattern", fraction.String()}})}}
}

func (a *Anything) schema(*schemaMaker, fieldTags) object {
	units := append(quantity.Gram(0).Symbols(), "ct", "mm", "nm")
	return anyOf(quantitySchema(units, bounds{}), quantitySchema(nil, bounds{}))
}

func (f *Fluorescence) schema(*schemaMaker, fieldTags) object {
	return object{{"type", "string"}, {"pattern", "^(" + strings.Join(fluorescenceWords(), "|") + ")( .*)?$"}}
}

func (a *Afterglow) schema(m *schemaMaker, _ fieldTags) object {
	return anyOf(object{{"const", "none"}}, m.structure(reflect.TypeFor[afterglowKeys]()))
}

func (t *TreatmentClaim) schema(m *schemaMaker, _ fieldTags) object {
	return anyOf(wordSchema(nil), m.structure(reflect.TypeFor[plainClaim]()))
}

func (m *Mark) schema(maker *schemaMaker, _ fieldTags) object {
	return anyOf(wordSchema(nil), maker.structure(reflect.TypeFor[plainMark]()))
}

func (s *Statement) schema(m *schemaMaker, _ fieldTags) object {
	return anyOf(wordSchema(nil), m.structure(reflect.TypeFor[plainStatement]()))
}

func (a *AnyTest) schema(m *schemaMaker, _ fieldTags) object {
	var kinds []object
	if m.tests == nil {
		for _, k := range testKinds() {
			m.tests = append(m.tests, member{k.kind, m.test(k.kind, reflect.TypeOf(k.make()).Elem())})
		}
	}
	for _, t := range m.tests {
		kinds = append(kinds, object{{"$ref", "#/$defs/" + strings.ReplaceAll(t.key, " ", "%20")}})
	}
	return object{{"type", "object"}, {"required", []string{"test"}}, {"oneOf", kinds}}
}

// test is the schema of one kind of test, told by its test key.
func (m *schemaMaker) test(kind string, t reflect.Type) object {
	o := m.structure(t)
	for i := range o {
		properties, ok := o[i].value.(object)
		if o[i].key != "properties" || !ok {
			continue
		}
		for j, p := range properties {
			if p.key == "test" {
				properties[j].value = object{{"const", kind}}
			}
		}
	}
	return o
}
