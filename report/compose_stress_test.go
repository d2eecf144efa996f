package report_test

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"stonewrit/grading/stone"
	"stonewrit/photos"
	"stonewrit/report"
	"stonewrit/report/chart"
	"stonewrit/report/pdf"
)

// A stress is a document of the demo with something made hard for a layout.
type stress struct {
	doc    complete
	change func(root *yaml.Node)
	photos []image.Point // sizes of the pictures in the place of the file's own
	most   int           // pages that it may take; 0 is any number
	says   string        // what the document must hold
}

// stresses are what bench and owners may do to a document: long names, much of
// everything, nothing, and all scripts that the typeface has.
func stresses() map[string]stress {
	appraisal, note, record := complete{file: "hl-0401.yaml"}, complete{file: "hl-0407.yaml"}, complete{file: "hl-0411.yaml"}
	piece := complete{file: "hl-0500.yaml"}
	name := strings.TrimSpace(strings.Repeat("Maximiliane-Theodora Ørsted-Łęcka of Netherbeck and Highgate, ", 5)[:300])
	word := strings.Repeat("Edelsteinbegutachtungsstelle", 11)[:300]
	scripts := "Łukasz Żółć, Jürgen Weiß, Þórðr, Nguyễn Thị Ngọc, Čapková, Ọ̀ṣunbùnmi; Ἀριστοτέλης Ὀνάσης; Љубица Ђорђевић, Щукин, Қазақ"
	odd := []image.Point{{400, 400}, {900, 68}, {68, 900}, {3, 3}, {320, 240}, {240, 320}, {1, 400}, {400, 1}, {300, 299}, {450, 250}, {64, 64}, {250, 450}}
	edited := func(d complete, edits ...string) complete {
		d.edits = strings.Join(edits, " | ")
		return d
	}
	named := func(s string) []string {
		q := fmt.Sprintf("%q", s)
		return []string{"client: {name: " + q + ", address: " + q + ", contact: " + q + "}", "quality.description: " + q, "quality.condition: " + q, "location: " + q, "place: " + q, "bench practice.name: " + q, "bench practice.address: " + q}
	}
	all := map[string]stress{
		"forty comparables":        {doc: appraisal, change: manyOf("worth", "comparables", 40)},
		"thirty tests":             {doc: complete{file: "hl-0412.yaml"}, change: manyOf("", "tests", 30)},
		"thirty tests, short form": {doc: note, change: manyOf("", "tests", 30)},
		"one test":                 {doc: appraisal, change: manyOf("", "tests", 1)},
		"one test, short form":     {doc: note, change: manyOf("", "tests", 1), most: 1},
		"no test":                  {doc: edited(appraisal, "-tests")},
		"no photo":                 {doc: edited(appraisal, "-photos")},
		"no photo, short form":     {doc: edited(note, "-photos"), most: 1},
		"no photo, record":         {doc: edited(record, "-photos")},
	}
	for kind, d := range map[string]complete{"appraisal": appraisal, "note": note, "record": record, "piece": piece} {
		all["twelve odd photos, "+kind] = stress{doc: d, change: photosOf(odd), photos: odd}
		for what, s := range map[string]string{"300 letters": name, "a word of 300 letters": word, "scripts": scripts} {
			edits := named(s)
			if kind == "piece" {
				edits = slices.DeleteFunc(edits, func(e string) bool { return strings.HasPrefix(e, "quality.") })
			}
			all[what+", "+kind] = stress{doc: edited(d, edits...), says: s}
		}
	}
	return all
}

// manyOf repeats the entries of a list, or leaves some out, until there are n.
func manyOf(parent, key string, n int) func(root *yaml.Node) {
	return func(root *yaml.Node) {
		if parent != "" {
			root = child(root, parent)
		}
		list := child(root, key)
		had := len(list.Content)
		for len(list.Content) < n {
			list.Content = append(list.Content, list.Content[len(list.Content)%had])
		}
		list.Content = list.Content[:n]
	}
}

func photosOf(sizes []image.Point) func(root *yaml.Node) {
	return func(root *yaml.Node) {
		list := &yaml.Node{Kind: yaml.SequenceNode}
		for i := range sizes {
			var one yaml.Node
			text := fmt.Sprintf("{file: photos/odd-%d.jpg, caption: %q, scale: 0.02 mm}", i, strings.Repeat("a caption that goes on, ", 1+i%5))
			if err := yaml.Unmarshal([]byte(text), &one); err != nil {
				panic(err)
			}
			list.Content = append(list.Content, one.Content[0])
		}
		set(root, "photos", list)
	}
}

