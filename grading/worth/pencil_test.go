package worth_test

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/cockroachdb/apd/v3"
	"pgregory.net/rapid"

	"stonewrit/grading/stone"
	"stonewrit/grading/worth"
)

// A reader with a pencil: it knows nothing of the package, takes the printed
// working from left to right in decimals of fifty digits, and rounds as the
// document says.
type pencil struct{ ctx *apd.Context }

func newPencil() pencil {
	ctx := apd.BaseContext.WithPrecision(50)
	ctx.Rounding = apd.RoundHalfUp // halves away from zero
	return pencil{ctx}
}

var (
	noise = regexp.MustCompile(`^tax: | ct( \(estimated\))?| g( gross| net)?| of stones| with(out)? tax| \([a-z][^)]*\)`)
	token = regexp.MustCompile(`-?[0-9.]+/[0-9.]+|\(1 [+-] [0-9]+/[0-9]+\)|-?[0-9.]+|[x/+=-]|%`)
)

// follows reports whether the left side of a working comes to its right side.
func (p pencil) follows(working string) error {
	plain := noise.ReplaceAllString(working, "")
	plain = strings.Replace(plain, "% of", "/ 100 x", 1)
	left, right, ok := strings.Cut(plain, " = ")
	if !ok {
		return fmt.Errorf("%q has no result", working)
	}
	if amount, step, ok := strings.Cut(left, " to the nearest "); ok {
		return p.nearest(amount, step, right)
	}
	sum, err := p.chain(left)
	if err != nil {
		return fmt.Errorf("%q: %v", working, err)
	}
	want, _, err := apd.NewFromString(strings.TrimSpace(right))
	if err != nil {
		return fmt.Errorf("%q: %v", working, err)
	}
	if _, err := p.ctx.Quantize(sum, sum, want.Exponent); err != nil {
		return err
	}
	if sum.Cmp(want) != 0 {
		return fmt.Errorf("%q: the pencil finds %s", working, sum.Text('f'))
	}
	return nil
}

// chain multiplies and adds the products. It divides each product once, at the
// end, since a division in between could lose a half.
func (p pencil) chain(text string) (*apd.Decimal, error) {
	sum, sign, op := apd.New(0, 0), int64(1), "x"
	product := parts{apd.New(1, 0), apd.New(1, 0)}
	flush := func() error {
		q := apd.New(0, 0)
		_, err1 := p.ctx.Quo(q, product.above, product.below)
		_, err2 := p.ctx.Mul(q, q, apd.New(sign, 0))
		_, err3 := p.ctx.Add(sum, sum, q)
		product = parts{apd.New(1, 0), apd.New(1, 0)}
		return errors.Join(err1, err2, err3)
	}
	for _, t := range token.FindAllString(text, -1) {
		switch t {
		case "x", "/":
			op = t
		case "+", "-":
			if err := flush(); err != nil {
				return nil, err
			}
			op, sign = "x", 1
			if t == "-" {
				sign = -1
			}
		default:
			v, err := p.value(t)
			if err != nil {
				return nil, err
			}
			if op == "/" {
				v = parts{v.below, v.above}
			}
			_, err1 := p.ctx.Mul(product.above, product.above, v.above)
			_, err2 := p.ctx.Mul(product.below, product.below, v.below)
			if err := errors.Join(err1, err2); err != nil {
				return nil, err
			}
		}
	}
	return sum, flush()
}

// parts is a fraction that has not been divided yet.
type parts struct{ above, below *apd.Decimal }

// value reads 12.5, 750/1000 or (1 - 1/3).
func (p pencil) value(t string) (parts, error) {
	if inner, ok := strings.CutPrefix(t, "(1 "); ok {
		part, err := p.value(strings.TrimSuffix(inner[2:], ")"))
		if err != nil {
			return part, err
		}
		if inner[0] == '-' {
			part.above.Negative = !part.above.Negative
		}
		_, err = p.ctx.Add(part.above, part.below, part.above)
		return part, err
	}
	above, below, ok := strings.Cut(t, "/")
	if !ok {
		below = "1"
	}
	a, _, err1 := apd.NewFromString(above)
	b, _, err2 := apd.NewFromString(below)
	return parts{a, b}, errors.Join(err1, err2)
}

func (p pencil) nearest(amount, step, right string) error {
	a, _, err1 := apd.NewFromString(amount)
	s, _, err2 := apd.NewFromString(step)
	r, _, err3 := apd.NewFromString(right)
	if err1 != nil || err2 != nil || err3 != nil {
		return fmt.Errorf("%q to the nearest %q = %q cannot be read", amount, step, right)
	}
	n := apd.New(0, 0)
	if _, err := p.ctx.Quo(n, a, s); err != nil {
		return err
	}
	if _, err := p.ctx.Quantize(n, n, 0); err != nil {
		return err
	}
	if _, err := p.ctx.Mul(n, n, s); err != nil {
		return err
	}
	if n.Cmp(r) != 0 {
		return fmt.Errorf("%s to the nearest %s: the pencil finds %s, printed is %s", amount, step, n.Text('f'), right)
	}
	return nil
}

