package pdf

import (
	"unicode"

	"golang.org/x/text/unicode/norm"

	"stonewrit/report"
)

// Characters that steer line breaking or have a stand-in.
const (
	noBreakSpace  = '\u00a0'
	softHyphen    = '\u00ad'
	zeroWidth     = '\u200b' // may break, shows nothing
	hyphen        = '\u2010'
	noBreakHyphen = '\u2011'
	enDash        = '\u2013'
	emDash        = '\u2014'
	wordJoiner    = '\u2060' // shows nothing, forbids a break
	byteOrderMark = '\ufeff' // the same, old use
)

// voice is how a stretch of text is set.
type voice struct {
	face Face
	size Point
	ink  Ink
}

// voiceOf returns the voice of a style in a text of the given size.
func voiceOf(s report.Style, size Point) voice {
	switch s {
	case report.StyleStrong:
		return voice{FaceBold, size, InkBlack}
	case report.StyleItalic:
		return voice{FaceItalic, size, InkBlack}
	case report.StyleQuiet:
		return voice{FaceRegular, sizeSmall, InkGrey}
	}
	return voice{FaceRegular, size, InkBlack}
}

// piece is a stretch of characters in one voice.
type piece struct {
	voice
	text  string
	width Point
	shift *report.XY // of an accent set on the piece before it; y downwards
}

// word is what stands between two places where a line may break. The space
// after it is dropped at the end of a line; a soft one shows a hyphen there.
type word struct {
	pieces []piece
	width  Point
	space  *piece // nil: the next word follows without one
	soft   bool
	stop   bool // the line ends here
}

// face returns the face that draws r when the voice asks for want.
func (p *typeface) face(want Face, r rune) Face {
	if p.faces[want].has(r) {
		return want
	}
	for i := FaceOther; i < faceCount; i++ {
		if f := p.faces[i]; f != nil && f.has(r) {
			return i
		}
	}
	return want
}

// measure returns the piece of a text in one voice and one face.
func (p *typeface) measure(s string, v voice) piece {
	var sum int
	f := p.faces[v.face]
	for _, r := range s {
		if r < planeEnd {
			sum += int(f.advance[r])
		}
	}
	return piece{voice: v, text: s, width: Point(sum) * v.size / 1000}
}

// drawn returns the character that stands for r on paper, and false where
// nothing does.
func drawn(r rune) (rune, bool) {
	switch r {
	case softHyphen, zeroWidth, wordJoiner, byteOrderMark, '\r':
		return r, false
	case noBreakHyphen:
		return hyphen, true
	case '\t':
		return ' ', true
	}
	return r, true
}

// setRune is a character with the voice it is set in.
type setRune struct {
	r rune
	v voice
}

// words cuts a text at the places where a line may break. Characters are
// composed first (Unicode normalisation form C), so that an accent typed apart
// finds its glyph.
func (p *typeface) words(t report.Text, size Point) []word {
	length := 0
	for _, run := range t {
		length += len(run.Text)
	}
	set := make([]setRune, 0, length)
	for _, run := range t {
		v := voiceOf(run.Style, size)
		for _, r := range norm.NFC.String(run.Text) {
			set = append(set, setRune{r, v})
		}
	}
	var words []word
	var w wordMaker
	end := func() {
		if len(w.set) > 0 || w.word.stop || w.word.space != nil {
			words = append(words, w.finish(p))
		}
		w = wordMaker{set: w.set[:0]}
	}
	for i, s := range set {
		switch {
		case s.r == '\n':
			w.word.stop = true
			end()
		case s.r == ' ' || s.r == '\t':
			if len(w.set) == 0 { // spaces after spaces or at the start of a line
				continue
			}
			space := p.measure(" ", s.v)
			w.word.space = &space
			end()
		default:
			if r, ok := drawn(s.r); ok {
				w.set = append(w.set, setRune{r, s.v})
			}
			if breakAfter(set, i) {
				w.word.soft = s.r == softHyphen
				end()
			}
		}
	}
	end()
	return words
}

// wordMaker gathers the characters of a word.
type wordMaker struct {
	word word
	set  []setRune
}

// finish measures the gathered characters: a piece for each voice and face, and
// one for each accent that is not part of a character.
func (w *wordMaker) finish(p *typeface) word {
	var text []rune
	var v voice
	flush := func() {
		if len(text) > 0 {
			pc := p.measure(string(text), v)
			w.word.pieces = append(w.word.pieces, pc)
			w.word.width += pc.width
			text = text[:0]
		}
	}
	var letter rune
	var over []rune
	for _, s := range w.set {
		next := s.v
		next.face = p.face(s.v.face, s.r)
		if isAccent(s.r) && letter != 0 {
			flush()
			shift := p.faces[v.face].accentShift(letter, over, s.r, v.size)
			w.word.pieces = append(w.word.pieces, piece{voice: v, text: string(s.r), shift: &shift})
			over = append(over, s.r)
			continue
		}
		letter, over = s.r, nil
		if next != v {
			flush()
			v = next
		}
		text = append(text, s.r)
	}
	flush()
	return w.word
}

// breakAfter reports whether a line may break after the character at i of a
// text, other than at a space. It breaks after a hyphen only between letters
// and after a slash or dash not between digits, so that dates, ranges and
// numbers stay whole. A no-break space or word joiner on either side forbids.
func breakAfter(set []setRune, i int) bool {
	if i+1 >= len(set) {
		return false
	}
	next := set[i+1].r
	if next == ' ' || next == '\t' || next == '\n' || next == wordJoiner || next == noBreakSpace || next == '\u202f' {
		return false
	}
	var prev rune
	if i > 0 {
		prev = set[i-1].r
	}
	switch set[i].r {
	case zeroWidth, softHyphen:
		return true
	case '-', hyphen:
		return unicode.IsLetter(prev) && unicode.IsLetter(next) && !inAddress(set, i)
	case '/', enDash, emDash:
		return prev != 0 && !(unicode.IsDigit(prev) && unicode.IsDigit(next))
	}
	return false
}

// inAddress reports whether the character at i stands in a mail or web address,
// where a hyphen at the end of a line would be taken for part of it or for none.
func inAddress(set []setRune, i int) bool {
	from, to := i, i
	for from > 0 && !unicode.IsSpace(set[from-1].r) {
		from--
	}
	for to < len(set) && !unicode.IsSpace(set[to].r) {
		to++
	}
	for j := from; j < to; j++ {
		if set[j].r == '@' || set[j].r == ':' && j+2 < to && set[j+1].r == '/' && set[j+2].r == '/' {
			return true
		}
	}
	return false
}
