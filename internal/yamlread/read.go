package yamlread

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// MaxBytes is the largest file that is read. A caller that reads from a disk
// or a pipe need take no more than one byte above it.
const MaxBytes = 1 << 20

// File is one file while it is read. It collects what is wrong with it.
type File struct {
	name     string
	problems Problems
	more     int // problems that are counted and not kept
}

// maxProblems is how many problems of one file are kept; what has more is not
// a file typed by hand.
const maxProblems = 1000

// Parse reads src, which the user knows as name, and returns the mapping at
// its root, whose keys may be those given. The mapping is nil if src holds
// none; in any case File.Err has what is wrong so far, and values read from
// the mapping add to it.
func Parse(name string, src []byte, keys ...string) (*File, *Mapping) {
	f, root := parse(name, src)
	if root == nil {
		return f, nil
	}
	return f, f.mapping(root, "the file", keys)
}

// ParseList reads src as Parse does, but as a list of 1 to most mappings with
// the given keys. Messages call one of them what, as in "a player". Items that
// are no mapping are left out.
func ParseList(name string, src []byte, most int, what string, keys ...string) (*File, []*Mapping) {
	f, root := parse(name, src)
	switch {
	case root == nil:
		return f, nil
	case root.Kind != yaml.SequenceNode:
		f.add(place(root), "the file must be a list, not "+describe(root), "begin each one with -, and indent its keys")
		return f, nil
	case len(root.Content) > most:
		f.add(place(root), fmt.Sprintf("the list has %d items, at most %d", len(root.Content), most), "")
		return f, nil
	}
	var list []*Mapping
	for _, n := range root.Content {
		if m := f.mapping(n, what, keys); m != nil {
			list = append(list, m)
		}
	}
	return f, list
}

// parse returns the root of the file, or nil if it has none.
func parse(name string, src []byte) (*File, *yaml.Node) {
	f := &File{name: name}
	if len(src) > MaxBytes {
		f.add(Pos{1, 1}, "the file is larger than 1 MiB", "this cannot be a file typed by hand; is it the right one?")
		return f, nil
	}
	src = bytes.TrimPrefix(UTF8(src), []byte("\uFEFF"))
	if isBinary(src) {
		f.add(Pos{1, 1}, "this is not a text file", "save it as text, in UTF-8")
		return f, nil
	}
	src = f.clean(src)
	root := f.document(src)
	if root == nil || bytes.IndexByte(src, '*') >= 0 && !f.boundAliases(root) {
		return f, nil
	}
	return f, root
}

// Err returns the Problems found, in the order of their places, or nil.
func (f *File) Err() error {
	if len(f.problems) == 0 {
		return nil
	}
	slices.SortStableFunc(f.problems, func(a, b Problem) int { return a.Pos.compare(b.Pos) })
	f.problems = slices.Compact(f.problems) // a value that aliases share is read more than once
	if f.more == 0 {
		return f.problems
	}
	last := f.problems[len(f.problems)-1].Pos
	return append(slices.Clip(f.problems), Problem{f.name, last, fmt.Sprintf("%d more problems are not shown", f.more), ""})
}

// full reports whether no more problems are kept, and counts one if so.
func (f *File) full() bool {
	if len(f.problems) < maxProblems {
		return false
	}
	f.more++
	return true
}

// add notes one problem.
func (f *File) add(at Pos, message, hint string) {
	if f.full() {
		return
	}
	f.problems = append(f.problems, Problem{File: f.name, Pos: at, Message: message, Hint: hint})
}

