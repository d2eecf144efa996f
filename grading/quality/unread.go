package quality

import (
	"errors"

	"stonewrit/grading/phrase"
)

// An Unread says why a grade or a notation cannot be read.
type Unread struct{ Says phrase.Line }

// Error is the sentence in English.
func (u *Unread) Error() string { return u.Says.String() }

func unread(form phrase.Line, parts ...any) error { return &Unread{phrase.Say(form, parts...)} }

// says is the sentence of an error.
func says(err error) phrase.Line {
	var u *Unread
	if errors.As(err, &u) {
		return u.Says
	}
	return phrase.Line(err.Error())
}
