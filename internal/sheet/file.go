package sheet

import (
	"bytes"
	"path/filepath"
	"strings"

	"coldfloor/internal/paper"
	"coldfloor/internal/wholefile"
)

// marker is named in every file that this package writes, so that a sheet can
// be told from somebody else's file.
const marker = "coldfloor sheet"

// Format is a kind of file that a sheet is written as.
type Format string

// The formats, each named by the ending of its files.
const (
	PDF      Format = ".pdf"
	HTML     Format = ".html"
	Markdown Format = ".md"
)

// FormatOf returns the format that the ending of a file's name asks for.
func FormatOf(file string) (f Format, ok bool) {
	switch f := Format(strings.ToLower(filepath.Ext(file))); f {
	case PDF, HTML, Markdown:
		return f, true
	case ".htm":
		return HTML, true
	}
	return "", false
}

// WriteFile writes the sheet to a file, in the format and for the paper; a PDF
// can be large, for the wall. The
// file appears whole or not at all. One that is there is replaced only if it
// is a sheet or force is set, and never if it is one of the inputs, the files
// that the command reads: else the error is wholefile's.
func (d *Doc) WriteFile(file string, format Format, on paper.Size, large, force bool, inputs ...string) (Printed, error) {
	o := wholefile.Options{Mode: 0o644, Force: force, Inputs: inputs, Ours: kind}
	if err := wholefile.Check(file, o); err != nil {
		return Printed{}, err
	}
	var b bytes.Buffer
	var printed Printed
	var err error
	switch {
	case format == PDF && large:
		printed, err = d.Large(&b, on)
	case format == PDF:
		printed, err = d.PDF(&b, on)
	case format == HTML:
		err = d.HTML(&b, on)
	default:
		err = d.Markdown(&b)
	}
	if err != nil {
		return printed, err
	}
	return printed, wholefile.Write(file, b.Bytes(), o)
}

// kind is what tells a sheet from any other file.
var kind = &wholefile.Kind{Name: "a sheet", Marks: []string{
	"/Creator (" + marker + ")",
	`<meta name="generator" content="` + marker + `">`,
	"<!-- " + marker + " -->\n\n# ",
}}
