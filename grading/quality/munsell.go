package quality

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"stonewrit/grading/phrase"
)

// A Munsell is a colour in the notation of ASTM D1535. Hue is its place on the
// circle of a hundred hues, above 0 and at most 100: 5R is 5, 5YR 15, 10RP 100.
// A neutral grey has chroma 0 and its hue means nothing.
type Munsell struct {
	Hue, Value, Chroma float64
}

// hues are the ten hue letters in the order of the circle, each ten steps long.
func hues() []string {
	return []string{"R", "YR", "Y", "GY", "G", "BG", "B", "PB", "P", "RP"}
}

var (
	chromatic = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?)\s*(R|YR|Y|GY|G|BG|B|PB|P|RP)\s*([0-9]+(?:\.[0-9]+)?)\s*/\s*([0-9]+(?:\.[0-9]+)?)$`)
	neutral   = regexp.MustCompile(`^N\s*([0-9]+(?:\.[0-9]+)?)\s*(?:/\s*(?:0(?:\.0+)?)?)?$`)
)

// The ends of the scales: value from black to white; chroma beyond 50 is met in
// no solid colour, whatever the hue (from memory).
const (
	highestHue, hueSteps = 10, 10
	highestValue         = 10
	highestChroma        = 50
)

// ParseMunsell reads a notation such as "5R 4/12", "2.5GY 6/8" or "N 5/". The
// error tells what is expected.
func ParseMunsell(text string) (Munsell, error) {
	s := strings.ToUpper(strings.Join(strings.Fields(text), " "))
	if m := neutral.FindStringSubmatch(s); m != nil {
		return checkedMunsell(text, Munsell{Value: decimal(m[1])})
	}
	m := chromatic.FindStringSubmatch(s)
	if m == nil {
		return Munsell{}, unread("%q is not a Munsell notation: hue, value and chroma were expected, as in 5R 4/12 or N 5/", text)
	}
	step := decimal(m[1])
	if step > highestHue {
		return Munsell{}, unread("%q: a hue goes from 0 to 10, as in 2.5%s", text, m[2])
	}
	hue := float64(hueSteps*slices.Index(hues(), m[2])) + step
	if hue == 0 { // 0R is 10RP
		hue = float64(hueSteps * len(hues()))
	}
	return checkedMunsell(text, Munsell{hue, decimal(m[3]), decimal(m[4])})
}

func checkedMunsell(text string, m Munsell) (Munsell, error) {
	switch {
	case m.Value > highestValue:
		return Munsell{}, unread("%q: a value goes from 0, black, to 10, white", text)
	case m.Chroma > highestChroma:
		return Munsell{}, unread("%q: a chroma of %s is beyond every colour", text, figured(m.Chroma))
	case m.Chroma == 0:
		m.Hue = 0
	}
	return m, nil
}

// decimal reads digits that a pattern has accepted.
func decimal(digits string) float64 {
	v, _ := strconv.ParseFloat(digits, 64)
	return v
}

func plain(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

func figured(v float64) phrase.Figure { return phrase.Figure(plain(v)) }

// Neutral reports whether the colour is a grey, black or white.
func (m Munsell) Neutral() bool { return m.Chroma == 0 }

// String is the notation as ASTM D1535 writes it: "5R 4/12", "N 5/".
func (m Munsell) String() string {
	if m.Neutral() {
		return "N " + plain(m.Value) + "/"
	}
	circle := float64(hueSteps * len(hues()))
	family := int(math.Ceil(m.Hue/hueSteps)) - 1
	if m.Hue <= 0 || m.Hue > circle {
		family = len(hues()) - 1
	}
	step := m.Hue - float64(hueSteps*family)
	return plain(step) + hues()[family] + " " + plain(m.Value) + "/" + plain(m.Chroma)
}

// distance is the index of D. Nickerson, The specification of color tolerances,
// Textile Research 6 (1936) 505 (from memory), in steps of chroma: a step of
// value counts as two of chroma, a step of hue by the mean chroma. Its parts are
// added, as it is published, which suits blocks bounded in hue, value and
// chroma apart.
func (m Munsell) distance(n Munsell) float64 {
	circle := float64(hueSteps * len(hues()))
	hue := math.Abs(m.Hue - n.Hue)
	hue = min(hue, circle-hue)
	return (0.4*(m.Chroma+n.Chroma)/2*hue + 6*math.Abs(m.Value-n.Value) + 3*math.Abs(m.Chroma-n.Chroma)) / 3
}
