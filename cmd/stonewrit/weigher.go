package main

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"gopkg.in/yaml.v3"

	"stonewrit/grading"
	"stonewrit/grading/gem"
	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/grading/weight"
)

// A sizeFlag is a flag of weigh and the key of a stone file that it stands for.
type sizeFlag struct {
	flag, key string
	unit      string // of a number without one; "" for words and pure numbers
}

// sizeFlags lists the flags in the order of the help.
func sizeFlags() []sizeFlag {
	return []sizeFlag{
		{"shape", "size.shape", ""}, {"cut", "size.cut", ""},
		{"length", "size.length", "mm"}, {"width", "size.width", "mm"}, {"diameter", "size.diameter", "mm"}, {"depth", "size.depth", "mm"},
		{"table", "size.table", "%"}, {"crown-angle", "size.crown_angle", "deg"}, {"crown-height", "size.crown_height", "%"},
		{"pavilion-angle", "size.pavilion_angle", "deg"}, {"pavilion-depth", "size.pavilion_depth", "%"}, {"total-depth", "size.total_depth", "%"},
		{"girdle", "size.girdle", "%"}, {"star", "size.star", "%"}, {"lower-halves", "size.lower_halves", "%"}, {"culet", "size.culet", "%"},
		{"bulge", "size.pavilion_bulge", ""}, {"count", "size.count", ""}, {"in-setting", "size.in setting", ""}, {"hidden", "size.hidden", ""},
		{"species", "opinion.species", ""}, {"sg", "", ""}, {"measured", "weight.measured", "ct"},
	}
}

// weigher estimates weights of stones that are described in words and figures.
// What is written is put into a stone file and read as one, so that words,
// units and limits are the same here as there.
type weigher struct {
	tables *grading.Tables
	now    time.Time
}

// weigh estimates one stone. The problems name flags.
func (w weigher) weigh(given map[string][]string) (*weighing, stone.Problems, error) {
	gravity, err := w.gravity(given)
	if err != nil {
		return nil, nil, err
	}
	src, err := w.file(given)
	if err != nil {
		return nil, nil, err
	}
	s, problems := stone.Read("", src, w.tables.Gems)
	problems = asFlags(problems)
	if problems.Has(stone.Error) {
		return nil, problems, nil
	}
	e := w.tables.Examine(s, nil, w.now)
	out, err := w.estimate(e, gravity)
	return out, problems, err
}

// estimate reckons with the gravity given, or with that of the species.
func (w weigher) estimate(e *grading.Examined, gravity *weight.Gravity) (*weighing, error) {
	out := &weighing{measured: e.Weight.Measured > 0}
	switch {
	case e.Stone.Size.Shape == "" || e.Stone.Size.Cut == "" || !e.Stone.Size.Given():
		return nil, w.words(e.Stone.Size, weight.ErrDimensions)
	case gravity != nil:
		estimate, err := w.tables.Weights().Estimate(e.Weight.Dimensions, *gravity)
		if err != nil {
			return nil, w.words(e.Stone.Size, err)
		}
		out.Estimate = estimate
	case e.Weight.Estimate != nil:
		out.Estimate, out.material = *e.Weight.Estimate, " ("+e.Stone.Opinion.Species+")"
	default:
		_, _, err := w.tables.Weights().Volumes(e.Weight.Dimensions)
		if err == nil {
			err = errors.New(e.Weight.NoEstimate.String())
		}
		return nil, w.words(e.Stone.Size, err)
	}
	var each weight.Measure
	if out.measured {
		n := float64(max(1, out.Count))
		each = weight.Measure{Value: e.Weight.Measured / n, U: e.Weight.MeasuredU / n}
	}
	out.slips = w.tables.Weights().Contradictions(e.Weight.Dimensions, each, out.Gravity)
	return out, nil
}

// words adds the next step to an error of the estimator.
func (w weigher) words(z stone.Size, err error) error {
	switch {
	case z.Shape == "":
		return failing("for example --shape oval", "no shape is given")
	case z.Cut == "":
		return failing("cuts that go with it: "+listed(w.cutsFor(z.Shape)), "no cut is given for the shape %s", z.Shape)
	case errors.Is(err, weight.ErrDimensions):
		return failing("give --length, --width and --depth, or --diameter and --depth for a round stone", "%v", err)
	}
	return failing(name+" weigh --help lists the flags", "%v", err)
}