// document parses src as the single YAML document it must be, and returns its
// root, or nil.
func (f *File) document(src []byte) *yaml.Node {
	src = withoutVersion(src)
	d := yaml.NewDecoder(bytes.NewReader(src))
	var doc, second yaml.Node
	err := d.Decode(&doc)
	if err != nil && !errors.Is(err, io.EOF) {
		if again, ok := moveSurrogates(src); ok {
			d, doc = yaml.NewDecoder(bytes.NewReader(again)), yaml.Node{}
			if err = d.Decode(&doc); err == nil {
				joinSurrogates(&doc)
			}
		}
	}
	switch {
	case errors.Is(err, io.EOF):
		f.add(Pos{1, 1}, "the file is empty", "")
		return nil
	case err != nil:
		f.syntax(src, err)
		return nil
	}
	switch err := d.Decode(&second); {
	case errors.Is(err, io.EOF):
	case err != nil:
		f.syntax(src, err)
		return nil
	default:
		f.add(place(&second), "a second document begins here", "keep one document in a file, without a line of ---")
		return nil
	}
	return doc.Content[0]
}

// withoutVersion makes a comment of the line %YAML 1.2 at the head of src,
// which the parser, of the version before, refuses.
func withoutVersion(src []byte) []byte {
	at := 0
	for at < len(src) && (src[at] == '#' || src[at] == '\n' || src[at] == '\r') {
		end := bytes.IndexByte(src[at:], '\n')
		if end < 0 {
			return src
		}
		at += end + 1
	}
	if bytes.HasPrefix(src[at:], []byte("%YAML 1.2")) {
		src = slices.Clone(src)
		src[at] = '#'
	}
	return src
}

// maxFaults is how many unreadable characters are named; what has more is no
// text at all.
const maxFaults = 20

// clean names the control characters and the bytes that are no UTF-8, and
// returns src with each in its place made harmless, so that all else that is
// wrong with the file is found as well.
func (f *File) clean(src []byte) []byte {
	pos, faults := Pos{1, 1}, 0
	var out []byte
	for i := 0; i < len(src); {
		c := src[i]
		if c >= ' ' && c < 0x7f || c == '\t' {
			i++
			pos.Column++
			continue
		}
		if c == '\n' || c == '\r' {
			if c == '\n' || i+1 == len(src) || src[i+1] != '\n' {
				pos = Pos{pos.Line + 1, 1}
			}
			i++
			continue
		}
		r, size := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && size == 1 || isControl(r) {
			if out == nil {
				out = slices.Clone(src)
			}
			for j := range size {
				out[i+j] = '?'
			}
			if faults++; faults <= maxFaults {
				f.unreadable(pos, r)
			}
		}
		i += size
		pos.Column++
	}
	if out == nil {
		return src
	}
	return out
}

// unreadable adds the problem of one character that no text may hold.
func (f *File) unreadable(at Pos, r rune) {
	if r == utf8.RuneError {
		f.add(at, "this is not UTF-8", "save the file as UTF-8")
		return
	}
	f.add(at, fmt.Sprintf("control character %U", r), "take it out")
}

// isControl reports whether r is a character that no text may hold: control
// characters, line and paragraph separators, byte order marks, and those that
// turn the direction of the text around them (Unicode Standard Annex 9). Tab
// and line breaks are not asked about.
func isControl(r rune) bool {
	return r < ' ' || r >= 0x7f && r < 0xa0 ||
		r >= 0x2028 && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0xfeff
}

// place returns where a node begins.
func place(n *yaml.Node) Pos { return Pos{n.Line, n.Column} }

// quote shows a text from the file within a message: cut to a line's length,
// and with everything a terminal might act on escaped.
func quote(s string) string {
	const most = 40
	n := 0
	for i := range s {
		if n++; n > most {
			return strconv.Quote(s[:i] + "…")
		}
	}
	return strconv.Quote(s)
}

// Document returns the one document of a file that Parse has read, as nodes
// with their comments, to be changed and written again.
func Document(src []byte) (*yaml.Node, error) {
	var doc yaml.Node
	src = withoutVersion(bytes.TrimPrefix(UTF8(src), []byte("\uFEFF")))
	err := yaml.Unmarshal(src, &doc)
	if again, ok := moveSurrogates(src); err != nil && ok {
		if err = yaml.Unmarshal(again, &doc); err == nil {
			joinSurrogates(&doc)
		}
	}
	return &doc, err
}
