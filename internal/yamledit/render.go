package yamledit

import (
	"bytes"
	"strings"

	"gopkg.in/yaml.v3"
)

// encode writes a node as text.
func encode(n *yaml.Node, indent int) (string, error) {
	var out bytes.Buffer
	c := yaml.NewEncoder(&out)
	c.SetIndent(indent)
	if err := c.Encode(n); err != nil {
		return "", err
	}
	return out.String(), c.Close()
}

// block returns the lines of a node that stands by itself.
func (e *editor) block(n *yaml.Node) []string {
	text, err := encode(n, e.indent)
	if err != nil {
		e.err = err
	}
	return strings.Split(strings.TrimRight(text, "\n"), "\n")
}

// flow returns nodes on one line, without comments, as they stand in brackets.
func (e *editor) flow(kind yaml.Kind, nodes ...*yaml.Node) string {
	list := &yaml.Node{Kind: kind, Style: yaml.FlowStyle, Content: copies(nodes)}
	for _, n := range list.Content {
		bare(n)
	}
	text, err := encode(list, e.indent)
	if err != nil {
		e.err = err
	}
	text = strings.TrimRight(text, "\n")
	return text[1 : len(text)-1]
}

// bare makes a node take one line and have no comments.
func bare(n *yaml.Node) {
	n.HeadComment, n.LineComment, n.FootComment = "", "", ""
	if n.Kind != yaml.ScalarNode {
		n.Style |= yaml.FlowStyle
	} else if n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		n.Style = yaml.DoubleQuotedStyle
	}
	for _, c := range n.Content {
		bare(c)
	}
}

// uncommented returns a node without its own comments, which stand in the text
// already.
func uncommented(n *yaml.Node) *yaml.Node {
	c := *n
	c.HeadComment, c.LineComment, c.FootComment = "", "", ""
	return &c
}

// joined returns lines indented as in the file, each after a line end.
func (e *editor) joined(lines []string, indent int) string {
	var b strings.Builder
	for _, line := range lines {
		b.WriteString(e.newline)
		if line != "" {
			b.WriteString(strings.Repeat(" ", indent) + line)
		}
	}
	return b.String()
}
