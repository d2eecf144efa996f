package report_test

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"stonewrit/report"
)

// samples composes every stone of testdata, and the ones of extra.
func samples(t *testing.T) map[string]report.Document {
	t.Helper()
	docs := map[string]report.Document{}
	files, err := filepath.Glob("testdata/stones/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no stones: %v", err)
	}
	for _, f := range files {
		if name := filepath.Base(f); name != "bench.yaml" {
			docs[name] = compose(t, name)
		}
	}
	for name, src := range extra() {
		doc, err := report.Compose(inputOf(t, "extra.yaml", []byte(src)))
		if err != nil {
			t.Fatal(err)
		}
		docs[name] = doc
	}
	return docs
}

// extra are stones whose names are easily worded wrong.
func extra() map[string]string {
	const head = "stonewrit: 1\nreport: note\nexamined: 2026-10-14\nexaminer: okafor\nstone: "
	return map[string]string{
		"grown diamond":        head + "D-1\nopinion: {species: diamond, growth: laboratory-grown, method: vapour, treatments: []}\ntests:\n  - {test: magnification, power: 10, sees: [dark pinpoints]}\n",
		"diamond of no growth": head + "D-2\nopinion: {species: diamond, growth: undetermined}\ntests:\n  - {test: thermal conductivity, shows: diamond}\n",
		"diamond as a rival":   head + "D-3\nopinion: {species: moissanite, growth: laboratory-grown}\ntests:\n  - {test: thermal conductivity, shows: diamond}\n",
		"imitation of diamond": head + "D-4\nopinion: {species: cubic zirconia, growth: artificial, imitates: diamond}\nappearance: {colour: colourless}\ntests:\n  - {test: thermal conductivity, shows: not diamond}\n",
		"drilled diamond":      head + "D-5\nopinion: {species: diamond, growth: natural, treatments: [laser drilled]}\ntests:\n  - {test: magnification, power: 10, sees: [laser drill hole]}\n",
		"bound ruby":           head + "R-1\nopinion: {species: corundum, variety: ruby, growth: natural, treatments: [lead-glass filled]}\nappearance: {colour: red}\ntests:\n  - {test: magnification, power: 10, sees: [flash effect]}\n",
		"natural pearl":        head + "P-1\nopinion: {species: pearl, growth: natural, water: saltwater}\n",
		"pearl of no growth":   head + "P-2\nopinion: {species: pearl, growth: undetermined}\n",
		"pearl of glass":       head + "P-3\nopinion: {species: glass imitation of pearl, growth: artificial, imitates: pearl}\n",
		"reported ruby":        head + "R-2\nopinion: {species: corundum, variety: ruby, growth: natural, treatments: [heated]}\nappearance: {colour: red}\nweight: {measured: 1.52 ct}\nsize: {length: 8.00 mm, width: 6.20 mm, depth: 3.75 mm}\ntests:\n  - {test: laboratory report, issuer: Farrowhythe Laboratory, number: \"7\", seen: original, matched: [weight, size], states: {species: corundum, growth: natural, treatments: [heated], weight: 1.52 ct, length: 8.00 mm}}\n",
		"many stones":          head + "M-1\nopinion: {species: quartz, variety: amethyst, growth: natural, treatments: []}\nsize: {shape: round, cut: brilliant, diameter: [3.0 mm, 3.1 mm], depth: 1.9 mm, count: 12}\nweight: {measured: 1.21 ct}\ntests:\n  - {test: magnification, power: 10, sees: [colour zoning]}\n",
	}
}

// "Diamond" alone means a natural one (ISO 18323:2015 2.2 note), so every
// mention says which, or is a word that an instrument showed, in quotes.
func TestNoBareDiamond(t *testing.T) {
	word := regexp.MustCompile(`(?i)\bdiamonds?\b`)
	before := regexp.MustCompile(`(natural|laboratory-grown|grown|imitation) $|[“ ]?“(not )?$`)
	after := regexp.MustCompile(`^(,| \() ?natural or laboratory-grown|^”`)
	seen := 0
	for name, doc := range samples(t) {
		text := plainSpaces(textOf(doc))
		for _, at := range word.FindAllStringIndex(text, -1) {
			seen++
			if !before.MatchString(text[:at[0]]) && !after.MatchString(text[at[1]:]) {
				t.Errorf("%s: bare: … %s …", name, text[max(0, at[0]-40):min(len(text), at[1]+40)])
			}
		}
	}
	if seen < 10 {
		t.Errorf("only %d mentions were looked at", seen)
	}
}

