package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"stonewrit/grading/stone"
	"stonewrit/grading/weight"
)

// weighCommand estimates a weight from dimensions, without a file.
func (p *program) weighCommand() *cobra.Command {
	var file string
	c := &cobra.Command{
		Use: "weigh", Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			given := map[string][]string{}
			c.Flags().Visit(func(f *pflag.Flag) {
				if values, ok := f.Value.(pflag.SliceValue); ok {
					given[f.Name] = values.GetSlice()
				}
			})
			tables, err := p.tables()
			if err != nil {
				return err
			}
			w := weigher{tables, p.now()}
			switch {
			case file == "":
				return p.weigh(w, given)
			case len(given) > 0:
				return failing("put the figures into the list", "--file stands alone: the list holds all flags as columns")
			}
			return p.weighFile(c.Context(), file, w)
		},
	}
	for _, f := range sizeFlags() {
		c.Flags().StringArray(f.flag, nil, "")
	}
	c.Flags().Lookup("in-setting").NoOptDefVal = "true"
	c.Flags().StringVar(&file, "file", "", "")
	return c
}

// noWords refuses words that are no flags.
func noWords(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		return failing(c.CommandPath()+" --help shows the form", "%s takes no %q", c.Name(), args[0])
	}
	return nil
}

// weigh estimates the weight of what the flags describe.
func (p *program) weigh(w weigher, given map[string][]string) error {
	result, problems, err := w.weigh(given)
	if err != nil {
		return err
	}
	for _, q := range problems {
		p.say(string(q.Severity), q.Message.String(), q.Hint.String())
	}
	if problems.Has(stone.Error) {
		p.met(statusFailed)
		return nil
	}
	p.print("%s", result.text())
	if len(result.slips) > 0 {
		p.met(statusFindings)
	}
	return nil
}

// A weighing is an estimate with what does not fit in its figures.
type weighing struct {
	weight.Estimate
	material string
	slips    []weight.Finding
	measured bool // a weight was given to compare with
}

// text tells the estimate, how it was come by and how the other ways differ.
func (w *weighing) text() string {
	c := w.Chosen
	var b strings.Builder
	fmt.Fprintf(&b, "%s, between %s and %s in 95 of 100 cases\n", carats(c.Carats.Value), figure(c.Low), carats(c.High))
	if w.Count > 1 {
		b.WriteString(labelled("stones", fmt.Sprintf("%d together, %s each", w.Count, carats(w.Each.Value))))
	}
	b.WriteString(labelled("by", fmt.Sprintf("%s: %s [%s]", c.Method, c.Basis, c.Source)))
	b.WriteString(labelled("because", w.Because.String()))
	b.WriteString(labelled("volume", fmt.Sprintf("%.2f mm3 a stone, standard uncertainty %.1f %%, mostly from %s", c.Volume.Value, 100*c.Volume.U/c.Volume.Value, sharesOf(c))))
	b.WriteString(labelled("at", fmt.Sprintf("specific gravity %s%s", rangeText(w.Gravity.Low, w.Gravity.High, 2), w.material)))
	for _, other := range w.Candidates {
		if other.Method != c.Method {
			b.WriteString(labelled("also", fmt.Sprintf("%s: %s, between %s and %s: %s", other.Method, carats(other.Carats.Value), figure(other.Low), carats(other.High), other.Basis)))
		}
	}
	for _, o := range w.Omitted {
		b.WriteString(labelled("not by", fmt.Sprintf("%s: %s", o.Method, o.Because)))
	}
	for _, text := range w.Warnings {
		b.WriteString(labelled("warning", text.String()))
	}
	for _, slip := range w.slips {
		b.WriteString(labelled("finding", fmt.Sprintf("%s: %s (%s)", slip.Dimension, slip.Message, slip.Slip)))
	}
	return b.String()
}

// carats prints a weight with its unit; small stones keep a third decimal.
func carats(ct float64) string { return figure(ct) + " ct" }

func figure(ct float64) string {
	if ct < 0.2 {
		return fmt.Sprintf("%.3f", ct)
	}
	return fmt.Sprintf("%.2f", ct)
}

// rangeText prints a range, or the one figure that it is.
func rangeText(low, high float64, decimals int) string {
	if low == high {
		return fmt.Sprintf("%.*f", decimals, low)
	}
	return fmt.Sprintf("%.*f to %.*f", decimals, low, decimals, high)
}

// sharesOf names the two figures that contribute most to an uncertainty.
func sharesOf(c weight.Candidate) string {
	first, second := weight.Share{}, weight.Share{}
	for _, s := range c.Budget {
		switch {
		case s.U > first.U:
			first, second = s, first
		case s.U > second.U:
			second = s
		}
	}
	names := []string{first.Of}
	if second.U > first.U/2 {
		names = append(names, second.Of)
	}
	return listed(names)
}
