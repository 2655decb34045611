package report

import (
	"bytes"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/wholefile"
)

// Format is a kind of file that a report is written as, named by the ending of
// its files.
type Format string

// The formats.
const (
	PDF  Format = ".pdf"
	HTML Format = ".html"
)

// FormatOf returns the format that the ending of a file's name asks for.
func FormatOf(file string) (f Format, ok bool) {
	switch f := Format(strings.ToLower(filepath.Ext(file))); f {
	case PDF, HTML:
		return f, true
	case ".htm":
		return HTML, true
	}
	return "", false
}

// marker is named in every file that this package writes, so that a report can
// be told from somebody else's file.
const marker = "coldfloor report"

// epoch stands in a PDF for when it was made, so that the same review gives the
// same bytes; the day of the review is in its text.
var epoch = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// WriteFile writes the review to a file that only its owner can read, since it
// may hold reports of pain. The file appears whole or not at all. One that is there is
// replaced only if it is a report or force is set, and never if it is one of
// the inputs, the files that the command reads: else the error is wholefile's.
// It returns the characters that a PDF's typeface lacks.
func (d *Doc) WriteFile(file string, format Format, force bool, inputs ...string) (missing []rune, err error) {
	o := wholefile.Options{Mode: 0o600, Force: force, Inputs: inputs, Ours: kind}
	if err := wholefile.Check(file, o); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if format == PDF {
		missing, err = d.PDF(&b)
	} else {
		err = d.HTML(&b)
	}
	if err != nil {
		return missing, err
	}
	return missing, wholefile.Write(file, b.Bytes(), o)
}

// kind is what tells a report from any other file.
var kind = &wholefile.Kind{Name: "a report", Marks: []string{
	"/Creator (" + marker + ")",
	`<meta name="generator" content="` + marker + `">`,
}}

func itoa(n int) string { return strconv.Itoa(n) }
