package pdf

import (
	"bytes"
	"crypto/md5"
	"crypto/sha256"
	"fmt"
	"hash"
	"io"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"unicode/utf16"

	"stonewrit/report"
)

// fpdf draws pages well, but what it writes about the file as a whole falls
// short: its catalogue does not point to the XMP metadata, its outline points to
// wrong objects once there are attachments, its subset fonts are not named as
// subsets and take long, and pictures of the same width stand in a random order.
// complete therefore takes the objects fpdf wrote, without the catalogue, adds
// fonts, pictures, outline, attachments and metadata, and writes a catalogue,
// cross-reference table and trailer of its own. Clauses in this file are of
// ISO 32000-1.

// file is a PDF taken apart into its objects; objects[i] is number i+1.
type file struct {
	objects [][]byte
	catalog int        // object number of fpdf's catalogue
	info    int        // object number of the document information
	writers *sync.Pool // of *zlib.Writer
}

var trailerRefs = regexp.MustCompile(`/Root (\d+) 0 R\s*/Info (\d+) 0 R`)

// take reads the objects that fpdf wrote. fpdf numbers them from 1 without
// gaps and lists them in one table.
func take(raw []byte) (*file, error) {
	broken := fmt.Errorf("the PDF library wrote a file of unknown form")
	at := bytes.LastIndex(raw, []byte("startxref"))
	if at < 0 {
		return nil, broken
	}
	var start int
	if _, err := fmt.Sscanf(string(raw[at:]), "startxref\n%d", &start); err != nil || start > at {
		return nil, broken
	}
	refs := trailerRefs.FindSubmatch(raw[start:])
	lines := strings.Split(string(raw[start:at]), "\n")
	if refs == nil || len(lines) < 3 || lines[0] != "xref" {
		return nil, broken
	}
	var first, count int
	if _, err := fmt.Sscanf(lines[1], "%d %d", &first, &count); err != nil || first != 0 || len(lines) < 2+count {
		return nil, broken
	}
	f := &file{objects: make([][]byte, count-1)}
	f.catalog, _ = strconv.Atoi(string(refs[1]))
	f.info, _ = strconv.Atoi(string(refs[2]))
	for n := 1; n < count; n++ {
		off, err := strconv.Atoi(strings.Fields(lines[2+n])[0])
		if err != nil || off > start {
			return nil, broken
		}
		head := fmt.Appendf(nil, "%d 0 obj\n", n)
		end := objectEnd(raw[off:start])
		if !bytes.HasPrefix(raw[off:], head) || end < 0 {
			return nil, broken
		}
		f.objects[n-1] = raw[off+len(head) : off+end]
	}
	return f, nil
}

var streamLength = regexp.MustCompile(`/Length (\d+)`)

// objectEnd returns where an object's endobj begins. A stream is stepped over by
// its length, since its bytes may hold that word.
func objectEnd(b []byte) int {
	from := 0
	dictEnd := bytes.Index(b, []byte("endobj"))
	if s := bytes.Index(b, []byte("stream\n")); s >= 0 && s < dictEnd {
		m := streamLength.FindAllSubmatch(b[:s], -1)
		if m == nil {
			return -1
		}
		n, _ := strconv.Atoi(string(m[len(m)-1][1]))
		if from = s + n; from > len(b) {
			return -1
		}
	}
	end := bytes.Index(b[from:], []byte("endobj"))
	if end < 0 {
		return -1
	}
	return from + end
}

// add appends an object and returns its number.
func (f *file) add(body string) int {
	f.objects = append(f.objects, []byte(body+"\n"))
	return len(f.objects)
}

// addStream appends a stream with more dictionary entries.
func (f *file) addStream(entries string, data []byte) int {
	f.objects = append(f.objects, stream(entries, data))
	return len(f.objects)
}

// stream is the object of a stream with more dictionary entries.
func stream(entries string, data []byte) []byte {
	const end = "\nendstream\n"
	head := fmt.Sprintf("<<%s /Length %d>>\nstream\n", entries, len(data))
	body := make([]byte, 0, len(head)+len(data)+len(end))
	return append(append(append(body, head...), data...), end...)
}

// complete writes the finished file.
func (p *Press) complete(w io.Writer, raw []byte, doc report.Document, pages []Page, used fonts, pics pictures) error {
	f, err := take(raw)
	if err != nil {
		return err
	}
	f.writers = &p.writers
	shown, err := f.deflatePages(len(pages))
	if err != nil {
		return err
	}
	if err := f.addFonts(used); err != nil {
		return err
	}
	if err := f.addPictures(pics); err != nil {
		return err
	}
	catalog := "<</Type /Catalog /Pages 1 0 R /ViewerPreferences <</DisplayDocTitle true>>"
	if doc.Language != "" {
		catalog += " /Lang " + textString(doc.Language)
	}
	if n := f.outline(pages); n > 0 {
		catalog += fmt.Sprintf(" /Outlines %d 0 R", n)
	}
	catalog += f.attach(doc)
	catalog += fmt.Sprintf(" /Metadata %d 0 R", f.addStream("/Type /Metadata /Subtype /XML", xmp(doc, shown)))
	f.objects[f.catalog-1] = []byte(catalog + ">>\n")
	return f.write(w)
}

