package quality_test

import (
	"fmt"

	"stonewrit/grading/gem"
	"stonewrit/grading/quality"
	"stonewrit/grading/stone"
)

func grader() *quality.Grader {
	gems, err := gem.Load()
	if err != nil {
		panic(err)
	}
	g, err := quality.New(gems)
	if err != nil {
		panic(err)
	}
	return g
}

func ExampleGrader_Name() {
	gems, _ := gem.Load()
	g := grader()
	s, _ := stone.Read("hl-0500.yaml", []byte(`stonewrit: 1
stone: HL-0500
report: note
examined: 2026-10-14
examiner: okafor
opinion: {species: beryl, variety: emerald, growth: natural, treatments: [{name: oil, amount: several}]}
`), gems)
	subject := g.SubjectOf(s)
	fmt.Println(g.Name(subject))
	fmt.Println(g.Name(subject.WithoutGrowth()))
	// Output:
	// emerald (natural beryl), oil in several fissures
	// beryl, variety emerald, oil in several fissures, growth not determined
}

func ExampleGrader_ColourName() {
	m, _ := quality.ParseMunsell("7.5G 4/8")
	fmt.Println(grader().ColourName(m).Name)
	// Output: strong green
}

func ExampleGrader_JudgeFineness() {
	for _, j := range grader().JudgeFineness("gold", 585, 583, quality.PartWithoutSolder) {
		fmt.Println(j.Law, j.Lowest, j.Holds)
	}
	// Output:
	// ISO 9202 585 false
	// 15 USC 295 582 true
}
