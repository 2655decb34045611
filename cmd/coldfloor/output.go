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

// newOutput returns standard output or standard error. Of the Linux console's
// font it is known what it shows.
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

// write writes what is shown in place of p. A character that p ends within waits
// for its end.
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

// fontOf returns what is known of the font of the terminal that w is.
func fontOf(w io.Writer) safetext.Repertoire {
	if o, ok := w.(*output); ok {
		return o.font
	}
	return nil
}