// deflatePages compresses what the pages show, and returns a digest of it: the
// SHA-256 of the SHA-256 of each page's content, one after another. fpdf writes pages first, each
// followed by its content: page i, from 0, is object 3+2i.
func (f *file) deflatePages(n int) (shown [sha256.Size]byte, err error) {
	all := sha256.New()
	for i := range n {
		at := 3 + 2*i // the index of the content's object
		_, body, _ := bytes.Cut(f.objects[at], []byte("stream\n"))
		body, ok := bytes.CutSuffix(body, []byte("\nendstream\n"))
		if !ok {
			return shown, fmt.Errorf("the PDF library wrote a file of unknown form: page %d has no content", i+1)
		}
		page := sha256.Sum256(body)
		all.Write(page[:])
		f.objects[at] = stream("/Filter /FlateDecode", f.deflate(body))
	}
	return [sha256.Size]byte(all.Sum(nil)), nil
}

// write puts the objects together with a cross-reference table (7.5.4) and a
// trailer whose identifier is drawn from the content, so that it is the same
// for the same file (14.4).
func (f *file) write(w io.Writer) error {
	out := tally{w: w, digest: sha256.New()}
	fmt.Fprint(&out, "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	offsets := make([]int, len(f.objects))
	for i, body := range f.objects {
		offsets[i] = out.n
		fmt.Fprintf(&out, "%d 0 obj\n", i+1)
		out.Write(body)
		fmt.Fprint(&out, "endobj\n")
	}
	id, start := out.digest.Sum(nil)[:16], out.n
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, off := range offsets {
		fmt.Fprintf(&out, "%010d 00000 n \n", off)
	}
	fmt.Fprintf(&out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(offsets)+1, f.catalog, f.info, id, id, start)
	return out.err
}

// tally counts and digests what is written, and remembers the first error.
type tally struct {
	w      io.Writer
	digest hash.Hash
	n      int
	err    error
}

func (t *tally) Write(b []byte) (int, error) {
	t.digest.Write(b)
	t.n += len(b)
	if t.err == nil {
		_, t.err = t.w.Write(b)
	}
	return len(b), nil
}

// outline adds an entry for each named section (12.3.3) and returns the number
// of the root, 0 if there is none. Page n is object 1+2n: fpdf writes pages
// first, each followed by its content.
func (f *file) outline(pages []Page) int {
	type entry struct{ title, dest string }
	var entries []entry
	for i, page := range pages {
		for _, s := range page.Sections {
			if s.Name != "" {
				entries = append(entries, entry{s.Name, fmt.Sprintf("[%d 0 R /XYZ 0 %.2f null]", 3+2*i, page.Height-max(0, s.Y-10))})
			}
		}
	}
	if len(entries) == 0 {
		return 0
	}
	root := len(f.objects) + 1
	f.add(fmt.Sprintf("<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", root+1, root+len(entries), len(entries)))
	for i, e := range entries {
		links := ""
		if i > 0 {
			links += fmt.Sprintf(" /Prev %d 0 R", root+i)
		}
		if i < len(entries)-1 {
			links += fmt.Sprintf(" /Next %d 0 R", root+i+2)
		}
		f.add(fmt.Sprintf("<</Title %s /Parent %d 0 R%s /Dest %s>>", textString(e.title), root, links, e.dest))
	}
	return root
}

// attach embeds the attachments (7.11.4) and returns the catalogue entries
// that name them.
func (f *file) attach(doc report.Document) string {
	if len(doc.Attachments) == 0 {
		return ""
	}
	date := pdfDate(doc)
	var names, refs strings.Builder
	for i, a := range doc.Attachments {
		stream := f.addStream(fmt.Sprintf("/Type /EmbeddedFile /Subtype /%s /Filter /FlateDecode /Params <</Size %d /CheckSum <%x> /ModDate %s>>",
			pdfName(a.Type), len(a.Data), md5.Sum(a.Data), date), f.deflate(a.Data))
		spec := f.add(fmt.Sprintf("<</Type /Filespec /F %s /UF %s /Desc %s /AFRelationship /Source /EF <</F %d 0 R /UF %d 0 R>>>>",
			textString(a.Name), textString(a.Name), textString(a.Description), stream, stream))
		fmt.Fprintf(&names, "(%03d) %d 0 R ", i, spec) // sorted, as a name tree must be (7.9.6)
		fmt.Fprintf(&refs, "%d 0 R ", spec)
	}
	return fmt.Sprintf(" /Names <</EmbeddedFiles <</Names [%s]>>>> /AF [%s]", names.String(), refs.String())
}

// textString writes a string for people, in UTF-16 (7.9.2.2).
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}

// pdfName escapes the characters that a name may not hold as they are (7.3.5).
func pdfName(s string) string {
	var b strings.Builder
	for _, c := range []byte(s) {
		if c > ' ' && c < 0x7f && !strings.ContainsRune("#/()<>[]{}%", rune(c)) {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "#%02X", c)
		}
	}
	if b.Len() == 0 {
		return "application#2Foctet-stream"
	}
	return b.String()
}

func pdfDate(doc report.Document) string {
	return "(D:" + fileDate(doc).Format("20060102150405") + ")"
}
