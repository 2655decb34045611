package main

import "io"

// output is standard output. It keeps the first error of writing to it, so that a
// failed write is reported no matter who made it: help, and what is said after a
// file was written, are printed by code that cannot hand an error on.
type output struct {
	io.Writer
	err error // the first; nil: all was written
}

// Write implements io.Writer.
func (o *output) Write(p []byte) (int, error) {
	n, err := o.Writer.Write(p)
	if err != nil && o.err == nil {
		o.err = err
	}
	return n, err
}
