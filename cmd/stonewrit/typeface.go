package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"stonewrit/report/pdf"
)

// fontBytes is the most that a font file may hold; fonts of whole scripts hold
// up to some 20 MB (common practice, no source).
const fontBytes = 32 << 20

// pressOf makes a press with the built-in typeface, or with the faces in the
// folder beside the bench file. The fonts that the bench file names stand in for
// characters that the typeface lacks.
func pressOf(b *benchFile) (*pdf.Press, error) {
	if b == nil {
		return pdf.NewPress()
	}
	family, err := facesBeside(b)
	if err != nil {
		return nil, err
	}
	if family.Others, err = fontsOf(b, family.Others); err != nil {
		return nil, err
	}
	return pdf.NewPressWith(family)
}

// facesBeside are the fonts in the folder beside the bench file that replace
// those of the program.
func facesBeside(b *benchFile) (pdf.Family, error) {
	family := pdf.Family{Name: filepath.Join(filepath.Dir(b.file), fontFolder)}
	folder, err := folderBeside(b, fontFolder)
	if err != nil || folder == nil {
		return family, err
	}
	defer folder.Close()
	var other []byte
	for _, face := range []struct {
		file string
		data *[]byte
	}{{"regular.ttf", &family.Regular}, {"bold.ttf", &family.Bold}, {"italic.ttf", &family.Italic}, {"other.ttf", &other}} {
		data, err := readFont(folder, face.file)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return family, fmt.Errorf("%s: %w", filepath.Join(family.Name, face.file), bare(err))
		}
		*face.data = data
	}
	if other != nil {
		family.Others = []pdf.Font{{Name: filepath.Join(family.Name, "other.ttf"), Data: other}}
	}
	return family, nil
}

// fontsOf reads the fonts that the bench file names. Each is tried alone, so
// that an error tells the line which names it.
func fontsOf(b *benchFile, fonts []pdf.Font) ([]pdf.Font, error) {
	files := b.bench.Font.Items
	if len(files) == 0 {
		return fonts, nil
	}
	if len(fonts)+len(files) > pdf.MostOthers {
		return nil, failing("one font may hold several scripts", "%s: %d fonts, at most %d", b.at("font"), len(files), pdf.MostOthers)
	}
	root, err := os.OpenRoot(b.dir)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	for i, file := range files {
		data, err := readFont(root, filepath.FromSlash(file))
		if err != nil {
			return nil, failing("it is looked for from the folder of the bench file", "%s: %s: %v", b.at(fmt.Sprintf("font[%d]", i)), file, bare(err))
		}
		if _, err := pdf.NewPressWith(pdf.Family{Others: []pdf.Font{{Name: file, Data: data}}}); err != nil {
			return nil, failing("a TrueType file, which mostly ends in .ttf, is wanted", "%s: %v", b.at(fmt.Sprintf("font[%d]", i)), err)
		}
		fonts = append(fonts, pdf.Font{Name: file, Data: data})
	}
	return fonts, nil
}

// readFont reads a file that is not larger than a font.
func readFont(folder *os.Root, name string) ([]byte, error) {
	f, err := folder.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, fontBytes+1))
	if err == nil && len(data) > fontBytes {
		err = fmt.Errorf("%s is larger than any font, %d MB", name, fontBytes>>20)
	}
	return data, err
}
