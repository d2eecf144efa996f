package gem_test

import (
	"fmt"
	"log"

	"stonewrit/grading/gem"
)

func ExampleTable_SignsFor() {
	table, err := gem.Load()
	if err != nil {
		log.Fatal(err)
	}
	silk, err := table.Feature("intact silk")
	if err != nil {
		log.Fatal(err)
	}
	ruby, err := table.Find("ruby")
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range table.SignsFor(silk, ruby) {
		fmt.Println(s.Claim, s.Force, s.About)
	}
	// Output:
	// growth suggests natural
	// treatment excludes high heat
	// treatment excludes diffusion
}

func ExampleTable_HarmOf() {
	table, err := gem.Load()
	if err != nil {
		log.Fatal(err)
	}
	turquoise, err := table.Find("turquoise")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(table.HarmOf("refractometer", turquoise, false))
	fmt.Println(table.HarmOf("polariscope", turquoise, false))
	// Output:
	// the contact liquid stains and attacks porous material true
	//  false
}
