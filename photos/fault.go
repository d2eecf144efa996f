package photos

import (
	"errors"
	"fmt"
	"io/fs"
	"strconv"
	"syscall"
)

// A Fault is the kind of thing that is wrong with a picture. Callers test for
// one with errors.Is.
type Fault string

// The faults that the functions of this package return.
const (
	ErrOutside    Fault = "outside the folder"   // the path, or a link on it, leaves the folder
	ErrMissing    Fault = "missing"              // nothing of that name is there
	ErrNotFile    Fault = "not a file"           // a folder, device, pipe or socket
	ErrUnreadable Fault = "unreadable"           // the system would not hand it out
	ErrTooBig     Fault = "too big"              // over a limit of Options
	ErrFormat     Fault = "format not read here" // not JPEG, PNG, TIFF or WebP
	ErrDecode     Fault = "cannot be decoded"    // damaged, cut short, or an unusual variant
)

func (f Fault) Error() string { return string(f) }

// Error tells what is wrong with which picture. It wraps its Fault.
type Error struct {
	Name   string // as the caller gave it
	Fault  Fault
	Detail string // what was found and what is accepted, for people
}

func (e *Error) Error() string {
	name := e.Name
	if q := strconv.Quote(name); q != `"`+name+`"` || name == "" {
		name = q // a line break or the like in a name must not break the message
	}
	return name + ": " + e.Detail
}

func (e *Error) Unwrap() error { return e.Fault }

func fault(name string, f Fault, format string, args ...any) *Error {
	return &Error{Name: name, Fault: f, Detail: fmt.Sprintf(format, args...)}
}

// openFault words an error of os.Root. A path that leaves the root fails there
// without a system error number, anything else with one.
func openFault(name string, err error) *Error {
	var number syscall.Errno
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fault(name, ErrMissing, "no such file in the folder")
	case errors.Is(err, fs.ErrPermission):
		return fault(name, ErrUnreadable, "reading it is not permitted")
	case errors.As(err, &number):
		return fault(name, ErrUnreadable, "cannot be read: %v", number)
	default:
		return fault(name, ErrOutside, "leads out of the folder; pictures are read only from inside it")
	}
}
