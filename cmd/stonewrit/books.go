package main

import (
	"context"
	"errors"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	"stonewrit/report/register"
)

// books are the registers that a run writes to: one in most runs, more where
// the stones belong to several benches.
type books struct {
	p    *program
	out  string // folder of the PDFs
	open map[string]*register.Book
}

func (p *program) books(out string) *books { return &books{p, out, map[string]*register.Book{}} }

// of opens the register that a bench file names, and finishes what an
// interrupted run has left.
func (b *books) of(ctx context.Context, bench *benchFile) (*register.Book, error) {
	path, err := registerPath(bench)
	if err != nil {
		return nil, err
	}
	key := strings.Join([]string{bench.bench.Numbers.Prefix, bench.bench.Numbers.Office, path}, "\x00")
	if book := b.open[key]; book != nil {
		return book, nil
	}
	book, err := register.Open(ctx, path, register.Options{
		Machine: b.p.machine(), Office: bench.bench.Numbers.Office, Prefix: bench.bench.Numbers.Prefix, Zone: bench.local(b.p.now()).Location(), Now: b.p.now, Rand: b.p.rand,
	})
	if err != nil {
		return nil, &failure{bench.at("numbers") + ": " + plainly(err), hintOf(err), err}
	}
	b.open[key] = book
	return book, b.settle(ctx, book)
}

// settle puts documents of an interrupted run in their place, and says so.
func (b *books) settle(ctx context.Context, book *register.Book) error {
	settled, err := book.Settle(ctx, b.out)
	for _, s := range settled {
		if s.Err != nil {
			b.p.fail(&failure{s.Entry.Number.String() + ": left over from an interrupted run: " + plainly(s.Err), hintOf(s.Err), s.Err})
			continue
		}
		b.p.note("%s, left over from an interrupted run, was put into %s", s.Entry.File, fromHere(s.Folder))
	}
	return err
}

// close closes all of them.
func (b *books) close() error {
	var errs []error
	for _, book := range b.open {
		errs = append(errs, book.Close())
	}
	return errors.Join(errs...)
}

// registerPath is the file of the register, named from the bench file's folder.
func registerPath(bench *benchFile) (string, error) {
	switch {
	case bench == nil:
		return "", failing(name+" start makes a folder with a bench file", "no bench.yaml is in the folder or above, so there is no register of numbers")
	case bench.bench.Numbers.Register == "":
		return "", failing("add numbers: {prefix: HL, register: register.db}; "+name+" start writes a bench file with it", "%s: no register is named", bench.at("numbers"))
	case bench.bench.Numbers.Prefix == "":
		return "", failing("add the letters that every number begins with: numbers: {prefix: HL, register: register.db}", "%s: no prefix for the numbers is given", bench.at("numbers"))
	case holdsPassword(bench.bench.Numbers.Register):
		return "", failing("leave it out there; put it into ~/.pgpass, or into PGPASSWORD in the environment", "%s: a password stands in the address of the register; the bench file is no place for it", bench.at("numbers"))
	case isAddress(bench.bench.Numbers.Register) || filepath.IsAbs(bench.bench.Numbers.Register):
		return bench.bench.Numbers.Register, nil
	}
	return filepath.Join(bench.dir, bench.bench.Numbers.Register), nil
}

// holdsPassword reports whether the address of a server has a password in it.
func holdsPassword(address string) bool {
	u, err := url.Parse(address)
	if !isAddress(address) || err != nil {
		return false
	}
	_, given := u.User.Password()
	return given || u.Query().Has("password")
}

// registerMade reports whether there is a register: the first number makes it.
func registerMade(bench *benchFile) bool {
	path, err := registerPath(bench)
	if err != nil {
		return false
	}
	_, err = os.Stat(path)
	return isAddress(path) || !errors.Is(err, fs.ErrNotExist)
}

// sampleNumber stands for a number that is not taken yet, to see whether a
// document can be printed.
func sampleNumber(bench *benchFile, now time.Time) (register.Number, error) {
	return register.NewNumber(bench.bench.Numbers.Prefix, bench.local(now).Year(), 888888)
}
