package quality

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quantity"
)

// A Claim is a weight of stones as a text states it.
type Claim struct {
	Text     string // as written
	Carats   string // decimal digits; "" for a claim in points or as a fraction alone
	Points   string // a hundredth of a carat each; "" for none
	Fraction string // "1/2"; "" for none
	Total    bool   // the text calls it a total
}

var (
	caratText    = regexp.MustCompile(`(?i)(?:^|[^0-9./])([0-9]*\.?[0-9]+)\s*(?:ct|cts|carats?)\b`)
	pointText    = regexp.MustCompile(`(?i)(?:^|[^0-9./])([0-9]+(?:\.[0-9]+)?)[\s-]*(?:points?|pts?|pointers?)\b`)
	fractionText = regexp.MustCompile(`(?i)(?:([0-9]+/[0-9]+|[¼½¾⅓⅔⅛⅜⅝⅞]|\bhalf|\bquarter|\bthird)(?:[\s-]+(?:of[\s-]+)?an?)?)[\s-]*(?:ct|cts|carats?)\b`)
	rangeText    = regexp.MustCompile(`(?i)(?:±|\+-|\+/-)\s*[0-9]*\.?[0-9]+|[0-9]*\.[0-9]+\s*(?:ct|carats?)?\s*(?:-|–|to)\s*[0-9]*\.[0-9]+`)
	totalText    = regexp.MustCompile(`(?i)\btotal|\btogether\b|\bt\.?w\.?\b`)
	karatOfStone = regexp.MustCompile(`(?i)\b([0-9]+(?:\.[0-9]+)?)[\s-]*(?:karats?|kt|k)\s+(?:[a-z-]+\s+){0,2}?([a-z]+)\b`)
	caratOfGold  = regexp.MustCompile(`(?i)\b([0-9]{1,2})[\s-]*(?:ct|carats?)\s+(?:[a-z-]+\s+)?gold\b`)
)

// ParseClaim reads the weight that a text states. ok is false for a text that
// states none.
func ParseClaim(text string) (c Claim, ok bool) {
	c.Text, c.Total = text, totalText.MatchString(text)
	if m := fractionText.FindStringSubmatch(text); m != nil {
		c.Fraction = m[1]
	} else if m := caratText.FindStringSubmatch(text); m != nil {
		c.Carats = m[1]
	}
	if m := pointText.FindStringSubmatch(text); m != nil {
		c.Points = m[1]
	}
	return c, c != Claim{Text: text, Total: c.Total}
}

// Bounds are the lowest and highest reading to three decimals for which a claim
// in decimal carats is true to its last decimal, a claim with one decimal to the
// second: .5 carat is 0.495 to 0.504 (16 CFR 23.18(c)). ok is false for a claim
// that is no decimal number, or that has three decimals and more and so bounds
// itself.
func (c Claim) Bounds() (low, high string, ok bool) {
	v, err := strconv.ParseFloat(c.Carats, 64)
	_, decimals, _ := strings.Cut(c.Carats, ".")
	if err != nil || len(decimals) > 2 {
		return "", "", false
	}
	thousandths := int(v*1000 + 0.5)
	return fmt.Sprintf("%d.%03d", (thousandths-5)/1000, (thousandths-5)%1000), fmt.Sprintf("%d.%03d", (thousandths+4)/1000, (thousandths+4)%1000), true
}

// Holds reports whether the claim is true of a reading in decimal carats.
func (c Claim) Holds(measured string) bool { return quantity.ClaimHolds(c.Carats, measured) }

// FromPoints is a weight in points as decimal carats: 25 points are 0.25 ct, each
// a hundredth of a carat (16 CFR 23.18(b) note).
func FromPoints(points string) (string, error) {
	r, ok := new(big.Rat).SetString(points)
	if !ok || r.Sign() < 0 {
		return "", fmt.Errorf("quality: %q is not a number of points", points)
	}
	_, decimals, _ := strings.Cut(points, ".")
	return r.Quo(r, big.NewRat(100, 1)).FloatString(2 + len(decimals)), nil
}

// Total is the sum of single weights in decimal carats, with as many decimals
// as the one that has the most. It returns an error for text that is not a
// decimal number from 0.
func Total(weights ...string) (string, error) {
	sum, places := new(big.Rat), 0
	for _, w := range weights {
		r, ok := new(big.Rat).SetString(w)
		if !ok || r.Sign() < 0 || strings.ContainsAny(w, "/eE") {
			return "", fmt.Errorf("quality: %q is not a weight in decimal digits", w)
		}
		sum.Add(sum, r)
		_, decimals, _ := strings.Cut(w, ".")
		places = max(places, len(decimals))
	}
	return sum.FloatString(places), nil
}

// mayWeigh reports whether a text has what every weight in words has: figures, a
// fraction, or the unit. Most texts have none, and need no closer look.
func mayWeigh(text string) bool {
	lower := strings.ToLower(text)
	return strings.ContainsAny(lower, "0123456789¼½¾⅓⅔⅛⅜⅝⅞") || strings.Contains(lower, "ct") || strings.Contains(lower, "carat")
}

// weightWords finds weights that a text words wrongly: points without decimal
// carats, a fraction without range or tolerance (16 CFR 23.18), the karat of
// gold for the carat of stones and the other way round.
func (g *Grader) weightWords(text string) []Refusal {
	if !mayWeigh(text) {
		return nil
	}
	c, _ := ParseClaim(text)
	var found []Refusal
	if c.Points != "" && !caratText.MatchString(text) {
		carats, _ := FromPoints(c.Points)
		found = append(found, Refusal{c.Points + " points", phrase.Say("%s ct beside the points", phrase.Figure(carats)), "16 CFR 23.18(b)", "points", false})
	}
	if c.Fraction != "" && !rangeText.MatchString(text) {
		found = append(found, Refusal{c.Fraction + " ct", "decimal carats, or the range or tolerance beside the fraction", "16 CFR 23.18(d)", "ct-fraction", false})
	}
	for _, m := range karatOfStone.FindAllStringSubmatch(text, -1) {
		if word := strings.ToLower(m[2]); g.gemWords[word] || g.gemWords[strings.TrimSuffix(word, "s")] {
			found = append(found, Refusal{m[1] + " karat", phrase.Say("%s ct: the karat is the fineness of gold", phrase.Figure(m[1])), "16 CFR 23.18(b) note", "carat-defined", false})
		}
	}
	for _, m := range caratOfGold.FindAllStringSubmatch(text, -1) {
		found = append(found, Refusal{m[1] + " carat gold", phrase.Say("%s K gold: the carat is the mass of stones", phrase.Figure(m[1])), "16 CFR 23.3(b)(2); 16 CFR 23.18(b) note", "carat-defined", true})
	}
	return found
}
