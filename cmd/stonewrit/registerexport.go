package main

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"time"

	"github.com/spf13/cobra"

	lists "stonewrit/report/export"
	"stonewrit/report/register"
)

// registerExport prints the whole book for other programs.
func (p *program) registerExport() *cobra.Command {
	var folder string
	var asCSV, asJSON bool
	c := &cobra.Command{
		Use: "export", Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			if asCSV == asJSON {
				return failing("--csv for a spreadsheet, --json for a program", "export needs one of --csv and --json")
			}
			return p.book(c.Context(), folder, func(book *register.Reader) error { return p.export(c.Context(), book, asJSON) })
		},
	}
	benchFlag(c, &folder)
	c.Flags().BoolVar(&asCSV, "csv", false, "")
	c.Flags().BoolVar(&asJSON, "json", false, "")
	return c
}

func (p *program) export(ctx context.Context, book *register.Reader, asJSON bool) error {
	entries, err := book.List(ctx, register.Filter{})
	if err != nil {
		return err
	}
	if asJSON {
		list := make([]exported, 0, len(entries))
		for _, e := range entries {
			list = append(list, export(e))
		}
		out := json.NewEncoder(p.out)
		out.SetEscapeHTML(false)
		out.SetIndent("", "  ")
		return out.Encode(list)
	}
	out := csv.NewWriter(p.out)
	if err := out.Write(exportColumns()); err != nil {
		return err
	}
	for _, e := range entries {
		if err := out.Write(harmless(export(e).row())); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// exported is an entry as other programs read it: days and times by RFC 3339,
// digests hexadecimal.
type exported struct {
	Number     string `json:"number"`
	UUID       string `json:"uuid"`
	State      string `json:"state"`
	Kind       string `json:"kind"`
	Stone      string `json:"stone"`
	Examiner   string `json:"examiner"`
	First      string `json:"examined_from"`
	Last       string `json:"examined_to"`
	Issued     string `json:"issued"`
	Reason     string `json:"reason,omitempty"`
	Replaces   string `json:"replaces,omitempty"`
	ReplacedBy string `json:"replaced_by,omitempty"`
	File       string `json:"file"`
	Office     string `json:"office,omitempty"`
	PDF        string `json:"pdf_sha256"`
	StoneFile  string `json:"stone_sha256"`
	Photos     string `json:"photos_sha256"`
	Letterhead string `json:"letterhead_sha256"`
	Program    string `json:"program"`
	Data       string `json:"data"`
	Prev       string `json:"prev"`
	Hash       string `json:"hash"`
}

func export(e register.Entry) exported {
	return exported{
		Number: e.Number.String(), UUID: e.UUID.String(), State: string(e.State), Kind: string(e.Kind), Stone: e.Stone, Examiner: e.Examiner,
		First: e.Examined.First.String(), Last: e.Examined.Last.String(), Issued: e.Issued.Format(time.RFC3339),
		Reason: e.Reason, Replaces: e.Replaces.String(), ReplacedBy: e.ReplacedBy.String(), File: e.File, Office: e.Office,
		PDF: e.PDF.String(), StoneFile: e.Content.Stone.String(), Photos: e.Content.Photos.String(), Letterhead: e.Content.Letterhead.String(),
		Program: e.Program, Data: e.Data, Prev: e.Prev.String(), Hash: e.Hash.String(),
	}
}

func exportColumns() []string {
	return []string{"number", "uuid", "state", "kind", "stone", "examiner", "examined_from", "examined_to", "issued", "reason", "replaces", "replaced_by",
		"file", "office", "pdf_sha256", "stone_sha256", "photos_sha256", "letterhead_sha256", "program", "data", "prev", "hash"}
}

// row is the entry in the order of exportColumns.
func (x exported) row() []string {
	return []string{x.Number, x.UUID, x.State, x.Kind, x.Stone, x.Examiner, x.First, x.Last, x.Issued, x.Reason, x.Replaces, x.ReplacedBy,
		x.File, x.Office, x.PDF, x.StoneFile, x.Photos, x.Letterhead, x.Program, x.Data, x.Prev, x.Hash}
}

// harmless keeps a spreadsheet from reckoning text that begins like a formula.
func harmless(row []string) []string {
	for i, cell := range row {
		row[i] = lists.Harmless(cell)
	}
	return row
}
