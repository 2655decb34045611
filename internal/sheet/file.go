package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/google/renameio/v2/maybe"
)

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

// ErrForeign is the refusal to replace a file that is no sheet.
var ErrForeign = errors.New("is there already and is not a sheet")

// WriteFile writes the sheet to a file, in the format and for the paper. The
// file appears whole or not at all. One that is there is replaced only if it
// is a sheet or force is set: else the error is ErrForeign.
func (d *Doc) WriteFile(file string, format Format, paper Paper, force bool) (Printed, error) {
	if err := replaceable(file, force); err != nil {
		return Printed{}, err
	}
	var b bytes.Buffer
	var printed Printed
	var err error
	switch format {
	case PDF:
		printed, err = d.PDF(&b, paper)
	case HTML:
		err = d.HTML(&b, paper)
	default:
		err = d.Markdown(&b)
	}
	if err != nil {
		return printed, err
	}
	err = maybe.WriteFile(file, b.Bytes(), 0o644)
	if errors.Is(err, fs.ErrNotExist) {
		err = fmt.Errorf("there is no folder %q to write into\nhint: make it first, or name another", filepath.Dir(file))
	}
	return printed, err
}

// maxSheet is more than any sheet takes, in bytes.
const maxSheet = 64 << 20

// marks are what tells a sheet from any other file of its format.
var marks = []string{
	"/Creator (" + marker + ")",
	`<meta name="generator" content="` + marker + `">`,
	"<!-- " + marker + " -->\n\n# ",
}

// replaceable returns nil where there is no such file, or a sheet, or any file
// with force.
func replaceable(file string, force bool) error {
	info, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return fmt.Errorf("%q is not a file that can be replaced\nhint: name another", file)
	case force:
		return nil
	}
	var src []byte
	if info.Size() <= maxSheet {
		src, err = os.ReadFile(file)
	}
	if err == nil && !slices.ContainsFunc(marks, func(m string) bool { return bytes.Contains(src, []byte(m)) }) {
		err = fmt.Errorf("%q %w\nhint: name another file, or add --force to replace it", file, ErrForeign)
	}
	return err
}
