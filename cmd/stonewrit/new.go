package main

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"github.com/spf13/cobra"

	"stonewrit/grading/stone"
)

// newOptions are the flags of new.
type newOptions struct{ kind, species, folder, piece string }

// newCommand writes a new commented stone file, or a piece file.
func (p *program) newCommand() *cobra.Command {
	var o newOptions
	c := &cobra.Command{
		Use: "new", Args: needsOne("a reference for the stone", "for example new HL-0412"),
		RunE: func(_ *cobra.Command, words []string) error { return p.new(words[0], o) },
	}
	c.Flags().StringVar(&o.kind, "kind", stone.ShortNote, "")
	c.Flags().StringVar(&o.species, "species", assumedSpecies, "")
	c.Flags().StringVar(&o.folder, "in", ".", "")
	c.Flags().StringVar(&o.piece, "piece", "", "")
	return c
}

// needsOne accepts exactly one word.
func needsOne(what, hint string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) == 0:
			return failing(hint, "%s needs %s", c.Name(), what)
		case len(args) > 1:
			return failing(c.CommandPath()+" --help shows the form", "%s takes one word, %q is one too many", c.Name(), args[1])
		}
		return nil
	}
}

// new writes the file of a stone that is not described yet.
func (p *program) new(reference string, o newOptions) error {
	kinds := []string{stone.Appraisal, stone.ShortNote, stone.Record}
	if !slices.Contains(kinds, o.kind) {
		return unknownWord("--kind %s is no kind of document", o.kind, kinds, listed(kinds))
	}
	r, err := p.reader()
	if err != nil {
		return err
	}
	if known := stone.PieceKinds(); o.piece != "" && !slices.Contains(known, o.piece) {
		return unknownWord("--piece %s is no kind of piece", o.piece, known, listed(known))
	}
	if _, err := r.tables.Gems.Find(o.species); err != nil {
		return nameError(err)
	}
	file := filepath.Join(o.folder, fileName(reference)+".yaml")
	if fileName(reference) == "" {
		return failing("for example new HL-0412", "%q is no reference: it has no letter and no digit", reference)
	}
	src, err := r.skeletonOf(reference, file, o)
	if err != nil {
		return err
	}
	if err := create(file, src); err != nil {
		return err
	}
	p.print("%s\n", file)
	p.note("open it in an editor, write what you saw, and look at what it comes to: %s check %s", name, file)
	return nil
}

// skeletonOf fills in a stone file with what is known of bench and day.
func (r *reader) skeletonOf(reference, file string, o newOptions) ([]byte, error) {
	bench := r.benches.above(file)
	quoted, err := asYAML(reference)
	if err != nil {
		return nil, err
	}
	s := skeleton{
		File: file, Base: fileName(reference), Reference: quoted, Kind: o.kind, Species: o.species,
		Today: bench.today(r.p.now()).Format(time.DateOnly), Examiner: "me",
	}
	if bench.usable() {
		s.instruments = bench.bench.Instruments
		if ids := slices.Sorted(maps.Keys(bench.bench.Examiners)); len(ids) > 0 {
			s.Examiner = ids[0]
		}
	}
	if s.Piece = o.piece; s.Piece != "" {
		return s.write("piece.yaml")
	}
	return s.write("stone.yaml")
}

// fileName makes a file's name of a reference: small letters, digits and
// hyphens.
func fileName(reference string) string {
	parts := strings.FieldsFunc(strings.ToLower(reference), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_'
	})
	return strings.Join(parts, "-")
}

// create writes a new file, and never over one that is there.
func create(file string, src []byte) error {
	f, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return failing("nothing was changed; choose another name, or work on in that file", "%s is there already", file)
	case err != nil:
		return err
	}
	_, err = f.Write(src)
	if err = errors.Join(err, f.Close()); err != nil {
		_ = os.Remove(file)
		return fmt.Errorf("%s: %w", file, err)
	}
	return nil
}
