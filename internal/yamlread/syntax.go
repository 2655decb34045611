package yamlread

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// wordings turns what the YAML parser says, known by a part of it, into words
// for somebody who types a file by hand.
var wordings = []struct{ part, message, hint string }{
	{"mapping values are not allowed", "a colon is out of place here", "put text that holds a colon in quotes, and indent the keys of one block alike"},
	{"did not find expected key", "this is not indented like what it belongs to", "indent the keys of one mapping alike and the items of one list alike, with spaces"},
	{"did not find expected '-' indicator", "this is not indented like what it belongs to", "indent the keys of one mapping alike and the items of one list alike, with spaces"},
	{"did not find expected ',' or ']'", "this list is not closed", "put commas between its items and ] at its end"},
	{"did not find expected ',' or '}'", "this mapping is not closed", "put commas between its keys and } at its end"},
	{"did not find expected node content", "a value is missing here", ""},
	{"did not find expected <document start>", "this does not belong to what is above it", "indent it like the lines it belongs to"},
	{"could not find expected ':'", "this line is neither a key nor a value", "write it as key: value"},
	{"found unexpected end of stream", "this quote is not closed", "close it with the same quote it opens with"},
	{"found unexpected document indicator", "this quote is not closed", "close it with the same quote it opens with"},
	{"found character that cannot start any token", "a value cannot begin like this", "put text that begins with @, ` or % in quotes"},
	{"unknown anchor", "this alias stands for nothing", "name a value with &NAME above it, or put text that begins with * in quotes"},
	{"block sequence entries are not allowed", "a list cannot begin here", "begin it on a line of its own"},
	{"block collections", "a list or a mapping cannot begin here", "begin it on a line of its own"},
	{"exceeded max depth", "lists and mappings are nested too deeply here", ""},
	{"while parsing a quoted scalar", "this quoted text is not closed or holds a wrong escape", "write \\\\ for a backslash, or use single quotes"},
	{"escape", "this quoted text holds a wrong escape", "write \\\\ for a backslash, or use single quotes"},
}

// syntax adds the problem of a file that is no YAML at all.
func (f *File) syntax(src []byte, err error) {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	at, tab := errorPlace(src, text)
	if tab {
		f.add(at, "a tab indents this line", "indent with spaces")
		return
	}
	for _, w := range wordings {
		if strings.Contains(text, w.part) {
			f.add(at, w.message, w.hint)
			return
		}
	}
	if _, rest, ok := strings.Cut(text, ": "); ok && strings.HasPrefix(text, "line ") {
		text = rest // the line is found better by errorPlace
	}
	f.add(at, "this is not valid YAML: "+quote(text), "")
}

// maxSearch bounds, in bytes, the files in which the place of an error is
// searched for. Longer ones are not typed by hand.
const maxSearch = 64 << 10

// errorPlace returns where src stops being YAML, for which the parser has said
// text. It names no column, and its line is often that of the whole mapping.
// So cut the file short: the error is on the line that a prefix of whole lines
// must not take in to be valid, and at the character of it that does the same.
// It also tells whether a tab indents that line.
func errorPlace(src []byte, text string) (at Pos, tab bool) {
	if len(src) > maxSearch {
		at = Pos{1, 1}
		fmt.Sscanf(text, "line %d:", &at.Line) // nothing is read if no line is named
		return at, false
	}
	ends := lineEnds(src)
	line := lastGood(len(ends)-1, func(n int) bool { return valid(src[:ends[n]]) })
	if line >= len(ends)-1 {
		return Pos{len(ends) - 1, 1}, false
	}
	start, end := ends[line], ends[line+1]
	row := src[start:end]
	indent := len(row) - len(bytes.TrimLeft(row, " "))
	if indent < len(row) && row[indent] == '\t' {
		return Pos{line + 1, indent + 1}, true
	}
	good := lastGood(len(row), func(n int) bool { return valid(src[:start+n]) })
	return Pos{line + 1, utf8.RuneCount(row[:max(indent, good)]) + 1}, false
}

// lineEnds returns the offset of the start, and of the end of each line.
func lineEnds(src []byte) []int {
	ends := []int{0}
	for i, c := range src {
		if c == '\n' || c == '\r' && (i+1 == len(src) || src[i+1] != '\n') || i == len(src)-1 {
			ends = append(ends, i+1)
		}
	}
	return ends
}

// lastGood returns an n for which ok holds and above which it does not. It
// takes ok(0) to hold and ok(most) not to. A list or a quote that spans some
// lines makes ok fail for a while and hold again, so it looks a little beyond
// what bisection finds.
func lastGood(most int, ok func(int) bool) int {
	const beyond = 8
	low, high := 0, most
	for {
		for high-low > 1 {
			if mid := (low + high) / 2; ok(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		next := low
		for n := low + 2; n <= min(low+beyond, most-1); n++ {
			if ok(n) {
				next = n
			}
		}
		if next == low {
			return low
		}
		low, high = next, most
	}
}

// valid reports whether src is a stream of YAML documents.
func valid(src []byte) bool {
	d := yaml.NewDecoder(bytes.NewReader(src))
	for {
		var n yaml.Node
		if err := d.Decode(&n); err != nil {
			return err.Error() == "EOF"
		}
	}
}
