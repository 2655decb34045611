package main

import (
	"io"
	"os"
	"unicode/utf8"

	"coldfloor/internal/consolefont"
	"coldfloor/internal/safetext"
)

// output is standard output. It keeps the first error of writing to it, so that a
// failed write is reported no matter who made it: help, and what is said after a
// file was written, are printed by code that cannot hand an error on.
type output struct {
	io.Writer
	font safetext.Repertoire // what it shows; nil: everything
	held []byte              // the beginning of a character
	err  error               // the first; nil: all was written
}

// newOutput returns an output that writes to w, which is standard output or
// standard error. On the Linux console it knows which characters the font has.
func newOutput(w io.Writer) *output {
	return &output{Writer: w, font: consolefont.Of(w, os.Getenv)}
}

// Write implements io.Writer.
func (o *output) Write(p []byte) (int, error) {
	n, err := o.write(p)
	if err != nil && o.err == nil {
		o.err = err
	}
	return n, err
}

// write writes p with each character that the font lacks replaced. A character cut
// off at the end of p is held back until the rest of it comes.
func (o *output) write(p []byte) (int, error) {
	if o.font == nil {
		return o.Writer.Write(p)
	}
	text := append(o.held, p...)
	whole := len(text)
	for n := 1; n < utf8.UTFMax && n <= len(text); n++ {
		if b := text[len(text)-n:]; utf8.RuneStart(b[0]) {
			if !utf8.FullRune(b) {
				whole -= n
			}
			break
		}
	}
	o.held = append([]byte(nil), text[whole:]...)
	_, err := io.WriteString(o.Writer, o.font.Show(string(text[:whole])))
	return len(p), err
}

// fontOf returns the characters in the font of the terminal that w writes to, nil
// where they are not known.
func fontOf(w io.Writer) safetext.Repertoire {
	if o, ok := w.(*output); ok {
		return o.font
	}
	return nil
}
