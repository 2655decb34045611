package yamledit

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// at returns where a node begins, with its anchor and tag.
func (e *editor) at(n *yaml.Node) int {
	if n.Line < 1 || n.Line > len(e.lines) {
		e.err = errPlace
		return 0
	}
	i := e.lines[n.Line-1]
	for range n.Column - 1 {
		_, size := utf8.DecodeRune(e.src[i:])
		i += size
	}
	return i
}

// begin returns where the value of a node begins, behind its anchor and tag.
func (e *editor) begin(n *yaml.Node) int {
	i := e.at(n)
	if n.Anchor == "" && n.Style&yaml.TaggedStyle == 0 {
		return i
	}
	for i < len(e.src) && (e.src[i] == '&' || e.src[i] == '!') {
		for i < len(e.src) && !isSpace(e.src[i]) {
			i++
		}
		i = e.skip(i, "")
	}
	return i
}

// end returns where a node ends.
func (e *editor) end(n *yaml.Node) int {
	switch {
	case n.Kind == yaml.AliasNode:
		return e.at(n) + len("*") + len(n.Value)
	case n.Kind == yaml.ScalarNode:
		return e.scalarEnd(n)
	}
	i := e.begin(n)
	flow := n.Style&yaml.FlowStyle != 0
	if flow {
		i++
	}
	for _, c := range n.Content {
		i = max(i, e.end(c))
	}
	if !flow {
		return i
	}
	i = e.skip(i, ",:")
	if i >= len(e.src) || e.src[i] != ']' && e.src[i] != '}' {
		e.err = errPlace
		return i
	}
	return i + 1
}

// scalarEnd returns where a scalar ends.
func (e *editor) scalarEnd(n *yaml.Node) int {
	i := e.begin(n)
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		return e.quoteEnd(i+1, '"', '\\')
	case n.Style&yaml.SingleQuotedStyle != 0:
		return e.quoteEnd(i+1, '\'', '\'')
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return e.blockEnd(i)
	}
	for _, word := range strings.FieldsFunc(n.Value, func(r rune) bool { return r == ' ' || r == '\t' || r == '\n' }) {
		for i < len(e.src) && isSpace(e.src[i]) {
			i++
		}
		if !bytes.HasPrefix(e.src[i:], []byte(word)) {
			e.err = errPlace
			return i
		}
		i += len(word)
	}
	return i
}

// quoteEnd returns where a quoted scalar ends. A quote after an escape does not end
// it.
func (e *editor) quoteEnd(i int, quote, escape byte) int {
	for ; i < len(e.src); i++ {
		switch c := e.src[i]; {
		case c == escape && i+1 < len(e.src) && (escape == '\\' || e.src[i+1] == quote):
			i++
		case c == quote:
			return i + 1
		}
	}
	e.err = errPlace
	return i
}

// blockEnd returns where the literal or folded scalar whose header is at i ends:
// before the first line that is indented less than its own first line.
func (e *editor) blockEnd(i int) int {
	end, deep := e.lineEnd(i), 0
	for next := e.nextLine(end); next < len(e.src); next = e.nextLine(next) {
		line := e.src[next:e.lineEnd(next)]
		indent := len(line) - len(bytes.TrimLeft(line, " "))
		if indent == len(line) {
			continue
		}
		if deep == 0 {
			deep = indent
		}
		if indent < deep || deep == 0 {
			break
		}
		end = e.lineEnd(next)
	}
	return end
}

// skip returns the next offset from i on at which there is no space, no comment
// and none of the characters given.
func (e *editor) skip(i int, also string) int {
	for ; i < len(e.src); i++ {
		switch c := e.src[i]; {
		case c == '#' && i > 0 && isSpace(e.src[i-1]):
			i = e.lineEnd(i)
		case !isSpace(c) && strings.IndexByte(also, c) < 0:
			return i
		}
	}
	return len(e.src)
}

func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// lineEnd returns where the line of an offset ends, before its line break.
func (e *editor) lineEnd(i int) int {
	if n := bytes.IndexAny(e.src[i:], "\r\n"); n >= 0 {
		return i + n
	}
	return len(e.src)
}

// nextLine returns where the next line begins.
func (e *editor) nextLine(i int) int {
	i = e.lineEnd(i)
	if bytes.HasPrefix(e.src[i:], []byte("\r\n")) {
		return i + 2
	}
	return min(i+1, len(e.src))
}

// lineStart returns where the line of an offset begins.
func (e *editor) lineStart(i int) int { return bytes.LastIndexAny(e.src[:i], "\r\n") + 1 }

// lineBefore returns where the line before that of an offset ends, or -1.
func (e *editor) lineBefore(i int) int {
	i = e.lineStart(i)
	if bytes.HasSuffix(e.src[:i], []byte("\r\n")) {
		return i - 2
	}
	return i - 1
}

// isComment reports whether the line that ends at an offset is only a comment.
func (e *editor) isComment(end int) bool {
	return end > 0 && bytes.HasPrefix(bytes.TrimLeft(e.src[e.lineStart(end):end], " "), []byte("#"))
}

// leads reports whether only spaces stand before an offset in its line.
func (e *editor) leads(i int) bool {
	return len(bytes.TrimLeft(e.src[e.lineStart(i):i], " ")) == 0
}
