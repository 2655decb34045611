package check

import (
	"bytes"
	"strings"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/safetext"
	"coldfloor/internal/yamlread"
)

// cutText notes texts that end where YAML takes their rest for a comment:
// "Jump #2" without quotes is the text "Jump".
func cutText(c *checker) {
	if !mayCut(c.s.Source) {
		return // which spares a second reading
	}
	doc, err := yamlread.Document(c.s.Source)
	if err != nil {
		return // the session was not read from a file
	}
	c.cutIn(doc)
}

// cutIn looks at a node and at all below it.
func (c *checker) cutIn(n *yaml.Node) {
	const most = 24 // cells of the comment
	rest := strings.TrimPrefix(n.LineComment, "#")
	if n.Kind == yaml.ScalarNode && n.Style == 0 && n.Tag == "!!str" && rest != n.LineComment && rest != "" && !strings.ContainsAny(rest[:1], " \t#") {
		c.add(Note, yamlread.Pos{Line: n.Line, Column: n.Column}, nil, "the text is only %s: what follows it, %s, is a comment in YAML", quote(n.Value), quote("#"+safetext.Fit(rest, most)))
		c.found[len(c.found)-1].Hint = "put quotes around the whole text, or a space after the # of a comment"
	}
	for _, below := range n.Content {
		c.cutIn(below)
	}
}

// mayCut reports whether some # follows a space and has none after it.
func mayCut(src []byte) bool {
	for {
		_, after, found := bytes.Cut(src, []byte(" #"))
		switch {
		case !found:
			return false
		case len(after) > 0 && !bytes.ContainsAny(after[:1], " \t\n\r#"):
			return true
		}
		src = after
	}
}
