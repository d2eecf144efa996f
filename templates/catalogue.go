package templates

import (
	"slices"
	"strings"
)

// Sentence is an entry of the catalogue. A Name that ends with ".*" stands for
// a word list, of which a language needs only the words that it says in another
// way than the stone file does.
type Sentence struct {
	Name     string
	Optional bool
	data     any
}

// Data is the zero value of the struct that the sentence is filled with.
func (s Sentence) Data() any { return s.data }

// Catalogue lists every sentence that a language has, with its data.
func Catalogue() []Sentence {
	return slices.Concat(
		group(None{}, "figure.sign", "ending.draft", "attachment.stone", "attachment.examined", "alt.logo",
			"layout.pageof", "layout.draft", "layout.draftnote", "layout.unnumbered", "layout.continued"),
		words("section", Sections()...),
		words("drawing", Drawings()...),
		words("claim", "species", "variety", "growth", "treatment"),
		words("against", "species", "variety", "growth", "treatment"),
		words("standing", "supported", "undecided", "contradicted"),
		words("verdict", "agrees", "cannot tell", "conflicts", "set aside"),
		lists("cut", "shape", "girdle", "method", "light", "material", "kind", "notmade", "stated"),
		group(List{}, "list.and", "list.or"),
		group(Day{}, "date"),
		group(Span{}, "span", "worth.span"),
		group(Kind{}, "title"),
		group(Ending{}, "ending"),
		pieceSentences(),
		findingSentences(), groundSentences(), testSentences(), descriptionSentences(), worthSentences(), endSentences(), shortSentences(),
	)
}

func findingSentences() []Sentence {
	return slices.Concat(
		group(Subject{}, "metadata.subject", "subject.the", "Subject.the", "is", "was", "has", "it", "It",
			"margin.weighed", "margin.weighed before", "margin.estimated", "margin.stated", "ground.opinion", "description.setting"),
		group(None{}, "name.none", "value.none", "value.sold", "margin.price", "margin.sizes"),
		group(Name{}, "name", "name.variety"),
		group(Finding{}, "finding"),
		group(Whether{}, "whether.variety", "whether.growth", "whether.treatment"),
		group(Contradiction{}, "contradiction"),
		group(Treatments{}, "finding.treatment", "treatment.none", "treatment.customary", "treatment.told", "treatment.standing"),
		group(Measure{}, "measure", "measure.length", "measure.width", "measure.depth", "measure.diameter"),
		group(Size{}, "size", "size.form"),
		group(Weight{}, "weight", "weight.method"),
		group(Items{}, "margin.length", "margin.diameter", "ground.noted", "read.weighed", "worth.approaches", "limits.leftout"),
		group(Value{}, "value", "margin.value"),
		group(Price{}, "price"),
		group(Assignment{}, "assignment"),
		group(Examination{}, "examination"),
		group(Amendment{}, "amendment"),
		group(Change{}, "amendment.change"),
		group(Reported{}, "reported.growth"),
	)
}

func groundSentences() []Sentence {
	return slices.Concat(
		group(Claim{}, "ground.species", "ground.variety", "ground.growth", "ground.treatment"),
		group(Because{}, "ground.because"),
		group(Explanation{}, "ground.explained"),
		group(Rivals{}, "ground.rivals", "ground.rivals.short", "ground.more"),
		group(Rival{}, "ground.rival"),
	)
}

func testSentences() []Sentence {
	return slices.Concat(
		group(None{}, "tests.none", "tests.head.test", "tests.head.read", "tests.head.value", "tests.head.verdict", "tests.head.why",
			"tests.head.check", "tests.instruments"),
		group(TestName{}, "tests.name"),
		group(Aside{}, "tests.aside"),
		group(TestNote{}, "tests.note"),
		group(Circumstance{}, "note.instrument", "note.light", "note.date", "note.by"),
		group(Check{}, "tests.check", "tests.check.short", "tests.check.reference"),
		group(Instrument{}, "tests.instrument"),
		group(Caution{}, "tests.caution"),
		group(Eyes{}, "tests.eyes"),
		group(ReadIndex{}, "read.index"),
		group(ReadPolars{}, "read.polariscope"),
		group(ReadColours{}, "read.dichroscope"),
		group(ReadSpectrum{}, "read.spectroscope"),
		group(ReadLamp{}, "read.ultraviolet"),
		group(ReadGravity{}, "read.gravity"),
		group(ReadHardness{}, "read.hardness"),
		group(ReadShown{}, "read.shown"),
		group(ReadSeen{}, "read.seen"),
		group(ReadReport{}, "read.report"),
		group(Stated{}, "read.stated"),
	)
}

