package main

import (
	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
)

// schemaCommand prints the JSON Schema of a kind of file, for editors.
func (p *program) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use: "schema", Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, words []string) error {
			sort := stone.SortStone
			if len(words) > 0 {
				sort = words[0]
			}
			text := stone.Schema(sort)
			if text == nil {
				return unknownWord("there is no schema of %q", sort, []string{stone.SortStone, stone.SortBench}, "stone or bench")
			}
			p.print("%s\n", text)
			return nil
		},
	}
}
