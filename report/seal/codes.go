package seal

import (
	"regexp"
	"unicode/utf16"

	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// codes says which letters the codes of a font stand for, by its ToUnicode map
// (ISO 32000-1, 9.10.3). Codes have two bytes.
type codes struct {
	single map[int][]rune
	ranges []codeRange
}

// A codeRange is codes in a row for letters in a row.
type codeRange struct {
	first, last int
	letter      rune // of the first
}

// letters are those of a code.
func (c *codes) letters(code int) []rune {
	if found, ok := c.single[code]; ok {
		return found
	}
	for _, r := range c.ranges {
		if code >= r.first && code <= r.last {
			return []rune{r.letter + rune(code-r.first)}
		}
	}
	return nil
}

// decode reads a string of the font. Without a map its bytes are letters.
func (c *codes) decode(s []byte) []rune {
	var out []rune
	if c == nil {
		for _, b := range s {
			out = append(out, rune(b))
		}
		return out
	}
	for i := 0; i+1 < len(s); i += 2 {
		out = append(out, c.letters(int(s[i])<<8|int(s[i+1]))...)
	}
	return out
}

var (
	codeSection = regexp.MustCompile(`(?s)begin(bfchar|bfrange)(.*?)endbf`)
	codeToken   = regexp.MustCompile(`<[0-9A-Fa-f\s]*>|[\[\]]`)
)

// readCodes reads a ToUnicode map. What it does not understand it leaves out.
func readCodes(src []byte) *codes {
	c := &codes{single: map[int][]rune{}}
	for _, section := range codeSection.FindAllSubmatch(src, -1) {
		tokens := codeToken.FindAll(section[2], -1)
		if string(section[1]) == "bfchar" {
			for ; len(tokens) >= 2; tokens = tokens[2:] {
				c.single[code(tokens[0])] = units(tokens[1])
			}
			continue
		}
		for len(tokens) >= 3 {
			tokens = c.readRange(code(tokens[0]), code(tokens[1]), tokens[2:])
		}
	}
	return c
}

// readRange reads what the codes of a range stand for: the letter of the first,
// or a list of those of each. It returns what is behind it.
func (c *codes) readRange(first, last int, tokens [][]byte) (rest [][]byte) {
	if string(tokens[0]) != "[" {
		if letters := units(tokens[0]); len(letters) == 1 {
			c.ranges = append(c.ranges, codeRange{first, last, letters[0]})
		}
		return tokens[1:]
	}
	for n, token := range tokens[1:] {
		if string(token) == "]" {
			return tokens[n+2:]
		}
		if first+n <= last {
			c.single[first+n] = units(token)
		}
	}
	return nil
}

// units are the letters that a token spells in UTF-16.
func units(token []byte) []rune {
	b := hexBytes(token)
	var list []uint16
	for i := 0; i+1 < len(b); i += 2 {
		list = append(list, uint16(b[i])<<8|uint16(b[i+1]))
	}
	return utf16.Decode(list)
}

// code is a number of two bytes, -1 if it is none.
func code(token []byte) int {
	b := hexBytes(token)
	if len(b) != 2 {
		return -1
	}
	return int(b[0])<<8 | int(b[1])
}

// fontsOf reads what the fonts of a page mean, by the names that its content
// uses. A font that cannot be read is left out.
func fontsOf(ctx *model.Context, page int) map[string]*codes {
	_, _, inherited, err := ctx.PageDict(page, false)
	if err != nil || inherited == nil {
		return nil
	}
	found := map[string]*codes{}
	for name, o := range entry(ctx, inherited.Resources, "Font") {
		font, err := ctx.DereferenceDict(o)
		if err != nil || font == nil {
			continue
		}
		if o, ok := font.Find("ToUnicode"); ok {
			if src, err := stream(ctx, o); err == nil {
				found[name] = readCodes(src)
			}
		}
	}
	return found
}