// compose composes the document with the drawings of its evidence.
func (s stress) compose(t *testing.T, press *pdf.Press, page string) report.Document {
	t.Helper()
	tb, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	file, bench := s.doc.make(t, "bench page: "+page)
	if s.change != nil {
		root := parsed(t, file.src)
		s.change(root)
		file.src = printed(t, root)
	}
	in := demoInput(t, file, demoBench(t, bench))
	if len(s.photos) > 0 {
		in.Photos = nil
		for _, size := range s.photos {
			in.Photos = append(in.Photos, oddPhoto(t, size))
		}
	}
	draw := chart.Drawer{Words: stressWords(), Width: press.LabelWidth}
	if in.Piece == nil && in.Examined.Stone.Report == stone.Appraisal {
		in.Evidence = draw.Evidence(in.Examined, tb)
	}
	if in.Piece != nil {
		for i := range in.Set {
			in.Set[i].Evidence = draw.Evidence(in.Piece.Items[i].Stone, tb)
		}
	}
	doc, err := report.Compose(in)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func stressWords() chart.Words {
	return chart.Words{
		Index: "Refractive index", Gravity: "Specific gravity", Over: "over {figure}", Turns: "turn by turn", Lowest: "lowest {figure}", Highest: "highest {figure}",
		Seen: "seen", Published: "published for {name}", Always: "always", Often: "often", Sometimes: "sometimes", Profile: "profile", FaceUp: "face up", Scale: "scale {scale}, millimetres",
		More: "and {count} more", Unknown: "not in the table: {names}", IndexCaption: "Caption.", GravityCaption: "Caption.", MakingCaption: "Caption.", SpectrumCaption: "Caption.", TurnsCaption: "Caption.",
	}
}

func oddPhoto(t *testing.T, size image.Point) photos.Photo {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewRGBA(image.Rectangle{Max: size}), nil); err != nil {
		t.Fatal(err)
	}
	p, err := photos.Decode("odd.jpg", b.Bytes(), photos.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Whatever bench and owners write, composed documents can be set on both
// papers: no box overlaps another or leaves its page.
func TestComposedDocumentsUnderStress(t *testing.T) {
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	all := stresses()
	for name, doc := range readDocuments(t) {
		all["complete: "+name] = stress{doc: doc}
	}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		for _, page := range []string{"A4", "Letter"} {
			doc := all[name].compose(t, press, page)
			if !strings.Contains(textOf(doc), all[name].says) {
				t.Errorf("%s: the document does not say %q", name, all[name].says)
			}
			pages, err := press.Layout(doc)
			if err != nil {
				t.Errorf("%s on %s: %v", name, page, err)
				continue
			}
			for _, f := range pdf.Faults(pages) {
				t.Errorf("%s on %s: %s", name, page, f)
			}
			if most := all[name].most; most > 0 && page == "A4" && len(pages) > most {
				t.Errorf("%s: %d pages, want %d at most", name, len(pages), most)
			}
		}
	}
	t.Logf("%d documents on two papers", len(all))
}

// The files that a document carries are those it was made of, byte for byte, as
// another program takes them out.
func TestAttachmentsMatch(t *testing.T) {
	if _, err := exec.LookPath("pdfdetach"); err != nil {
		t.Skip("pdfdetach of poppler is not installed: attachments are not taken out")
	}
	press, err := pdf.NewPress()
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{"hl-0401.yaml", "hl-0407.yaml", "hl-0411.yaml", "hl-0500.yaml"} {
		doc := stress{doc: complete{file: file}}.compose(t, press, "A4")
		data, err := press.Print(doc)
		if err != nil {
			t.Fatal(err)
		}
		again, err := press.Print(stress{doc: complete{file: file}}.compose(t, press, "A4"))
		if err != nil || !bytes.Equal(data, again) {
			t.Errorf("%s: made again the bytes differ, %v", file, err)
		}
		dir := t.TempDir()
		name := filepath.Join(dir, "document.pdf")
		if err := os.WriteFile(name, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command("pdfdetach", "-saveall", "-o", dir, name).CombinedOutput(); err != nil {
			t.Fatalf("pdfdetach %s: %v\n%s", file, err, out)
		}
		if len(doc.Attachments) < 2 {
			t.Errorf("%s carries %d files", file, len(doc.Attachments))
		}
		for _, a := range doc.Attachments {
			if got, err := os.ReadFile(filepath.Join(dir, a.Name)); err != nil || !bytes.Equal(got, a.Data) {
				t.Errorf("%s: the attached %s differs, %v", file, a.Name, err)
			}
		}
	}
}
