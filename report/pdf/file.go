package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"strconv"
	"strings"
	"sync"
	"unicode/utf16"

	"stonewrit/report"
)

// file is a PDF in the making: objects[i] is number i+1. Clauses in this file
// are of ISO 32000-1.
type file struct {
	objects [][]byte
	writers *sync.Pool // of *zlib.Writer
}

// add appends an object and returns its number.
func (f *file) add(body string) int {
	f.objects = append(f.objects, []byte(body))
	return len(f.objects)
}

// reserve makes room for an object whose content follows, so that others may
// name it.
func (f *file) reserve() int { return f.add("") }

func (f *file) set(number int, body string) { f.objects[number-1] = []byte(body) }

// addStream appends a stream with more dictionary entries.
func (f *file) addStream(entries string, data []byte) int {
	head := "<<" + entries + " /Length " + strconv.Itoa(len(data)) + ">>\nstream\n"
	const end = "\nendstream"
	body := make([]byte, 0, len(head)+len(data)+len(end))
	body = append(append(append(body, head...), data...), end...)
	f.objects = append(f.objects, body)
	return len(f.objects)
}

// addDeflated appends a compressed stream with more dictionary entries.
func (f *file) addDeflated(entries string, data []byte) int {
	return f.addStream(strings.TrimSpace(entries+" /Filter /FlateDecode"), f.deflate(data))
}

func (f *file) deflate(data []byte) []byte {
	var out bytes.Buffer
	w := f.writers.Get().(*zlib.Writer)
	defer f.writers.Put(w)
	w.Reset(&out)
	w.Write(data) // a bytes.Buffer never fails
	w.Close()
	return out.Bytes()
}

// newDeflater makes a writer for the pool: it is large, and takes longer to make
// than a page to compress.
func newDeflater() any { return zlib.NewWriter(nil) }

// write puts the objects together with a cross-reference table (7.5.4) and a
// trailer whose identifier is drawn from the content, so that it is the same
// for the same file (14.4).
func (f *file) write(catalog, info int) []byte {
	size := 0
	for _, body := range f.objects {
		size += len(body) + 48
	}
	out := bytes.NewBuffer(make([]byte, 0, size+1024))
	out.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	offsets := make([]int, len(f.objects))
	for i, body := range f.objects {
		offsets[i] = out.Len()
		fmt.Fprintf(out, "%d 0 obj\n", i+1)
		out.Write(body)
		out.WriteString("\nendobj\n")
	}
	id := sha256.Sum256(out.Bytes())
	start := out.Len()
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, off := range offsets {
		fmt.Fprintf(out, "%010d 00000 n \n", off)
	}
	fmt.Fprintf(out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(offsets)+1, catalog, info, id[:16], id[:16], start)
	return out.Bytes()
}

// textString writes a string for people, in UTF-16 (7.9.2.2).
func textString(s string) string {
	const digits = "0123456789ABCDEF"
	b := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, digits[u>>12], digits[u>>8&15], digits[u>>4&15], digits[u&15])
	}
	return string(append(b, '>'))
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
