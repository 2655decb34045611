package wholefile

import (
	"bytes"
	"os"
	"slices"
)

// ends is how much of both ends of a file is looked through for a mark: a page
// names its maker at its beginning, a PDF at its end.
const ends = 64 << 10

// Kind tells the files that a command makes from all others.
type Kind struct {
	Name   string   // with its article, as in "a sheet"
	Marks  []string // any of these near either end tells one
	Begins []byte   // or this at its beginning
	Empty  bool     // an empty file counts as one
}

// holds reports whether the file at path, of size bytes, is of the kind. A
// file that cannot be read is not.
func (k *Kind) holds(path string, size int64) bool {
	if size == 0 {
		return k.Empty
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	at := func(offset int64) []byte {
		b := make([]byte, min(ends, size-offset))
		n, _ := f.ReadAt(b, offset)
		return b[:n]
	}
	head := at(0)
	if len(k.Begins) > 0 && bytes.HasPrefix(head, k.Begins) {
		return true
	}
	both := slices.Concat(head, at(max(0, size-ends)))
	return slices.ContainsFunc(k.Marks, func(m string) bool { return bytes.Contains(both, []byte(m)) })
}
