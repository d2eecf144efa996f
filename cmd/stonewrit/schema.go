package main

import (
	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
)

// schemaCommand prints the JSON Schema of a kind of file, for editors.
func (p *program) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use: "schema", Args: atMostOne,
		RunE: func(_ *cobra.Command, words []string) error {
			sort := stone.SortStone
			if len(words) > 0 {
				sort = words[0]
			}
			text := stone.Schema(sort)
			if text == nil {
				return unknownWord("there is no schema of %q", sort, []string{stone.SortStone, stone.SortPiece, stone.SortBench}, "stone, piece or bench")
			}
			p.print("%s\n", text)
			return nil
		},
	}
}

// atMostOne accepts one word or none.
func atMostOne(c *cobra.Command, args []string) error {
	if len(args) > 1 {
		return failing(c.CommandPath()+" --help shows the form", "%s takes one word, %q is one too many", c.Name(), args[1])
	}
	return nil
}
