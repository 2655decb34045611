// Package yamledit changes a YAML file that somebody typed by hand. What is not
// changed stays as it was typed, to the byte: comments, blank lines, spaces,
// quotes, line ends, and anchors with their aliases.
package yamledit

import (
	"bytes"
	"cmp"
	"errors"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/yamlread"
)

// Change returns the text of a file that yamlread has read, with what change
// makes of its root. The function sees no aliases: in place of each is a copy of
// what it stands for, which can be changed alone. An alias is written out only if
// it no longer says the same as its anchor.
func Change(src []byte, change func(root *yaml.Node)) ([]byte, error) {
	was, err := yamlread.Document(src)
	if err != nil {
		return nil, err
	}
	is, err := yamlread.Document(src)
	if err != nil {
		return nil, err
	}
	unalias(is.Content[0])
	change(is.Content[0])
	e := newEditor(src, was.Content[0])
	if text, ok := e.edited(was.Content[0], is.Content[0]); ok {
		return text, nil
	}
	return e.anew(is)
}

// edited returns the text with the changes to its root edited in, and false if it
// is laid out in such a way that the edited text would say something else.
func (e *editor) edited(was, is *yaml.Node) (text []byte, ok bool) {
	e.value(was, is, place{})
	if text, ok = e.text(); !ok {
		return nil, false
	}
	got, err := yamlread.Document(text)
	return text, err == nil && equal(got.Content[0], is)
}

// mark is the byte order mark that a file may begin with.
const mark = "\uFEFF"

// editor collects the edits that turn one text into another.
type editor struct {
	src     []byte // without the mark
	marked  bool
	lines   []int // where each line of src begins
	newline string
	indent  int // by how much the file indents
	edits   []edit
	now     map[string]*yaml.Node // what each anchor stands for from here on
	err     error                 // something is not where it should be
}

// edit puts a text in place of what stands from one offset to another.
type edit struct {
	from, to int
	text     string
}

// errPlace says that something could not be found in the text.
var errPlace = errors.New("not found")

func newEditor(src []byte, root *yaml.Node) *editor {
	src = yamlread.UTF8(src)
	e := &editor{src: bytes.TrimPrefix(src, []byte(mark)), newline: "\n", indent: indentOf(root), now: map[string]*yaml.Node{}}
	e.marked = len(e.src) < len(src)
	e.lines = []int{0}
	for i, c := range e.src {
		if c == '\n' || c == '\r' && (i+1 == len(e.src) || e.src[i+1] != '\n') {
			e.lines = append(e.lines, i+1)
		}
	}
	if len(e.lines) > 1 {
		e.newline = string(e.src[e.lineEnd(0):e.lines[1]])
	}
	return e
}

// indentOf returns by how much a file indents.
func indentOf(root *yaml.Node) int {
	for _, n := range root.Content {
		if n.Style&yaml.FlowStyle != 0 || len(n.Content) == 0 {
			continue
		}
		column := n.Column
		if n.Kind == yaml.MappingNode {
			column = n.Content[0].Column // an anchor stands in the line before
		} else if n.Anchor != "" {
			continue
		}
		if column > root.Content[0].Column {
			return column - root.Content[0].Column
		}
	}
	return 2
}

// put adds an edit.
func (e *editor) put(from, to int, text string) {
	if from < 0 || to < from || to > len(e.src) {
		e.err = errPlace
		return
	}
	e.edits = append(e.edits, edit{from, to, text})
}

// text returns the text with every edit made, and false if edits overlap or
// something was not found.
func (e *editor) text() (text []byte, ok bool) {
	if e.err != nil {
		return nil, false
	}
	var out bytes.Buffer
	if e.marked {
		out.WriteString(mark)
	}
	at := 0
	slices.SortStableFunc(e.edits, func(a, b edit) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	for _, d := range e.edits {
		if d.from < at {
			return nil, false
		}
		out.Write(e.src[at:d.from])
		out.WriteString(d.text)
		at = d.to
	}
	out.Write(e.src[at:])
	return out.Bytes(), true
}

// anew returns the changed document as a program lays it out, for a text in which
// the edits cannot be made.
func (e *editor) anew(doc *yaml.Node) ([]byte, error) {
	text, err := encode(doc, e.indent)
	return []byte(strings.ReplaceAll(text, "\n", e.newline)), err
}
