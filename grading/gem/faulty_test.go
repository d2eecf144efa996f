package gem

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
)

// withRow returns the data of the package with one row more in a sheet.
func withRow(t *testing.T, sheet, line string) fs.FS {
	t.Helper()
	data := fstest.MapFS{}
	names, err := fs.Glob(files, "data/*")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		raw, err := fs.ReadFile(files, name)
		if err != nil {
			t.Fatal(err)
		}
		if name == "data/"+sheet {
			raw = append(raw, (line + "\n")...)
		}
		data[name] = &fstest.MapFile{Data: raw}
	}
	return data
}

func TestFaultyEvidenceIsRefused(t *testing.T) {
	tests := []struct{ sheet, line, says, why string }{
		{"signs.csv", "no such thing,any,growth,suggests,natural,some reason,from memory", "not a term", "unknown feature"},
		{"signs.csv", "cloud,unobtainium,growth,suggests,natural,some reason,from memory", "not the name of a material", "unknown material"},
		{"signs.csv", "cloud,diamond,growth,suggests,grown,some reason,from memory", "neither a growth", "unknown growth"},
		{"signs.csv", "cloud,diamond,growth,suggests,laboratory-grown: magic,some reason,from memory", "neither a growth", "unknown method"},
		{"signs.csv", "cloud,diamond,treatment,suggests,polished,some reason,from memory", "not the name of a treatment", "unknown treatment"},
		{"signs.csv", "cloud,diamond,species,suggests,unobtainium,some reason,from memory", "not the name of a material", "unknown species"},
		{"signs.csv", "cloud,diamond,growth,hints,natural,some reason,from memory", "is not known", "unknown force"},
		{"signs.csv", "cloud,diamond,growth,suggests,natural,,from memory", "because: is empty", "no reason"},
		{"signs.csv", "cloud,diamond,growth,suggests,natural,some reason,", "source: is empty", "no source"},
		{"signs.csv", "curved striae,corundum,growth,proves,natural,some reason,from memory", "speaks twice", "the same thing said twice"},
		{"features.csv", "dot,,magnification,,no,,,,,,,,a note,from memory", "place", "where is it?"},
		{"features.csv", "dot,,refractometer,body,no,,,,,,,,a note,from memory", "is not known", "an index is never a sign"},
		{"features.csv", "dot,,spectrum,,no,line,,,,,,,a note,from memory", "nm", "a spectrum without a line"},
		{"features.csv", "dot,,spectrum,,no,line,41.5,,,,,,a note,from memory", "not a wavelength", "a slip of the decimal point"},
		{"features.csv", "dot,silk,magnification,body,no,,,,,,,,a note,rumour", "neither an entry", "no source"},
		{"features.csv", "Curved-Striae,,magnification,body,no,,,,,,,,a note,from memory", "is taken", "a term twice"},
		{"treatments.csv", "painted green,oild,,permanent,specific,A sentence.,,,from memory", "further up", "kind of an unknown one"},
		{"harm.csv", "licking,any,,,any,tastes bad,from memory", "not the word of a test", "unknown test"},
		{"harm.csv", "hardness,class,stone,,any,scratches,from memory", "is not known", "unknown class"},
		{"cautions.csv", "lick,licking,,yes,Do not.,from memory", "is not known", "unknown test"},
		{"cautions.csv", "scratch,hardness,,never,Do not.,from memory", "is taken", "an id twice"},
	}
	for _, tt := range tests {
		_, err := load(withRow(t, tt.sheet, tt.line))
		if err == nil || !strings.Contains(err.Error(), tt.says) || !strings.Contains(err.Error(), "data/"+tt.sheet+":") {
			t.Errorf("%s %q: got %v, want it to say %q: %s", tt.sheet, tt.line, err, tt.says, tt.why)
		}
	}
}
