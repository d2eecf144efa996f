package report_test

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"stonewrit/report"
	"stonewrit/report/pdf"
)

func TestSameInputSameDocument(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"ruby.yaml", "spinel.yaml", "opal.yaml", "pearls.yaml"} {
		a, b := compose(t, name), compose(t, name)
		if !reflect.DeepEqual(a, b) {
			t.Errorf("%s: two documents of one input differ", name)
		}
		first, err := press.Print(a)
		if err != nil {
			t.Fatal(err)
		}
		second, err := press.Print(b)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, second) {
			t.Errorf("%s: the bytes differ", name)
		}
	}
}

// Everything that is composed can be set: no box overlaps another or leaves the
// page, whatever the length of the words.
func TestSamplesCanBeSet(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	long := strings.Repeat("Maximiliane-Theodora Ørsted-Łęcka of Netherbeck and Highgate, ", 5)[:300]
	long = strings.TrimSpace(long)
	docs := samples(t)
	for name, change := range map[string][2]string{
		"long client":    {"Kaja Ørsted-Łęcka", long},
		"long source":    {"retail sale on record, Highgate", long},
		"long type":      {"replacement value, new: the price", long},
		"long word":      {"light abrasion on two facet edges of the crown", strings.Repeat("x", 300)},
		"long caption":   {"A drawing, face up, not a photograph", long},
		"long reference": {"KL-0412", strings.Repeat("KL-0412-", 37)},
	} {
		doc, err := report.Compose(inputOf(t, "ruby.yaml", edited(t, "ruby.yaml", change[0], change[1])))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(textOf(doc), change[1]) {
			t.Errorf("%s is cut", name)
		}
		docs[name] = doc
	}
	for name, doc := range docs {
		pages, err := press.Layout(doc)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, f := range pdf.Faults(pages) {
			t.Errorf("%s: %s", name, f)
		}
	}
}

func TestNoteIsShort(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"spinel.yaml", "brilliant.yaml", "glass.yaml", "doublet.yaml", "contradicted.yaml", "bare.yaml"} {
		pages, err := press.Layout(compose(t, name))
		if err != nil {
			t.Fatal(err)
		}
		if len(pages) > 2 {
			t.Errorf("%s has %d pages, want two at most", name, len(pages))
		}
	}
}