// Every printed working, of whatever appraisal, comes to its printed result.
func TestPencilFindsTheSame(t *testing.T) {
	p := newPencil()
	rapid.Check(t, func(t *rapid.T) {
		w := drawWorth(t)
		subject := worth.Subject{
			Weight:    drawDecimal(t, "weight", 1, 20, 3),
			Estimated: rapid.Bool().Draw(t, "estimated"),
			Stones:    drawDecimal(t, "stones", 0, 3, 2),
		}
		r, problems := worth.Appraise(w, subject)
		if problems.Has(stone.Error) {
			t.Fatalf("problems: %v", problems)
		}
		var workings []worth.Reckoning
		for _, l := range r.Lines {
			workings = append(workings, l.Working...)
		}
		workings = append(workings, r.Cost.Working...)
		if r.CostTaxed != nil {
			workings = append(workings, r.CostTaxed.Working...)
		}
		for _, c := range r.Comparables {
			workings = append(workings, c.Working...)
		}
		workings = append(workings, r.Conclusion.Working...)
		for _, working := range workings {
			if err := p.follows(working.String()); err != nil {
				t.Fatal(err)
			}
		}
	})
}

// The pencil itself notices a wrong result.
func TestPencilNotices(t *testing.T) {
	p := newPencil()
	for _, wrong := range []string{
		"1.520 ct x 1850.00 = 2812.01", "2812.00 + 224.91 - 240.00 = 3276.91", "10 % of 464.91 (metal 224.91 + labour 240.00) = 46.50",
		"2790.00 / 1.48 ct x 0.95 (colour) x 1.52 ct = 2722.13", "19000 x (1 - 1/3) (metal) = 12666.66", "3276.91 to the nearest 50 = 3250.00",
	} {
		if p.follows(wrong) == nil {
			t.Errorf("passes %q", wrong)
		}
	}
}

func drawDecimal(t *rapid.T, label string, low, high, places int) string {
	whole := rapid.IntRange(low, high).Draw(t, label)
	decimals := rapid.IntRange(0, places).Draw(t, label+" places")
	if decimals == 0 {
		return fmt.Sprint(whole)
	}
	scale := 1
	for range decimals {
		scale *= 10
	}
	return fmt.Sprintf("%d.%0*d", whole, decimals, rapid.IntRange(0, scale-1).Draw(t, label+" part"))
}

func drawWorth(t *rapid.T) *stone.Worth {
	w := &stone.Worth{Currency: rapid.SampledFrom([]string{"EUR", "JPY", "KWD"}).Draw(t, "currency")}
	steps := []string{"", "1", "50", "1000"}
	if w.Currency != "JPY" {
		steps = append(steps, "0.05", "2.5")
	}
	w.RoundTo = stone.Decimal(rapid.SampledFrom(steps).Draw(t, "round to"))
	for i := range rapid.IntRange(1, 5).Draw(t, "lines") {
		w.Lines = append(w.Lines, drawLine(t, i))
	}
	for range rapid.IntRange(0, 3).Draw(t, "comparables") {
		w.Comparables = append(w.Comparables, drawComparable(t))
	}
	if rapid.Bool().Draw(t, "taxed") {
		footing := rapid.SampledFrom([]string{"with", "without"})
		w.Tax = &stone.Tax{Lines: footing.Draw(t, "lines"), Conclusion: footing.Draw(t, "conclusion"), Comparables: footing.Draw(t, "comparables")}
		set(t, &w.Tax.Rate, drawDecimal(t, "rate", 0, 25, 1)+" %")
	}
	return w
}

func drawLine(t *rapid.T, i int) stone.WorthLine {
	l := stone.WorthLine{What: fmt.Sprintf("line %c", 'a'+i)}
	kinds := []string{"amount", "carat", "metal", "gross"}
	if i > 0 {
		kinds = append(kinds, "percent")
	}
	price := stone.Decimal(drawDecimal(t, "price", 1, 9999, 4))
	switch rapid.SampledFrom(kinds).Draw(t, "kind") {
	case "amount":
		l.Amount = price
	case "carat":
		l.PerCarat = price
	case "metal":
		l.PerGramFine, l.Fineness = price, rapid.IntRange(1, 1000).Draw(t, "fineness")
		l.Mass = stone.Mass{Text: drawDecimal(t, "mass", 1, 50, 3) + " g"}
	case "gross":
		l.PerGramFine, l.Fineness, l.MassIs = price, rapid.IntRange(1, 1000).Draw(t, "fineness"), "gross"
		l.Mass = stone.Mass{Text: drawDecimal(t, "mass", 2, 50, 3) + " g"}
	case "percent":
		set(t, &l.Percent, rapid.SampledFrom([]string{"", "-"}).Draw(t, "sign")+drawDecimal(t, "percent", 0, 99, 2)+" %")
		l.Of.Items, l.Of.Given = []string{"line a"}, true
	}
	return l
}

func drawComparable(t *rapid.T) stone.Comparable {
	c := stone.Comparable{Source: "a sale", Amount: stone.Decimal(drawDecimal(t, "amount", 1, 99999, 2))}
	if rapid.Bool().Draw(t, "piece") {
		c.By = "piece"
	} else {
		set(t, &c.Weight, drawDecimal(t, "their weight", 1, 20, 3)+" ct")
	}
	for range rapid.IntRange(0, 3).Draw(t, "adjustments") {
		adjust := stone.Adjustment{What: "size"}
		if rapid.Bool().Draw(t, "fraction") {
			adjust.Fraction = rapid.SampledFrom([]string{"-1/3", "+2/7", "1/9"}).Draw(t, "part")
		} else {
			set(t, &adjust.By, rapid.SampledFrom([]string{"", "-"}).Draw(t, "sign")+drawDecimal(t, "by", 0, 99, 2)+" %")
		}
		c.Adjust = append(c.Adjust, adjust)
	}
	return c
}

func set(t *rapid.T, m interface{ Set(string) error }, text string) {
	if err := m.Set(text); err != nil {
		t.Fatal(err)
	}
}
