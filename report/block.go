package report

// Block is one of the types of this file, or a Figure.
type Block interface{ block() }

// Lead opens a document: the finding as one sentence in the large size, a
// photo beside it, figures in the margin, and what else the reader should know
// at once, as sentences that flow round the photo.
type Lead struct {
	Sentence Text
	Photo    *Photo
	Margin   []MarginFigure
	Body     []Text
	Small    bool // the body in the small size
}

// MarginFigure is one figure in the left margin: "1.520 ct", "weighed loose".
type MarginFigure struct {
	Figure string
	Note   Text
}

// Paragraph is running text.
type Paragraph struct {
	Text     Text
	Small    bool // set in the small size
	KeepNext bool // stays on the page of the block that follows
}

// List is a list of short texts.
type List struct {
	Items    []Text
	Numbered bool
	Small    bool
}

// Mark is a small drawn sign that says the same as the word beside it. The
// three differ in shape, so they read in grey and by a colour-blind reader.
type Mark uint8

// The marks. MarkFilled goes with agrees and supported, MarkOpen with cannot
// tell and undecided, MarkStruck with conflicts and contradicted.
const (
	MarkNone   Mark = iota
	MarkFilled      // a filled disc
	MarkOpen        // an open disc
	MarkStruck      // an open disc struck through
)

// Claims are the claims a document makes of a stone, each with its standing
// and what it rests on.
type Claims struct{ Claims []Claim }

// Claim is one of them.
type Claim struct {
	Name      string // "Species"
	Statement Text   // "corundum"
	Mark      Mark
	Standing  string // "supported"
	Because   []Text
}

// Table is a table without vertical lines. Its head is set again where it goes
// on on a new page.
type Table struct {
	Columns []Column
	Rows    []Row
	Small   bool // cells in the small size
	Wide    bool // takes the left margin too
}

// Column is a column of a Table. Width is a share: the columns with a Width
// divide what is left in proportion to it, after the columns without one have
// taken the width of their longest cell.
type Column struct {
	Head  string
	Width float64
	Align Align
}

// Align is where a cell's lines stand in its column.
type Align uint8

// The two alignments; AlignRight is for figures.
const (
	AlignLeft Align = iota
	AlignRight
)

// Row is a row of a Table: a cell for each column, fewer when the last ones are
// empty. Note is a second line below them in the small size, over all columns.
type Row struct {
	Cells []Cell
	Note  Text
}

// Cell is one cell; Mark stands before its text. A cell with a Picture has no
// text: the picture is set small.
type Cell struct {
	Text    Text
	Mark    Mark
	Picture *Image
}

// Photos are pictures side by side, each with its caption.
type Photos struct {
	Photos  []Photo
	Columns int // pictures in a row, 2 if zero, 4 at most
}

// Photo is a picture of the stone. Where MMPerPixel is known a scale bar is
// drawn below it.
type Photo struct {
	Image      Image
	Caption    Text
	MMPerPixel float64 // millimetres of the stone in one pixel of Image; 0 when not known
	Taken      string  // date, as printed
	SHA256     string  // of the original file, hexadecimal; the first 16 digits are printed
}

// Sum is a calculation set out as in a ledger: what, how, how much.
type Sum struct{ Lines []SumLine }

// SumLine is one line of a Sum. A total has a rule above its amount.
type SumLine struct {
	Label   Text
	Working Text
	Amount  string
	Total   bool
}

// Signature is the place of a signature: the picture of one, or a line to sign
// on, over name and date.
type Signature struct {
	Image       *Image
	Name        string
	Credentials []string
	Date        string // place and date, as printed
}

func (Lead) block()      {}
func (Paragraph) block() {}
func (List) block()      {}
func (Claims) block()    {}
func (Table) block()     {}
func (Photos) block()    {}
func (Figure) block()    {}
func (Sum) block()       {}
func (Signature) block() {}

// Para is a paragraph.
func Para(t Text) Paragraph { return Paragraph{Text: t} }

// Small is a paragraph in the small size.
func Small(t Text) Paragraph { return Paragraph{Text: t, Small: true} }

// Subhead is a line in bold that stays with the block it heads.
func Subhead(s string) Paragraph { return Paragraph{Text: Strong(s), KeepNext: true} }

// Bullets is a list with a dash before each item.
func Bullets(items ...Text) List { return List{Items: items} }

// Cells is a table row.
func Cells(cells ...Text) Row {
	row := Row{Cells: make([]Cell, len(cells))}
	for i, t := range cells {
		row.Cells[i].Text = t
	}
	return row
}

// Marked is a cell with a mark and the word that says the same.
func Marked(m Mark, word string) Cell { return Cell{Text: Plain(word), Mark: m} }

// Noted returns the row with a second small line.
func (r Row) Noted(note Text) Row {
	r.Note = note
	return r
}
