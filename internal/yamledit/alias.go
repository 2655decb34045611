package yamledit

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// unalias replaces every alias by a copy of what it stands for. The reader has
// bounded how much that is.
func unalias(n *yaml.Node) {
	for i, c := range n.Content {
		for c.Kind == yaml.AliasNode {
			shared := *c.Alias
			shared.HeadComment, shared.LineComment, shared.FootComment = c.HeadComment, c.LineComment, c.FootComment
			shared.Content = copies(shared.Content)
			c = &shared
		}
		c.Anchor = ""
		n.Content[i] = c
		unalias(c)
	}
}

// copies returns deep copies of nodes.
func copies(nodes []*yaml.Node) []*yaml.Node {
	all := make([]*yaml.Node, len(nodes))
	for i, n := range nodes {
		c := *n
		c.Content = copies(n.Content)
		all[i] = &c
	}
	return all
}

// follow returns what an alias stands for, and any other node as it is.
func follow(n *yaml.Node) *yaml.Node {
	for n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n
}

// equal reports whether two nodes say the same. The order of a mapping's keys says
// nothing, nor does the end of a text's last line.
func equal(a, b *yaml.Node) bool {
	a, b = follow(a), follow(b)
	if a.Kind != b.Kind || strings.TrimRight(a.Value, "\n") != strings.TrimRight(b.Value, "\n") || a.ShortTag() != b.ShortTag() || len(a.Content) != len(b.Content) {
		return false
	}
	if a.Kind != yaml.MappingNode {
		return slices.EqualFunc(a.Content, b.Content, equal)
	}
	for i := 0; i+1 < len(a.Content); i += 2 {
		j := pairOf(b, follow(a.Content[i]).Value)
		if j < 0 || !equal(a.Content[i], b.Content[j]) || !equal(a.Content[i+1], b.Content[j+1]) {
			return false
		}
	}
	return true
}

// pairOf returns the index of a key in a mapping's Content, or -1.
func pairOf(mapping *yaml.Node, key string) int {
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if follow(mapping.Content[i]).Value == key {
			return i
		}
	}
	return -1
}
