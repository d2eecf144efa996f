package seal

import "errors"

// The errors that callers may test for with errors.Is.
var (
	ErrNotPDF   = errors.New("not a PDF, or damaged")
	ErrLocked   = errors.New("the PDF is closed with a password")
	ErrForeign  = errors.New("the PDF holds no number of ours, so it is no document of this program")
	ErrPassword = errors.New("the password is wrong")
	ErrUnfit    = errors.New("a password holds letters, digits and signs, and no space")
	ErrKey      = errors.New("not a key with its certificate")
	ErrExpired  = errors.New("the certificate is not valid on this day")
)
