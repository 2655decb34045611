// Package fault is what an error of this program looks like: where, what is
// wrong, and what to do about it. The hint travels beside the message and is
// put on a line of its own in one place, when the error is printed.
package fault

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/safetext"
)

// Error is an error with a hint.
type Error struct {
	Where string // the file, flag or field it is about; empty if What names it
	What  string // what is wrong, in lower case with no full stop
	Hint  string // what to do about it, in lower case with no full stop; may be empty
	Err   error  // the error behind it, for errors.Is and errors.As; may be nil
}

// Error returns "where: what", without the hint.
func (e *Error) Error() string {
	if e.Where == "" {
		return e.What
	}
	return e.Where + ": " + e.What
}

// Unwrap returns the error behind it.
func (e *Error) Unwrap() error { return e.Err }

// New returns an error with a hint and a message as of fmt.Errorf, whose %w
// may stand in it.
func New(hint, format string, args ...any) error {
	err := fmt.Errorf(format, args...)
	return &Error{What: err.Error(), Hint: hint, Err: err}
}

// With returns err with a hint, which goes before any hint that it has; nil
// for nil.
func With(hint string, err error) error {
	if err == nil {
		return nil
	}
	return &Error{What: err.Error(), Hint: hint, Err: err}
}

// At returns err as one about where, with the hint it has; nil for nil.
func At(where string, err error) error {
	if err == nil {
		return nil
	}
	return &Error{Where: where, What: err.Error(), Hint: Hint(err), Err: err}
}

// Hint returns the first hint in err's tree, or "".
func Hint(err error) string {
	switch e := err.(type) {
	case nil:
		return ""
	case *Error:
		if e.Hint != "" {
			return e.Hint
		}
	case interface{ Unwrap() []error }:
		for _, err := range e.Unwrap() {
			if h := Hint(err); h != "" {
				return h
			}
		}
		return ""
	}
	return Hint(errors.Unwrap(err))
}

// Text returns the error's message and, on a line of its own, "hint: " and the
// hint if it has one.
func Text(err error) string {
	if h := Hint(err); h != "" {
		return err.Error() + "\nhint: " + h
	}
	return err.Error()
}

// Print writes a command's error as it is shown: "coldfloor: message", and a
// line "hint: …" if there is one. Whatever a file or its name brought into the
// message is made safe for the terminal.
func Print(w io.Writer, err error) {
	PrintLines(w, "coldfloor: "+Text(err))
}

// PrintLines writes text line by line, each made safe for the terminal.
func PrintLines(w io.Writer, text string) {
	for line := range strings.Lines(text) {
		fmt.Fprintln(w, safetext.Clean(strings.TrimRight(line, "\n")))
	}
}