// "Pearl" alone means a natural one (16 CFR 23.19(a)): every mention in a
// document about pearls says which, the name of a test or feature apart.
func TestNoBarePearl(t *testing.T) {
	word := regexp.MustCompile(`(?i)\bpearls?\b`)
	before := regexp.MustCompile(`(natural|cultured|imitation|imitation of) $`)
	after := regexp.MustCompile(`^(,| \() ?natural or cultured|^ drill hole`)
	for name, doc := range samples(t) {
		text := strings.ReplaceAll(plainSpaces(textOf(doc)), strings.TrimSuffix(name, "yaml"), "") // the file's own name
		for _, at := range word.FindAllStringIndex(text, -1) {
			near := text[max(0, at[0]-40):min(len(text), at[1]+40)]
			if !before.MatchString(text[:at[0]]) && !after.MatchString(text[at[1]:]) && !strings.Contains(near, "between the pearls; restring") {
				t.Errorf("%s: bare: … %s …", name, near)
			}
		}
	}
}

// Names by the stricter of 16 CFR 23 and ISO 18323 / CIBJO: what the first
// sentence of each stone holds.
func TestNames(t *testing.T) {
	docs := samples(t)
	for _, tc := range []struct{ name, want, why string }{
		{"ruby.yaml", "The stone is ruby, a corundum (heated): the tests made here support this; whether it grew in nature is undecided.", "the finding with its standing, in one sentence"},
		{"spinel.yaml", "laboratory-grown spinel", "16 CFR 23.25(b): directly before the name"},
		{"brilliant.yaml", "taken to be natural diamond: the tests made here support the material; whether it grew in nature is undecided", "ISO 18323 2.2; growth undecided is said"},
		{"glass.yaml", "imitation emerald (glass)", "16 CFR 23.25(b): imitation directly before the name"},
		{"doublet.yaml", "imitation ruby, an assembled stone of almandine (crown), crown or lead glass (pavilion)", "CIBJO Gemstone Book 3.2.1: every layer, and assembled"},
		{"pearls.yaml", "saltwater cultured pearls", "16 CFR 23.20(b), CIBJO Pearl Book 4.2"},
		{"opal.yaml", "By its owner’s word the stone is opal; nothing of it was tested here.", "stated, not tested"},
		{"contradicted.yaml", "the tests made here contradict the species", "a contradiction stands in the first sentence"},
		{"grown diamond", "laboratory-grown diamond", "16 CFR 23.12, ISO 18323"},
		{"diamond of no growth", "diamond, natural or laboratory-grown", "not determined is said"},
		{"imitation of diamond", "imitation diamond (cubic zirconia)", "16 CFR 23.25(b)"},
		{"drilled diamond", "natural diamond (treated: laser drilled)", "ISO 18323 2.3: treated, at once apparent"},
		{"bound ruby", "composite ruby, that is ruby held together by glass", "16 CFR 23.25(d): never the bare name"},
		{"natural pearl", "saltwater natural pearl", "CIBJO Pearl Book 4.2: natural and the water named"},
		{"pearl of no growth", "pearl, natural or cultured", "16 CFR 23.19(a): bare pearl means natural"},
		{"pearl of glass", "The stone is taken to be imitation pearl (glass imitation of pearl)", "16 CFR 23.20(c)"},
		{"reported ruby", "according to Farrowhythe Laboratory it grew in nature", "another laboratory's finding is worded as theirs, never as the tests made here"},
		{"many stones", "The 12 stones are taken to be amethyst, a quartz", "plural"},
	} {
		lead, ok := docs[tc.name].Sections[0].Blocks[0].(report.Lead)
		if !ok {
			t.Errorf("%s does not open with its finding", tc.name)
			continue
		}
		if got := plainSpaces(lead.Sentence.String()); !strings.Contains(got, tc.want) {
			t.Errorf("%s: %q\nwant %q\n%s", tc.name, got, tc.want, tc.why)
		}
		if n := strings.Count(lead.Sentence.String(), ". "); n > 0 {
			t.Errorf("%s opens with more than one sentence: %q", tc.name, lead.Sentence)
		}
	}
	if text := textOf(docs["bound ruby"]); !strings.Contains(text, "does not have the properties of ruby and needs special care") {
		t.Error("a composite lacks the notice of 16 CFR 23.25(d)(3)")
	}
}

