// Package ownfile writes files that the program makes again and again, such as
// sheets and reports: whole or not at all, and never over somebody else's.
package ownfile

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"coldfloor/internal/fault"

	"github.com/google/renameio/v2/maybe"
)

// ends is how much of both ends of a file is looked through for a mark: a page
// names its maker at its beginning, a PDF at its end.
const ends = 64 << 10

// Kind is a kind of file that the program makes.
type Kind struct {
	Mode    fs.FileMode
	Foreign error    // the refusal to replace a file of another kind
	Marks   []string // any of these, near either end, tells a file of the kind from all others
}

// Replaceable returns nil where there is no such file, or one of the kind, or
// any ordinary file with force. Else the error says what to do, and wraps
// Foreign where that is the reason.
func (k Kind) Replaceable(file string, force bool) error {
	info, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return fault.New("name another", "%q is not a file that can be replaced", file)
	case force:
		return nil
	}
	src, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	at := slices.Concat(src[:min(len(src), ends)], src[max(0, len(src)-ends):])
	if !slices.ContainsFunc(k.Marks, func(m string) bool { return bytes.Contains(at, []byte(m)) }) {
		return fault.New("name another file, or add --force to replace it", "%q %w", file, k.Foreign)
	}
	return nil
}

// Write writes a file that was found Replaceable. It appears whole or not at
// all, but on Windows, which has no such writing.
func (k Kind) Write(file string, content []byte) error {
	err := maybe.WriteFile(file, content, k.Mode)
	if errors.Is(err, fs.ErrNotExist) {
		return fault.New("make it first, or name another", "there is no folder %q to write into", filepath.Dir(file))
	}
	return err
}
