package quantity

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strings"
)

// A SyntaxError says what is wrong with a quantity and, if that is clear, how
// it should be written.
type SyntaxError struct {
	Text, Problem, Hint string
}

func (e *SyntaxError) Error() string { return fmt.Sprintf("%q %s", e.Text, e.Problem) }

//go:embed units.csv
var unitsCSV string

// checkUnit tells what is wrong with a unit, nothing if it is one of the
// symbols.
func checkUnit(symbols []string, written, number string) (problem, hint string) {
	switch {
	case len(symbols) == 0 && written == "":
		return "", ""
	case len(symbols) == 0:
		return "has a unit, and a pure number was expected", "did you mean " + number + "?"
	case written == "":
		return "has no unit, " + symbols[0] + " was expected", "did you mean " + number + " " + symbols[0] + "?"
	case slices.Contains(symbols, written):
		return "", ""
	}
	hint = "convert it to " + symbols[0]
	if n, ok := convert(number, written, symbols[0]); ok {
		hint = "did you mean " + n + " " + symbols[0] + "?"
	}
	return "has the unit " + written + ", " + symbols[0] + " was expected", hint
}

// convert turns a number with a unit that people also write to the unit wanted,
// exactly.
func convert(number, from, to string) (string, bool) {
	rows, err := csv.NewReader(strings.NewReader(unitsCSV)).ReadAll()
	if err != nil {
		return "", false
	}
	from = strings.ReplaceAll(from, " ", "_")
	for _, row := range rows[1:] {
		if row[0] != to || !slices.Contains(strings.Fields(row[1]), from) {
			continue
		}
		if row[2] == row[3] {
			return number, true // only the spelling differs
		}
		n, ok1 := new(big.Rat).SetString(number)
		times, ok2 := new(big.Rat).SetString(row[2])
		by, ok3 := new(big.Rat).SetString(row[3])
		if !ok1 || !ok2 || !ok3 || by.Sign() == 0 {
			return "", false
		}
		n.Mul(n, times).Quo(n, by)
		decimals, exact := n.FloatPrec()
		return n.FloatString(decimals), exact
	}
	return "", false
}

var (
	digitsWithCommas = regexp.MustCompile(`[0-9][0-9.,]*`)
	thousandGroups   = regexp.MustCompile(`^[0-9]{1,3}(?:(?:[ '][0-9]{3})+(?:\.[0-9]+)?|(?:,[0-9]{3})+\.[0-9]+|(?:,[0-9]{3}){2,})(?: |$|[^0-9.,])`)
	commaThree       = regexp.MustCompile(`^([1-9][0-9]{0,2}),([0-9]{3})( ?[^0-9,]*)$`)
	halfNumber       = regexp.MustCompile(`^([+-]?)(?:(\.[0-9]+)|([0-9]+)\.)( ?[^0-9]*)$`)
	twoNumbers       = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) ?[^0-9]{0,4}? ?(?:-|–|to|x|×|/) ?([0-9]+(?:\.[0-9]+)?) ?([^0-9]*)$`)
	somewhere        = regexp.MustCompile(`^[^0-9+-]+ ?([0-9]+(?:\.[0-9]+)?)( ?)([^0-9+±-]*)$`)
)

// malformed finds the likely slip in a text that is not a quantity. s is the
// text with plain spaces.
func malformed(text, s string, symbols []string) error {
	fail := func(problem, hint string) error { return &SyntaxError{text, problem, hint} }
	is := "is not " + describe(symbols)
	switch {
	case thousandGroups.MatchString(s):
		return fail("has a mark between thousands", "write the digits without it: "+joinGroups(s))
	case commaThree.MatchString(s):
		return fail("has a comma", "write a decimal point: "+commaThree.ReplaceAllString(s, "$1.$2$3")+"; if thousands were meant, "+commaThree.ReplaceAllString(s, "$1$2$3"))
	case strings.Contains(s, ",") && digitsWithCommas.MatchString(s):
		return fail("has a decimal comma", "write a decimal point: "+pointForComma(s))
	case halfNumber.MatchString(s):
		g := halfNumber.FindStringSubmatch(s)
		whole := g[3]
		if g[2] != "" {
			whole = "0" + g[2]
		}
		return fail("lacks a digit beside its decimal point", "did you mean "+g[1]+whole+g[4]+"?")
	case twoNumbers.MatchString(s):
		g := twoNumbers.FindStringSubmatch(s)
		unit := ""
		if len(symbols) > 0 {
			unit = " " + symbols[0]
		}
		return fail("holds two numbers", fmt.Sprintf("write one; where a list is allowed, [%s%s, %s%s]", g[1], unit, g[2], unit))
	case somewhere.MatchString(s):
		g := somewhere.FindStringSubmatch(s)
		if unit := strings.TrimSpace(g[3]); slices.Contains(symbols, unit) || len(symbols) == 0 && unit == "" {
			return fail(is, "did you mean "+g[1]+g[2]+g[3]+"? doubt is written +-: "+g[1]+g[2]+g[3]+" +-0.1")
		}
	}
	example := "1.54"
	if len(symbols) > 0 {
		example = "7.82 " + symbols[0]
	}
	return fail(is, "for example "+example)
}

func describe(symbols []string) string {
	if len(symbols) > 0 {
		return "a number with the unit " + symbols[0]
	}
	return "a plain number"
}

// joinGroups takes the marks out of a number in groups of three.
func joinGroups(s string) string {
	end := len(s) - len(strings.TrimLeft(s, "0123456789.,' "))
	number := strings.NewReplacer(" ", "", "'", "", ",", "").Replace(s[:end])
	if rest := strings.TrimSpace(s[end:]); rest != "" {
		return number + " " + rest
	}
	return number
}

// pointForComma writes each number of s with a decimal point; a point that
// stood before a comma marked thousands.
func pointForComma(s string) string {
	return digitsWithCommas.ReplaceAllStringFunc(s, func(n string) string {
		if comma := strings.LastIndexByte(n, ','); comma >= 0 && strings.Count(n, ",") == 1 && strings.LastIndexByte(n, '.') < comma {
			n = strings.ReplaceAll(n[:comma], ".", "") + "." + n[comma+1:]
		}
		return strings.TrimSuffix(n, ".")
	})
}