// A figure and its unit are never parted.
func TestFiguresKeepTheirUnits(t *testing.T) {
	parted := regexp.MustCompile(`[0-9] (ct|mm|nm|g|%|°C)(\W|$)`)
	for name, doc := range samples(t) {
		text := textOf(doc)
		for _, at := range parted.FindAllStringIndex(text, -1) {
			t.Errorf("%s: %q", name, text[max(0, at[0]-30):min(len(text), at[1]+10)])
		}
	}
}

// What is not known leaves no trace: no label without its text, no empty
// brackets or quotes, no stop after a stop.
var traces = regexp.MustCompile(`[,;:(“] ?[.,;)”]|\(\)|“”| [.,;:)]|\.\.|;;|  |^[,;.]|: *$|[a-z] (is|are|of|by|at|with|for|and|or|from|to|in|on)[.;,]|<no value>|%!`)

func TestMissingFieldsLeaveNoTrace(t *testing.T) {
	check := func(name string, doc report.Document) {
		for _, line := range strings.Split(plainSpaces(textOf(doc)), "\n") {
			line = strings.NewReplacer("…", "", " that is,", "").Replace(line)
			if at := traces.FindStringIndex(line); at != nil && !strings.HasPrefix(line, "Not excluded by these tests") && !strings.HasSuffix(line, "the value may be another:") {
				t.Errorf("%s: %q in %q", name, line[at[0]:at[1]], line)
			}
		}
	}
	for name, doc := range samples(t) {
		check(name, doc)
	}
	// Each key at the top of the fullest files left out in turn.
	for _, name := range []string{"ruby.yaml", "emerald.yaml", "spinel.yaml", "opal.yaml", "pearls.yaml"} {
		src, err := os.ReadFile("testdata/stones/" + name)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range topKeys(string(src)) {
			less := without(string(src), key)
			doc, err := report.Compose(inputOf(t, name, []byte(less)))
			switch {
			case errors.Is(err, report.ErrNotExamined): // the key was one that others need
				continue
			case err != nil:
				t.Errorf("%s without %s: %v", name, key, err)
				continue
			}
			check(name+" without "+key, doc)
		}
	}
}

var topKey = regexp.MustCompile(`(?m)^([a-z_]+):`)

// topKeys lists the keys of a file that it can do without.
func topKeys(src string) []string {
	var keys []string
	for _, m := range topKey.FindAllStringSubmatch(src, -1) {
		switch m[1] {
		case "stonewrit", "stone", "report", "examined", "examiner", "opinion":
		default:
			keys = append(keys, m[1])
		}
	}
	return keys
}

// without is a file without one key and what stands below it.
func without(src, key string) string {
	var out []string
	in := false
	for _, line := range strings.Split(src, "\n") {
		if m := topKey.FindStringSubmatch(line); m != nil {
			in = m[1] == key
		}
		if !in {
			out = append(out, line)
		}
	}
	return strings.Join(out, "\n")
}

// Stock sentences of laboratory papers, scales of others and poetic colours
// have no place here.
func TestNoStockPhrases(t *testing.T) {
	for name, doc := range samples(t) {
		text := strings.ToLower(plainSpaces(textOf(doc)))
		for _, phrase := range []string{
			"no indications of", "no evidence of", "evidence of heat", "natural corundum, variety", "see reverse", "comments:", "pigeon", "royal blue", "cornflower",
			"minor", "moderate to", "significant", "eye clean", "hologram", "certificate of authenticity",
		} {
			if strings.Contains(text, phrase) {
				t.Errorf("%s says %q", name, phrase)
			}
		}
	}
}
