package main

import (
	"errors"

	"github.com/spf13/cobra"

	"stonewrit/report/register"
)

// voidCommand withdraws a number, which stays on file.
func (p *program) voidCommand() *cobra.Command {
	var folder, because string
	c := &cobra.Command{
		Use: "void", Args: needsOne("a number", `for example void HL-2026-000001-16 --because "…"`),
		RunE: func(c *cobra.Command, words []string) (err error) {
			n, err := register.ParseNumber(words[0])
			switch {
			case err != nil:
				return err
			case because == "":
				return failing(`give --because "…": it stays on file beside the number`, "void needs a reason")
			}
			bench, err := p.benchOf(folder)
			if err != nil {
				return err
			}
			if !registerMade(bench) {
				if _, err := registerPath(bench); err != nil {
					return err
				}
				return register.ErrNoRegister
			}
			books := p.books("")
			defer func() { err = errors.Join(err, books.close()) }()
			book, err := books.of(c.Context(), bench)
			if err != nil {
				return err
			}
			e, err := book.Void(c.Context(), n, because)
			if err != nil {
				return err
			}
			p.print("%s  %s  %s\n", e.Number, e.State, oneLine(e.Stone))
			p.note("the number and its document stay on file; tell whoever holds %s that it is withdrawn", e.File)
			return nil
		},
	}
	benchFlag(c, &folder)
	c.Flags().StringVar(&because, "because", "", "")
	return c
}
