package register

import (
	"errors"
	"fmt"
	"strings"
)

// The errors that callers may test for with errors.Is.
var (
	ErrNumber      = errors.New("not a report number")
	ErrSeriesFull  = errors.New("the numbers of the year are used up")
	ErrRequest     = errors.New("the request cannot be met")
	ErrNoRegister  = errors.New("there is no register")
	ErrNotRegister = errors.New("not a register, or damaged")
	ErrNewer       = errors.New("the register was made by a newer version of the program")
	ErrBusy        = errors.New("the register is in use by another program")
	ErrLost        = errors.New("the server of the register cannot be reached")
	ErrUncertain   = errors.New("whether that was written to the register is not known") // see [Book.Issue]
	ErrWrite       = errors.New("the register cannot be written")
	ErrPDF         = errors.New("the PDF cannot be written")
	ErrUnsettled   = errors.New("the last write to the register was interrupted")
	ErrNotFound    = errors.New("not on the register")
	ErrChanged     = errors.New("changed since it was issued") // see ChangedError
	ErrUnchanged   = errors.New("unchanged since it was issued")
	ErrOtherFile   = errors.New("another file stands in the place of the PDF") // see FileError
	ErrUndelivered = errors.New("the PDF is on the register but not in its folder")
	ErrClock       = errors.New("the clock stands before the newest entry")
	ErrState       = errors.New("the number is no longer valid")
	ErrStored      = errors.New("the stored PDF is not the one that was issued")
)

// A ChangedError refuses to issue a stone whose content differs from what a
// valid number was given to. It matches [ErrChanged].
type ChangedError struct {
	Number Number
	Stone  string
	Parts  []string // what changed: "stone file", "photos", "letterhead"
}

func (e *ChangedError) Error() string {
	return fmt.Sprintf("%s: %s %s as %s", e.Stone, strings.Join(e.Parts, ", "), ErrChanged, e.Number)
}

// Is matches [ErrChanged].
func (e *ChangedError) Is(target error) bool { return target == ErrChanged }

// A FileError says that the place of a PDF is taken by something else, which
// is never overwritten. It matches [ErrOtherFile].
type FileError struct {
	Number Number
	Path   string
	Detail string // how it differs from what was issued; "" if the number is not yet
}

func (e *FileError) Error() string {
	if e.Detail == "" {
		return fmt.Sprintf("%s is there already, where the PDF of %s would go; no number was taken", e.Path, e.Number)
	}
	return fmt.Sprintf("%s: %s is not the PDF that was issued: %s", e.Number, e.Path, e.Detail)
}

// Is matches [ErrOtherFile].
func (e *FileError) Is(target error) bool { return target == ErrOtherFile }

// caused is one of our errors with its cause. It is one error, not several
// joined ones as fmt.Errorf makes them of two %w.
type caused struct{ what, cause error }

func (e *caused) Error() string        { return e.what.Error() + ": " + e.cause.Error() }
func (e *caused) Is(target error) bool { return target == e.what }
func (e *caused) Unwrap() error        { return e.cause }

// Hint returns a next step for an error of this package, without a full stop,
// or "" where it has none.
func Hint(err error) string {
	var changed *ChangedError
	if errors.As(err, &changed) {
		return fmt.Sprintf("amend %s to give a new number that replaces it", changed.Number)
	}
	for _, h := range []struct {
		is   error
		hint string
	}{
		{ErrOtherFile, "move that file away and issue the stone again"},
		{ErrUndelivered, "mend the folder and issue the stone again; the same number and bytes are used"},
		{ErrPDF, "look at the rights of the folder and the room on its disk; no number was taken"},
		{ErrWrite, "look at the rights of the file and its folder, and at the room on the disk; no number was taken"},
		{ErrUncertain, "do the same again when the server can be reached: if it was written, that is found"},
		{ErrLost, "look at the network and at numbers.register in the bench file, then issue again"},
		{ErrUnsettled, "run issue or amend once: it settles what was left"},
		{ErrBusy, "wait until the other program is done and try again; no number was taken"},
		{ErrClock, "set the clock of this machine right; no number was taken"},
		{ErrNoRegister, "issue a stone first, or look at numbers.register in the bench file"},
		{ErrNotRegister, "look at numbers.register in the bench file; if the file was damaged, take it from a backup"},
		{ErrNewer, "use the version of the program that wrote it, or a later one"},
		{ErrUnchanged, "nothing needs amending"},
		{ErrNumber, "a number is written as HL-2026-000001-16"},
	} {
		if errors.Is(err, h.is) {
			return h.hint
		}
	}
	return ""
}
