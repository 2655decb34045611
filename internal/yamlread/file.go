package yamlread

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"unicode/utf16"

	"coldfloor/internal/fault"
	"coldfloor/internal/safetext"
)

// ReadFile returns the text of the file at path, in UTF-8, and no more of it
// than one byte above MaxBytes. What is no file is refused before it is opened,
// since a pipe or a device may never answer; the hint says which command reads
// it then. The error for a missing file wraps fs.ErrNotExist.
func ReadFile(path string) ([]byte, error) {
	if runtime.GOOS == "windows" && !filepath.IsLocal(filepath.Base(path)) {
		return nil, fault.New("give the file another name", "%s is the name of a device here", safetext.Quote(path))
	}
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, unreadable(path, err)
	case info.IsDir():
		return nil, fault.New("name a file in it", "%s is a folder, not a file", safetext.Quote(path))
	case !info.Mode().IsRegular():
		return nil, fault.New("give what comes through it as standard input, with - for the file's name", "%s is a pipe or a device, not a file", safetext.Quote(path))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, unreadable(path, err)
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, MaxBytes+1))
	if err != nil {
		return nil, unreadable(path, err)
	}
	return UTF8(src), nil
}

// unreadable names the file that cannot be read.
func unreadable(path string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return &fault.Error{What: "there is no file " + safetext.Quote(path), Err: err}
	}
	if e, ok := err.(*fs.PathError); ok {
		err = e.Err
	}
	return fault.New("", "cannot read %s: %w", safetext.Quote(path), err)
}

// UTF8 returns src in UTF-8 if it begins with a byte order mark of UTF-16, as
// some shells write, and else as it is. What is no good UTF-16 becomes U+FFFD.
func UTF8(src []byte) []byte {
	var order binary.ByteOrder
	switch {
	case bytes.HasPrefix(src, []byte{0xff, 0xfe}):
		order = binary.LittleEndian
	case bytes.HasPrefix(src, []byte{0xfe, 0xff}):
		order = binary.BigEndian
	default:
		return src
	}
	units := make([]uint16, 0, len(src)/2)
	for i := 2; i+1 < len(src); i += 2 {
		units = append(units, order.Uint16(src[i:]))
	}
	return []byte(string(utf16.Decode(units)))
}

// isBinary reports whether src is no text typed by anybody: it holds zero
// bytes, as pictures do and as UTF-16 does that has no byte order mark.
func isBinary(src []byte) bool {
	const many = 4
	return bytes.Count(src[:min(len(src), 4<<10)], []byte{0}) >= many
}
