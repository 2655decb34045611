package report

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/google/renameio/v2/maybe"
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

// ErrForeign is the refusal to replace a file that is no report.
var ErrForeign = errors.New("is there already and is not a report")

// WriteFile writes the review to a file that only its owner can read, since it
// may tell of pain. The file appears whole or not at all. One that is there is
// replaced only if it is a report or force is set: else the error is
// ErrForeign. It returns the characters that a PDF's typeface lacks.
func (d *Doc) WriteFile(file string, format Format, force bool) (missing []rune, err error) {
	if err := replaceable(file, force); err != nil {
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
	err = maybe.WriteFile(file, b.Bytes(), 0o600)
	if errors.Is(err, fs.ErrNotExist) {
		err = fmt.Errorf("there is no folder %q to write into\nhint: make it first, or name another", filepath.Dir(file))
	}
	return missing, err
}

// ends is how much of both ends of a file is looked through for the marker: a
// page names it at its beginning, a PDF at its end.
const ends = 64 << 10

// replaceable returns nil where there is no such file, or a report, or any file
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
	src, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	marks := []string{"/Creator (" + marker + ")", `<meta name="generator" content="` + marker + `">`}
	at := slices.Concat(src[:min(len(src), ends)], src[max(0, len(src)-ends):])
	if !slices.ContainsFunc(marks, func(m string) bool { return bytes.Contains(at, []byte(m)) }) {
		return fmt.Errorf("%q %w\nhint: name another file, or add --force to replace it", file, ErrForeign)
	}
	return nil
}

func itoa(n int) string { return strconv.Itoa(n) }