func descriptionSentences() []Sentence {
	return slices.Concat(
		group(Colour{}, "description.colour"),
		group(ByLight{}, "description.change"),
		group(Clarity{}, "description.clarity"),
		group(Cut{}, "description.cut"),
		group(Tenths{}, "tenths.part"),
		group(Words{}, "judged.proportions", "judged.finish", "judged.symmetry",
			"part.table", "part.crown angle", "part.crown height", "part.pavilion angle", "part.pavilion depth", "part.total depth", "part.girdle", "part.culet",
			"grade.colour", "grade.clarity", "grade.polish", "grade.symmetry", "grade.cut", "grade.fluorescence", "grade.culet", "grade.girdle",
			"pearl.shape", "pearl.colour", "pearl.overtone", "pearl.lustre", "pearl.surface",
			"description.condition", "description.words", "alt.signature", "limits.caveat",
			"worth.head.price", "worth.head.adjusted", "worth.taxed", "worth.rules"),
		group(Diamond{}, "description.diamond"),
		group(Pearl{}, "description.pearl"),
		group(Opal{}, "description.opal"),
		group(Phenomenon{}, "description.phenomenon"),
		group(Mark{}, "description.inscription", "description.mark"),
		group(Origin{}, "description.origin"),
		group(None{}, "treatment.head", "treatment.amounts", "care.head"),
		group(Treatment{}, "treatment.named", "treatment.name"),
		group(Care{}, "care", "composite.notice"),
		words("care", "ultrasonic", "steam", "heat", "solvents", "light", "knocks", "torch"),
		group(History{}, "description.history"),
		group(Words{}, "history.style", "history.maker", "history.age", "history.provenance", "history.alterations", "history.restoration", "history.obsolescence",
			"description.restricted", "description.safety"),
		words("history.word", "style", "maker", "age", "provenance", "alterations", "restoration", "obsolescence"),
		group(Items{}, "description.notgraded"),
		group(Reason{}, "description.reason"),
	)
}

func worthSentences() []Sentence {
	return slices.Concat(
		group(Worth{}, "worth.purpose", "worth.type", "worth.date", "worth.treated", "worth.scope", "worth.interest", "worth.prior", "worth.fee", "worth.inspected",
			"worth.standards", "worth.oath", "worth.gift"),
		group(Court{}, "worth.court"),
		group(Approach{}, "worth.approach"),
		group(Comparison{}, "worth.comparison"),
		group(Line{}, "worth.line"),
		group(Conclusion{}, "worth.conclusion"),
		group(LeftOut{}, "worth.leftout"),
		group(None{}, "worth.comparables", "worth.head.source", "worth.head.date", "worth.head.weight", "worth.sum", "worth.total", "worth.concluded",
			"worth.assumptions", "worth.assumed.weight", "worth.assumed.stated", "worth.assumed.owner", "worth.hypothetical", "worth.noassumptions", "worth.nohypothetical", "worth.statement", "worth.true"),
	)
}