// cutsFor lists the cuts that a shape has a factor for.
func (w weigher) cutsFor(shape string) []string {
	var cuts []string
	for _, c := range w.tables.Weights().Combinations() {
		if c[0] == shape && (len(cuts) == 0 || cuts[len(cuts)-1] != c[1]) {
			cuts = append(cuts, c[1])
		}
	}
	return cuts
}

// assumedSpecies stands in the file where only a specific gravity was given.
const assumedSpecies = "quartz"

// file writes what is given as a stone file.
func (w weigher) file(given map[string][]string) ([]byte, error) {
	size, opinion, weighed := map[string]any{}, map[string]any{"species": assumedSpecies}, map[string]any{}
	for _, f := range sizeFlags() {
		values := given[f.flag]
		section, key, ok := strings.Cut(f.key, ".")
		if len(values) == 0 || !ok {
			continue
		}
		into := map[string]map[string]any{"size": size, "opinion": opinion, "weight": weighed}[section]
		into[key] = f.value(values)
	}
	return yaml.Marshal(map[string]any{
		"stonewrit": 1, "stone": "weigh", "report": stone.Record, "examiner": "nobody",
		"examined": w.now.AddDate(0, 0, -1).Format(time.DateOnly), "opinion": opinion, "size": size, "weight": weighed,
	})
}

// number is a quantity that begins with a number and has no unit.
var number = regexp.MustCompile(`^\s*([0-9.,]+)\s*((?:\+-|±|u ).*)?$`)

// value is what a flag puts into the file: a number, a word, or a list where
// two were given, as in 6.48..6.52.
func (f sizeFlag) value(values []string) any {
	if len(values) == 1 && f.unit != "" {
		if low, high, two := strings.Cut(values[0], ".."); two {
			values = []string{low, high}
		}
	}
	var list []any
	for _, text := range values {
		list = append(list, f.one(text))
	}
	if len(list) == 1 {
		return list[0]
	}
	return list
}

func (f sizeFlag) one(text string) any {
	if f.flag == "count" {
		if n, err := strconv.Atoi(text); err == nil {
			return n
		}
	}
	if f.flag == "in-setting" {
		if yes, err := strconv.ParseBool(text); err == nil {
			return yes
		}
	}
	if f.unit != "" {
		return strings.TrimSpace(number.ReplaceAllString(text, "$1 "+f.unit+" $2"))
	}
	return text
}

// asFlags words problems of the file as problems of the flags, and leaves out
// those of what no flag gives.
func asFlags(problems stone.Problems) stone.Problems {
	var out stone.Problems
	for _, q := range problems {
		for _, f := range sizeFlags() {
			if f.key != "" && (q.Path == f.key || strings.HasPrefix(q.Path, f.key+"[")) {
				q.Message = phrase.Say("--%s: %s", f.flag, q.Message)
				out = append(out, q)
				break
			}
		}
	}
	return out
}

// gravity reads --sg: one figure, a range, or a figure with its uncertainty.
func (w weigher) gravity(given map[string][]string) (*weight.Gravity, error) {
	text := strings.Join(given["sg"], " ")
	if text == "" {
		if len(given["species"]) == 0 {
			return nil, failing("for example --species sapphire, or --sg 3.99", "the weight depends on the material: give --species or --sg")
		}
		return nil, nil
	}
	low, high, err := parseRange(text)
	if err != nil {
		return nil, failing("write --sg 3.52 or --sg 3.50..3.54", "--sg %s: %v", text, err)
	}
	return &weight.Gravity{Low: low, High: high}, nil
}

// nameError words what the gem table says of a name that it does not have.
func nameError(err error) error {
	var misnomer *gem.MisnomerError
	var unknown *gem.NotFoundError
	switch {
	case errors.As(err, &misnomer):
		return failing("look for "+misnomer.Proper, "%v", err)
	case errors.As(err, &unknown) && len(unknown.Nearest) > 0:
		return failing(fmt.Sprintf("did you mean %s?", strings.Join(unknown.Nearest, ", or ")), "%v", err)
	case errors.As(err, &unknown):
		return failing(name+" gems lists the names", "%v", err)
	}
	return err
}
