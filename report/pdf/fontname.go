package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
)

// embedded is a font as it stands in the file.
type embedded struct {
	face  Face
	name  string // PostScript name of the whole font
	chars []rune // what the subset holds
}

// nameFonts gives the embedded subsets names of the form that a subset must
// have, six letters and a plus sign before the font's own (ISO 32000-1,
// 9.6.4). fpdf calls them "utf8" and the family.
func (f *file) nameFonts(fonts []embedded) error {
	for _, e := range fonts {
		old := []byte("/utf8" + family + e.face.fpdfStyle())
		name := []byte("/" + subsetTag(e) + "+" + e.name)
		found := 0
		for n, body := range f.objects {
			if s := bytes.Index(body, []byte("stream\n")); s >= 0 || !bytes.Contains(body, old) {
				continue
			}
			replaced := replaceName(body, old, name)
			if !bytes.Equal(replaced, body) {
				f.objects[n] = replaced
				found++
			}
		}
		if found != 3 { // font, its descendant, its descriptor
			return fmt.Errorf("the PDF library wrote a file of unknown form: font %s stands in %d objects", e.face, found)
		}
	}
	return nil
}

// replaceName replaces a name where it ends, so that /utf8s does not match
// /utf8sB.
func replaceName(body, old, name []byte) []byte {
	var out []byte
	for {
		at := bytes.Index(body, old)
		if at < 0 {
			return append(out, body...)
		}
		end := at + len(old)
		out = append(out, body[:at]...)
		if end < len(body) && !bytes.ContainsRune([]byte(" \n/>"), rune(body[end])) {
			out = append(out, old...)
		} else {
			out = append(out, name...)
		}
		body = body[end:]
	}
}

// subsetTag draws six letters from the face and its characters, so that two
// subsets have two names and the same subset always the same.
func subsetTag(e embedded) string {
	sum := sha256.Sum256([]byte(e.name + string(e.chars)))
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag)
}