func endSentences() []Sentence {
	return slices.Concat(
		group(Limits{}, "limits.notmade", "limits.others", "limits.program", "limits.validity", "limits.copies", "limits.keep"),
		group(None{}, "limits.items", "limits.rule", "limits.rule.short", "limits.standing", "limits.uncertainty", "limits.carat", "limits.short", "limits.current", "limits.records",
			"others.weight", "others.treatments", "others.report", "others.value", "others.opinion",
			"photos.note", "keeping.theirs", "keeping.noreceipt", "verify.draft", "verify.code", "alt.code", "layout.copy", "layout.copynote", "verify.pen"),
		group(Spoken{}, "limits.spoken"),
		group(Caption{}, "photo.caption", "alt.photo"),
		group(Keeping{}, "keeping.location", "keeping.owned", "keeping.restrictions", "keeping.insured", "keeping.valued"),
		group(Verify{}, "verify.number", "verify.register", "verify.files"),
	)
}

// shortSentences are those of the short form of a note.
func shortSentences() []Sentence {
	return slices.Concat(
		group(None{}, "section.description.short", "limits.rule.line", "limits.uncertainty.short", "photos.note.short"),
		group(Subject{}, "ground.opinion.short"),
		group(TestLine{}, "tests.line"),
		group(Instrument{}, "tests.instrument.line"),
		group(Items{}, "tests.instruments.line"),
		group(Verify{}, "verify.number.short", "verify.register.short", "verify.files.short"),
	)
}

func group(data any, names ...string) []Sentence {
	list := make([]Sentence, len(names))
	for i, n := range names {
		list[i] = Sentence{Name: n, data: data}
	}
	return list
}

// words are sentences without data, one for each word of a closed list.
func words(list string, names ...string) []Sentence {
	full := make([]string, len(names))
	for i, n := range names {
		full[i] = list + "." + n
	}
	return group(None{}, full...)
}

// lists are open word lists.
func lists(names ...string) []Sentence {
	var all []Sentence
	for _, n := range names {
		all = append(all, Sentence{Name: n + ".*", Optional: true, data: None{}})
	}
	return all
}

// index finds sentences by name. It is made once for a set.
type index map[string]Sentence

func newIndex() index {
	x := index{}
	for _, s := range Catalogue() {
		x[s.Name] = s
	}
	return x
}

// find is the entry of a sentence, or of the word list that it belongs to.
func (x index) find(name string) (Sentence, bool) {
	if s, ok := x[name]; ok && !s.Optional {
		return s, true
	}
	list, _, inList := strings.Cut(name, ".")
	s, ok := x[list+".*"]
	return s, ok && inList
}

// nearest tells which sentence may have been meant.
func (x index) nearest(name string) string {
	best, least := "", len(name)
	for _, candidate := range sorted(x) {
		if d := distance(name, candidate); d < least {
			best, least = candidate, d
		}
	}
	if best == "" {
		return "the catalogue lists them all"
	}
	return "did you mean " + `"` + best + `"?`
}

// distance is how many letters are to be changed, added or left out.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j+1]+1, row[j]+1)
		}
	}
	return row[len(b)]
}

// pieceSentences are those of a piece of jewellery.
func pieceSentences() []Sentence {
	return slices.Concat(
		group(Piece{}, "piece"),
		group(Item{}, "piece.item", "item.head", "item.what", "item.size", "item.weight", "item.setting", "item.ground", "item.described", "item.limits"),
		group(Total{}, "piece.total"),
		group(Metal{}, "metal.part", "metal.known", "metal.layer"),
		group(Judged{}, "metal.judged"),
		group(Mass{}, "piece.mass", "margin.mass"),
		group(PieceSize{}, "piece.size"),
		group(Words{}, "margin.piece size", "piece.size.ring", "piece.size.length", "piece.size.width", "piece.size.height", "piece.size.diameter", "piece.size.thickness", "piece.noted"),
		group(Construction{}, "piece.construction"),
		group(Mark{}, "piece.mark", "piece.inscription"),
		group(None{}, "piece.nomarks", "piece.marks", "piece.stones", "piece.metals", "piece.head.number", "piece.head.what", "piece.head.size", "piece.head.weight", "piece.head.setting",
			"metal.head.part", "metal.head.metal", "metal.head.known", "metal.head.layer", "piece.care", "attachment.piece", "attachment.examined piece"),
		lists("piecekind", "setting", "knownby", "basis"),
	)
}
