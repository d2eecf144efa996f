package weight

import (
	"errors"

	"stonewrit/grading/phrase"
)

// An Unable says why dimensions cannot be worked with. It is the error of this
// package wherever a sentence has more to tell than ErrDimensions, ErrNoFactor
// or ErrSolid, one of which it is.
type Unable struct {
	Says phrase.Line // the whole sentence
	Of   error
}

// Error is the sentence in English.
func (u *Unable) Error() string { return u.Says.String() }

// Unwrap is the error that it is one of.
func (u *Unable) Unwrap() error { return u.Of }

func unable(of error, form phrase.Line, parts ...any) error {
	return &Unable{phrase.Say(form, parts...), of}
}

// Says is the sentence of an error of this package.
func Says(err error) phrase.Line {
	var u *Unable
	if errors.As(err, &u) {
		return u.Says
	}
	return phrase.Line(err.Error())
}
