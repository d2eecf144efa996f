package register

import (
	"context"
	"errors"
	"io/fs"
	"path"
	"strings"
)

// strays finds PDFs in the folder and below that are not on the register,
// and temporary files. Each is looked up when it is met, so that one issued
// meanwhile is not taken for a stray.
func (a *auditor) strays(ctx context.Context, folder string) error {
	o, err := openOutlet(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil // every PDF was found missing
	}
	if err != nil {
		return err
	}
	defer o.close()
	return fs.WalkDir(o.root.FS(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			a.find(Finding{Kind: StrayPDF, File: name}, "cannot be looked into: %v", err)
			return nil
		}
		switch {
		case d.IsDir():
			return nil
		case isPart(path.Base(name)):
			a.find(Finding{Kind: Leftover, File: name}, "")
			return nil
		case !strings.EqualFold(path.Ext(name), pdfSuffix):
			return nil
		}
		known, err := a.knows(ctx, name)
		if err == nil && !known {
			a.find(Finding{Kind: StrayPDF, File: name}, "")
		}
		return err
	})
}

// knows reports whether a PDF of this path below the folder is on the register.
func (r *Reader) knows(ctx context.Context, name string) (bool, error) {
	n, err := ParseNumber(strings.TrimSuffix(name, pdfSuffix))
	if err != nil || n.String()+pdfSuffix != name {
		return false, nil
	}
	_, err = r.Show(ctx, n)
	if errors.Is(err, ErrNotFound) {
		return false, nil
	}
	var unreadable *cellError
	if errors.As(err, &unreadable) {
		return true, nil // found before
	}
	return err == nil, err
}
